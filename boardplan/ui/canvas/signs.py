"""Signs: how grave a finding is, as a shape and a colour; on the board, in lists and beside the steps."""

from collections.abc import Container, Mapping
from typing import Literal, TypeAlias

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from boardplan.checks.finding import Finding
from boardplan.drawing.palette import Theme, colour

SIGN_SIZE = 16.0


def sign_path(severity: str, size: float = SIGN_SIZE) -> QPainterPath:
    """Return the sign of a severity about its middle, y down: square for stop, triangle for warn, dot for note."""
    half = size / 2
    path = QPainterPath()
    if severity == "stop":
        path.addRoundedRect(QRectF(-half * 0.86, -half * 0.86, half * 1.72, half * 1.72), 2, 2)
    elif severity == "warn":
        path.moveTo(0, -half * 0.95)
        path.lineTo(half, half * 0.8)
        path.lineTo(-half, half * 0.8)
        path.closeSubpath()
    else:
        path.addEllipse(QPointF(0, 0), half * 0.7, half * 0.7)
    return path


Glyph: TypeAlias = Literal["bend", "leg", "lugs", "crossing", "way", ""]
_GLYPHS: Mapping[str, Glyph] = {
    "crossing": "crossing",
    "crosses": "crossing",
    "lugs": "lugs",
    "lug": "lugs",
    "bend": "bend",
    "corner": "bend",
    "tightly": "bend",
    "bending": "leg",
    "leg": "leg",
    "short": "leg",
    "way": "way",
}
"""What a finding is about, by a word of its name, the first that is found counting."""


def glyph_of(finding: Finding, cables: Container[str]) -> Glyph:
    """Return what a finding about a cable is about; nothing where it is about none."""
    if not any(each in cables for each in finding.things):
        return ""
    words = finding.name.split("-")
    return next((glyph for word, glyph in _GLYPHS.items() if word in words), "")


def glyph_path(glyph: Glyph) -> QPainterPath:
    """Return a glyph about its middle, y down: a tight bend, a short leg, two lugs, a crossing, a way that ends."""
    path = QPainterPath()
    if glyph == "bend":
        path.moveTo(-3, 3)
        path.lineTo(-3, 0)
        path.arcTo(QRectF(-3, -3, 6, 6), 180, -90)
        path.lineTo(3, -3)
    elif glyph == "leg":
        path.moveTo(-3, -2.5)
        path.lineTo(-3, 2.5)
        path.moveTo(3, -2.5)
        path.lineTo(3, 2.5)
        path.moveTo(-3, 0)
        path.lineTo(3, 0)
    elif glyph == "lugs":
        path.addEllipse(QPointF(-2, 0), 2, 2)
        path.addEllipse(QPointF(2, 0), 2, 2)
    elif glyph in {"crossing", "way"}:
        path.moveTo(-3, 3)
        path.lineTo(3, -3)
        path.moveTo(-3, -3)
        path.lineTo(*((3, 3) if glyph == "crossing" else (-0.5, -0.5)))
    return path


class SignItem(QGraphicsItem):
    """A finding's sign where it is found, of one size at every zoom."""

    def __init__(self) -> None:
        super().__init__()
        self.finding: Finding | None = None
        self._theme: Theme = "light"
        self._glyph: Glyph = ""
        self._size = SIGN_SIZE
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)

    def show_finding(self, finding: Finding, at: tuple[float, float], theme: Theme, glyph: Glyph = "") -> None:
        """Take another finding; one with a glyph is drawn a little larger."""
        was, self.finding = self.finding, finding
        if finding != was or theme != self._theme:
            self._theme, self._glyph = theme, glyph
            self._size = SIGN_SIZE * (1.25 if glyph else 1.0)
            self.setToolTip(finding.sentence)
            self.setZValue(40 + {"note": 0, "warn": 1, "stop": 2}[finding.severity])
            self.update()
        self.setPos(*at)

    def boundingRect(self) -> QRectF:  # noqa: D102
        return QRectF(-SIGN_SIZE, -SIGN_SIZE, 2 * SIGN_SIZE, 2 * SIGN_SIZE)

    def shape(self) -> QPainterPath:  # noqa: D102
        path = QPainterPath()
        path.addRect(QRectF(-SIGN_SIZE / 2, -SIGN_SIZE / 2, SIGN_SIZE, SIGN_SIZE))
        return path

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: D102, ARG002
        if self.finding is not None:
            draw_sign(painter, self.finding.severity, self._theme, self._size, self._glyph)


def draw_sign(painter: QPainter, severity: str, theme: Theme, size: float = SIGN_SIZE, glyph: Glyph = "") -> None:
    """Draw a sign about the painter's origin, with a rim that sets it off from whatever lies under it.

    A glyph in it says what it is about.
    """
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    path = sign_path(severity, size)
    painter.setPen(QPen(QColor(colour("panel", theme)), 2.5))
    painter.setBrush(QColor(colour(severity, theme)))
    painter.drawPath(path)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawPath(path)
    if glyph:
        painter.translate(0, size / 8 if severity == "warn" else 0)
        share = size / SIGN_SIZE
        painter.scale(share, share)
        pen = QPen(QColor(colour("panel", theme)), 1.6)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(glyph_path(glyph))
