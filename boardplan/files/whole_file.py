"""Whole file: writing a file whole or not at all."""

import glob
import os
import tempfile
from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Write a file so that at any moment either the old or the new content is there; raises OSError."""
    target = path.resolve()
    handle, temporary = tempfile.mkstemp(prefix=f".{target.name}.", suffix=".part", dir=target.parent)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        Path(temporary).chmod(_mode_of(target))
        Path(temporary).replace(target)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise


def sweep_parts(path: Path) -> None:
    """Take away what was half written when a program was killed; only for who knows that nobody writes the file now."""
    target = path.resolve()
    for part in target.parent.glob(f".{glob.escape(target.name)}.*.part"):
        part.unlink(missing_ok=True)


def _mode_of(path: Path) -> int:
    if path.exists():
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
