"""Crossing marks: where cables cross - a quiet ring where they do so squarely, a diamond with a cross where not.

A mark is about as wide as the thinner of its cables, and never too small to be seen, so that a crowded board is not
strewn with marks; those of a selected cable are large at every zoom.
"""

from collections.abc import Collection, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF, QRegion
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.geometry.point import Point
from boardplan.routing.together.crossings import Crossing
from boardplan.ui.canvas.over_item import OverItem
from boardplan.ui.words import counted, tr

_RING, _DIAMOND = 4.0, 8.0
"""px from the middle of a mark to its edge, where there is room."""
_ROUND = 40.0  # mm
_LEAST_DIAMOND, _LEAST_CROSSED = 0.4, 0.6
"""The share of that a diamond has at least, and from which on the cross in it can be made out."""


def crossing_words(crossing: Crossing) -> str:
    """Return a crossing in words."""
    one, other = crossing.cables
    if crossing.square:
        return tr("{} and {} cross squarely here.").format(one, other)
    return tr("{} and {} cross askew here; across each other at a right angle they would not lie along.").format(
        one, other
    )


def count_words(crossings: Sequence[Crossing]) -> str:
    """Return how many crossings there are, nothing where there is none that is not square."""
    askew = sum(not each.square for each in crossings)
    return counted("%n crossing is not square|%n crossings are not square", askew) if askew else ""


def _round(crossing: Crossing) -> QRectF:
    """Return the box on the wall that the mark of a crossing never reaches out of."""
    return QRectF(crossing.at.x - _ROUND, crossing.at.y - _ROUND, 2 * _ROUND, 2 * _ROUND)


class CrossingMarks(OverItem):
    """Draws marks as large as their cables let them be."""

    def __init__(self, depth: float) -> None:
        super().__init__(depth)
        self.crossings: tuple[Crossing, ...] = ()
        self._widths: tuple[float, ...] = ()
        self._chosen: frozenset[str] = frozenset()
        self._theme: Theme = "light"

    def show_crossings(self, crossings: Sequence[Crossing], theme: Theme, widths: Sequence[float] = ()) -> None:
        """Show other crossings, or none; `widths` are those of the thinner cable of each, in mm."""
        if tuple(crossings) == self.crossings and theme == self._theme:
            return
        self.crossings, self._theme, self._widths = tuple(crossings), theme, tuple(widths)
        self.cover(_round(each) for each in self.crossings)

    def choose(self, ids: Collection[str]) -> None:
        """Show the marks of these cables large at every zoom."""
        if self._chosen != frozenset(ids):
            before, self._chosen = self._chosen, frozenset(ids)
            self.cover_again(
                _round(each) for each in self.crossings if not (before ^ self._chosen).isdisjoint(each.cables)
            )

    def share_of(self, crossing: Crossing, width: float, scale: float) -> float:
        """Return which share of its full size a mark has at a scale, nought where it isn't drawn."""
        if not self._chosen.isdisjoint(crossing.cables):
            return 1.0
        room = width * scale / 2 / (_RING if crossing.square else _DIAMOND)
        if crossing.square:
            return 1.0 if room >= 1 else 0.0
        return min(1.0, max(room, _LEAST_DIAMOND))

    def crossing_at(self, at: Point, scale: float) -> Crossing | None:
        """Return the crossing whose mark lies at a place on the wall."""
        near = [
            each
            for each, width in zip(self.crossings, self._widths, strict=True)
            if each.at.distance_to(at) * scale <= _DIAMOND and self.share_of(each, width, scale)
        ]
        return min(near, key=lambda each: (each.square, each.at.distance_to(at)), default=None)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        exposed: QRegion | None = getattr(self.scene(), "exposed", None)
        around = None if exposed is None else QRectF(exposed.boundingRect()).adjusted(-_ROUND, -_ROUND, _ROUND, _ROUND)
        for each, width in zip(self.crossings, self._widths, strict=True):
            share = self.share_of(each, width, scale)
            if not share or (around is not None and not around.contains(QPointF(*each.at))):
                continue
            painter.save()
            painter.translate(QPointF(*each.at))
            painter.scale(1 / scale, -1 / scale)
            self._paint_square(painter) if each.square else self._paint_askew(painter, share)
            painter.restore()

    def _paint_square(self, painter: QPainter) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for ink, width in (("panel", 2.6), ("quiet", 1.2)):
            painter.setPen(QPen(QColor(colour(ink, self._theme)), width))
            painter.drawEllipse(QPointF(0, 0), _RING, _RING)

    def _paint_askew(self, painter: QPainter, share: float) -> None:
        reach, arm = _DIAMOND * share, _DIAMOND * share * 0.38
        corners = [QPointF(0, -reach), QPointF(reach, 0), QPointF(0, reach), QPointF(-reach, 0)]
        painter.setPen(QPen(QColor(colour("panel", self._theme)), 2 * share))
        painter.setBrush(QColor(colour("note", self._theme)))
        painter.drawPolygon(QPolygonF(corners))
        if share < _LEAST_CROSSED:
            return
        painter.setPen(QPen(QColor(colour("panel", self._theme)), 1.6 * share))
        painter.drawLine(QPointF(-arm, -arm), QPointF(arm, arm))
        painter.drawLine(QPointF(-arm, arm), QPointF(arm, -arm))
