"""Room item: where the middle of the piece in hand may lie - tinted, hatched and framed - and that middle itself."""

from collections.abc import Iterable, Iterator

import shapely
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QPixmap, QRegion, QTransform
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from boardplan.drawing.palette import Theme, colour
from boardplan.geometry.point import Point
from boardplan.ui.canvas.over_item import OverItem

_TINT, _LINES = 0.16, 0.65
_SPACING = 11
"""px from line to line of the hatching; it leans to the left, that of keep-clear room to the right."""
_RING, _ARM = 6.0, 11.0
"""px from the middle of the piece to the ring about it, and to the ends of its cross."""
_AROUND = 16.0
"""px about the middle that its mark never reaches out of."""


class RoomItem(OverItem):
    """Draws one room, part by part, so that little is drawn where little is to be seen anew."""

    def __init__(self, depth: float) -> None:
        super().__init__(depth)
        self.room: BaseGeometry | None = None
        self._parts: tuple[tuple[QRectF, QPainterPath], ...] = ()
        self._theme: Theme = "light"
        self._hatching = QPixmap()

    def holds(self, at: Point) -> bool:
        """Say whether a place lies in the room that is shown."""
        return self.room is not None and bool(self.room.covers(shapely.Point(at)))

    def cover_again(self, boxes: Iterable[QRectF]) -> None:
        """Have what is covered drawn again in several slots: a room may reach over all of a crowded board."""
        redraw = getattr(self.scene(), "redraw", None)
        if redraw is not None:
            redraw(box.toAlignedRect() for box in boxes)

    def show_room(self, room: BaseGeometry | None, theme: Theme) -> None:
        """Show another room, or none."""
        if room is self.room and theme == self._theme:
            return
        self.room, self._theme = room, theme
        self._hatching = _hatching(QColor(colour("room", theme)))
        if room is not None:
            shapely.prepare(room)
        self._parts = tuple((each.boundingRect(), each) for each in _paths(room))
        rim = self.px(2)
        self.cover(box.adjusted(-rim, -rim, rim, rim) for box, _ in self._parts)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        exposed: QRegion | None = getattr(self.scene(), "exposed", None)
        around = None if exposed is None else QRectF(exposed.boundingRect()).adjusted(-2, -2, 2, 2)
        ink = QColor(colour("room", self._theme))
        pens = [QPen(QColor(colour("panel", self._theme)), 3.5), QPen(ink, 1.5)]  # seen on cloth and bare wood alike
        for pen in pens:
            pen.setCosmetic(True)
        hatching = QBrush(self._hatching)
        hatching.setTransform(QTransform(painter.worldTransform()).inverted()[0])  # else it would grow with the zoom
        ink.setAlphaF(_TINT)
        for box, path in self._parts:
            if around is None or around.intersects(box):
                painter.fillPath(path, ink)
                painter.fillPath(path, hatching)
                for pen in pens:
                    painter.strokePath(path, pen)


class MiddleItem(OverItem):
    """Draws a cross at the middle of the piece in hand, with a ring round it where it lies in the room."""

    def __init__(self, depth: float) -> None:
        super().__init__(depth)
        self.at: Point | None = None
        self.fits = False
        self._theme: Theme = "light"

    def show_middle(self, at: Point | None, theme: Theme, *, fits: bool = False) -> None:
        """Show where the middle of a piece lies now, or no piece."""
        if (at, fits, theme) != (self.at, self.fits, self._theme):
            self.at, self.fits, self._theme = at, fits, theme
            half = self.px(_AROUND)
            self.cover(() if at is None else (QRectF(at.x - half, at.y - half, 2 * half, 2 * half),))

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        if self.at is None:
            return
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        painter.translate(QPointF(*self.at))
        painter.scale(1 / scale, -1 / scale)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for ink, width in (("panel", 4.5), ("room", 2.0)):
            painter.setPen(QPen(QColor(colour(ink, self._theme)), width))
            painter.drawLine(QPointF(-_ARM, 0), QPointF(_ARM, 0))
            painter.drawLine(QPointF(0, -_ARM), QPointF(0, _ARM))
            if self.fits:
                painter.drawEllipse(QPointF(0, 0), _RING, _RING)


def _paths(room: BaseGeometry | None) -> Iterator[QPainterPath]:
    """Yield the outline of each part of a room, with its holes."""
    for part in () if room is None else shapely.get_parts(room):
        if isinstance(part, Polygon) and not part.is_empty:
            path = QPainterPath()
            for ring in (part.exterior, *part.interiors):
                path.moveTo(*ring.coords[0])
                for corner in ring.coords[1:]:
                    path.lineTo(*corner)
                path.closeSubpath()
            yield path


def _hatching(ink: QColor) -> QPixmap:
    """Return a square of lines that lean to the left, to be repeated."""
    square = QPixmap(_SPACING, _SPACING)
    square.fill(Qt.GlobalColor.transparent)
    ink.setAlphaF(_LINES)
    painter = QPainter(square)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(ink, 1.0))
    for shift in (-_SPACING, 0, _SPACING):
        painter.drawLine(QPointF(shift - 1, -1), QPointF(shift + _SPACING + 1, _SPACING + 1))
    painter.end()
    return square
