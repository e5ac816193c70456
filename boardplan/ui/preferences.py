"""Preferences: what is remembered between runs."""

from pathlib import Path

from PySide6.QtCore import QByteArray, QSettings

_MOST_RECENT = 8
_STATE_VERSION = 1


class Preferences:
    """A thin front of Qt's settings; everything comes back with its type."""

    def __init__(self, settings: QSettings | None = None) -> None:
        self._settings = settings or QSettings("boardplan", "boardplan")

    @property
    def theme(self) -> str:
        """Light, dark, or as the system has it."""
        value = str(self._settings.value("theme", "system", type=str))
        return value if value in {"system", "light", "dark"} else "system"

    @theme.setter
    def theme(self, value: str) -> None:
        self._settings.setValue("theme", value)

    @property
    def recent(self) -> list[Path]:
        """The files opened last, newest first, those that are still there."""
        text = str(self._settings.value("recent", "", type=str))
        return [Path(line) for line in text.splitlines() if line and Path(line).is_file()]

    def remember_file(self, path: Path) -> None:
        """Put a file first among those opened last."""
        held = [path.resolve(), *(each for each in self.recent if each.resolve() != path.resolve())]
        self._settings.setValue("recent", "\n".join(str(each) for each in held[:_MOST_RECENT]))

    def text(self, name: str, default: str = "") -> str:
        """Return a remembered text."""
        return str(self._settings.value(f"text/{name}", default, type=str))

    def remember_text(self, name: str, value: str) -> None:
        """Remember a text, such as who accepted a finding last."""
        self._settings.setValue(f"text/{name}", value)

    @property
    def window(self) -> QByteArray | None:
        """Where the window stood."""
        if self._settings.value("window/version", 0, type=int) != _STATE_VERSION:
            return None
        value = self._settings.value("window/geometry")
        return value if isinstance(value, QByteArray) else None

    @window.setter
    def window(self, value: QByteArray) -> None:
        self._settings.setValue("window/version", _STATE_VERSION)
        self._settings.setValue("window/geometry", value)
