"""Clamp: what holds a thick cable to the board outside of channels."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from boardplan.geometry.point import Box, Point


@dataclass(frozen=True, slots=True)
class Clamp:
    """A clamp on a board: the cables it holds, the middle of them on the wall, their direction there in degrees.

    `diameters` are those of the jackets side by side, in mm, `width` what they take together; `screws` are on
    the wall, for the clamp's own screws.
    """

    cables: tuple[str, ...]
    at: Point
    towards: float
    diameters: tuple[float, ...]
    width: float
    length: float
    screws: tuple[Point, ...]
    board: str

    @property
    def size(self) -> str:
        """What it holds, in words for a list: 16 or 2 x 16."""
        count = len(self.diameters)
        return f"{count} x {self.diameters[0]:g}" if count > 1 else f"{self.diameters[0]:g}"


@dataclass(frozen=True, slots=True)
class Gap:
    """The longest stretch of a cable that nothing holds: its length in mm, its middle and the box round it."""

    length: float
    at: Point
    area: Box


@dataclass(frozen=True, slots=True)
class Held:
    """What holds a cable, from its first end on; the gap is none for a cable that needs no clamp.

    `between` is the longest stretch between two supports of a battery cable, none for any other.
    """

    clamps: tuple[Clamp, ...] = ()
    gap: Gap | None = None
    between: Gap | None = None


def own_clamps(clamps: Mapping[str, tuple[Clamp, ...]]) -> Iterator[Clamp]:
    """Yield every clamp once, a pair's with the first of its cables."""
    for _, clamp in named_clamps(clamps):
        yield clamp


def named_clamps(clamps: Mapping[str, tuple[Clamp, ...]]) -> Iterator[tuple[str, Clamp]]:
    """Yield every clamp once with its name: its first cable, and how many of that cable's it is from the first end.

    So a name says where a clamp is, and a change elsewhere renames none. A pair's is named by its first cable.
    """
    for cable, those in clamps.items():
        own = [each for each in those if each.cables[0] == cable]
        yield from ((f"{cable}-C{number}", each) for number, each in enumerate(own, start=1))
