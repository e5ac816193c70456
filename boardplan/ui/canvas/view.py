"""View: the window onto the wall; zoom under the pointer, pan by hand, fit; the one place where y is flipped."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QFrame, QGestureEvent, QGraphicsView, QPinchGesture, QToolTip, QWidget

from boardplan.drawing.palette import colour
from boardplan.geometry.point import Box, Point
from boardplan.ui.canvas.scene import BoardScene
from boardplan.ui.canvas.strip import boxes_of, exposed_region

LEAST_SCALE, MOST_SCALE = 0.05, 40.0
"""px to the mm."""
ZOOM_STEP = 1.25
_FIT_EDGE = 40


class BoardView(QGraphicsView):
    """The canvas. What the mouse and the keys mean is asked of `on_mouse` and `on_key`; they say whether they took it.

    An event filter would be heard while the view is being taken apart, and bring the process down.
    """

    moved = Signal()
    """Zoom or place have changed."""
    pointed = Signal(object)
    """The pointer is at a Point on the wall, or (none) has left."""

    def __init__(self, scene: BoardScene, parent: QWidget | None = None) -> None:
        super().__init__(scene, parent)
        self.board_scene = scene
        self.on_mouse: Callable[[QMouseEvent], bool] | None = None
        self.on_rest: Callable[[Point], str] | None = None
        self.on_key: Callable[[QKeyEvent], bool] | None = None
        self._fits: Box | None = None
        self._panned_from: QPoint | None = None
        self._space = False
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.MinimalViewportUpdate)
        self.setOptimizationFlag(QGraphicsView.OptimizationFlag.DontSavePainterState)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self.viewport().grabGesture(Qt.GestureType.PinchGesture)
        self.setTransform(QTransform(1, 0, 0, -1, 0, 0))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw what is to be drawn again, and say to the scene what that is."""
        boxes = (self.mapToScene(each).boundingRect() for each in boxes_of(event.region()))
        self.board_scene.exposed = exposed_region(boxes)
        super().paintEvent(event)
        self.board_scene.exposed = None

    # Places and scales

    @property
    def scale_now(self) -> float:
        """How many px show a millimetre."""
        return self.transform().m11()

    def wall_at(self, position: QPointF | QPoint) -> Point:
        """Return the place on the wall under a px of the viewport."""
        inverse, _ = self.viewportTransform().inverted()
        at = inverse.map(QPointF(position))
        return Point(at.x(), at.y())

    def px_at(self, at: Point) -> QPointF:
        """Return the px of the viewport under which a place on the wall lies."""
        return self.viewportTransform().map(QPointF(*at))

    def middle(self) -> Point:
        """Return the place on the wall in the middle of the viewport."""
        return self.wall_at(QPointF(self.viewport().rect().center()))

    def zoom(self, factor: float, under: QPointF | None = None) -> None:
        """Zoom so that what lies under a px stays there; the middle where none is given."""
        under = QPointF(self.viewport().rect().center()) if under is None else under
        scale = min(MOST_SCALE, max(LEAST_SCALE, self.scale_now * factor))
        held = self.wall_at(under)
        self._fits = None
        self._scale_to(scale)
        self._bring(held, under)

    def fit(self, box: Box) -> None:
        """Show a box of the wall as large as it goes; again after the window has changed its size."""
        room = self.viewport().rect()
        width, height = max(1, room.width() - 2 * _FIT_EDGE), max(1, room.height() - 2 * _FIT_EDGE)
        self._scale_to(min(MOST_SCALE, max(LEAST_SCALE, min(width / box.width, height / box.height))))
        self._bring(box.centre, QPointF(room.center()))
        self._fits = box

    def show_place(self, box: Box) -> None:
        """Bring a box of the wall into sight, without a change of scale where that is enough."""
        corner_a, corner_b = self.px_at(Point(box.left, box.top)), self.px_at(Point(box.right, box.bottom))
        seen = QRectF(self.viewport().rect()).adjusted(24, 24, -24, -24)
        if not seen.contains(QRectF(corner_a, corner_b)):
            self._fits = None
            self._bring(box.centre, QPointF(self.viewport().rect().center()))

    def _scale_to(self, scale: float) -> None:
        self.setTransform(QTransform(scale, 0, 0, -scale, 0, 0))

    def _bring(self, wall: Point, under: QPointF) -> None:
        """Scroll so that a place on the wall comes to lie under a px."""
        now = self.px_at(wall)
        self._scroll(now.x() - under.x(), now.y() - under.y())

    def _scroll(self, dx: float, dy: float) -> None:
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setValue(across.value() + round(dx))
        down.setValue(down.value() + round(dy))
        self.moved.emit()

    # Qt's own

    def drawBackground(self, painter: QPainter, rect: QRectF | QRect) -> None:  # noqa: D102
        painter.fillRect(rect, QColor(colour("wall", self.board_scene.theme)))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: D102
        super().resizeEvent(event)
        if self._fits is not None:
            self.fit(self._fits)
        self.moved.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: D102
        fine, coarse = event.pixelDelta(), event.angleDelta()
        zooms = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier) or fine.isNull()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self._fits = None
            self._scroll(-(coarse.y() or coarse.x()) / 2, 0)
        elif zooms:
            self.zoom(ZOOM_STEP ** (coarse.y() / 120), event.position())
        else:
            self._fits = None
            self._scroll(-fine.x(), -fine.y())
        event.accept()

    def viewportEvent(self, event: QEvent) -> bool:  # noqa: D102
        if isinstance(event, QNativeGestureEvent):
            if event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:
                self.zoom(1 + event.value(), event.position())
                return True
        elif isinstance(event, QGestureEvent):
            pinch = event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(pinch, QPinchGesture):
                self.zoom(pinch.scaleFactor(), QPointF(self.viewport().mapFromGlobal(pinch.centerPoint().toPoint())))
                event.accept(pinch)
                return True
        elif isinstance(event, QHelpEvent) and self._shows_tip(event):
            return True
        elif event.type() == QEvent.Type.Leave:
            self.pointed.emit(None)
        return super().viewportEvent(event)

    def _shows_tip(self, event: QHelpEvent) -> bool:
        """Say what is under the pointer that rests; an item's own tip, such as a sign's, goes first."""
        item = self.itemAt(event.pos())
        if event.type() != QEvent.Type.ToolTip or self.on_rest is None or (item is not None and item.toolTip()):
            return False
        words = self.on_rest(self.wall_at(event.pos()))
        if words:
            QToolTip.showText(event.globalPos(), words, self.viewport())
        else:
            QToolTip.hideText()
        return True

    def event(self, event: QEvent) -> bool:  # noqa: D102
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            tabbed = event.key() in {Qt.Key.Key_Tab, Qt.Key.Key_Backtab}
            if tabbed and self.on_key is not None and self.on_key(event):
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        if self.on_key is None or not self.on_key(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        if event.key() != Qt.Key.Key_Space or not self.hears_space(event, pressed=False):
            super().keyReleaseEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        self._heard(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        self._heard(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        self._heard(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: D102
        self._heard(event)

    def _heard(self, event: QMouseEvent) -> None:
        if self.on_mouse is not None:
            self.on_mouse(event)
        event.accept()

    def begins_pan(self, event: QMouseEvent) -> bool:
        """Begin to move the wall by hand where the button says so."""
        by_space = self._space and event.button() == Qt.MouseButton.LeftButton
        if event.button() == Qt.MouseButton.MiddleButton or by_space:
            self._panned_from = event.position().toPoint()
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            return True
        return False

    def pans(self, event: QMouseEvent) -> bool:
        """Move the wall by hand where that was begun."""
        if self._panned_from is None:
            return False
        now = event.position().toPoint()
        self._fits = None
        self._scroll(self._panned_from.x() - now.x(), self._panned_from.y() - now.y())
        self._panned_from = now
        return True

    def ends_pan(self) -> bool:
        """End moving the wall by hand."""
        if self._panned_from is None:
            return False
        self._panned_from = None
        self.viewport().setCursor(Qt.CursorShape.OpenHandCursor if self._space else Qt.CursorShape.ArrowCursor)
        return True

    def hears_space(self, event: QKeyEvent, *, pressed: bool) -> bool:
        """Take the space bar: while it is down, the left button moves the wall."""
        if event.key() != Qt.Key.Key_Space or event.isAutoRepeat():
            return event.key() == Qt.Key.Key_Space
        self._space = pressed
        self.viewport().setCursor(Qt.CursorShape.OpenHandCursor if pressed else Qt.CursorShape.ArrowCursor)
        return True
