"""Shelf panel: the component kinds within reach, by family, each with its true picture."""

from collections.abc import Iterator

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QMenu, QPushButton, QVBoxLayout, QWidget

from boardplan.drawing.palette import Theme
from boardplan.geometry.units import inches_text, tidy_number
from boardplan.model.component_kind import ComponentKind
from boardplan.model.job import Units
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.ui.canvas.sights import component_ready
from boardplan.ui.desk import Desk
from boardplan.ui.kinds.own_kinds import OwnKinds
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr


def kind_rows(shelf: Shelf, plan: Plan, wanted: str, theme: Theme) -> Iterator[Row]:
    """Yield the rows of kinds whose name or family holds all words wanted, under the names of their families."""
    words = wanted.lower().split()
    kinds = {**shelf.kinds, **plan.kinds}
    for family in dict.fromkeys(kind.family for kind in kinds.values()):
        members = [kind for kind in kinds.values() if kind.family == family and _matches(kind, words)]
        if members:
            yield Row(("family", family), family, heading=True)
        for kind in members:
            yield Row(
                kind.id, kind.name, size_words(kind, plan.job.units), picture=component_ready(kind, "", 0.0, theme)
            )


def _matches(kind: ComponentKind, words: list[str]) -> bool:
    text = f"{kind.name} {kind.family} {kind.prefix}".lower()
    return all(word in text for word in words)


def size_words(kind: ComponentKind, units: Units) -> str:
    """Return a kind's width, height and depth, and its mass where it was weighed."""
    sizes = (kind.box.width, kind.box.height, kind.depth)
    shown = [inches_text(each, 16) if units == "inch" else tidy_number(each) for each in sizes]
    size = f"{' x '.join(shown)} {'in' if units == 'inch' else 'mm'}"
    return f"{size}, {tidy_number(kind.mass)} kg" if kind.mass is not None else size


class ShelfList(RowList):
    """The list of kinds; one that is drawn out with the mouse is carried over the canvas."""

    carried = Signal(str, QPoint)
    """A kind is held over a place of the screen."""
    dropped = Signal(str, QPoint)

    def __init__(self, name: str, theme: Theme) -> None:
        super().__init__(name, theme)
        self._pressed_at: QPoint | None = None
        self._carrying = ""

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        super().mousePressEvent(event)
        self._pressed_at = event.position().toPoint() if event.button() == Qt.MouseButton.LeftButton else None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        if self._pressed_at is not None and not self._carrying and isinstance(self.key, str):
            far = (event.position().toPoint() - self._pressed_at).manhattanLength()
            if far >= QApplication.startDragDistance():
                self._carrying = self.key
                self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
        if self._carrying:
            self.carried.emit(self._carrying, event.globalPosition().toPoint())
            return
        super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        kind, self._carrying, self._pressed_at = self._carrying, "", None
        if kind:
            self.viewport().unsetCursor()
            self.dropped.emit(kind, event.globalPosition().toPoint())
            return
        super().mouseReleaseEvent(event)


class SearchEdit(QLineEdit):
    """A field to search with; down goes on to what was found, Escape empties it."""

    left = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        if event.key() in {Qt.Key.Key_Down, Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.left.emit()
        elif event.key() == Qt.Key.Key_Escape and self.text():
            self.clear()
        else:
            super().keyPressEvent(event)


class ShelfPanel(QWidget):
    """Search and list; says which kind is taken in hand, carried, dropped, or asked for by Enter."""

    taken = Signal(object)
    asked = Signal(object)
    carried = Signal(object, QPoint)
    dropped = Signal(object, QPoint)

    def __init__(self, desk: Desk) -> None:  # noqa: PLR0915 - a form is one list of statements
        super().__init__()
        self._desk = desk
        self.search = SearchEdit()
        self.search.setPlaceholderText(tr("Search the shelf"))
        self.search.setAccessibleName(tr("Search the shelf"))
        self.search.setClearButtonEnabled(True)
        self.list = ShelfList(tr("Shelf"), desk.themes.theme)
        self._nothing = QLabel(tr("Nothing on the shelf is called that."))
        self._nothing.setProperty("part", "quiet")
        self._how = QLabel(tr("Click and then click on the board, drag it there, or press Enter."))
        self._how.setProperty("part", "small")
        self._how.setWordWrap(True)
        self.own = OwnKinds(desk, self)
        self.mine = QPushButton(tr("My own kinds"))
        self._menu = QMenu(self.mine)
        self._menu.aboutToShow.connect(self._fill_menu)
        self.mine.setMenu(self._menu)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(8)
        for part in (self.search, self._nothing, self.list, self._how, self.mine):
            column.addWidget(part, 1 if part is self.list else 0)
        self.search.textChanged.connect(self.refresh)
        self.search.left.connect(self._to_list)
        self.list.clicked.connect(self._clicked)
        self.list.acted.connect(self._acted)
        self.list.carried.connect(self._carried)
        self.list.dropped.connect(self._dropped)
        desk.signals.plan_changed.connect(self.refresh)
        desk.themes.changed.connect(self.refresh)
        desk.shelf_changed.connect(self.refresh)
        self.refresh()

    def _fill_menu(self) -> None:
        self._menu.clear()
        key = self.list.key
        self.own.fill(self._menu, self.kind(key) if isinstance(key, str) else None)

    def kind(self, kind_id: str) -> ComponentKind:
        """Return a kind; the job's own wins over the shelf's."""
        return self._desk.plan.kinds.get(kind_id) or self._desk.shelf.kinds[kind_id]

    def refresh(self) -> None:
        """Show the kinds that are wanted."""
        rows = tuple(
            kind_rows(self._desk.shelf, self._desk.session.committed_plan, self.search.text(), self._desk.themes.theme)
        )
        self.list.show_rows(rows)
        self._nothing.setVisible(not rows)

    def _to_list(self) -> None:
        self.list.setFocus(Qt.FocusReason.TabFocusReason)
        if self.list.key is None and len(self.list.rows) > 1:
            self.list.pick(self.list.rows[1].key)

    def _clicked(self) -> None:
        if isinstance(self.list.key, str):
            self.taken.emit(self.kind(self.list.key))

    def _acted(self, kind_id: str) -> None:
        self.asked.emit(self.kind(kind_id))

    def _carried(self, kind_id: str, at: QPoint) -> None:
        self.carried.emit(self.kind(kind_id), at)

    def _dropped(self, kind_id: str, at: QPoint) -> None:
        self.dropped.emit(self.kind(kind_id), at)
