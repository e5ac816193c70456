"""Row list: a list view for rows that speaks of keys, not of indexes."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QItemSelectionModel, QModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QListView, QSizePolicy, QWidget

from boardplan.drawing.palette import Theme
from boardplan.ui.tables.row_delegate import RowDelegate
from boardplan.ui.tables.rows import Row, RowsModel


class RowList(QListView):
    """A list of rows; says which is picked and which is acted on by Enter or a double click."""

    picked = Signal(object)
    acted = Signal(object)
    removed = Signal(object)
    ticked = Signal(object)
    """The box of a row was ticked, or its tick taken away: by a click on it, or by the space bar."""

    def __init__(self, name: str, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = RowsModel(self)
        self._delegate = RowDelegate(theme, self)
        self._grows = False
        self._silent = False
        self.setModel(self._rows)
        self.setItemDelegate(self._delegate)
        self.setAccessibleName(name)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMouseTracking(True)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.selectionModel().currentChanged.connect(self._on_current)
        self.activated.connect(self._on_acted)

    def grows(self) -> None:
        """Be as high as the rows are, without a scroll bar of its own."""
        self._grows = True
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows shown."""
        return self._rows.rows

    @property
    def key(self) -> Any:  # noqa: ANN401 - whatever the rows stand for
        """What the picked row stands for, none where none is picked."""
        index = self.currentIndex()
        chosen = index.isValid() and self.selectionModel().isSelected(index)
        return self._rows.rows[index.row()].key if chosen else None

    @property
    def _has_a_box(self) -> bool:
        """Whether the picked row has a box to tick."""
        return self.key is not None and self._rows.rows[self.currentIndex().row()].ticked is not None

    def show_theme(self, theme: Theme) -> None:
        """Draw in other colours."""
        self._delegate.theme = theme
        self.viewport().update()

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows; what was picked stays picked where it is still there."""
        held = self.key
        self._silent = True
        self._rows.show_rows(rows)
        self.pick(held)
        self._silent = False
        self._fit_height()

    def pick(self, key: Any) -> None:  # noqa: ANN401
        """Pick the row that stands for something, or none, without saying so."""
        was, self._silent = self._silent, True
        number = None if key is None else self._rows.row_of(key)
        if number is None:
            self.selectionModel().clearSelection()
        elif self.key != key:
            index = self._rows.index(number)
            self.selectionModel().setCurrentIndex(index, QItemSelectionModel.SelectionFlag.ClearAndSelect)
            self.scrollTo(index)
        self._silent = was

    def _fit_height(self) -> None:
        if self._grows:
            heights = sum(self.sizeHintForRow(number) for number in range(len(self.rows)))
            self.setFixedHeight(heights + 4)
            self.setVisible(bool(self.rows))

    def _on_current(self, current: QModelIndex, _previous: QModelIndex) -> None:
        if current.isValid() and not self._silent:
            self.picked.emit(self._rows.rows[current.row()].key)

    def _on_acted(self, index: QModelIndex) -> None:
        if index.isValid() and not self._rows.rows[index.row()].heading:
            self.acted.emit(self._rows.rows[index.row()].key)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        index = self.indexAt(event.position().toPoint())
        if index.isValid() and event.button() == Qt.MouseButton.LeftButton:
            row = self._rows.rows[index.row()]
            if self._delegate.ticks_at(row, event.position().x() - self.visualRect(index).left()):
                self.setFocus(Qt.FocusReason.MouseFocusReason)
                self.ticked.emit(row.key)
                return
        super().mousePressEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        if event.key() == Qt.Key.Key_Space and self._has_a_box:
            self.ticked.emit(self.key)
            return
        if event.key() in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace} and self.key is not None:
            self.removed.emit(self.key)
            return
        super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: D102
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()
        self._fit_height()
        if self.key is not None:
            self.scrollTo(self.currentIndex())
