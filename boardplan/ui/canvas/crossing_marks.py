"""Crossing marks: where cables cross - a quiet ring where they do so squarely, a diamond with a cross where not."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.geometry.point import Point
from boardplan.routing.together.crossings import Crossing
from boardplan.ui.words import tr

_RING, _DIAMOND = 4.0, 8.0
LEAST_SCALE = 0.45
"""px to the mm below which quiet rings would only hide the cables."""


def crossing_words(crossing: Crossing) -> str:
    """Return a crossing in words."""
    one, other = crossing.cables
    if crossing.square:
        return tr("{} and {} cross squarely here.").format(one, other)
    return tr("{} and {} cross askew here; across each other at a right angle they would not lie along.").format(
        one, other
    )


class CrossingMarks(QGraphicsItem):
    """Draws marks of one size at every zoom."""

    def __init__(self, depth: float) -> None:
        super().__init__()
        self.crossings: tuple[Crossing, ...] = ()
        self._theme: Theme = "light"
        self._box = QRectF()
        self.setZValue(depth)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def show_crossings(self, crossings: Sequence[Crossing], theme: Theme) -> None:
        """Show other crossings, or none."""
        if tuple(crossings) == self.crossings and theme == self._theme:
            return
        self.prepareGeometryChange()
        self.crossings, self._theme = tuple(crossings), theme
        box = QRectF()
        for each in self.crossings:
            box = box.united(QRectF(each.at.x - 40, each.at.y - 40, 80, 80))
        self._box = box

    def crossing_at(self, at: Point, scale: float) -> Crossing | None:
        """Return the crossing whose mark lies at a place on the wall."""
        near = [each for each in self.crossings if each.at.distance_to(at) * scale <= _DIAMOND]
        return min(near, key=lambda each: (each.square, each.at.distance_to(at)), default=None)

    def boundingRect(self) -> QRectF:  # noqa: D102
        return self._box

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        for each in self.crossings:
            if each.square and scale < LEAST_SCALE:
                continue
            painter.save()
            painter.translate(QPointF(*each.at))
            painter.scale(1 / scale, -1 / scale)
            self._paint_square(painter) if each.square else self._paint_askew(painter)
            painter.restore()

    def _paint_square(self, painter: QPainter) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for ink, width in (("panel", 2.6), ("quiet", 1.2)):
            painter.setPen(QPen(QColor(colour(ink, self._theme)), width))
            painter.drawEllipse(QPointF(0, 0), _RING, _RING)

    def _paint_askew(self, painter: QPainter) -> None:
        reach, arm = _DIAMOND, _DIAMOND * 0.38
        corners = [QPointF(0, -reach), QPointF(reach, 0), QPointF(0, reach), QPointF(-reach, 0)]
        painter.setPen(QPen(QColor(colour("panel", self._theme)), 2))
        painter.setBrush(QColor(colour("note", self._theme)))
        painter.drawPolygon(QPolygonF(corners))
        painter.setPen(QPen(QColor(colour("panel", self._theme)), 1.6))
        painter.drawLine(QPointF(-arm, -arm), QPointF(arm, arm))
        painter.drawLine(QPointF(-arm, arm), QPointF(arm, -arm))
