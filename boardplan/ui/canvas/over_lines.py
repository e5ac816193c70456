"""Over lines: lines drawn over the board - what is selected, guides, frames - and gaps as a tape would show them."""

from collections.abc import Iterable, Iterator

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.geometry.point import Point
from boardplan.ui.canvas.over_item import OverItem
from boardplan.ui.theme import SMALL, font

_GAP_WIDE, _GAP_HIGH = 120.0, 16.0
"""Room for the plate of a gap, in px."""


class LineItem(OverItem):
    """A path drawn over the board in one ink, its width in px."""

    def __init__(self, depth: float, ink: str, width: float = 2.0, fill: float = 0.0) -> None:
        super().__init__(depth)
        self.path = QPainterPath()
        self._ink, self._width, self._fill = ink, width, fill
        self._theme: Theme = "light"
        self._dashes: list[float] = []

    def show_path(self, path: QPainterPath, theme: Theme, *, dashes: tuple[float, ...] = ()) -> None:
        """Draw another path; the same one again costs nothing."""
        if path == self.path and theme == self._theme:
            return
        self.path, self._theme, self._dashes = path, theme, list(dashes)
        rim = self.px(self._width + 2)
        self.cover(() if path.isEmpty() else (path.boundingRect().adjusted(-rim, -rim, rim, rim),))

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: D102, ARG002
        if self.path.isEmpty():
            return
        ink = QColor(colour(self._ink, self._theme))
        pen = QPen(ink, self._width)
        pen.setCosmetic(True)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if self._dashes:
            pen.setDashPattern(self._dashes)
        painter.setPen(pen)
        if self._fill:
            ink.setAlphaF(self._fill)
            painter.setBrush(ink)
        painter.drawPath(self.path)


class GapsItem(OverItem):
    """Lines with their lengths between what is carried and its neighbours, as a tape held in between."""

    def __init__(self, depth: float) -> None:
        super().__init__(depth)
        self._lines: tuple[tuple[Point, Point, str], ...] = ()
        self._theme: Theme = "light"

    def show_lines(self, lines: Iterable[tuple[Point, Point, str]], theme: Theme) -> None:
        """Show other gaps, or none."""
        new = tuple(lines)
        if new == self._lines and theme == self._theme:
            return
        self._lines, self._theme = new, theme
        self.cover(self._boxes())

    def _boxes(self) -> Iterator[QRectF]:
        """Yield the box along each line, and that of the plate on its middle."""
        wide, high, rim = self.px(_GAP_WIDE / 2), self.px(_GAP_HIGH / 2 + 1), self.px(2)
        for start, end, _ in self._lines:
            line = QRectF(QPointF(*start), QPointF(*end)).normalized()
            middle = line.center()
            yield line.adjusted(-rim, -rim, rim, rim)
            yield QRectF(middle.x() - wide, middle.y() - high, 2 * wide, 2 * high)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        accent, ground = QColor(colour("accent", self._theme)), QColor(colour("panel", self._theme))
        pen = QPen(accent, 1)
        pen.setCosmetic(True)
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        painter.setFont(font(SMALL))
        for start, end, text in self._lines:
            painter.setPen(pen)
            painter.drawLine(QPointF(*start), QPointF(*end))
            width = painter.fontMetrics().horizontalAdvance(text) + 8
            level = start.y == end.y
            if start.distance_to(end) * scale < (width + 4 if level else 20):
                continue
            painter.save()
            painter.translate((start.x + end.x) / 2, (start.y + end.y) / 2)
            painter.scale(1 / scale, -1 / scale)
            plate = QRectF(-width / 2, -_GAP_HIGH / 2, width, _GAP_HIGH)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(ground)
            painter.drawRoundedRect(plate, 4, 4)
            painter.setPen(accent)
            painter.drawText(plate, int(Qt.AlignmentFlag.AlignCenter), text)
            painter.restore()
