"""Sharing left: what another sharing of the channels could still save, in one sentence, when it is asked for."""

from functools import partial

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.routing.sharing.left import SavingLeft, saving_left
from boardplan.ui.aside import Aside
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr


class SharingLeft(QWidget):
    """A button, and the answer for as long as the ways stay as they are."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._of: object = None
        self.ask = QPushButton(tr("What could sharing them otherwise save?"))
        self.ask.clicked.connect(self._begin)
        self.answer = QLabel()
        self.answer.setProperty("part", "small")
        self.answer.setWordWrap(True)
        self.answer.setAccessibleName(tr("What sharing the channels leaves"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.ask)
        column.addWidget(self.answer)
        desk.signals.seen_changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Take an answer away that is about other ways."""
        if self._desk.review.ways is not self._of:
            self._of = self._desk.review.ways
            self.answer.setVisible(False)
            self.ask.setVisible(True)
        self.setVisible(bool(self._desk.plan.channels))

    def _begin(self) -> None:
        known = self._desk.review
        self.ask.setVisible(False)
        self.answer.setText(tr("Working it out ..."))
        self.answer.setVisible(True)
        Aside(partial(saving_left, known.plan, known.ways), partial(self._say, known.ways), self._desk).start()

    def _say(self, ways: object, left: SavingLeft) -> None:
        if ways is self._of:
            words = left.sentence
            self.answer.setText(f"{words[0].upper()}{words[1:]}.")
