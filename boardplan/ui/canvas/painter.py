"""Painter: pictures in millimetres made ready for QPainter once, then drawn as often as need be.

The view flips y upwards; texts are turned back here. Text is drawn as outlines, so that it measures on
screen as it does on paper, at every zoom.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPainterPath, QPen, QRegion, QTransform

from boardplan.drawing.palette import Theme, colour
from boardplan.drawing.picture import Area, Disc, Line, Mark, Picture, Strand, Words
from boardplan.geometry.bends import Bend
from boardplan.geometry.point import Point, box_around
from boardplan.ui.theme import font

LEAST_TEXT = 5.0
"""Capitals lower than this many px are left out: nobody could read them."""
LEAST_MARK = 1.2
"""Marks whose larger side is less than this many px are left out; of many alike, that of one of them."""
LEAST_DETAIL, LEAST_SHEEN = 0.3, 1.6
"""A rim that shows less wide than so many px is left out, and a sheen or shadow less wide than so many."""
_TEXT_SIZE = 100
_BY_EACH_OTHER = 100.0
"""mm across what is drawn or left out together."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """One thing to draw: its path, pen and brush; left out where `size` (mm) is less than `least` px.

    Pen and brush have its opacity in their colours; none where it isn't stroked or filled.
    """

    path: QPainterPath
    pen: QPen | None
    brush: QBrush | None
    opacity: float
    size: float
    least: float
    box: QRectF

    @property
    def half(self) -> float:
        """Half the width of its pen, in mm."""
        return 0.0 if self.pen is None else self.pen.widthF() / 2


@dataclass(frozen=True, slots=True)
class Group:
    """Strokes that follow each other and lie by each other, and the box round them in whole mm."""

    strokes: tuple[Stroke, ...]
    box: QRect


@dataclass(frozen=True, slots=True)
class Ready:
    """A picture made ready, the box round it in mm, and its strokes in groups: fewer boxes to look at."""

    strokes: tuple[Stroke, ...]
    box: QRectF
    groups: tuple[Group, ...] = field(init=False)

    def __post_init__(self) -> None:  # noqa: D105
        object.__setattr__(self, "groups", tuple(_grouped(self.strokes)))


def made_ready(picture: Picture, theme: Theme) -> Ready:
    """Return a picture as paths, pens and brushes."""
    strokes = tuple(_stroke(mark, theme) for mark in picture)
    box = QRectF()
    for stroke in strokes:
        box = box.united(stroke.box)
    return Ready(strokes, box)


def paint(painter: QPainter, ready: Ready, scale: float, exposed: QRegion | None = None) -> None:
    """Draw what can be seen at a scale of so many px to the mm, and lies in what is to be drawn again."""
    for group in ready.groups:
        if exposed is not None and not exposed.intersects(group.box):
            continue
        for stroke in group.strokes:
            if stroke.size * scale < stroke.least:
                continue
            if stroke.brush is not None:
                painter.fillPath(stroke.path, stroke.brush)
            if stroke.pen is not None:
                painter.strokePath(stroke.path, stroke.pen)


def _grouped(strokes: Sequence[Stroke]) -> Iterator[Group]:
    """Yield strokes in their order, small ones by each other as one group."""
    held: list[Stroke] = []
    around = QRectF()
    for stroke in strokes:
        wider = around.united(stroke.box)
        if held and max(wider.width(), wider.height()) > _BY_EACH_OTHER:
            yield Group(tuple(held), around.toAlignedRect())
            held, wider = [], stroke.box
        held.append(stroke)
        around = wider
    if held:
        yield Group(tuple(held), around.toAlignedRect())


def _stroke(mark: Mark, theme: Theme) -> Stroke:
    if isinstance(mark, Line):
        path = _polygon(mark.points, closed=mark.closed)
        return _made(path, _pen(mark.ink, mark.width, theme, mark.dashes), None)
    if isinstance(mark, Area):
        return _area(mark, theme)
    if isinstance(mark, Disc):
        path = QPainterPath()
        path.addEllipse(QPointF(*mark.centre), mark.radius, mark.radius)
        return _made(path, _pen(mark.edge, mark.edge_width, theme, mark.dashes), _brush(mark.fill, theme))
    if isinstance(mark, Strand):
        cap = Qt.PenCapStyle.RoundCap if mark.round_ends else Qt.PenCapStyle.FlatCap
        pen = _pen(mark.ink, mark.width, theme, mark.dashes, cap)
        made = _made(strand_path(mark), pen, None, mark.opacity)
        if mark.detail:
            return replace(made, size=mark.detail, least=LEAST_DETAIL)
        return replace(made, size=mark.width, least=LEAST_SHEEN) if mark.opacity < 1 else made
    return replace(_made(words_path(mark), None, _brush(mark.ink, theme)), size=mark.height, least=LEAST_TEXT)


def _area(mark: Area, theme: Theme) -> Stroke:
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for ring in mark.rings:
        path.addPath(_rounded_ring(ring, mark.corner_radius) if mark.corner_radius else _polygon(ring, closed=True))
    made = _made(path, _pen(mark.edge, mark.edge_width, theme), _brush(mark.fill, theme), mark.opacity)
    return replace(made, size=max(map(_larger_side, mark.rings))) if len(mark.rings) > 1 else made


def _larger_side(ring: Sequence[Point]) -> float:
    box = box_around(ring)
    return max(box.width, box.height)


def _made(path: QPainterPath, pen: QPen | None, brush: QBrush | None, opacity: float = 1.0) -> Stroke:
    if pen is not None:
        pen.setColor(_seen_through(pen.color(), opacity))
    if brush is not None:
        brush.setColor(_seen_through(brush.color(), opacity))
    box = path.boundingRect()
    rim = max(0.5, 0.0 if pen is None else pen.widthF() / 2)
    size = max(box.width(), box.height())
    return Stroke(path, pen, brush, opacity, size, LEAST_MARK, box.adjusted(-rim, -rim, rim, rim))


def _seen_through(ink: QColor, opacity: float) -> QColor:
    ink.setAlphaF(ink.alphaF() * opacity)
    return ink


def _pen(
    ink: str | None,
    width: float,
    theme: Theme,
    dashes: Sequence[float] = (),
    cap: Qt.PenCapStyle = Qt.PenCapStyle.RoundCap,
) -> QPen | None:
    if ink is None:
        return None
    pen = QPen(QColor(colour(ink, theme)), width)
    pen.setCosmetic(width == 0)
    pen.setCapStyle(cap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    if dashes:
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setDashPattern([each / (width or 1.0) for each in dashes])
    return pen


def _brush(ink: str | None, theme: Theme) -> QBrush | None:
    return None if ink is None else QBrush(QColor(colour(ink, theme)))


def _polygon(points: Sequence[Point], *, closed: bool) -> QPainterPath:
    path = QPainterPath()
    if not points:
        return path
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.closeSubpath()
    return path


def _rounded_ring(ring: Sequence[Point], radius: float) -> QPainterPath:
    """Return a ring whose corners are rounded by as much as its sides hold."""
    path = QPainterPath()
    count = len(ring)
    for index, corner in enumerate(ring):
        before, after = ring[index - 1], ring[(index + 1) % count]
        into, out = corner.distance_to(before), corner.distance_to(after)
        cut = min(radius, into / 2, out / 2)
        start = _towards(corner, before, cut / into if into else 0.0)
        end = _towards(corner, after, cut / out if out else 0.0)
        if index:
            path.lineTo(*start)
        else:
            path.moveTo(*start)
        near_start, near_end = _towards(start, corner, 0.5523), _towards(end, corner, 0.5523)
        path.cubicTo(QPointF(*near_start), QPointF(*near_end), QPointF(*end))
    path.closeSubpath()
    return path


def _towards(start: Point, end: Point, share: float) -> Point:
    return Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)


def strand_path(strand: Strand) -> QPainterPath:
    """Return the centre line of a strand."""
    path = QPainterPath()
    for index, piece in enumerate(strand.pieces):
        if index == 0:
            path.moveTo(*piece.start)
        if isinstance(piece, Bend):
            radius, centre = piece.radius, piece.centre
            start = math.degrees(math.atan2(piece.start.y - centre.y, piece.start.x - centre.x))
            around = QRectF(centre.x - radius, centre.y - radius, 2 * radius, 2 * radius)
            path.arcTo(around, -start, -piece.turn)
        else:
            path.lineTo(*piece.end)
    return path


@lru_cache(maxsize=4096)
def _outlines(text: str, bold: bool) -> tuple[QPainterPath, float, float]:  # noqa: FBT001 - a key of the cache
    """Return a text's outlines about its origin, its advance and its capitals' height, y down."""
    drawn = font(_TEXT_SIZE, bold=bold)
    metrics = QFontMetricsF(drawn)
    path = QPainterPath()
    path.addText(QPointF(0, 0), drawn, text)
    return path, metrics.horizontalAdvance(text), metrics.capHeight()


def words_path(words: Words) -> QPainterPath:
    """Return the outlines of words where they stand, y up."""
    path, advance, capitals = _outlines(words.text, words.bold)
    size = words.height / capitals
    shift = {"start": 0.0, "middle": -advance / 2, "end": -advance}[words.anchor]
    transform = QTransform()
    transform.translate(words.at.x, words.at.y)
    transform.rotate(words.turn)
    transform.scale(size, -size)
    transform.translate(shift, capitals / 2 if words.centred else 0.0)
    return transform.map(path)
