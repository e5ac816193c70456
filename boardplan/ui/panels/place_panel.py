"""Place panel: two leaves for one step - the shelf to take from, and what is on the board already."""

from functools import partial

from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from boardplan.ui.controls.small_parts import hairline
from boardplan.ui.desk import Desk
from boardplan.ui.panels.placed_panel import PlacedPanel
from boardplan.ui.panels.shelf_panel import ShelfPanel
from boardplan.ui.words import tr


class PlacePanel(QWidget):
    """Shows the shelf or the components placed, whichever of two buttons is down."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.shelf, self.placed = ShelfPanel(desk), PlacedPanel(desk)
        self._leaves = QStackedWidget()
        self._group = QButtonGroup(self)
        row = QHBoxLayout()
        row.setContentsMargins(12, 8, 12, 0)
        row.setSpacing(16)
        for number, (words, leaf) in enumerate(((tr("Shelf"), self.shelf), (tr("On the board"), self.placed))):
            button = QPushButton(words)
            button.setProperty("part", "leaf")
            button.setCheckable(True)
            button.setChecked(number == 0)
            button.clicked.connect(partial(self._leaves.setCurrentIndex, number))
            self._group.addButton(button, number)
            self._leaves.addWidget(leaf)
            row.addWidget(button)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(row)
        column.addWidget(hairline())
        column.addWidget(self._leaves, 1)
        desk.signals.plan_changed.connect(self._count)
        self._count()

    def show_placed(self) -> None:
        """Turn to what is on the board, and go to its search."""
        self._group.button(1).click()
        self.placed.search.setFocus()

    def show_shelf(self) -> None:
        """Turn to the shelf, and go to its search."""
        self._group.button(0).click()
        self.shelf.search.setFocus()

    def first_stop(self) -> QWidget:
        """Return where the keyboard arrives: the search of the leaf in sight."""
        return (
            self.placed.search if self._leaves.currentIndex() and self.placed.search.isEnabled() else self.shelf.search
        )

    def _count(self) -> None:
        number = len(self._desk.session.committed_plan.components)
        self._group.button(1).setText(tr("On the board  {}").format(number) if number else tr("On the board"))
