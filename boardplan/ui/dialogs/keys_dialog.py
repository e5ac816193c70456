"""Keys dialog: every key of the program, and those that only the canvas hears."""

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QVBoxLayout, QWidget

from boardplan.drawing.palette import Theme
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.tool_table import TOOLS
from boardplan.ui.words import tr

_ON_THE_CANVAS = (
    ("Next thing, the one before", "Tab, Shift+Tab"),
    ("Move what is selected by 1 mm, by 10 mm", "arrows, Shift+arrows"),
    ("Move the pointer of a tool by 1, 10, 100 mm", "arrows, Shift, Ctrl"),
    ("Click where the pointer is", "Enter"),
    ("End a channel", "Enter again, Ctrl+Enter"),
    ("Turn", "R"),
    ("Remove", "Del"),
    ("Leave the tool", "Esc"),
    ("Move the view", "Space and drag"),
)


class KeysDialog(QDialog):
    """Two lists to read."""

    def __init__(self, keys: list[tuple[str, str]], theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Keys"))
        self.setMinimumSize(460, 560)
        rows = RowList(tr("Keys"), theme)
        shown = [Row("canvas", tr("On the canvas"), heading=True)]
        shown += [Row(("canvas", words), tr(words), figure=tr(pressed)) for words, pressed in _ON_THE_CANVAS]
        tools = {each.words: each.key for each in TOOLS}
        shown += [Row(("tool", words), tr(words), figure=key) for words, key in tools.items()]
        shown.append(Row("everywhere", tr("Everywhere"), heading=True))
        shown += [Row(words, tr(words).replace("&", "").replace("...", ""), figure=pressed) for words, pressed in keys]
        rows.show_rows(shown)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 12)
        column.addWidget(rows, 1)
        column.addWidget(buttons)
