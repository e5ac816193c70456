"""Aside: work that takes a while, done on demand beside the window, which says meanwhile that it is busy."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QThread, Signal


class Aside(QThread):
    """Works out one thing from values that never change; `then` gets what came of it, in the window's own thread."""

    _worked = Signal(object)

    def __init__(self, work: Callable[[], Any], then: Callable[[Any], None], parent: QObject) -> None:
        super().__init__(parent)
        self._work, self._then = work, then
        self._worked.connect(self._tell)  # a method of an object of the window's thread: Qt hands over to it
        self.finished.connect(self.deleteLater)

    def run(self) -> None:
        """Work; this alone happens beside the window."""
        self._worked.emit(self._work())

    def _tell(self, result: object) -> None:
        self._then(result)
