"""Rows: every list of the window holds the same sort of row - a sign or picture, a title, details, a figure."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from boardplan.ui.canvas.painter import Ready

ROW_ROLE = int(Qt.ItemDataRole.UserRole) + 1


@dataclass(frozen=True)
class Row:
    """A row. `key` is what it stands for; a heading can't be picked; `sign` is a severity, an icon or "none".

    `tip` is shown when the pointer rests on the row, `spoken` describes it to people who don't see it. A row that is
    `ticked`, or not, has a box to tick; one of none has no box.
    """

    key: Any
    title: str
    detail: str = ""
    figure: str = ""
    sign: str = ""
    swatch: str = ""
    picture: Ready | None = None
    heading: bool = False
    wraps: bool = False
    quiet: bool = False
    tip: str = ""
    spoken: str = ""
    ticked: bool | None = None

    @property
    def words(self) -> str:
        """All of the row in one sentence, for search and for people who don't see it."""
        return ", ".join(each for each in (self.title, self.detail, self.figure) if each)


class RowsModel(QAbstractListModel):
    """Rows as a Qt list; holds what it was last given."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: tuple[Row, ...] = ()

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows; where only their contents differ, what is picked stays picked."""
        new = tuple(rows)
        if new == self.rows:
            return
        if [row.key for row in new] == [row.key for row in self.rows]:
            self.rows = new
            self.dataChanged.emit(self.index(0), self.index(len(new) - 1))
            return
        self.beginResetModel()
        self.rows = new
        self.endResetModel()

    def row_of(self, key: Any) -> int | None:  # noqa: ANN401 - whatever the rows stand for
        """Return the number of the row that stands for something."""
        return next((number for number, row in enumerate(self.rows) if row.key == key and not row.heading), None)

    def rowCount(self, parent: QModelIndex | QPersistentModelIndex = QModelIndex()) -> int:  # noqa: B008, D102
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: QModelIndex | QPersistentModelIndex, role: int = int(Qt.ItemDataRole.DisplayRole)) -> Any:  # noqa: ANN401, D102
        if not index.isValid() or index.row() >= len(self.rows):
            return None
        row = self.rows[index.row()]
        if role == ROW_ROLE:
            return row
        texts = {
            int(Qt.ItemDataRole.DisplayRole): row.title,
            int(Qt.ItemDataRole.AccessibleTextRole): row.words,
            int(Qt.ItemDataRole.ToolTipRole): row.tip or None,
            int(Qt.ItemDataRole.AccessibleDescriptionRole): row.spoken or None,
        }
        if role == int(Qt.ItemDataRole.CheckStateRole) and row.ticked is not None:
            return int((Qt.CheckState.Checked if row.ticked else Qt.CheckState.Unchecked).value)
        return texts.get(int(role))

    def flags(self, index: QModelIndex | QPersistentModelIndex) -> Qt.ItemFlag:  # noqa: D102
        if not index.isValid() or self.rows[index.row()].heading:
            return Qt.ItemFlag.NoItemFlags
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return flags | Qt.ItemFlag.ItemNeverHasChildren
