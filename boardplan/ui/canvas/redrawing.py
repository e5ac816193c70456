"""Redrawing: parts of the wall that are to be drawn again, one band after the other, so that no hand has to wait.

After a change many cables may lie otherwise, each in strips across the whole board. What is drawn again at once takes
as long as all that lies there; a band of it takes little, and between two bands the mouse is heard.
"""

from collections.abc import Callable, Iterable

from PySide6.QtCore import QObject, QRect, QRectF, QTimer
from PySide6.QtGui import QRegion

from boardplan.ui.canvas.strip import boxes_of

BAND = 240.0
"""How high a band is, in px: of a crowded board about the tenth part."""


class Redrawing(QObject):
    """Holds what is owed to the eye, in whole mm of the wall, and has a band of it drawn in each pause."""

    def __init__(self, draw: Callable[[QRectF], object], parent: QObject) -> None:
        super().__init__(parent)
        self._draw = draw
        self._owed = QRegion()
        self.scale = 0.0
        """px to the mm; all is drawn at once where it isn't known."""
        self._later = QTimer(self)
        self._later.setInterval(0)
        self._later.timeout.connect(self.draw_band)

    def owe(self, boxes: Iterable[QRect]) -> None:
        """Have boxes of the wall drawn again a little later."""
        for box in boxes:
            self._owed = self._owed.united(box)
        if not self._owed.isEmpty():
            self._later.start()

    def draw_band(self) -> None:
        """Have the lowest band of what is owed drawn, or all that is left where it is no higher."""
        around = self._owed.boundingRect()
        high = round(BAND / self.scale) if self.scale else around.height()
        band = QRect(around.left(), around.top(), around.width(), max(1, min(high, around.height())))
        for box in boxes_of(self._owed.intersected(band)):
            self._draw(QRectF(box))
        self._owed = self._owed.subtracted(QRegion(band))
        if self._owed.isEmpty():
            self._later.stop()
