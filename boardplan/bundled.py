"""Bundled: where assets and sample boards are, in a checkout or installed."""

from importlib.resources import files
from pathlib import Path


def data_dir(name: str) -> Path:
    """Return the folder "assets" or "sample_boards": that of a checkout first, the packed copy second.

    Raises FileNotFoundError naming both places.
    """
    package = Path(str(files("boardplan")))
    checkout = package.parent
    if (checkout / "pyproject.toml").is_file() and (checkout / name).is_dir():
        return checkout / name
    packed = package / "_data" / name
    if packed.is_dir():
        return packed
    raise FileNotFoundError(f"'{name}' is neither in {checkout} nor in {package / '_data'}")
