"""Kind view: a kind as it will lie on the board, drawn while it is measured, over a photo of the unit if wanted."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QImage, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from boardplan.drawing.component_picture import component_picture
from boardplan.drawing.palette import colour
from boardplan.drawing.zone_picture import zone_picture
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind
from boardplan.model.placed import Placed, place
from boardplan.ui.canvas.painter import Ready, made_ready, paint
from boardplan.ui.theme import SMALL, Themes, font
from boardplan.ui.words import tr

_AIR = 40


class Underlay:
    """A photo or a drawing of the unit: where its lower left lies in the kind's mm, and how many mm a pixel is."""

    def __init__(self, image: QImage, scale: float = 1.0, corner: Point = Point(0, 0)) -> None:
        self.image, self.scale, self.corner = image, scale, corner

    @property
    def box(self) -> QRectF:
        """The photo's box in mm, y up."""
        size = self.image.size()
        return QRectF(self.corner.x, self.corner.y, size.width() * self.scale, size.height() * self.scale)


class KindView(QWidget):
    """Draws the kind with its holes and terminals named; says where it is clicked, in the kind's own mm."""

    pointed = Signal(object)

    def __init__(self, themes: Themes) -> None:
        super().__init__()
        self._themes = themes
        self._kind: ComponentKind | None = None
        self._body: Ready | None = None
        self._room: Ready | None = None
        self.underlay: Underlay | None = None
        self.marks: tuple[Point, ...] = ()
        self.setMinimumSize(320, 320)
        self.setAccessibleName(tr("Picture of the kind, from the front"))

    def sizeHint(self) -> QSize:  # noqa: D102
        return QSize(460, 460)

    def show_kind(self, kind: ComponentKind) -> None:
        """Draw a kind."""
        self._kind = kind
        theme = self._themes.theme
        self._body = made_ready(component_picture(kind, kind.prefix + "1"), theme)
        self._room = made_ready(zone_picture(_alone(kind)), theme)
        self.update()

    def _box(self) -> Box:
        """Return what has to be in sight, in mm: the unit with its room, and the photo."""
        kind = self._kind
        if kind is None:
            return Box(0, 0, 100, 100)
        corners = [*kind.box.corners(), *(each.position for each in kind.terminals)]
        for zone in _alone(kind).zones:
            corners += zone.ring
        if self.underlay is not None:
            box = self.underlay.box
            corners += [Point(box.left(), box.top()), Point(box.right(), box.bottom())]
        return box_around(corners)

    def _scale(self) -> float:
        box = self._box()
        room = self.rect().adjusted(_AIR, _AIR, -_AIR, -_AIR)
        return max(0.05, min(room.width() / max(box.width, 1.0), room.height() / max(box.height, 1.0), 6.0))

    def px_at(self, point: Point) -> QPointF:
        """Return where a point of the kind is on the widget."""
        middle, scale = self._box().centre, self._scale()
        return QPointF(
            self.width() / 2 + (point.x - middle.x) * scale, self.height() / 2 - (point.y - middle.y) * scale
        )

    def mm_at(self, px: QPointF) -> Point:
        """Return which point of the kind a place on the widget is."""
        middle, scale = self._box().centre, self._scale()
        return Point(middle.x + (px.x() - self.width() / 2) / scale, middle.y - (px.y() - self.height() / 2) / scale)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002, D102
        theme = self._themes.theme
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colour("wall", theme)))
        painter.drawRoundedRect(QRectF(self.rect()), 6, 6)
        if self._kind is not None:
            self._paint_kind(painter, self._kind)
        painter.end()

    def _paint_kind(self, painter: QPainter, kind: ComponentKind) -> None:
        scale = self._scale()
        origin = self.px_at(Point(0, 0))
        if self.underlay is not None:
            box = self.underlay.box
            corner = self.px_at(Point(box.left(), box.bottom()))
            painter.drawImage(
                QRectF(corner.x(), corner.y(), box.width() * scale, box.height() * scale), self.underlay.image
            )
        painter.save()
        painter.translate(origin)
        painter.scale(scale, -scale)
        painter.setOpacity(0.45 if self.underlay is not None else 1.0)
        for ready in (self._room, self._body):
            if ready is not None:
                paint(painter, ready, scale * self.devicePixelRatioF())
        painter.restore()
        self._paint_names(painter, kind)
        self._paint_marks(painter)

    def _paint_names(self, painter: QPainter, kind: ComponentKind) -> None:
        """Write the number of each hole and the name of each terminal beside it, on a plate that is always legible."""
        theme = self._themes.theme
        painter.setFont(font(SMALL, bold=True))
        names = [(each.position, str(number)) for number, each in enumerate(kind.holes, start=1)]
        names += [(each.position, each.id) for each in kind.terminals]
        for position, words in names:
            at = self.px_at(position)
            box = QRectF(painter.fontMetrics().boundingRect(words)).adjusted(-4, -2, 4, 2)
            box.moveCenter(QPointF(at.x() + 8 + box.width() / 2, at.y() - 10))
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(colour("panel", theme)))
            painter.drawRoundedRect(box, 3, 3)
            painter.setPen(QColor(colour("ink", theme)))
            painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), words)

    def _paint_marks(self, painter: QPainter) -> None:
        painter.setPen(QPen(QColor(colour("accent", self._themes.theme)), 2))
        for mark in self.marks:
            at = self.px_at(mark)
            painter.drawLine(QPointF(at.x() - 8, at.y()), QPointF(at.x() + 8, at.y()))
            painter.drawLine(QPointF(at.x(), at.y() - 8), QPointF(at.x(), at.y() + 8))

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        if event.button() == Qt.MouseButton.LeftButton:
            self.pointed.emit(self.mm_at(event.position()))


def _alone(kind: ComponentKind) -> Placed:
    """Return a kind placed by itself, where it was measured from."""
    return place(kind, Component("X1", kind.id, "", Point(kind.box.left, kind.box.bottom)))
