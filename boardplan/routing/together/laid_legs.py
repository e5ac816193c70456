"""Laid legs: the legs of cables outside of channels, whose they are, and which of them lie near a place."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from boardplan.geometry.point import Box
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.routing.square.open_lines import UNITS, Span, Spot, units
from boardplan.routing.square.rays import spot_of
from boardplan.routing.square.surroundings import Surroundings
from boardplan.routing.together.lying_order import Who

_CELL = units(200)


@dataclass(frozen=True, slots=True)
class Leg:
    """A level or upright leg: axis, line, stretch and half the cable's diameter, in units.

    `bends` is how much of it a bend takes at its lower and its upper end.
    """

    axis: int
    line: int
    start: int
    end: int
    half: int
    bends: Span = (0, 0)

    @property
    def box(self) -> Box:
        """Its centre line as a box without width, in mm."""
        start, end, line = self.start / UNITS, self.end / UNITS, self.line / UNITS
        return Box(start, line, end, line) if self.axis == 0 else Box(line, start, line, end)

    @property
    def sides(self) -> tuple[int, int, int, int]:
        """Left, bottom, right and top of its centre line, in units."""
        if self.axis == 0:
            return self.start, self.line, self.end, self.line
        return self.line, self.start, self.line, self.end


@dataclass(slots=True)
class Lies:
    """A leg and whose it is; `fixed` where it can't be moved aside.

    `before` says that cables laid before its own see it, as it is expected to lie, `after` that later ones do.
    """

    leg: Leg
    who: Who
    fixed: bool
    before: bool
    after: bool

    def settled_for(self, rank: int) -> bool:
        """Say whether the leg stays where it is while the cable with a rank is laid."""
        return self.fixed or self.who.rank < rank


@dataclass
class LaidLegs:
    """Legs by square cells of the wall."""

    cells: dict[tuple[int, int], list[Lies]] = field(default_factory=dict)

    def add(self, legs: Iterable[Lies]) -> None:
        """Lay legs."""
        for each in legs:
            left, bottom, right, top = each.leg.sides
            for column in range(left // _CELL, right // _CELL + 1):
                for row in range(bottom // _CELL, top // _CELL + 1):
                    self.cells.setdefault((column, row), []).append(each)

    def near(self, sides: tuple[int, int, int, int], rank: int) -> Iterator[Lies]:
        """Yield the legs of other cables that touch a box, in units, as the cable with a rank sees them."""
        left, bottom, right, top = sides
        for column in range(left // _CELL, right // _CELL + 1):
            for row in range(bottom // _CELL, top // _CELL + 1):
                for each in self.cells.get((column, row), ()):
                    west, south, east, north = each.leg.sides
                    first = column == max(west, left) // _CELL and row == max(south, bottom) // _CELL
                    if first and west <= right and south <= top and east >= left and north >= bottom:
                        seen = each.before if each.who.rank > rank else each.after
                        if seen and each.who.rank != rank:
                            yield each


def half_of(plan: Plan, cable: Cable) -> int:
    """Return half a cable's diameter in units."""
    return units(plan.conductors[cable.conductor].outside_diameter / 2)


_CACHE_SIZE = 8192
_cache: dict[int, tuple[Route, object, int, tuple[tuple[Leg, bool], ...]]] = {}


def legs_of(around: Surroundings, way: Route, half: int) -> tuple[tuple[Leg, bool], ...]:
    """Return the square legs of a way outside of channels, each with whether it stays where it is.

    Those out of an end stay, and all of a way that a person pinned. In channels cables lie in a bundle. Remembered
    as long as the way and the channels are the same objects.
    """
    channels = around.plan.channels
    held = _cache.get(id(way))
    if held is not None and held[0] is way and held[1] is channels and held[2] == half:
        return held[3]
    spots, bend = [spot_of(each) for each in way.points], units(way.radius)
    last = len(spots) - 2
    found = []
    for index, (a, b) in enumerate(pairwise(spots)):
        leg = leg_between(around, a, b, half, (bend if index else 0, bend if index < last else 0))
        if leg is not None:
            found.append((leg, way.source == "pinned" or index in (0, last)))
    if len(_cache) >= _CACHE_SIZE:
        _cache.clear()
    _cache[id(way)] = way, channels, half, tuple(found)
    return tuple(found)


def _in_channel(around: Surroundings, leg: Leg) -> bool:
    for _, lane, _ in around.lanes:
        beside = lane.axis == leg.axis and abs(lane.centre - leg.line) < lane.half
        if beside and leg.start < lane.end and lane.start < leg.end:
            return True
    return False


def square_leg(a: Spot, b: Spot, half: int, bends: Span = (0, 0)) -> Leg | None:
    """Return the leg between two spots, none where it is askew; `bends` take some of it at the first and the last."""
    axis = 0 if a[1] == b[1] else 1
    if a[1 - axis] != b[1 - axis]:
        return None
    forward = a[axis] <= b[axis]
    return Leg(axis, a[1 - axis], min(a[axis], b[axis]), max(a[axis], b[axis]), half, bends if forward else bends[::-1])


def leg_between(around: Surroundings, a: Spot, b: Spot, half: int, bends: Span = (0, 0)) -> Leg | None:
    """Return the leg between two spots, none where it is askew or in a channel."""
    leg = square_leg(a, b, half, bends)
    return None if leg is None or _in_channel(around, leg) else leg
