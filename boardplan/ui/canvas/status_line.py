"""Status line: where the pointer is, what lies next to what is carried, what the tool in hand wants."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from boardplan.editing.tools.toolbox import tool
from boardplan.geometry.point import Point
from boardplan.geometry.units import length_text
from boardplan.model.cable import Cable
from boardplan.model.component import Component
from boardplan.ui.canvas.gaps import gap_words
from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr

_LEAST_WORDS = 96
"""Room for the beginning of a hint, in px."""
_HANDLES = frozenset({"select", "place", "pin_way"})
"""Tools that work on what is selected; beside the others its facts would only be in the way."""


class StatusLine(QWidget):
    """One line below the canvas."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._place = QLabel()
        self._place.setProperty("part", "unit")
        self._place.setMinimumWidth(148)
        self._place.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._words = ShortLabel()
        self._words.setAccessibleName(tr("Hint"))
        self._fact = QLabel()
        self._fact.setProperty("part", "unit")
        self._change = QLabel()
        self._change.setProperty("part", "small")
        self._change.setAccessibleName(tr("What changes"))
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 4, 12, 4)
        row.setSpacing(16)
        row.addWidget(self._words, 1)
        row.addWidget(self._change)
        row.addWidget(self._fact)
        row.addWidget(self._place)
        self.setFixedHeight(30)
        self._hint, self._said, self._counted, self._warning = "", "", "", ""
        desk.said.connect(self.say)
        desk.signals.seen_changed.connect(self.refresh)
        desk.signals.selection_changed.connect(self.refresh)
        desk.tool_changed.connect(self.refresh)
        self.point(None)

    def point(self, at: Point | None) -> None:
        """Show where the pointer is on the board in hand."""
        if at is None:
            self._place.setText("")
            self._make_room()
            return
        board, units = self._desk.board, self._desk.plan.job.units
        here = at.minus(board.position)
        name = tr("{}: ").format(board.id) if len(self._desk.plan.boards) > 1 else ""
        text = tr("x {}   y {}").format(length_text(here.x, units, 0), length_text(here.y, units, 0))
        self._place.setText(name + text)
        self._make_room()

    @property
    def words(self) -> str:
        """What is said or hinted."""
        return self._words.text()

    @property
    def change_words(self) -> str:
        """What a gesture under way comes to."""
        return self._change.text()

    def change(self, words: str) -> None:
        """Show what a gesture under way comes to, or that it is being worked out; nothing where there is none."""
        if words != self._change.text():
            self._change.setText(words)
            self._make_room()

    def count(self, words: str) -> None:
        """Show how much of something there is on the board, while nothing is selected; nothing where unknown."""
        if words != self._counted:
            self._counted = words
            self.refresh()

    def _make_room(self) -> None:
        """Leave out the place and the fact, which rulers and board show as well, where others need their room."""
        changing = self._change.sizeHint().width() if self._change.text() else 0
        fact = self._fact.sizeHint().width() if self._fact.text() else 0
        self._change.setVisible(bool(changing))
        with_fact = not changing or changing + fact + _LEAST_WORDS <= self.width()
        self._fact.setVisible(bool(fact) and with_fact)
        needed = changing + (fact if with_fact else 0) + self._place.minimumWidth() + _LEAST_WORDS
        room = not (fact or changing) or needed <= self.width()
        self._place.setVisible(room and bool(self._place.text()))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: D102
        super().resizeEvent(event)
        self._make_room()

    def hint(self, words: str) -> None:
        """Show what the tool says."""
        self._hint = words
        self._show()

    def warn(self, words: str) -> None:
        """Show before the hint what is in the way of the gesture under way, until nothing is."""
        if words != self._warning:
            self._warning = words
            self._show()

    def say(self, words: str) -> None:
        """Show a sentence until something else is done."""
        self._said = words
        self._show()

    def _show(self) -> None:
        idle = self._desk.tool == "select" and self._hint == tr(tool("select").hint)
        hint = "" if idle and self._fact.text() not in {"", self._counted} else self._hint
        self._words.setText(self._said or "   ".join(filter(None, (self._warning, hint))))

    def refresh(self) -> None:
        """Show the fact that goes with what is selected: gaps of a component, cut length of a cable."""
        plan = self._desk.plan
        thing = plan.things.get(self._desk.session.selection.active or "")
        text = self._counted if thing is None else ""
        if self._desk.tool not in _HANDLES:
            text = ""
        elif isinstance(thing, Component):
            text = gap_words(plan, thing.id)
        elif isinstance(thing, Cable):
            length = self._desk.review.lengths.get(thing.id)
            if length is not None and length.cut is not None:
                text = tr("cut {}").format(length_text(length.cut, plan.job.units))
        self._fact.setText(text)
        self._show()
        self._make_room()
