"""Small parts: a hairline, a button that is only an icon."""

from collections.abc import Callable

from PySide6.QtWidgets import QFrame, QToolButton

from boardplan.drawing.palette import Theme
from boardplan.ui.icons import put_icon


def hairline(part: str = "line") -> QFrame:
    """Return a hairline, level ("line") or "upright"."""
    line = QFrame()
    line.setProperty("part", part)
    return line


def small_button(theme: Theme, icon: str, words: str, act: Callable[[], object]) -> QToolButton:
    """Return a button that is only an icon; its words are its tooltip and its name."""
    button = QToolButton()
    put_icon(button, icon, theme)
    button.setToolTip(words)
    button.setAccessibleName(words)
    button.clicked.connect(act)
    return button
