"""Supply dialog: where each part that the job needs comes from, one line a part; those on order first."""

from collections.abc import Iterable
from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from boardplan.editing.refused import EditRefused
from boardplan.editing.supply_edits import mark_parts
from boardplan.model.plan import Plan
from boardplan.model.supply import Supply, SupplyState
from boardplan.output.parts.part import Part
from boardplan.output.parts.part_words import quantity_words
from boardplan.output.parts.parts_list import PartsList, parts_list
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.lines import LineColumn, Lines
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.asking_dialog import AskingDialog
from boardplan.ui.theme import Themes
from boardplan.ui.words import counted, tr

STATES: tuple[tuple[SupplyState, str], ...] = (
    ("stock", "in stock"),
    ("bought", "bought, here"),
    ("ordered", "ordered"),
    ("customer", "customer brings it"),
)
_STATE = 2
"""The column of the choice."""


@dataclass(frozen=True, slots=True)
class NeededPart:
    """A part by its key, in words, how many of it, and its mark."""

    key: str
    words: str
    amount: str
    mark: Supply | None


def needed_parts(parts: PartsList) -> list[NeededPart]:
    """Return each part once that somebody has to get, those on order first; then marks on what is not needed."""
    found: dict[str, list[Part]] = {}
    for part in parts.parts:
        if part.mark or not part.own:
            found.setdefault(part.key, []).append(part)
    needed = [NeededPart(key, those[0].words, _amount(those), those[0].mark) for key, those in found.items()]
    stray = [NeededPart(each.part, each.part, tr("not needed"), each) for each in parts.stray]
    return sorted([*needed, *stray], key=lambda each: each.mark is None or each.mark.state != "ordered")


def _amount(parts: list[Part]) -> str:
    """Return how many of a part are needed; of several lines the first that isn't nought, and that there are more."""
    asked = [each for each in parts if each.quantity != 0] or parts
    return f"{quantity_words(asked[0])} {tr(asked[0].unit)}{tr(' and more') if len(asked) > 1 else ''}"


class SupplyDialog(AskingDialog):
    """Asks where parts come from; what is searched for only hides lines, and takes nothing from them."""

    def __init__(self, plan: Plan, parts: PartsList, themes: Themes, parent: QWidget | None = None) -> None:
        super().__init__(plan, tr("Where parts come from"), self._edited, parent, (1080, 620))
        self.parts = needed_parts(parts)
        states = ((tr("nobody said"), None), *((tr(words), state) for state, words in STATES))
        columns = (
            LineColumn(tr("part"), "fact", stretch=7),
            LineColumn(tr("to take"), "fact", stretch=3),
            LineColumn(tr("comes from"), "choice", choices=states, stretch=4),
            LineColumn(tr("at hand"), "number", stretch=2),
            LineColumn(tr("date, as 2026-11-02"), "text", stretch=3),
            LineColumn(tr("substitute"), "text", stretch=3),
            LineColumn(tr("note"), "text", stretch=4),
        )
        self.search = QLineEdit()
        self.search.setPlaceholderText(tr("Search the parts"))
        self.search.setAccessibleName(tr("Search the parts"))
        self.search.textChanged.connect(self._show_found)
        self.all_shown = Choice(tr("Mark all lines shown"))
        self.all_shown.addItem(tr("Mark all shown..."), "")
        for words, state in states:
            self.all_shown.addItem(words, state)
        self.all_shown.activated.connect(self._mark_shown)
        self.counts = QLabel()
        self.counts.setProperty("part", "quiet")
        self.table = Lines(columns, "", plan.job.units, themes)
        for each in self.parts:
            self.table.add_line([each.words, each.amount, *_said(each.mark)])
        self.table.changed.connect(self._count)
        self.found = list(range(len(self.parts)))
        self._lay_out_parts()
        self._count()
        self.search.setFocus()

    def _lay_out_parts(self) -> None:
        head = QWidget()
        row = QHBoxLayout(head)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        row.addWidget(self.search, 3)
        row.addWidget(self.all_shown, 1)
        row.addWidget(self.counts, 2)
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 8, 0)
        column.addWidget(self.table)
        column.addStretch(1)
        self.lay_out(
            [head],
            inside,
            tr(
                "At hand blank: enough of it. The date of an order is the day it is promised for. Substitute: what "
                "else will do, 'none' where nothing else will. The load-out list and the shopping list follow this."
            ),
        )

    def _show_found(self) -> None:
        words = self.search.text().lower().split()
        self.found = [
            number
            for number, each in enumerate(self.parts)
            if all(word in f"{each.words} {each.key} {self._choice(number).currentText()}".lower() for word in words)
        ]
        self.table.show_only(self.found)
        self._count()

    def _choice(self, number: int) -> Choice:
        part = self.table.lines[number][_STATE]
        assert isinstance(part, Choice)  # noqa: S101 - the column is one of choices
        return part

    def _mark_shown(self, at: int) -> None:
        """Mark every line shown alike; the first item is only the offer."""
        if at > 0:
            for number in self.found:
                self._choice(number).setCurrentIndex(at - 1)
            self.all_shown.setCurrentIndex(0)
            self._count()

    def _count(self) -> None:
        states = [self._choice(number).currentData() for number in range(len(self.parts))]
        shown = counted("%n part|%n parts", len(self.found))
        self.counts.setText(
            tr("{}; of all {} ordered, {} nobody said").format(shown, states.count("ordered"), states.count(None))
        )

    def _edited(self, plan: Plan) -> Plan:
        lines = zip(self.parts, self.table.values(), strict=True)
        return mark_parts(plan, [(each.key, _mark(each, *said[_STATE:])) for each, said in lines])

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and self.focusWidget() is self.search:
            if self.found:  # to what was found, rather than out of the dialog
                self._choice(self.found[0]).setFocus(Qt.FocusReason.TabFocusReason)
            return
        super().keyPressEvent(event)


def _said(mark: Supply | None) -> Iterable[object]:
    if mark is None:
        return (None, None, "", "", "")
    return (mark.state, mark.count, mark.date, mark.substitute, mark.note)


def _mark(
    part: NeededPart, state: SupplyState | None, count: float | None, date: str, substitute: str, note: str
) -> Supply | None:
    if state is not None:
        return Supply(part.key, state, count, date, note, substitute)
    if count is not None or date or substitute or note:
        raise EditRefused(tr("{}: say where it comes from, or empty the other fields.").format(part.words))
    return None


def ask_supply(desk: Desk, parent: QWidget | None) -> None:
    """Ask where the parts come from; say so where the rule set knows of no parts."""
    plan = desk.session.committed_plan
    parts = parts_list(desk.session.review)
    if parts is None:
        words = tr("Rule set {}, edition {} says nothing of parts to load.")
        desk.said.emit(words.format(plan.rules.name, plan.rules.edition))
        return
    dialog = SupplyDialog(plan, parts, desk.themes, parent)
    if dialog.exec():
        desk.edit(tr("Change where parts come from"), dialog.edited)
    dialog.deleteLater()
