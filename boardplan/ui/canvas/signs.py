"""Signs: how grave a finding is, as a shape and a colour; on the board, in lists and beside the steps."""

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


class SignItem(QGraphicsItem):
    """A finding's sign where it is found, of one size at every zoom."""

    def __init__(self) -> None:
        super().__init__()
        self.finding: Finding | None = None
        self._theme: Theme = "light"
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)

    def show_finding(self, finding: Finding, at: tuple[float, float], theme: Theme) -> None:
        """Take another finding."""
        if finding is not self.finding or theme != self._theme:
            self.finding, self._theme = finding, theme
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
            draw_sign(painter, self.finding.severity, self._theme)


def draw_sign(painter: QPainter, severity: str, theme: Theme, size: float = SIGN_SIZE) -> None:
    """Draw a sign about the painter's origin, with a rim that sets it off from whatever lies under it."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    path = sign_path(severity, size)
    painter.setPen(QPen(QColor(colour("panel", theme)), 2.5))
    painter.setBrush(QColor(colour(severity, theme)))
    painter.drawPath(path)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawPath(path)
