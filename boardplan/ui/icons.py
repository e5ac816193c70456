"""Icons: our own drawings, tinted at load with the colours of the theme."""

from functools import cache

from PySide6.QtCore import QByteArray, QObject, QSize, Qt
from PySide6.QtGui import QAction, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QAbstractButton

from boardplan.bundled import data_dir
from boardplan.drawing.palette import Theme, colour

SIZE = 20
_PROPERTY = "icon_name"


@cache
def _drawing(name: str) -> str:
    return (data_dir("assets") / "icons" / f"{name}.svg").read_text(encoding="utf-8")


def icon_names() -> tuple[str, ...]:
    """Return the names of all icons there are."""
    return tuple(sorted(path.stem for path in (data_dir("assets") / "icons").glob("*.svg")))


def tinted(name: str, tint: str, size: int = SIZE, ratio: float = 1.0) -> QPixmap:
    """Return an icon in one colour, sharp on a screen with `ratio` real pixels to each."""
    pixmap = QPixmap(QSize(size, size) * ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    QSvgRenderer(QByteArray(_drawing(name).replace("currentColor", tint).encode())).render(painter)
    painter.end()
    pixmap.setDevicePixelRatio(ratio)
    return pixmap


@cache
def icon(name: str, theme: Theme, ink: str = "ink") -> QIcon:
    """Return an icon for buttons and menus: ink, quiet where disabled, accent where switched on."""
    made = QIcon()
    for ratio in (1.0, 2.0, 3.0):
        plain = tinted(name, colour(ink, theme), ratio=ratio)
        chosen = tinted(name, colour("accent", theme), ratio=ratio)
        faint = tinted(name, colour("line", theme), ratio=ratio)
        for mode in (QIcon.Mode.Normal, QIcon.Mode.Active):
            made.addPixmap(plain, mode, QIcon.State.Off)
            made.addPixmap(chosen, mode, QIcon.State.On)
        made.addPixmap(chosen, QIcon.Mode.Selected, QIcon.State.Off)
        made.addPixmap(faint, QIcon.Mode.Disabled, QIcon.State.Off)
    return made


def put_icon(holder: QAction | QAbstractButton, name: str, theme: Theme) -> None:
    """Give an action or a button its icon, and remember which, so that it can be tinted anew."""
    holder.setProperty(_PROPERTY, name)
    holder.setIcon(icon(name, theme))


def retint(root: QObject, theme: Theme) -> None:
    """Tint all icons below an object for a theme."""
    holders: list[QAction | QAbstractButton] = [*root.findChildren(QAction), *root.findChildren(QAbstractButton)]
    for holder in holders:
        name = holder.property(_PROPERTY)
        if name:
            holder.setIcon(icon(str(name), theme))
