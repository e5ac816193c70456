"""Laid legs: the legs of cables that lie outside of channels already, and whether another would lie on them."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from boardplan.geometry.point import Box
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.open_lines import UNITS, Spot, units
from boardplan.routing.rays import spot_of
from boardplan.routing.route import Route
from boardplan.routing.surroundings import Surroundings

_STRIPE = units(100)


@dataclass(frozen=True, slots=True)
class Leg:
    """A level or upright leg that lies: axis, line, stretch and half the cable's diameter, in units."""

    axis: int
    line: int
    start: int
    end: int
    half: int

    @property
    def box(self) -> Box:
        """Its centre line as a box without width, in mm."""
        start, end, line = self.start / UNITS, self.end / UNITS, self.line / UNITS
        return Box(start, line, end, line) if self.axis == 0 else Box(line, start, line, end)


@dataclass
class LaidLegs:
    """The legs that lie already, by axis and by stripes of lines; `gap` is what stays between cables, in units."""

    gap: int
    legs: dict[tuple[int, int], list[Leg]] = field(default_factory=dict)
    thickest: int = 0

    def add(self, *legs: Leg) -> None:
        """Lay legs."""
        for leg in legs:
            self.thickest = max(self.thickest, leg.half)
            self.legs.setdefault((leg.axis, leg.line // _STRIPE), []).append(leg)

    def beside(self, leg: Leg, aside: int = 0, around: int = 0, beyond: int = 0) -> bool:
        """Say whether a leg, moved aside, would lie on or too near another one.

        `around` is how much farther off counts, `beyond` how much longer the leg may be at both ends.
        """
        line, start, end = leg.line + aside, leg.start - beyond, leg.end + beyond
        reach = leg.half + self.gap + around
        first, last = line - reach - self.thickest, line + reach + self.thickest
        for stripe in range(first // _STRIPE, last // _STRIPE + 1):
            for other in self.legs.get((leg.axis, stripe), ()):
                if start < other.end and other.start < end and abs(line - other.line) < reach + other.half:
                    return True
        return False


def half_of(plan: Plan, cable: Cable) -> int:
    """Return half a cable's diameter in units."""
    return units(plan.conductors[cable.conductor].outside_diameter / 2)


def fixed_legs(around: Surroundings, way: Route, half: int) -> list[Leg]:
    """Return the legs that stay: those out of an end, and all of a way that a person pinned."""
    spots = [spot_of(each) for each in way.points]
    last = len(spots) - 2
    stay = range(last + 1) if way.source == "pinned" else sorted({0, last})
    return _outside(around, [square_leg(spots[index], spots[index + 1], half) for index in stay])


def free_legs(around: Surroundings, way: Route, half: int) -> list[Leg]:
    """Return the legs between two corners of a found way, which may be moved."""
    return _outside(around, middle_legs(way, half)) if way.source == "found" else []


def _outside(around: Surroundings, legs: Iterable[Leg | None]) -> list[Leg]:
    """Return those of some legs that are not askew nor in a channel, where cables lie in a bundle."""
    return [leg for leg in legs if leg is not None and not _in_channel(around, leg)]


def _in_channel(around: Surroundings, leg: Leg) -> bool:
    for _, lane, _ in around.lanes:
        beside = lane.axis == leg.axis and abs(lane.centre - leg.line) < lane.half
        if beside and leg.start < lane.end and lane.start < leg.end:
            return True
    return False


def middle_legs(way: Route, half: int) -> list[Leg | None]:
    """Return the legs between two corners, in channels or not, none for those askew."""
    spots = [spot_of(each) for each in way.points[1:-1]]
    return [square_leg(a, b, half) for a, b in pairwise(spots)]


def square_leg(a: Spot, b: Spot, half: int) -> Leg | None:
    """Return the leg between two spots, none where it is askew."""
    axis = 0 if a[1] == b[1] else 1
    if a[1 - axis] != b[1 - axis]:
        return None
    return Leg(axis, a[1 - axis], min(a[axis], b[axis]), max(a[axis], b[axis]), half)


def leg_between(around: Surroundings, a: Spot, b: Spot, half: int) -> Leg | None:
    """Return the leg between two spots, none where it is askew or in a channel."""
    leg = square_leg(a, b, half)
    return None if leg is None or _in_channel(around, leg) else leg
