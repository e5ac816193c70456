"""Fuses row: below the fields of a component that has fuse places, how many have a rating, and the way to say more."""

from functools import partial

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from boardplan.model.component import Component
from boardplan.model.fuse_place import fuse_in
from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.fuses_dialog import ask_fuses, places_of
from boardplan.ui.panels.form import LABEL_WIDTH
from boardplan.ui.words import tr


class FusesRow(QWidget):
    """A button, and beside it what is known; hidden for a component without fuses."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._name = QLabel()
        self._name.setProperty("part", "quiet")
        self._name.setFixedWidth(LABEL_WIDTH)
        self.ask = QPushButton(tr("Fuses..."))
        self.ask.clicked.connect(partial(ask_fuses, desk, self))
        self.known = ShortLabel()
        self.known.setProperty("part", "quiet")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self._name)
        row.addWidget(self.ask)
        row.addWidget(self.known, 1)

    def show_component(self, component: Component) -> None:
        """Show what is known of the fuses of a component."""
        plan = self._desk.plan
        places = places_of(plan, component.id)
        self.setVisible(bool(places))
        if not places:
            return
        breakers = any(each.breaker for each in places)
        self._name.setText(tr("Breakers") if breakers else tr("Fuses"))
        self.ask.setText(tr("Breakers...") if breakers else tr("Fuses..."))
        rated = sum(fuse_in(plan, each).rating_a is not None for each in places)
        self.known.setText(tr("{} of {} rated").format(rated, len(places)))
