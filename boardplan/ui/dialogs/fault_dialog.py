"""Fault dialog: what went wrong, in words that can be copied; a bad file, a full disk, a fault of the program."""

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QPlainTextEdit, QVBoxLayout, QWidget

from boardplan.files.faults import BadFile
from boardplan.ui.words import counted, tr


class FaultDialog(QDialog):
    """A sentence, the details below it, a button that copies both."""

    def __init__(self, title: str, sentence: str, details: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(560)
        self._text = f"{sentence}\n\n{details}".strip()
        words = QLabel(sentence)
        words.setWordWrap(True)
        self._details = QPlainTextEdit(details)
        self._details.setReadOnly(True)
        self._details.setAccessibleName(tr("Details"))
        self._details.setMinimumHeight(160)
        self._details.setVisible(bool(details))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        copy = buttons.addButton(tr("Copy"), QDialogButtonBox.ButtonRole.ActionRole)
        copy.clicked.connect(self._copy)
        copy.setAutoDefault(False)
        buttons.button(QDialogButtonBox.StandardButton.Close).setDefault(True)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addWidget(words)
        column.addWidget(self._details, 1)
        column.addWidget(buttons)

    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self._text)


def show_bad_file(bad: BadFile, parent: QWidget | None) -> None:
    """Say which file can't be used, where its faults are and what was expected there."""
    sentence = tr("{} can't be opened: {}.").format(
        bad.file, counted("it has %n fault|it has %n faults", len(bad.faults))
    )
    FaultDialog(tr("Bad file"), sentence, "\n".join(str(each) for each in bad.faults), parent).exec()


def show_disk_fault(error: OSError, path: str, parent: QWidget | None) -> None:
    """Say that a file could not be written, and that nothing is lost."""
    reason = error.strerror or str(error)
    sentence = tr("{} could not be written: {}. The job is still open; save it somewhere else.").format(path, reason)
    FaultDialog(tr("Not saved"), sentence, "", parent).exec()


def show_program_fault(details: str, parent: QWidget | None, *, kept: bool) -> None:
    """Say that the program made a mistake, and whether unsaved work was kept aside; the window stays."""
    sentence = tr(
        "The program made a mistake. What is open is still there: save it under another name to be safe, "
        "and send these details to whoever looks after the program."
    )
    sentence += tr(" What was not saved is kept aside, should the program end.") if kept else ""
    FaultDialog(tr("A mistake of the program"), sentence, details, parent).exec()
