"""Row delegate: draws a row on a grid of 4 px; numbers to the right, details quiet below the title."""

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from boardplan.drawing.palette import Theme, colour
from boardplan.ui.canvas.painter import Ready, paint
from boardplan.ui.canvas.signs import draw_sign
from boardplan.ui.icons import tinted
from boardplan.ui.style_sheet import interface_colours
from boardplan.ui.tables.rows import ROW_ROLE, Row
from boardplan.ui.theme import PLAIN, SMALL, font

_EDGE, _PICTURE, _SIGN, _LINE, _SMALL_LINE = 8, 44, 20, 18, 15
_SEVERITIES = {"stop", "warn", "note"}


class RowDelegate(QStyledItemDelegate):
    """Draws rows in the colours of a theme."""

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.theme: Theme = theme

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:  # noqa: D102
        row: Row = index.data(ROW_ROLE)
        width = _width_of(option)
        if row.heading:
            return QSize(width, 28)
        room = width - self._left(row) - _EDGE
        height = self._title_height(row, room) + self._detail_height(row, room)
        return QSize(width, max(height + 8, _PICTURE + 12 if row.picture else 0))

    def paint(  # noqa: D102
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        row: Row = index.data(ROW_ROLE)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = option.rect
        if row.heading:
            self._paint_heading(painter, box, row)
        else:
            self._paint_ground(painter, option)
            self._paint_sign(painter, box, row)
            self._paint_words(painter, box, row)
        painter.restore()

    def _left(self, row: Row) -> int:
        if row.picture is not None:
            return _EDGE + _PICTURE + 12
        return _EDGE + (_SIGN + 4 if row.sign or row.swatch or row.ticked is not None else 0)

    def ticks_at(self, row: Row, from_left: float) -> bool:
        """Return whether a place in a row, so far from its left, is on its box to tick."""
        return row.ticked is not None and from_left < self._left(row)

    def _title_height(self, row: Row, room: int) -> int:
        if not row.wraps:
            return _LINE
        return QFontMetrics(font(PLAIN)).boundingRect(QRect(0, 0, room, 999), _WRAP, row.title).height()

    def _detail_height(self, row: Row, room: int) -> int:
        if not row.detail:
            return 0
        if not row.wraps:
            return _SMALL_LINE
        return QFontMetrics(font(SMALL)).boundingRect(QRect(0, 0, room, 999), _WRAP, row.detail).height() + 2

    def _paint_heading(self, painter: QPainter, box: QRect, row: Row) -> None:
        painter.setFont(font(SMALL, bold=True))
        painter.setPen(QColor(colour("quiet", self.theme)))
        painter.drawText(box.adjusted(_EDGE, 8, -_EDGE, 0), int(Qt.AlignmentFlag.AlignVCenter), row.title)
        if row.figure:
            painter.setFont(font(SMALL))
            side = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(box.adjusted(_EDGE, 8, -_EDGE, 0), int(side), row.figure)

    def _paint_ground(self, painter: QPainter, option: QStyleOptionViewItem) -> None:
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        under = bool(option.state & QStyle.StateFlag.State_MouseOver)
        if not chosen and not under:
            return
        inks = interface_colours(self.theme)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(inks["wash" if chosen else "hover"]))
        painter.drawRoundedRect(QRectF(option.rect).adjusted(0, 0.5, 0, -0.5), 6, 6)
        if chosen and option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(QColor(inks["accent"]), 1.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(option.rect).adjusted(1, 1.5, -1, -1.5), 6, 6)

    def _paint_sign(self, painter: QPainter, box: QRect, row: Row) -> None:
        middle = QPointF(box.left() + _EDGE + _SIGN / 2 - 2, box.top() + 4 + _LINE / 2)
        if row.picture is not None:
            place = QRectF(box.left() + _EDGE, box.top() + 6, _PICTURE, box.height() - 12)
            paint_within(painter, row.picture, place)
        elif row.ticked is not None:
            self._paint_tick(painter, middle, ticked=row.ticked)
        elif row.swatch:
            self._paint_swatch(painter, middle, row.swatch)
        elif row.sign in _SEVERITIES:
            painter.save()
            painter.translate(middle)
            draw_sign(painter, row.sign, self.theme, 13)
            painter.restore()
        elif row.sign and row.sign != "none":
            ratio = painter.device().devicePixelRatioF()
            pixmap = tinted(row.sign, colour("quiet", self.theme), 16, ratio)
            painter.drawPixmap(QPointF(middle.x() - 8, middle.y() - 8), pixmap)

    def _paint_tick(self, painter: QPainter, middle: QPointF, *, ticked: bool) -> None:
        """Draw a box as Qt's own are drawn here, with a tick in it or empty."""
        inks = interface_colours(self.theme)
        box = QRectF(middle.x() - 7.5, middle.y() - 7.5, 15, 15)
        painter.setPen(QPen(QColor(inks["accent" if ticked else "edge"]), 1))
        painter.setBrush(QColor(inks["accent" if ticked else "field"]))
        painter.drawRoundedRect(box, 4, 4)
        if ticked:
            painter.setPen(QPen(QColor(inks["panel"]), 2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
            corners = [QPointF(box.left() + x, box.top() + y) for x, y in ((3.5, 7.5), (6.5, 10.5), (11.5, 4.5))]
            painter.drawPolyline(corners)

    def _paint_swatch(self, painter: QPainter, middle: QPointF, swatch: str) -> None:
        """Draw a short length of cable in its colours."""
        parts = swatch.split("/")
        stick = QRectF(middle.x() - 9, middle.y() - 3.5, 18, 7)
        painter.setPen(QPen(QColor(colour("channel-line", self.theme)), 1))
        painter.setBrush(QColor(parts[0]))
        painter.drawRoundedRect(stick, 3.5, 3.5)
        if len(parts) > 1:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(parts[1]))
            painter.drawRect(QRectF(stick.left() + 2, middle.y(), stick.width() - 4, 2.5))

    def _paint_words(self, painter: QPainter, box: QRect, row: Row) -> None:
        left = box.left() + self._left(row)
        room = box.width() - self._left(row) - _EDGE  # as in sizeHint, to the pixel: words wrap where they were counted
        top = box.top() + 4
        if row.picture is not None:
            top = box.center().y() - (self._title_height(row, room) + self._detail_height(row, room)) // 2
        painter.setFont(font(PLAIN))
        figure_room = 0
        painter.setPen(QColor(colour("ink", self.theme)))
        if row.figure:
            figure_room = painter.fontMetrics().horizontalAdvance(row.figure) + 8
            painter.drawText(QRect(left, top, room, _LINE), int(_RIGHT), row.figure)
        painter.setPen(QColor(colour("quiet" if row.quiet else "ink", self.theme)))
        height = self._title_height(row, room)
        if row.wraps:
            painter.drawText(QRect(left, top, room, height), _WRAP, row.title)
        else:
            title = painter.fontMetrics().elidedText(row.title, Qt.TextElideMode.ElideRight, room - figure_room)
            painter.drawText(QRect(left, top, room - figure_room, height), int(_LEFT), title)
        if row.detail:
            painter.setFont(font(SMALL))
            painter.setPen(QColor(colour("quiet", self.theme)))
            place = QRect(left, top + height + (2 if row.wraps else 0), room, self._detail_height(row, room))
            if row.wraps:
                painter.drawText(place, _WRAP, row.detail)
            else:
                detail = painter.fontMetrics().elidedText(row.detail, Qt.TextElideMode.ElideRight, room)
                painter.drawText(place, int(_LEFT), detail)


_WRAP = int(Qt.TextFlag.TextWordWrap)
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


def _width_of(option: QStyleOptionViewItem) -> int:
    """Return the width a row has: that of its list, which knows it before the row does."""
    view = option.widget
    viewport = getattr(view, "viewport", None)
    return viewport().width() if viewport is not None else option.rect.width()


def paint_within(painter: QPainter, ready: Ready, place: QRectF, most: float = 0.2) -> None:
    """Draw a picture as large as it goes within a box of the screen, `most` px to the mm at most; y up."""
    if ready.box.isEmpty():
        return
    scale = min(place.width() / ready.box.width(), place.height() / ready.box.height(), most)
    painter.save()
    painter.translate(place.center())
    painter.scale(scale, -scale)
    painter.translate(-ready.box.center())
    paint(painter, ready, scale * painter.device().devicePixelRatioF())
    painter.restore()
