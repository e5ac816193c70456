"""Command dialog: every action by its words; type a part of them, press Enter."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QDialog, QLineEdit, QVBoxLayout, QWidget

from boardplan.drawing.palette import Theme
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr


class CommandDialog(QDialog):
    """A search field over a list of all that can be done now."""

    def __init__(self, actions: list[tuple[str, QAction, str]], theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Find a command"))
        self.setMinimumSize(480, 420)
        self._actions = [each for each in actions if each[1].isEnabled()]
        self.chosen: QAction | None = None
        self.search = QLineEdit()
        self.search.setPlaceholderText(tr("What do you want to do?"))
        self.search.setAccessibleName(tr("Find a command"))
        self.list = RowList(tr("Commands"), theme)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 12)
        column.setSpacing(8)
        column.addWidget(self.search)
        column.addWidget(self.list, 1)
        self.search.textChanged.connect(self._show)
        self.search.returnPressed.connect(self._take)
        self.list.acted.connect(self._take)
        self.list.clicked.connect(self._take)
        self._show()
        self.search.setFocus()

    def _show(self) -> None:
        words = self.search.text().lower().split()
        rows = []
        for name, action, icon in self._actions:
            title, _, canvas_key = action.text().replace("&", "").replace("...", "").partition("\t")
            if all(word in f"{title} {action.statusTip()}".lower() for word in words):
                keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText) or canvas_key
                rows.append(Row(name, title, action.statusTip(), keys, sign=icon or "none"))
        self.list.show_rows(rows)
        if rows:
            self.list.pick(rows[0].key)

    def _take(self) -> None:
        name = self.list.key
        found = [action for each, action, _ in self._actions if each == name]
        if found:
            self.chosen = found[0]
            self.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        if event.key() in {Qt.Key.Key_Down, Qt.Key.Key_Up} and self.list.rows:
            keys = [row.key for row in self.list.rows]
            at = keys.index(self.list.key) if self.list.key in keys else 0
            step = 1 if event.key() == Qt.Key.Key_Down else -1
            self.list.pick(keys[(at + step) % len(keys)])
            return
        super().keyPressEvent(event)
