"""Faults: everything wrong with a file, each with its place and what was expected there."""

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: the path to the bad value and what was expected of it."""

    path: str
    expected: str

    def __str__(self) -> str:
        """Return it as one line."""
        return f"{self.path}: {self.expected}" if self.path else self.expected


class BadFile(Exception):  # noqa: N818 - names the thing, as its readers do
    """A file that can't be used; says which, and everything that is wrong with it."""

    def __init__(self, file: Path | str, faults: Iterable[Fault]) -> None:
        """Keep the file's name and its faults."""
        self.file = str(file)
        self.faults = tuple(faults)
        super().__init__("\n".join(f"{self.file}: {fault}" for fault in self.faults))
