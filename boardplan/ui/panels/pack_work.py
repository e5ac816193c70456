"""Pack work: writes a pack beside the window, from values that nobody changes."""

from collections.abc import Collection
from pathlib import Path

from PySide6.QtCore import QThread, Signal
from PySide6.QtWidgets import QWidget

from boardplan.output.making import Making
from boardplan.output.pack import PackRefused, write_pack
from boardplan.ui.words import tr


class _Stopped(Exception):  # noqa: N818 - what happened
    """The person thought better of it."""


class PackWork(QThread):
    """Writes the papers chosen, or all, to a folder."""

    told = Signal(int, int, str)
    refused = Signal(str)
    failed = Signal(object)
    written = Signal(str)

    def __init__(self, making: Making, folder: Path, chosen: Collection[str], parent: QWidget) -> None:
        super().__init__(parent)
        self._making, self._folder, self._chosen = making, folder, chosen

    def _tell(self, done: int, total: int, words: str) -> None:
        if self.isInterruptionRequested():
            raise _Stopped
        self.told.emit(done, total, words)

    def run(self) -> None:
        """Write, and say how it went."""
        try:
            write_pack(self._making, self._folder, self._tell, self._chosen)
        except _Stopped:
            self.refused.emit(tr("Nothing was written."))
        except PackRefused as refused:
            self.refused.emit(str(refused))
        except OSError as error:
            self.failed.emit(error)
        else:
            self.written.emit(str(self._folder))
