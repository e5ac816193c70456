"""Neighbours: who is near whom, kept in the squares of a grid over the wall; never changed in place."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Self, TypeAlias

from boardplan.geometry.point import Box

SQUARE = 200.0
"""Side of a square of the grid in mm: about the size of a unit, so that few things share one."""

Square: TypeAlias = tuple[int, int]
Reaches: TypeAlias = Mapping[str, tuple[Box, ...]]


@dataclass(frozen=True, slots=True)
class Neighbours:
    """Which ids reach into which square."""

    squares: Mapping[Square, tuple[str, ...]] = field(default_factory=dict)

    def around(self, boxes: Iterable[Box]) -> set[str]:
        """Return the ids that share a square with any of the boxes: all that are near, and some that are not."""
        found: set[str] = set()
        for square in squares_of(boxes):
            found.update(self.squares.get(square, ()))
        return found

    def with_changes(self, gone: Reaches, come: Reaches) -> Self:
        """Return the grid without some things and with others; a thing that moved is in both."""
        squares = dict(self.squares)
        for thing, boxes in gone.items():
            for square in squares_of(boxes):
                squares[square] = tuple(each for each in squares[square] if each != thing)
        for thing, boxes in come.items():
            for square in squares_of(boxes):
                squares[square] = (*squares.get(square, ()), thing)
        return type(self)(squares)


def squares_of(boxes: Iterable[Box]) -> set[Square]:
    """Return the squares that boxes reach into."""
    return {square for box in boxes for square in _squares(box)}


def _squares(box: Box) -> Iterator[Square]:
    left, bottom, right, top = (int(side // SQUARE) for side in box)
    for column in range(left, right + 1):
        for row in range(bottom, top + 1):
            yield column, row


def touching(ours: Iterable[Box], theirs: tuple[Box, ...]) -> bool:
    """Say whether any two of the boxes share at least a point."""
    return any(a.touches(b) for a in ours for b in theirs)
