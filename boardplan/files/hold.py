"""Hold: a sign that something is in use, which goes away with the program however that ends."""

import hashlib
import os
import sys
from pathlib import Path
from typing import BinaryIO

if sys.platform == "win32":
    import msvcrt

    def _lock(stream: BinaryIO) -> None:
        msvcrt.locking(stream.fileno(), msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _lock(stream: BinaryIO) -> None:
        fcntl.flock(stream.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)


class Hold:
    """A file that one program at a time can hold; the system lets go of it when the program ends, or is killed."""

    def __init__(self, path: Path, stream: BinaryIO) -> None:
        """Hold a file that is locked already; see `take_hold`."""
        self.path = path
        self._stream = stream

    def release(self) -> None:
        """Let go, and leave nothing behind."""
        if not self._stream.closed:
            if os.name == "posix":  # elsewhere an open file can't be taken away
                self.path.unlink(missing_ok=True)
            self._stream.close()


def take_hold(path: Path) -> Hold | None:
    """Hold a file, which is made where it is not there; none where another holds it. Raises OSError."""
    path.parent.mkdir(parents=True, exist_ok=True)
    while True:
        stream = path.open("ab")
        try:
            _lock(stream)
        except OSError:
            stream.close()
            return None
        if _is_still_there(path, stream):
            return Hold(path, stream)
        stream.close()  # whoever held it before has just taken it away


def _is_still_there(path: Path, stream: BinaryIO) -> bool:
    try:
        return os.path.samestat(path.stat(), os.fstat(stream.fileno()))
    except FileNotFoundError:
        return False


def hold_for(file: Path, folder: Path) -> Path:
    """Return which file of a folder stands for a job file being open, whatever it is called by."""
    return folder / f"{hashlib.sha256(str(file.resolve()).encode()).hexdigest()[:32]}.open"
