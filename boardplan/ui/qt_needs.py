"""Qt needs: what Qt must find on the machine, looked for before it is imported.

Without them Qt stops the process without a word that helps; so we say what to install instead.
"""

import ctypes
import os
import sys
from collections.abc import Callable, Mapping

_ALWAYS = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libglib-2.0.so.0": "libglib2.0-0",
}
_FOR_X11 = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}
"""Libraries and the Debian packages that hold them: found with ldd on Debian 12 and 13."""


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def missing_for_window(
    environment: Mapping[str, str] | None = None,
    platform: str = sys.platform,
    loads: Callable[[str], bool] = _loads,
) -> str:
    """Return what stands in the window's way, in plain words with the line to type; nothing where all is well."""
    if not platform.startswith("linux"):
        return ""
    held = os.environ if environment is None else environment
    chosen = held.get("QT_QPA_PLATFORM", "")
    on_screen = not chosen.startswith(("offscreen", "minimal", "vnc"))
    if on_screen and not (held.get("DISPLAY") or held.get("WAYLAND_DISPLAY")):
        return (
            "There is no screen to open a window on (neither DISPLAY nor WAYLAND_DISPLAY is set).\n"
            "Checking, the template and the cut list work without one: boardplan --help"
        )
    wanted = dict(_ALWAYS)
    if on_screen and held.get("DISPLAY") and not chosen.startswith("wayland"):
        wanted |= _FOR_X11
    packages = [package for library, package in wanted.items() if not loads(library)]
    if not packages:
        return ""
    return (
        "The window needs a few system libraries that are not installed. On Debian or Ubuntu:\n"
        f"  sudo apt-get install -y --no-install-recommends {' '.join(packages)}"
    )
