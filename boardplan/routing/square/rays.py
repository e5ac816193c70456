"""Rays: the first legs a cable can take out of an end."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.geometry.bends import tangent_length, turn_between
from boardplan.geometry.point import Point
from boardplan.routing.reach import OVER_OWN
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.ends import End
from boardplan.routing.square.least_left import CORNER
from boardplan.routing.square.open_lines import FAR, WEIGHT, Barrier, OpenLines, Spot, units
from boardplan.routing.square.square_way import Ray

_HEADINGS = ((0, 1), (1, 1), (0, -1), (1, -1))
_SQUARE = 1e-6  # degrees: a heading this near a quarter turn is one
LONGEST_STUB = 400.0
_STUB_STEP = 5.0
_STUB_LONGER = 20.0
"""How much longer the second stub is than the shortest that has room, in mm; the third is so much longer again."""


@dataclass(frozen=True, slots=True)
class Leaving:
    """A ray, and the corner before it where the end's own direction is not square, none where it is."""

    ray: Ray
    stub: Point | None = None


def leavings(end: End, lines: OpenLines, radius: float) -> tuple[Leaving, ...]:
    """Return every first leg a cable can take out of an end."""
    if end.heading is None:
        return tuple(Leaving(_ray(end, lines, (axis, sign), radius, choosing=True)) for axis, sign in _HEADINGS)
    quarter = end.heading / 90.0
    if abs(quarter - round(quarter)) * 90.0 < _SQUARE:
        axis, sign = _HEADINGS[round(quarter) % 4]
        return (Leaving(_ray(end, lines, (axis, sign), radius, choosing=False)),)
    return tuple(
        found
        for index, (axis, sign) in enumerate(_HEADINGS)
        if abs(turn := turn_between(end.heading, 90.0 * index)) < 90.0 - _SQUARE
        for found in _slanted(end, lines, (axis, sign), radius, abs(turn))
    )


def spot_of(point: Point) -> Spot:
    """Return a point in units."""
    return units(point.x), units(point.y)


def _ray(end: End, lines: OpenLines, heading: tuple[int, int], radius: float, *, choosing: bool) -> Ray:
    (axis, sign), spot = heading, spot_of(end.point)
    cost = round(OVER_OWN * WEIGHT) * _across_own(end, lines, axis, sign) if choosing else 0
    reach, _ = reach_and_stop(end, lines, axis, sign)
    return Ray(spot, axis, sign, reach, units(end.straight), cost, units(end.roomy(radius)))


def reach_and_stop(end: End, lines: OpenLines, axis: int, sign: int) -> tuple[int, Blocker | None]:
    """Return how far an end's first leg is open and what stops it; what the end lies on does not."""
    spot = spot_of(end.point)
    reach, stop = FAR, None
    for each in lines.barriers_at(axis, spot[1 - axis]):
        sides = sides_for(end, each, spot)
        if sides is not None and sides[1 - axis][0] < spot[1 - axis] < sides[1 - axis][1]:
            near, far = _ahead(spot[axis], sides[axis], sign)
            if far > 0 and max(near, 0) < reach:
                reach, stop = max(near, 0), each.blocker
    for lane in lines.lanes:
        aside = abs(lane.centre - spot[1 - axis])
        if lane.axis == axis and aside < lane.half + lines.half and not lines.is_lane(lane, spot[1 - axis]):
            near, _ = _ahead(spot[axis], (lane.start, lane.end), sign)
            if 0 <= near < reach:
                reach, stop = near, None
    return reach, stop


def _ahead(at: int, span: tuple[int, int], sign: int) -> tuple[int, int]:
    """Return how far ahead a stretch begins and ends."""
    return (span[0] - at, span[1] - at) if sign > 0 else (at - span[1], at - span[0])


def sides_for(end: End, barrier: Barrier, spot: Spot) -> tuple[tuple[int, int], tuple[int, int]] | None:
    """Return what a barrier holds off near an end: nothing of its own body, no clearance where it stands closer."""
    blocker = barrier.blocker
    if blocker.sort == "body" and blocker.thing == end.owner:
        return None
    if not barrier.holds(spot):
        return barrier.sides
    return None if blocker.sort == "edge" and end.over_edge else barrier.bare


def _across_own(end: End, lines: OpenLines, axis: int, sign: int) -> int:
    """Return how far a ray runs over the body it starts on."""
    spot, across = spot_of(end.point), 0
    for each in lines.barriers:
        own = each.blocker.sort == "body" and each.blocker.thing == end.owner
        if own and each.bare[1 - axis][0] < spot[1 - axis] < each.bare[1 - axis][1]:
            near, far = _ahead(spot[axis], each.bare[axis], sign)
            across += max(0, far - max(0, near))
    return across


def _slanted(end: End, lines: OpenLines, way: tuple[int, int], radius: float, turn: float) -> tuple[Leaving, ...]:
    """Return first legs that go on square after a stub in the end's own slanted direction, where they have room.

    The shortest stub with room, and some longer ones, each about twice as much longer as the one before.
    """
    axis, sign = way
    tangent = tangent_length(radius, turn)
    shortest = length = end.straight + tangent
    found: list[Leaving] = []
    while length <= LONGEST_STUB:
        corner = end.point.ahead(end.heading or 0.0, length)
        if not clear_between(end.point, corner, lines, (end,)):
            break  # nor is a longer one
        spot = spot_of(corner)
        span = lines.span(axis, spot[1 - axis], spot[axis])
        reach = 0 if span is None else span[1] - spot[axis] if sign > 0 else spot[axis] - span[0]
        if reach > 0:
            cost = units(length) * WEIGHT + CORNER
            found.append(Leaving(Ray(spot, axis, sign, reach, units(tangent), cost), corner))
            length += max(_STUB_LONGER, length - shortest)
        else:
            length += _STUB_STEP
    return tuple(found)


def clear_between(start: Point, stop: Point, lines: OpenLines, ends: Sequence[End]) -> bool:
    """Say whether a straight leg at any angle is open, whatever the ends given lie on left out."""
    for each in lines.barriers:
        held = [sides_for(end, each, spot_of(end.point)) for end in ends]
        if None in held:
            continue
        sides = each.bare if each.bare in held else each.sides
        if _crosses(spot_of(start), spot_of(stop), sides):
            return False
    return True


def _crosses(start: Spot, stop: Spot, sides: tuple[tuple[int, int], tuple[int, int]]) -> bool:
    """Say whether a leg runs strictly through a box (clipping by Liang and Barsky, 1984)."""
    near, far = 0.0, 1.0
    for a, b, (low, high) in zip(start, stop, sides, strict=True):
        if a == b:
            if not low < a < high:
                return False
            continue
        first, last = sorted(((low - a) / (b - a), (high - a) / (b - a)))
        near, far = max(near, first), min(far, last)
    return near < far
