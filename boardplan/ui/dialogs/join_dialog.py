"""Join dialog: a cable by name - both ends, conductor, colour and class picked from lists that can be searched."""

import re
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import (
    QComboBox,
    QCompleter,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from boardplan.editing.cable_edits import connect
from boardplan.editing.cable_suggestion import suggest_cable
from boardplan.model.cable import CableEnd, ExitEnd, TerminalEnd
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr

_CLASSES = (("dc", "DC"), ("ac", "AC"), ("pv", "PV"), ("signal", "signal"))


def all_ends(plan: Plan) -> list[tuple[CableEnd, str]]:
    """Return every terminal and exit of a plan with its words."""
    ends: list[tuple[CableEnd, str]] = []
    for component in plan.components.values():
        for terminal in plan.kind_of(component).terminals:
            size = f", {terminal.size} {terminal.sort}" if terminal.size else f", {terminal.sort}"
            pole = f" ({terminal.pole})" if terminal.pole and terminal.pole not in terminal.id else ""
            ends.append((TerminalEnd(component.id, terminal.id), f"{component.id} {terminal.id}{pole}{size}"))
    return [*ends, *((ExitEnd(each.id), f"{each.id} {each.name}".strip()) for each in plan.exits.values())]


class SearchChoice(QComboBox):
    """A choice that is found by typing any part of its words."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setEditable(True)
        self.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.setAccessibleName(name)
        self.setMinimumWidth(300)
        self.setMaxVisibleItems(14)
        completer = QCompleter(self.model(), self)
        completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.activated.connect(self.settle)
        self.setCompleter(completer)
        line = self.lineEdit()
        if line is not None:
            line.setPlaceholderText(tr("Type to search"))

    def meant(self) -> int:
        """Return the number of the choice typed: by its whole words, how it begins, or the only one that fits."""
        text = self.currentText().strip().lower()
        if not text:
            return -1
        texts = [self.itemText(number).lower() for number in range(self.count())]
        if text in texts:
            return texts.index(text)
        starting = [number for number, each in enumerate(texts) if re.match(rf"{re.escape(text)}\b", each)]
        fitting = [number for number, each in enumerate(texts) if text in each]
        return starting[0] if starting else fitting[0] if len(fitting) == 1 else -1

    def settle(self) -> None:
        """Take what is typed where it means one of the choices, otherwise none."""
        number = self.meant()
        self.setCurrentIndex(number)
        self.setEditText(self.itemText(number) if number >= 0 else "")

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: D102
        super().focusOutEvent(event)
        if event.reason() not in {Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason}:
            self.settle()


class JoinDialog(QDialog):
    """Asks for what a cable is; a conductor is never chosen for the person unless one was chosen before."""

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None,
        ends: tuple[CableEnd | None, CableEnd | None] = (None, None),
        last: Conductor | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk, self._last = desk, last
        self._suggested_for: tuple[CableEnd, CableEnd] | None = None
        self.setWindowTitle(tr("Join with a cable"))
        self.start, self.end = SearchChoice(tr("From")), SearchChoice(tr("To"))
        self.conductor = SearchChoice(tr("Conductor"))
        self.colour, self.cable_class = SearchChoice(tr("Colour")), QComboBox()
        self.cable_class.setAccessibleName(tr("Class"))
        self._why = QLabel()
        self._why.setWordWrap(True)
        self._why.setProperty("part", "quiet")
        self._fill()
        self._lay_out()
        for choice, end in ((self.start, ends[0]), (self.end, ends[1])):
            held = [choice.itemData(number) for number in range(choice.count())]
            choice.setCurrentIndex(held.index(end) if end in held else -1)
        self.conductor.setCurrentIndex(-1)
        for choice in (self.start, self.end):
            choice.currentIndexChanged.connect(self._suggest)
            choice.editTextChanged.connect(self._suggest)
        for choice in (self.start, self.end, self.conductor, self.colour):
            choice.currentIndexChanged.connect(self._show_ready)
            choice.editTextChanged.connect(self._show_ready)
        self._suggest()
        self._show_ready()
        (self.conductor if ends[1] is not None else self.start).setFocus()

    def _fill(self) -> None:
        plan, shelf = self._desk.session.committed_plan, self._desk.shelf
        for choice in (self.start, self.end):
            for end, words in all_ends(plan):
                choice.addItem(words, end)
        for conductor in {**shelf.conductors, **plan.conductors}.values():
            self.conductor.addItem(conductor.name, conductor)
        for colour in plan.rules.colours:
            self.colour.addItem(colour, colour)
        for value, words in _CLASSES:
            self.cable_class.addItem(tr(words), value)

    def _lay_out(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(8)
        rows = (
            (tr("From"), self.start),
            (tr("To"), self.end),
            (tr("Conductor"), self.conductor),
            (tr("Colour"), self.colour),
            (tr("Class"), self.cable_class),
        )
        for number, (words, control) in enumerate(rows):
            label = QLabel(words)
            label.setProperty("part", "quiet")
            label.setBuddy(control)
            grid.addWidget(label, number, 0)
            grid.addWidget(control, number, 1)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self._join = buttons.addButton(tr("Join"), QDialogButtonBox.ButtonRole.AcceptRole)
        self._join.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addLayout(grid)
        column.addWidget(self._why)
        column.addWidget(buttons)

    def _suggest(self) -> None:
        start, end = self._data(self.start), self._data(self.end)
        if start is None or end is None or (start, end) == self._suggested_for:
            return
        self._suggested_for = (start, end)
        found = suggest_cable(self._desk.session.committed_plan, start, end, self._desk.shelf, self._last)
        if found.conductor is not None:
            self.conductor.setCurrentIndex(self.conductor.findText(found.conductor.name))
            self._why.setText(tr("Suggested: {}. The designer's sheet wins.").format(found.why))
        else:
            self._why.setText(tr("The program does not size conductors: take it from the designer's sheet."))
        self.colour.setCurrentIndex(max(0, self.colour.findData(found.colour)))
        self.cable_class.setCurrentIndex(self.cable_class.findData(found.cable_class))

    def _data(self, choice: SearchChoice) -> Any:  # noqa: ANN401 - ends and conductors
        number = choice.meant()
        return choice.itemData(number) if number >= 0 else None

    def _show_ready(self) -> None:
        chosen = (self.start, self.end, self.conductor, self.colour)
        self._join.setEnabled(all(self._data(each) is not None for each in chosen))

    def accept(self) -> None:
        """Join, and stay open where the edit is refused."""
        start, end, conductor = self._data(self.start), self._data(self.end), self._data(self.conductor)
        colour, cable_class = self._data(self.colour), self.cable_class.currentData()
        if start is None or end is None or conductor is None or colour is None:
            return
        added = self._desk.add(
            tr("Join with a cable"), lambda plan: connect(plan, start, end, conductor, colour, cable_class)
        )
        if added is not None:
            super().accept()
