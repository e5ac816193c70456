"""Over item: what is drawn over the board; when it changes, only the boxes it covered and covers are drawn again.

The box round a few crossing lines holds half the board, and Qt would draw all of that again.
"""

from collections.abc import Iterable

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QGraphicsItem

_ANYWHERE = QRectF(-1e6, -1e6, 2e6, 2e6)
"""mm; a box that never changes costs nothing, and one that did would be drawn again whole."""


class OverItem(QGraphicsItem):
    """An item that nobody can pick; it says which boxes of the wall it covers."""

    def __init__(self, depth: float) -> None:
        super().__init__()
        self._covered: tuple[QRectF, ...] = ()
        self.setZValue(depth)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def cover(self, boxes: Iterable[QRectF]) -> None:
        """Cover other boxes than before, and have both drawn again."""
        before, self._covered = self._covered, tuple(boxes)
        self.cover_again((*before, *self._covered))

    def cover_again(self, boxes: Iterable[QRectF]) -> None:
        """Have some of what is covered drawn again."""
        scene = self.scene()
        if scene is not None:
            for box in boxes:
                scene.update(box)

    def px(self, count: float) -> float:
        """Return how many mm so many px are at the scale of the scene."""
        scale: float = getattr(self.scene(), "scale", 0.0)
        return count / scale if scale else count

    def boundingRect(self) -> QRectF:  # noqa: D102
        return _ANYWHERE

    def shape(self) -> QPainterPath:  # noqa: D102
        return QPainterPath()
