"""Short label: a line of text that ends in an ellipsis where there is no room for all of it."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QSizePolicy


class ShortLabel(QLabel):
    """Takes what room there is; the whole text is its tooltip."""

    def __init__(self) -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def minimumSizeHint(self) -> QSize:  # noqa: D102
        return QSize(24, super().minimumSizeHint().height())

    def sizeHint(self) -> QSize:  # noqa: D102
        return QSize(24, super().sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002, D102
        painter = QPainter(self)
        shown = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width())
        self.setToolTip(self.text() if shown != self.text() else "")
        painter.setPen(self.palette().color(self.foregroundRole()))
        painter.drawText(self.rect(), int(self.alignment()), shown)
        painter.end()
