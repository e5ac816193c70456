"""Section: a part of a panel with a heading that folds it, and perhaps a button that adds to it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from boardplan.ui.controls.small_parts import hairline
from boardplan.ui.desk import Desk
from boardplan.ui.icons import put_icon


class Section(QWidget):
    """A heading with a summary to its right, and what is below it when it is open."""

    def __init__(self, desk: Desk, title: str, body: QWidget, *, is_open: bool = True) -> None:  # noqa: PLR0915 - a form is one list of statements
        super().__init__()
        self._desk = desk
        self._body = body
        self._head = QToolButton()
        self._head.setText(title)
        self._head.setProperty("part", "fold")
        self._head.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self._head.setCheckable(True)
        self._head.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._head.setAccessibleName(title)
        self._head.toggled.connect(self._fold)
        self._summary = QLabel()
        self._summary.setProperty("part", "small")
        row = QHBoxLayout()
        row.setContentsMargins(8, 4, 8, 4)
        row.setSpacing(4)
        row.addWidget(self._head, 1)
        row.addWidget(self._summary)
        self._row = row
        holder = QVBoxLayout()
        holder.setContentsMargins(16, 0, 12, 12)
        holder.addWidget(body)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(row)
        column.addLayout(holder)
        column.addWidget(hairline())
        self._holder = holder
        self._head.setChecked(is_open)
        self._fold(is_open)

    def add_button(self, button: QToolButton) -> None:
        """Put a button at the end of the heading."""
        self._row.addWidget(button)

    def summarise(self, words: str) -> None:
        """Show a few words at the right of the heading."""
        self._summary.setText(words)

    def unfold(self) -> None:
        """Show what is below the heading."""
        self._head.setChecked(True)

    def _fold(self, is_open: bool) -> None:  # noqa: FBT001 - a slot
        self._body.setVisible(is_open)
        self._holder.setContentsMargins(16, 0, 12, 12 if is_open else 0)
        put_icon(self._head, "down" if is_open else "right", self._desk.themes.theme)
