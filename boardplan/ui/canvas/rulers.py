"""Rulers: along the top and the left edge, in the job's units, from the lower left of the board in hand.

What is selected throws its extent on them, as a carpenter would scribe it: a band with its two edges.
"""

from typing import Literal

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.geometry.point import Point
from boardplan.geometry.units import INCH, inches_text, tidy_number
from boardplan.model.job import Units
from boardplan.ui.theme import SMALL, font

BREADTH = 24
_LEAST_LABEL_GAP = 64
_MM_STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
_INCH_STEPS = tuple(INCH * each for each in (1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 6, 12, 24, 48, 96))


def ruler_steps(scale: float, units: Units) -> tuple[float, float]:
    """Return the distance of figures and of small ticks in mm, for a scale of so many px to the mm."""
    steps = _INCH_STEPS if units == "inch" else _MM_STEPS
    large = next((step for step in steps if step * scale >= _LEAST_LABEL_GAP), steps[-1])
    small = next((step for step in steps if step * scale >= 6 and _divides(step, large)), large)  # noqa: PLR2004
    return large, small


def _divides(small: float, large: float) -> bool:
    return abs(large / small - round(large / small)) < 1e-6  # noqa: PLR2004


def figure(value: float, units: Units) -> str:
    """Return a figure of a ruler, without its unit."""
    return inches_text(value, 16) if units == "inch" else tidy_number(value, 0)


class Ruler(QWidget):
    """One ruler; the view tells it where it stands."""

    def __init__(self, along: Literal["x", "y"], theme: Theme) -> None:
        super().__init__()
        self._along = along
        self.theme: Theme = theme
        self.units: Units = "mm"
        self._scale, self._start, self._origin = 1.0, 0.0, 0.0
        self._pointer: float | None = None
        self._band: tuple[float, float] | None = None
        self.setFont(font(SMALL))
        self.setAccessibleName("")
        if along == "x":
            self.setFixedHeight(BREADTH)
        else:
            self.setFixedWidth(BREADTH)

    def stand(self, scale: float, start: float, origin: float) -> None:
        """Take the scale, the wall coordinate at the ruler's beginning, and the one that counts as nought."""
        self._scale, self._start, self._origin = scale, start, origin
        self.update()

    def point(self, at: Point | None) -> None:
        """Mark where the pointer is."""
        self._pointer = None if at is None else (at.x if self._along == "x" else at.y)
        self.update()

    def scribe(self, band: tuple[float, float] | None) -> None:
        """Show the extent of what is selected, in wall coordinates."""
        self._band = band
        self.update()

    def sizeHint(self) -> QSize:  # noqa: D102
        return QSize(BREADTH, BREADTH)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: D102, ARG002
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(colour("ground", self.theme)))
        self._paint_band(painter)
        self._paint_ticks(painter)
        self._paint_pointer(painter)
        painter.end()

    def _at(self, wall: float) -> float:
        """Return where a wall coordinate lies along the ruler, in px from its left or top."""
        return (wall - self._start) * self._scale if self._along == "x" else (self._start - wall) * self._scale

    def _length(self) -> int:
        return self.width() if self._along == "x" else self.height()

    def _paint_ticks(self, painter: QPainter) -> None:
        large, small = ruler_steps(self._scale, self.units)
        ends = sorted((self._start, self._start + self._length() / self._scale * (1 if self._along == "x" else -1)))
        first, last = (int((end - self._origin) // small) for end in ends)
        quiet, line = QColor(colour("quiet", self.theme)), QColor(colour("channel-line", self.theme))
        every = max(1, round(large / small))
        for step in range(first, last + 2):
            value = step * small
            at = round(self._at(value + self._origin)) + 0.5
            named = step % every == 0
            painter.setPen(QPen(quiet if named else line, 1))
            size = 9 if named else (6 if every % 2 == 0 and step % (every // 2) == 0 else 4)
            self._tick(painter, at, size)
            text = figure(value, self.units)
            if named and not self._hidden_by_band(painter, at, text):
                painter.setPen(quiet)
                self._figure(painter, at, text)

    def _hidden_by_band(self, painter: QPainter, at: float, text: str) -> bool:
        """Say whether a figure would stand where the edges of what is selected have theirs."""
        if self._band is None:
            return False
        widths = [painter.fontMetrics().horizontalAdvance(each) + 8 for each in (text, *self._band_figures())]
        up = self._along == "y"
        mine = (at - widths[0], at) if up else (at, at + widths[0])
        low, high = (self._at(edge) for edge in self._band)
        taken = (
            ((low, low + widths[1]), (high - widths[2], high))
            if up
            else ((low - widths[1], low), (high, high + widths[2]))
        )
        on_edge = any(abs(at - edge) < 2 for edge in (low, high))  # noqa: PLR2004 - px
        return on_edge or any(mine[0] < end and start < mine[1] for start, end in taken)

    def _band_figures(self) -> tuple[str, str]:
        low, high = self._band or (0.0, 0.0)
        return figure(low - self._origin, self.units), figure(high - self._origin, self.units)

    def _tick(self, painter: QPainter, at: float, size: int) -> None:
        if self._along == "x":
            painter.drawLine(QPointF(at, BREADTH - size), QPointF(at, BREADTH))
        else:
            painter.drawLine(QPointF(BREADTH - size, at), QPointF(BREADTH, at))

    def _figure(self, painter: QPainter, at: float, text: str, *, before: bool = False) -> None:
        box = QRectF(-76, 1, 72, 13) if before else QRectF(4, 1, 72, 13)
        side = Qt.AlignmentFlag.AlignRight if before else Qt.AlignmentFlag.AlignLeft
        painter.save()
        if self._along == "x":
            painter.translate(at, 0)
        else:
            painter.translate(0, at)
            painter.rotate(-90)
        painter.drawText(box, side | Qt.AlignmentFlag.AlignVCenter, text)
        painter.restore()

    def _paint_band(self, painter: QPainter) -> None:
        if self._band is None:
            return
        accent = QColor(colour("accent", self.theme))
        edges = sorted(self._at(edge) for edge in self._band)
        wash = QColor(accent)
        wash.setAlphaF(0.16)
        if self._along == "x":
            painter.fillRect(QRectF(edges[0], 0, edges[1] - edges[0], BREADTH), wash)
        else:
            painter.fillRect(QRectF(0, edges[0], BREADTH, edges[1] - edges[0]), wash)
        painter.setPen(QPen(accent, 1))
        for wall, outer in self._outer_sides():
            at = round(self._at(wall)) + 0.5
            self._tick(painter, at, BREADTH)
            self._figure(painter, at, figure(wall - self._origin, self.units), before=outer)

    def _outer_sides(self) -> tuple[tuple[float, bool], tuple[float, bool]]:
        """Return both edges of the band, and whether the figure stands before the edge."""
        low, high = self._band or (0.0, 0.0)
        return (low, True), (high, False)

    def _paint_pointer(self, painter: QPainter) -> None:
        if self._pointer is None:
            return
        at, tip, back = self._at(self._pointer), BREADTH - 1, BREADTH - 8
        corners = ((at, tip), (at - 4, back), (at + 4, back))
        points = corners if self._along == "x" else tuple((y, x) for x, y in corners)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colour("accent", self.theme)))
        painter.drawPolygon(QPolygonF([QPointF(*each) for each in points]))
