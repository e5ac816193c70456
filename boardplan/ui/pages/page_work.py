"""Page work: draws pages beside the window, the newest wish first; what nobody wants any more is never drawn."""

import math
from dataclasses import dataclass
from threading import Condition

from PySide6.QtCore import QObject, QThread, Signal
from PySide6.QtGui import QImage

from boardplan.output.page_images import PageImages

_MOST_PIXELS = 24e6
"""A page as wide as a roll is drawn no finer than this: 72 MB of pixels."""


@dataclass(frozen=True, slots=True)
class Wish:
    """A page of a paper that somebody wants to see: its number, the first being 0, and how many px a millimetre has."""

    images: PageImages
    paper: str
    index: int
    dots_per_mm: float


@dataclass(frozen=True, slots=True)
class Drawn:
    """What came of a wish: the page, its words, how many pages there are; no page where the paper is data alone."""

    wish: Wish
    count: int
    heading: str
    words: str
    width: float = 0.0
    height: float = 0.0
    page: QImage | None = None


class PageWork(QThread):
    """Draws one page after the other until it is told to end."""

    drawn = Signal(object)
    failed = Signal(object)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._wish: Wish | None = None
        self._over = False
        self._news = Condition()

    def want(self, wish: Wish | None) -> None:
        """Draw a page as soon as possible; a wish that was not begun yet is forgotten."""
        with self._news:
            self._wish = wish
            self._news.notify()
        if not self.isRunning() and not self._over:
            self.start()

    def end(self) -> None:
        """Draw no more, and wait for what is being drawn."""
        with self._news:
            self._over = True
            self._news.notify()
        self.wait()

    def run(self) -> None:
        """Draw what is wanted."""
        while (wish := self._next()) is not None:
            try:
                self.drawn.emit(drawn_page(wish))
            except Exception as error:  # noqa: BLE001 - a page that can't be drawn must not end the window
                self.failed.emit((wish, error))

    def _next(self) -> Wish | None:
        with self._news:
            self._news.wait_for(lambda: self._over or self._wish is not None)
            wish, self._wish = self._wish, None
            return None if self._over else wish


def drawn_page(wish: Wish) -> Drawn:
    """Return a page as it will be printed, or what the paper is where it has no pages."""
    pages = wish.images.pages(wish.paper)
    if not pages:
        return Drawn(wish, 0, "", ", ".join(wish.images.file_names(wish.paper)))
    index = min(wish.index, len(pages) - 1)
    page = pages[index]
    most = math.sqrt(_MOST_PIXELS / (page.sheet.width * page.sheet.height))
    image = wish.images.image(wish.paper, index, min(wish.dots_per_mm, most))
    pixels = QImage(image.pixels, image.width, image.height, image.stride, QImage.Format.Format_RGB888).copy()
    return Drawn(
        wish,
        len(pages),
        page.file.heading,
        page.file.name,
        page.sheet.width,
        page.sheet.height,
        pixels,
    )
