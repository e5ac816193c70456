"""Theme: light or dark, by the system or by hand; its palette, font and style sheet for Qt."""

from typing import Literal, TypeAlias

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication

from boardplan.bundled import data_dir
from boardplan.drawing.palette import Theme, colour
from boardplan.ui.style_sheet import style_sheet

Choice: TypeAlias = Literal["system", "light", "dark"]
FAMILY = "Atkinson Hyperlegible Next"
SMALL, PLAIN, LARGE, TITLE = 11, 13, 16, 22
"""The four sizes of text on screen, in px at 100 %."""


def load_fonts() -> None:
    """Make the program's own font known to Qt."""
    for path in sorted((data_dir("assets") / "fonts").glob("*.ttf")):
        QFontDatabase.addApplicationFont(str(path))


def font(size: int = PLAIN, *, bold: bool = False) -> QFont:
    """Return the program's font in one of its sizes."""
    made = QFont(FAMILY)
    made.setPixelSize(size)
    made.setWeight(QFont.Weight.DemiBold if bold else QFont.Weight.Normal)
    return made


def qt_palette(theme: Theme) -> QPalette:
    """Return Qt's palette for a theme."""
    made = QPalette()
    roles = {
        QPalette.ColorRole.Window: "ground",
        QPalette.ColorRole.WindowText: "ink",
        QPalette.ColorRole.Base: "panel",
        QPalette.ColorRole.AlternateBase: "ground",
        QPalette.ColorRole.Text: "ink",
        QPalette.ColorRole.Button: "panel",
        QPalette.ColorRole.ButtonText: "ink",
        QPalette.ColorRole.BrightText: "stop",
        QPalette.ColorRole.Highlight: "accent",
        QPalette.ColorRole.HighlightedText: "panel",
        QPalette.ColorRole.ToolTipBase: "ink",
        QPalette.ColorRole.ToolTipText: "ground",
        QPalette.ColorRole.PlaceholderText: "quiet",
        QPalette.ColorRole.Link: "accent",
        QPalette.ColorRole.Mid: "line",
        QPalette.ColorRole.Accent: "accent",
    }
    for role, ink in roles.items():
        made.setColor(role, QColor(colour(ink, theme)))
    for role in (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(colour("quiet", theme)))
    return made


class Themes(QObject):
    """Which theme is on; says when it changes."""

    changed = Signal()

    def __init__(self, choice: Choice, parent: QObject) -> None:
        super().__init__(parent)
        self.choice: Choice = choice
        QApplication.styleHints().colorSchemeChanged.connect(self._apply)
        self._apply()

    @property
    def theme(self) -> Theme:
        """The theme that is on."""
        if self.choice != "system":
            return self.choice
        dark = QApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark
        return "dark" if dark else "light"

    def choose(self, choice: Choice) -> None:
        """Follow the system, or take one by hand."""
        self.choice = choice
        self._apply()

    def _apply(self) -> None:
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(qt_palette(self.theme))
            app.setStyleSheet(style_sheet(self.theme))
        self.changed.emit()
