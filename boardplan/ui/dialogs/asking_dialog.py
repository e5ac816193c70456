"""Asking dialog: what all dialogs share that ask for facts - a note, the fault, and staying open where it can't be."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QScrollArea, QVBoxLayout, QWidget

from boardplan.editing.refused import EditRefused
from boardplan.model.plan import Plan
from boardplan.ui.words import tr


class AskingDialog(QDialog):
    """Asks for facts and stays open until `edited` takes them; that puts what it says into a plan, or refuses."""

    def __init__(
        self, plan: Plan, title: str, edited: Callable[[Plan], Plan], parent: QWidget | None, size: tuple[int, int]
    ) -> None:
        super().__init__(parent)
        self._plan = plan
        self.edited = edited
        self.setWindowTitle(title)
        self.resize(*size)
        self.fault = QLabel()
        self.fault.setProperty("part", "fault")
        self.fault.setWordWrap(True)
        self.fault.hide()

    def lay_out(self, above: Sequence[QWidget], inside: QWidget, note: str) -> None:
        """Put parts above what scrolls, the note and the buttons below."""
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(inside)
        area.setProperty("part", "plain")
        self.buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.take = self.buttons.addButton(tr("Take it"), QDialogButtonBox.ButtonRole.AcceptRole)
        self.take.setDefault(True)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        for part in above:
            column.addWidget(part)
        column.addWidget(area, 1)
        for part in (small_words(note), self.fault, self.buttons):
            column.addWidget(part)

    def accept(self) -> None:
        """Take it, and stay open where it can't be."""
        try:
            self.edited(self._plan)
        except EditRefused as refused:
            self.say(refused.sentence)
            return
        super().accept()

    def say(self, sentence: str) -> None:
        """Say what is wrong; nothing takes no room."""
        self.fault.setText(sentence)
        self.fault.setVisible(bool(sentence))


def small_words(words: str) -> QLabel:
    """Return a note in small type that wraps."""
    label = QLabel(words)
    label.setProperty("part", "small")
    label.setWordWrap(True)
    return label
