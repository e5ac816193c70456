"""Own folders: where the system keeps a person's settings, and what a program was doing when it ended."""

import os
import sys
from collections.abc import Mapping
from pathlib import Path

_NAME = "boardplan"


def settings_folder(
    environment: Mapping[str, str] = os.environ, platform: str = sys.platform, home: Path | None = None
) -> Path:
    """Return the folder of the person's own settings, where the system keeps such; it need not be there yet.

    On Linux that is $XDG_CONFIG_HOME or ~/.config (XDG Base Directory Specification 0.8).
    """
    return _folder(environment, platform, home or Path.home(), ("APPDATA", "Roaming"), ("XDG_CONFIG_HOME", ".config"))


def state_folder(
    environment: Mapping[str, str] = os.environ, platform: str = sys.platform, home: Path | None = None
) -> Path:
    """Return the folder for what has to outlive the program but is no setting; it need not be there yet.

    On Linux that is $XDG_STATE_HOME or ~/.local/state (XDG Base Directory Specification 0.8).
    """
    unix = ("XDG_STATE_HOME", ".local/state")
    return _folder(environment, platform, home or Path.home(), ("LOCALAPPDATA", "Local"), unix)


def _folder(
    environment: Mapping[str, str], platform: str, home: Path, windows: tuple[str, str], unix: tuple[str, str]
) -> Path:
    if platform == "win32":
        folder = Path(environment.get(windows[0]) or home / "AppData" / windows[1])
    elif platform == "darwin":
        folder = home / "Library" / "Application Support"
    else:
        named = Path(environment.get(unix[0]) or "")
        # a path that is not absolute is to be ignored, says the specification
        folder = named if named.is_absolute() else home / unix[1]
    return folder / _NAME
