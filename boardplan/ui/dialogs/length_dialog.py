"""Length dialog: asks for one measure that nobody has given yet; the program doesn't make one up."""

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QVBoxLayout, QWidget

from boardplan.model.job import Units
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.words import tr


class LengthDialog(QDialog):
    """A question and a field for its answer."""

    def __init__(self, question: str, units: Units, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("A measure is needed"))
        self.setMinimumWidth(320)
        words = QLabel(question)
        words.setWordWrap(True)
        self.edit = LengthEdit(question, may_be_empty=True, empty=tr("type it here"))
        self.edit.show_value(None, units)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        take = buttons.addButton(tr("Take it"), QDialogButtonBox.ButtonRole.AcceptRole)
        take.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        for part in (words, self.edit, buttons):
            column.addWidget(part)
        self.edit.setFocus()

    def accept(self) -> None:
        """Close where there is an answer."""
        if self.edit.value:
            super().accept()


def ask_length(question: str, units: Units, parent: QWidget | None) -> float | None:
    """Return a length in mm, none where the person doesn't know it either."""
    dialog = LengthDialog(question, units, parent)
    return dialog.edit.value if dialog.exec() else None
