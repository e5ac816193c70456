"""Items: one thin item for a thing's picture."""

from collections.abc import Callable, Iterable
from functools import cache

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPainterPath, QPainterPathStroker, QPen, QRegion
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.drawing.picture import Strand
from boardplan.geometry.point import Box, Point
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.ui.canvas.painter import LEAST_TEXT, Ready, Stroke, paint, strand_path
from boardplan.ui.canvas.plates import HEIGHT, Plate
from boardplan.ui.canvas.sights import Sight, Source
from boardplan.ui.canvas.strip import boxes_of, strip_of
from boardplan.ui.theme import SMALL, font

_GRASP = 4.0
"""How far beside a cable it can still be caught, in mm at least."""


_LEGIBLE = 6.5
"""Capitals of so many px can be read."""
_PLATE = 24.0
"""How far a reference may stand out over its component, in mm."""
_STRETCH = 150.0
"""mm a cable's picture may grow by before the box kept for it is made larger."""
_RICH = frozenset({"component", "board", "framing", "channel"})


@cache
def _plate_width(text: str) -> float:
    return QFontMetrics(font(SMALL, bold=True)).horizontalAdvance(text) + 8.0


class ThingItem(QGraphicsItem):
    """A thing's picture where it lies; it holds no truth, only what it was last given."""

    def __init__(self, thing_id: str, sight: Sight) -> None:
        super().__init__()
        self.thing_id = thing_id
        self.sight = sight
        self.source: Source = ()
        self._ready = Ready((), QRectF())
        self._held = QRectF()
        self._strip: QRegion | None = None
        self._shape: QPainterPath | None = None
        self.plate_shift: Point | None = Point(0.0, 0.0)
        self.setZValue(sight.depth)
        self.keep_drawn(kept=True)

    def keep_drawn(self, *, kept: bool) -> None:
        """Keep the drawn picture of a rich thing, so that a redraw copies it; at large scales it is too big."""
        cached = kept and self.sight.name in _RICH
        mode = QGraphicsItem.CacheMode.DeviceCoordinateCache if cached else QGraphicsItem.CacheMode.NoCache
        self.setCacheMode(mode)

    def show_source(self, plan: Plan, source: Source, theme: Theme) -> None:
        """Take what the picture is made from, and move or redraw as little as need be."""
        self.show_ready(source, self.sight.ready(plan, source, theme))

    def show_ready(self, source: Source, ready: Ready) -> None:
        """Take a picture that is made already, and what it was made from."""
        self.source = source
        if ready is not self._ready:
            self._take(ready)
        if self.sight.name.startswith("cable"):
            self.setZValue(self.sight.depth - source[1].outside_diameter / 1000)
        x, y, turn = self.sight.pose(source)
        if self.pos() != QPointF(x, y):
            self.setPos(x, y)
        if self.rotation() != turn:
            self.setRotation(turn)

    @property
    def drawn_before(self) -> bool:
        """Whether it has shown a picture: another one may come a little later."""
        return not self._held.isEmpty()

    def show_nothing(self) -> None:
        """Show no picture; the item is kept, for a cable comes and goes while it is looked for."""
        if self.source:
            self.source = ()
            self._take(Ready((), QRectF()))

    def _take(self, ready: Ready) -> None:
        """Take another picture; of a cable only the strips it covered and covers are drawn again."""
        before, strip = self._strip, None
        if self.sight.collection == "cables":
            strip = strip_of(_line_of(self.source), ready)
        if strip is None or not (ready.box.isEmpty() or self._held.contains(ready.box)):
            self.prepareGeometryChange()
            margin = _PLATE if self.sight.name == "component" else 0.0 if strip is None else _STRETCH
            self._held = ready.box.adjusted(-margin, -margin, margin, margin)
        self._ready, self._shape, self._strip = ready, None, strip
        redraw: Callable[[Iterable[QRect]], None] | None = getattr(self.scene(), "redraw", None)
        if strip is None or redraw is None:
            self.update()
            return
        redraw((*boxes_of(before), *boxes_of(strip)))

    def boundingRect(self) -> QRectF:  # noqa: D102
        return self._held

    def shape(self) -> QPainterPath:  # noqa: D102
        if self._shape is None:
            self._shape = self._caught()
        return self._shape

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: D102, ARG002
        exposed = None if self._strip is None else getattr(self.scene(), "exposed", None)
        if exposed is not None and not exposed.intersects(self._strip):
            return
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        plate = self.plate_shift is not None and self.sight.name == "component" and self.plate(scale) is not None
        paint(painter, self._wordless() if plate else self._ready, scale, exposed)
        if plate:
            self._paint_reference(painter, scale)

    def plate(self, scale: float) -> Plate | None:
        """Return the plate of the reference, none where the one on the body can be read or the body is too small."""
        words = self._words()
        if words is None or words.size * scale >= _LEGIBLE:
            return None
        component, kind = self.source[0], self.source[1]
        width = _plate_width(component.label or component.id)
        across = kind.box.height if component.turn % 180 == 90 else kind.box.width  # noqa: PLR2004 - on its side
        if across * scale < width * 0.75:
            return None
        centre = self.mapToScene(words.path.boundingRect().center())
        x, y = centre.x() * scale, centre.y() * scale
        half = HEIGHT / 2
        bounds = self.mapRectToScene(self._ready.box)
        body = Box(bounds.left() * scale, bounds.top() * scale, bounds.right() * scale, bounds.bottom() * scale)
        return Plate(self.thing_id, Box(x - width / 2, y - half, x + width / 2, y + half), body)

    def settle_plate(self, shift: Point | None) -> None:
        """Shift the plate by so many px, y up, or leave it out."""
        if shift != self.plate_shift:
            self.plate_shift = shift
            self.update()

    def _words(self) -> Stroke | None:
        return next((each for each in reversed(self._ready.strokes) if each.least == LEAST_TEXT), None)

    def _wordless(self) -> Ready:
        """Return the picture without the reference on the body, which would only show beside the plate."""
        words = self._words()
        return Ready(tuple(each for each in self._ready.strokes if each is not words), self._ready.box)

    def _paint_reference(self, painter: QPainter, scale: float) -> None:
        """Write the reference at a size that can be read, where the one on the body is too small by now."""
        words, shift = self._words(), self.plate_shift
        if words is None or shift is None:
            return
        component = self.source[0]
        text = component.label or component.id
        width = _plate_width(text)
        painter.setFont(font(SMALL, bold=True))
        painter.save()
        painter.translate(words.path.boundingRect().center())
        painter.rotate(-component.turn)
        painter.scale(1 / scale, -1 / scale)
        painter.translate(shift.x, -shift.y)
        plate = QRectF(-width / 2, -HEIGHT / 2, width, HEIGHT)
        painter.setPen(QPen(QColor(colour("graphite-light", "light")), 1))
        painter.setBrush(QColor(colour("graphite-dark", "light")))
        painter.drawRoundedRect(plate, 4, 4)
        painter.setPen(QColor(colour("bone-light", "light")))
        painter.drawText(plate, int(Qt.AlignmentFlag.AlignCenter), text)
        painter.restore()

    def _caught(self) -> QPainterPath:
        """Return where the thing can be caught: a cable along its line, a component in its outline."""
        path = QPainterPath()
        if self.sight.name.startswith("cable"):
            return route_shape(self.source[2], max(2 * _GRASP, self.source[1].outside_diameter))
        if self.sight.name == "component":
            path.addRect(QRectF(*_left_bottom_width_height(self.source[1].box)))
            return path
        for stroke in self._ready.strokes:
            if stroke.opacity > 0.05:  # noqa: PLR2004 - what can be seen
                path.addRect(stroke.path.boundingRect())
        return path.simplified() if self.sight.name in {"fixing", "exit"} else self._outline(path)

    def _outline(self, path: QPainterPath) -> QPainterPath:
        if self.sight.name in {"channel", "cover"}:
            line = QPainterPath()
            for index, point in enumerate(self.source[0].line):
                line.lineTo(*point) if index else line.moveTo(*point)
            return stroked(line, self.source[0].width)
        return path


def _line_of(source: Source) -> tuple[Point, ...]:
    """Return the corners of the way a cable's picture is made from; clamps have none, they are small."""
    return next((each.points for each in source if isinstance(each, Route)), ())


def _left_bottom_width_height(box: tuple[float, float, float, float]) -> tuple[float, float, float, float]:
    left, bottom, right, top = box
    return left, bottom, right - left, top - bottom


def route_shape(route: Route, width: float) -> QPainterPath:
    """Return the strip along a route; a plain path would also hold the inside of its bends."""
    return stroked(strand_path(Strand(route.pieces, "ink", 1.0)), width)


def stroked(path: QPainterPath, width: float) -> QPainterPath:
    """Return the strip of a width along a path."""
    stroker = QPainterPathStroker()
    stroker.setWidth(width)
    stroker.setCapStyle(Qt.PenCapStyle.FlatCap)
    return stroker.createStroke(path)
