"""Taking place: how a new folder takes the place of an old one, so that whoever looks sees one of the two whole.

Where the system can exchange two folders in one step (Linux: renameat2, macOS: renamex_np), nothing is ever in between.
Elsewhere the old folder is moved aside first; a start that was cut short there is put right by the next.
"""

import ctypes
import os
import re
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

_NEW, _OLD = ".part", ".old"
_LEFT = 24 * 3600
"""Where nobody can tell whether its maker still works, a folder this old is left over, in seconds."""
_AT_FDCWD, _RENAME_EXCHANGE = -100, 2
_RENAME_SWAP = 2


def exchanged(one: Path, other: Path) -> bool:
    """Exchange two folders in one step; say whether the system could."""
    try:
        return _system_exchange()(os.fsencode(one), os.fsencode(other)) == 0
    except (AttributeError, OSError):
        return False


@contextmanager
def new_folder(target: Path, exchange: Callable[[Path, Path], bool] = exchanged) -> Iterator[Path]:
    """Give a folder to fill beside the target, which takes its place at the end.

    Where the work is given up the new folder goes and the old one stays. Raises OSError where nothing can be written.
    """
    target.parent.mkdir(parents=True, exist_ok=True)
    part = Path(tempfile.mkdtemp(prefix=f".{target.name}.", suffix=_NEW, dir=target.parent))
    with _claimed(part):
        try:
            yield part
            part.chmod(0o777 & ~_umask())
            _take_place(part, target, exchange)
        finally:
            shutil.rmtree(part, ignore_errors=True)


def put_right(target: Path) -> None:
    """Put back an old folder that a killed process had moved aside, and clear away what such have left over."""
    asides = list(_beside(target, _OLD))
    if asides and not target.exists():
        asides.pop().replace(target)
    for each in (*asides, *_beside(target, _NEW)):
        if _is_left(each):
            shutil.rmtree(each, ignore_errors=True)


def _beside(target: Path, ending: str) -> Iterator[Path]:
    """Yield the folders beside a target that were made on the way to it."""
    ours = re.compile(rf"\.{re.escape(target.name)}\.\w+{re.escape(ending)}")
    return (each for each in target.parent.iterdir() if ours.fullmatch(each.name))


def _take_place(part: Path, target: Path, exchange: Callable[[Path, Path], bool]) -> None:
    """Put the new folder where the target is; what was there is in the new folder's place after."""
    if not target.exists():
        part.replace(target)
    elif not exchange(part, target):
        old = part.with_suffix(_OLD)
        target.replace(old)
        try:
            part.replace(target)
        except BaseException:
            old.replace(target)
            raise
        old.replace(part)  # what is still called old is whole


def _system_exchange() -> Callable[[bytes, bytes], int]:
    """Return the system's own exchange. Raises AttributeError or OSError where there is none."""
    library = ctypes.CDLL(None, use_errno=True)
    if sys.platform == "darwin":
        swap = library.renamex_np
        return lambda one, other: int(swap(one, other, ctypes.c_uint(_RENAME_SWAP)))
    rename = library.renameat2
    return lambda one, other: int(rename(_AT_FDCWD, one, _AT_FDCWD, other, ctypes.c_uint(_RENAME_EXCHANGE)))


@contextmanager
def _claimed(folder: Path) -> Iterator[None]:
    """Hold a lock on a folder while it is being filled, where the system has such locks; it ends with the process."""
    locked = _lock(folder)
    try:
        yield
    finally:
        if locked is not None:
            os.close(locked)


def _is_left(folder: Path) -> bool:
    """Say whether nobody works on a folder any more."""
    locked = _lock(folder)
    if locked is not None:
        os.close(locked)
        return True
    if _can_lock():
        return False
    try:
        return time.time() - folder.stat().st_mtime > _LEFT
    except OSError:
        return False


def _can_lock() -> bool:
    return os.name == "posix"


def _lock(folder: Path) -> int | None:
    """Return an open, locked folder; none where somebody else has locked it or the system has no such locks."""
    if not _can_lock():
        return None
    import fcntl  # noqa: PLC0415 - not on every system

    try:
        opened = os.open(folder, os.O_RDONLY)
    except OSError:
        return None
    try:
        fcntl.flock(opened, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        os.close(opened)
        return None
    return opened


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
