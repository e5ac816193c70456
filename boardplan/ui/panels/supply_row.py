"""Supply row: whether anything that the job needs is still on order, and the way to say where parts come from."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.output.parts.parts_list import parts_list
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.supply_dialog import ask_supply
from boardplan.ui.words import counted, tr


class SupplyRow(QWidget):
    """The word on leaving and a button; worked out only while it is seen."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._of: object = None
        self.word = QLabel()
        self.word.setWordWrap(True)
        self.word.setProperty("part", "quiet")
        self.ask = QPushButton(tr("Where parts come from..."))
        self.ask.clicked.connect(self.ask_supply)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.word)
        column.addWidget(self.ask, 0, Qt.AlignmentFlag.AlignRight)
        desk.signals.plan_changed.connect(self.refresh)

    def ask_supply(self) -> None:
        """Ask where the parts come from."""
        ask_supply(self._desk, self.window())

    def refresh(self) -> None:
        """Say how things stand, unless nobody looks or nothing changed."""
        plan = self._desk.session.committed_plan
        if self.isVisible() and plan is not self._of:
            self._of = plan
            self.word.setText(self._words())

    def _words(self) -> str:
        """Return the word on leaving; of a job that is reviewed elsewhere from its marks alone, for no hand waits."""
        desk, marks = self._desk, self._desk.session.committed_plan.supply.values()
        ordered = sum(each.state == "ordered" for each in marks)
        if desk.plan.rules.load_out is None:
            return tr("This rule set has no load-out list.")
        unmarked = 0
        if not desk.reviewing.elsewhere and (parts := parts_list(desk.session.review)) is not None:
            ordered, unmarked = len(parts.ordered), parts.unmarked
        if ordered:
            return counted("%n part is ordered.|%n parts are ordered.", ordered)
        still = counted("; %n part has no mark.|; %n parts have no mark.", unmarked) if unmarked else "."
        return tr("Ready to leave as far as the load-out list knows") + still

    def showEvent(self, event: QShowEvent) -> None:  # noqa: D102
        super().showEvent(event)
        self.refresh()
