"""Accept dialog: who accepts a finding, and why."""

from datetime import UTC, datetime

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from boardplan.checks.finding import Finding
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr


class AcceptDialog(QDialog):
    """Takes a name and a reason; both are needed."""

    def __init__(self, finding: Finding, name: str, parent: QWidget | None = None) -> None:  # noqa: PLR0915 - a form is one list of statements
        super().__init__(parent)
        self.setWindowTitle(tr("Accept a finding"))
        self.setMinimumWidth(440)
        sentence = QLabel(finding.sentence)
        sentence.setWordWrap(True)
        self.name = QLineEdit(name)
        self.name.setAccessibleName(tr("Name"))
        self.reason = QPlainTextEdit()
        self.reason.setAccessibleName(tr("Reason"))
        self.reason.setTabChangesFocus(True)
        self.reason.setFixedHeight(72)
        form = QFormLayout()
        form.setSpacing(8)
        form.addRow(tr("Name"), self.name)
        form.addRow(tr("Reason"), self.reason)
        note = QLabel(tr("The name, the reason and today's date are kept in the job."))
        note.setWordWrap(True)
        note.setProperty("part", "quiet")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self._accept = buttons.addButton(tr("Accept"), QDialogButtonBox.ButtonRole.AcceptRole)
        self._accept.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        for part in (sentence, note):
            column.addWidget(part)
        column.insertLayout(1, form)
        column.addWidget(buttons)
        self.name.textChanged.connect(self._show_ready)
        self.reason.textChanged.connect(self._show_ready)
        (self.reason if name else self.name).setFocus()
        self._show_ready()

    def _show_ready(self) -> None:
        self._accept.setEnabled(bool(self.name.text().strip() and self.reason.toPlainText().strip()))


def ask_acceptance(desk: Desk, finding: Finding, parent: QWidget | None) -> tuple[str, str, str] | None:
    """Return name, reason and today's date, none where the person thought better of it."""
    held = desk.preferences.text("accepted_by") or desk.plan.job.drawn_by
    dialog = AcceptDialog(finding, held, parent)
    if dialog.exec() != QDialog.DialogCode.Accepted:
        return None
    name = dialog.name.text().strip()
    desk.preferences.remember_text("accepted_by", name)
    return name, dialog.reason.toPlainText().strip(), datetime.now(UTC).astimezone().date().isoformat()
