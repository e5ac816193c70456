"""Trays row: which battery trays the customer builds, and the way to say more of them."""

from functools import partial

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.trays_dialog import ask_trays
from boardplan.ui.words import tr


class TraysRow(QWidget):
    """The names of the trays, and a button."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.names = ShortLabel()
        self.names.setProperty("part", "quiet")
        self.ask = QPushButton(tr("Battery trays..."))
        self.ask.clicked.connect(partial(ask_trays, desk, self))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.names, 1)
        row.addWidget(self.ask)
        desk.signals.plan_changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Name the trays."""
        trays = self._desk.session.committed_plan.trays
        self.names.setText(", ".join(f"{each.id} {each.name}".strip() for each in trays) or tr("none to build"))
