"""Pages view: one page of a paper in the place of the canvas, as it will be printed, to leaf through."""

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from boardplan.drawing.palette import colour
from boardplan.output.page_images import PageImages
from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.controls.small_parts import hairline, small_button
from boardplan.ui.pages.page_work import Drawn, PageWork, Wish
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr

_AIR, _ZOOM, _MOST, _LEAST = 24, 1.25, 16.0, 0.5
"""px round a page, a step of zooming, the largest and the smallest px to the millimetre."""
_SHARP = 0.99
"""A page drawn with fewer px to the millimetre than this part of what is shown looks blurred."""


class _Page(QWidget):
    """A page on the ground of the window, or a sentence where there is none."""

    def __init__(self, themes: Themes) -> None:
        super().__init__()
        self._themes = themes
        self.drawn: Drawn | None = None
        self.words = ""

    def show_page(self, drawn: Drawn | None, words: str, size: QSize) -> None:
        """Show a page at a size in px, or a sentence."""
        self.drawn, self.words = drawn, words
        self.setFixedSize(size)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        theme = self._themes.theme
        if self.drawn is None or self.drawn.page is None:
            painter.setPen(QColor(colour("quiet", theme)))
            painter.drawText(self.rect().adjusted(32, 32, -32, -32), int(_WRAPPED), self.words)
        else:
            paper = QRectF(self.rect()).adjusted(_AIR, _AIR, -_AIR, -_AIR)
            painter.drawImage(paper, self.drawn.page)
            painter.setPen(QPen(QColor(colour("line", theme)), 1))
            painter.drawRect(paper)
        painter.end()


class _Area(QScrollArea):
    """Scrolls a page by the arrow keys; the keys that leaf go on to the view."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in {Qt.Key.Key_PageUp, Qt.Key.Key_PageDown}:
            event.ignore()
        else:
            super().keyPressEvent(event)


_WRAPPED = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap


class PagesView(QWidget):
    """The pages of a paper with their name, their number, and buttons to leaf and to zoom."""

    back_asked = Signal()

    def __init__(self, themes: Themes) -> None:
        super().__init__()
        self._themes = themes
        self._images: PageImages | None = None
        self._paper, self._index, self._scale = "", 0, 0.0
        self.drawn: Drawn | None = None
        self._work = PageWork(self)
        self._work.drawn.connect(self._take)
        self._work.failed.connect(self._take_failure)
        self._page = _Page(themes)
        self._area = _Area()
        self._area.setWidget(self._page)
        self._area.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._area.setAccessibleName(tr("Page as it will be printed"))
        self._title = QLabel()
        self._title.setProperty("part", "heading")
        self._detail = ShortLabel()
        self._detail.setProperty("part", "quiet")
        self.number = QLabel()
        self.number.setProperty("part", "unit")
        self._back = QPushButton(tr("Back to the board"))
        self._back.clicked.connect(self.back_asked)
        self._lay_out()
        self.setFocusProxy(self._area)

    def _lay_out(self) -> None:
        theme = self._themes.theme
        head = QHBoxLayout()
        head.setContentsMargins(16, 8, 12, 8)
        head.setSpacing(4)
        head.addWidget(self._title)
        head.addSpacing(8)
        head.addWidget(self._detail, 1)
        self.before = small_button(theme, "left", tr("Sheet before (Page up)"), self.show_before)
        self.after = small_button(theme, "right", tr("Next sheet (Page down)"), self.show_next)
        for part in (self.before, self.number, self.after):
            head.addWidget(part)
        head.addSpacing(12)
        head.addWidget(small_button(theme, "zoom-out", tr("Smaller (-)"), self.show_smaller))
        head.addWidget(small_button(theme, "zoom-in", tr("Larger (+)"), self.show_larger))
        head.addWidget(small_button(theme, "fit", tr("Whole sheet (0)"), self.show_whole))
        head.addSpacing(12)
        head.addWidget(self._back)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(hairline())
        frame = QFrame()
        inside = QVBoxLayout(frame)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.addWidget(self._area)
        column.addWidget(frame, 1)

    # What is shown

    def show_paper(self, images: PageImages, paper: str, name: str) -> None:
        """Show a paper from its first sheet on; the same paper again stays where it was."""
        if paper != self._paper:
            self._index, self._scale = 0, 0.0
            self._say(name, tr("Laying out ..."), "")
            self.drawn = None
            self._page.show_page(None, "", self._area.viewport().size())
        self._images, self._paper = images, paper
        self._wish()

    def _wish(self) -> None:
        if self._images is not None:
            dots = max(self._scale or self._whole(), _LEAST) * self.devicePixelRatioF()
            self._work.want(Wish(self._images, self._paper, self._index, dots))

    def _take(self, drawn: Drawn) -> None:
        """Show a page that was drawn, unless another paper was asked for since."""
        if drawn.wish.images is not self._images or drawn.wish.paper != self._paper:
            return
        self.drawn = drawn
        if drawn.page is None:
            words = tr("{} is for other programs: it has no sheets to look at here.").format(drawn.words)
            self._say(self._title.text(), "", "")
            self._page.show_page(drawn, words if drawn.words else tr("This job needs no such paper."), self._room())
            return
        self._index = min(self._index, drawn.count - 1)
        shown = tr("sheet {} of {}").format(min(drawn.wish.index, drawn.count - 1) + 1, drawn.count)
        self._say(drawn.heading, drawn.words, shown)
        self._lay_page()
        if drawn.wish.dots_per_mm < _SHARP * (self._scale or self._whole()) * self.devicePixelRatioF():
            self._wish()  # drawn before its size was known

    def _take_failure(self, failure: tuple[Wish, Exception]) -> None:
        wish, error = failure
        if wish.images is self._images and wish.paper == self._paper:
            self._page.show_page(None, tr("This sheet can't be shown: {}").format(error), self._room())

    def _say(self, title: str, detail: str, number: str) -> None:
        self._title.setText(title)
        self._detail.setText(detail)
        self.number.setText(number)
        count = self.drawn.count if self.drawn else 0
        self.before.setEnabled(self._index > 0)
        self.after.setEnabled(self._index + 1 < count)

    def _lay_page(self) -> None:
        drawn = self.drawn
        if drawn is None or drawn.page is None:
            return
        scale = self._scale or self._whole()
        size = QSize(round(drawn.width * scale) + 2 * _AIR, round(drawn.height * scale) + 2 * _AIR)
        self._page.show_page(drawn, "", size)

    def _room(self) -> QSize:
        return self._area.viewport().size()

    def _whole(self) -> float:
        """Return how many px a millimetre may have so that a whole sheet is in sight."""
        width, height = (self.drawn.width, self.drawn.height) if self.drawn and self.drawn.width else (297.0, 297.0)
        room = self._area.maximumViewportSize()
        return max(_LEAST, min((room.width() - 2 * _AIR) / width, (room.height() - 2 * _AIR) / height, _MOST))

    # Leafing and zooming

    def show_sheet(self, index: int) -> None:
        """Show a sheet, the first being 0."""
        last = self.drawn.count - 1 if self.drawn else 0
        self._index = max(0, min(index, last))
        self._area.verticalScrollBar().setValue(0)
        self._wish()

    def show_before(self) -> None:
        """Show the sheet before."""
        self.show_sheet(self._index - 1)

    def show_next(self) -> None:
        """Show the next sheet."""
        self.show_sheet(self._index + 1)

    def show_larger(self) -> None:
        """Show the sheet larger."""
        self._zoom(_ZOOM)

    def show_smaller(self) -> None:
        """Show the sheet smaller."""
        self._zoom(1 / _ZOOM)

    def show_whole(self) -> None:
        """Show the whole sheet."""
        self._scale = 0.0
        self._lay_page()
        self._wish()

    def _zoom(self, factor: float) -> None:
        self._scale = min(_MOST, max(_LEAST, (self._scale or self._whole()) * factor))
        self._lay_page()
        self._wish()

    def end(self) -> None:
        """Draw no more; before the window goes."""
        self._work.end()

    # Qt's own

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        act = {
            Qt.Key.Key_PageUp: self.show_before,
            Qt.Key.Key_PageDown: self.show_next,
            Qt.Key.Key_Plus: self.show_larger,
            Qt.Key.Key_Minus: self.show_smaller,
            Qt.Key.Key_0: self.show_whole,
            Qt.Key.Key_Escape: self.back_asked.emit,
        }.get(Qt.Key(event.key()))
        if act is None:
            super().keyPressEvent(event)
        else:
            act()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: D102
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.angleDelta() != QPoint(0, 0):
            self._zoom(_ZOOM if event.angleDelta().y() > 0 else 1 / _ZOOM)
            event.accept()
            return
        super().wheelEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: D102
        super().resizeEvent(event)
        if not self._scale:
            self._lay_page()
