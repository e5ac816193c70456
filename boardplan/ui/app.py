"""App: starts the window - fonts, theme, faults that nobody foresaw."""

import sys
import traceback
from pathlib import Path
from types import TracebackType

from PySide6.QtGui import QPixmapCache
from PySide6.QtWidgets import QApplication

from boardplan.ui.dialogs.fault_dialog import show_program_fault
from boardplan.ui.icons import tinted
from boardplan.ui.main_window import MainWindow
from boardplan.ui.preferences import Preferences
from boardplan.ui.theme import PLAIN, font, load_fonts

_KEPT_PICTURES = 200_000
"""KB of drawn pictures kept for a quick redraw: enough for 120 components on a large screen."""


def run(path: Path | None) -> int:
    """Open the window, with a job if one is named, and return the exit code."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    if not isinstance(app, QApplication):
        return 2
    dress(app)
    window = MainWindow(Preferences())
    sys.excepthook = Hook(window)
    window.show()
    if path is not None:
        window.files.open_file(path)
    window.files.offer_rescued()
    return app.exec()


def dress(app: QApplication) -> None:
    """Give the application its name, its font and its icon."""
    app.setApplicationName("boardplan")
    app.setApplicationDisplayName("boardplan")
    app.setDesktopFileName("boardplan")
    app.setStyle("Fusion")
    load_fonts()
    app.setFont(font(PLAIN))
    QPixmapCache.setCacheLimit(_KEPT_PICTURES)
    app.setWindowIcon(tinted("place", "#0E7A6F", 64))


class Hook:
    """Shows a fault of the program in a dialog, one at a time; the window stays."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._showing = False

    def __call__(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Show the fault, and print it as well."""
        details = "".join(traceback.format_exception(kind, error, trace))
        sys.stderr.write(details)
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
        elif not self._showing:
            self._showing = True
            show_program_fault(details, self._window, kept=self._keep())
            self._showing = False

    def _keep(self) -> bool:
        """Keep aside what is not saved, and say whether that went well."""
        try:
            self._window.keep_at_once()
        except Exception:  # noqa: BLE001 - one fault must not hide the other
            return False
        return True
