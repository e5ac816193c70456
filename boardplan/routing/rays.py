"""Rays: the first legs a cable can take out of an end, and the lines on which it may turn."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.geometry.bends import tangent_length, turn_between
from boardplan.geometry.point import Point
from boardplan.routing.ends import End
from boardplan.routing.open_lines import FAR, UNITS, WEIGHT, Barrier, OpenLines, Spot, units
from boardplan.routing.square_way import CORNER, Ray

_HEADINGS = ((0, 1), (1, 1), (0, -1), (1, -1))
_SQUARE = 1e-6  # degrees: a heading this near a quarter turn is one
_LONGEST_STUB = 400.0
_STUB_STEP = 5.0
_OWN_BODY = 2 * WEIGHT
"""What a unit across the cable's own component costs on top, so that it leaves a busbar by the near side."""
PITCH = 10.0
"""Cables turn on lines this far apart, in mm: tidy to lay and to measure."""


@dataclass(frozen=True, slots=True)
class Leaving:
    """A ray, and the corner before it where the end's own direction is not square, none where it is."""

    ray: Ray
    stub: Point | None = None


def leavings(end: End, lines: OpenLines, radius: float) -> tuple[Leaving, ...]:
    """Return every first leg a cable can take out of an end."""
    if end.heading is None:
        return tuple(Leaving(_ray(end, lines, axis, sign, choosing=True)) for axis, sign in _HEADINGS)
    quarter = end.heading / 90.0
    if abs(quarter - round(quarter)) * 90.0 < _SQUARE:
        axis, sign = _HEADINGS[round(quarter) % 4]
        return (Leaving(_ray(end, lines, axis, sign, choosing=False)),)
    return tuple(
        found
        for index, (axis, sign) in enumerate(_HEADINGS)
        if abs(turn := turn_between(end.heading, 90.0 * index)) < 90.0 - _SQUARE
        for found in _slanted(end, lines, (axis, sign), radius, abs(turn))
    )


def spot_of(point: Point) -> Spot:
    """Return a point in units."""
    return units(point.x), units(point.y)


def _ray(end: End, lines: OpenLines, axis: int, sign: int, *, choosing: bool) -> Ray:
    spot = spot_of(end.point)
    cost = _OWN_BODY * _across_own(end, lines, axis, sign) if choosing else 0
    reach = _reach(end, lines, axis, sign)
    return Ray(spot, axis, sign, reach, units(end.straight), cost)


def _reach(end: End, lines: OpenLines, axis: int, sign: int) -> int:
    """Return how far an end's first leg is open; what the end lies on does not block it."""
    spot, reach = spot_of(end.point), FAR
    for each in lines.barriers:
        sides = _sides_for(end, each, spot)
        if sides is None or not sides[1 - axis][0] < spot[1 - axis] < sides[1 - axis][1]:
            continue
        low, high = sides[axis]
        near, far = (low - spot[axis], high - spot[axis]) if sign > 0 else (spot[axis] - high, spot[axis] - low)
        if far > 0:
            reach = min(reach, max(near, 0))
    for lane in lines.lanes:
        if lane.axis == axis and 0 < abs(lane.line - spot[1 - axis]) < lane.half + lines.half:
            near = (lane.start - spot[axis]) * sign if sign > 0 else spot[axis] - lane.end
            reach = min(reach, near) if near >= 0 else reach
    return reach


def _sides_for(end: End, barrier: Barrier, spot: Spot) -> tuple[tuple[int, int], tuple[int, int]] | None:
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
        if each.blocker.sort == "body" and each.blocker.thing == end.owner:
            if each.bare[1 - axis][0] < spot[1 - axis] < each.bare[1 - axis][1]:
                low, high = each.bare[axis]
                across += max(0, high - max(low, spot[axis]) if sign > 0 else min(high, spot[axis]) - low)
    return across


def _slanted(end: End, lines: OpenLines, way: tuple[int, int], radius: float, turn: float) -> tuple[Leaving, ...]:
    """Return the first leg that goes on square after a stub in the end's own slanted direction, if it has room."""
    axis, sign = way
    tangent = tangent_length(radius, turn)
    length = end.straight + tangent
    while length <= _LONGEST_STUB:
        corner = end.point.ahead(end.heading or 0.0, length)
        spot = spot_of(corner)
        span = lines.span(axis, spot[1 - axis], spot[axis])
        if span is not None:
            reach = span[1] - spot[axis] if sign > 0 else spot[axis] - span[0]
            if reach > 0 and clear_between(end.point, corner, lines, (end,)):
                cost = units(length) * WEIGHT + CORNER
                return (Leaving(Ray(spot, axis, sign, reach, units(tangent), cost), corner),)
        length += _STUB_STEP
    return ()


def clear_between(start: Point, stop: Point, lines: OpenLines, ends: Sequence[End]) -> bool:
    """Say whether a straight leg at any angle is open, whatever the ends given lie on left out."""
    for each in lines.barriers:
        held = [_sides_for(end, each, spot_of(end.point)) for end in ends]
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


def turning_lines(
    leaving: Sequence[Leaving], lines: OpenLines, radius: float, extra: Sequence[Spot] = ()
) -> tuple[list[int], list[int]]:
    """Return where a way may turn: x of upright and y of level lines, in units, in rising order.

    Lines of an even pitch, and those the ends, their bends and the channels ask for.
    """
    turning: tuple[set[int], set[int]] = set(), set()
    for each in leaving:
        ray, tight = each.ray, units(radius)
        turning[ray.axis].update((ray.at, ray.at + ray.sign * (ray.straight + tight)))
        turning[1 - ray.axis].update((ray.line - 2 * tight, ray.line, ray.line + 2 * tight))
    for lane in lines.lanes:
        turning[1 - lane.axis].add(lane.line)
    for spot in extra:
        turning[0].add(spot[0])
        turning[1].add(spot[1])
    return sorted(turning[0].union(_even(lines, 0))), sorted(turning[1].union(_even(lines, 1)))


def _even(lines: OpenLines, axis: int) -> range:
    """Return the lines of even pitch over all boards."""
    edges = [each.bare[axis] for each in lines.barriers if each.blocker.sort == "edge"]
    inner = [side for low, high in edges for side in (low, high)]
    low, high = (min(inner), max(inner)) if inner else (0, 0)
    margin = units(_BEYOND)
    pitch = units(PITCH)
    first = math.ceil((low + margin) / pitch) * pitch
    return range(first, high - margin + 1, pitch)


_BEYOND = 5000.0
_ = UNITS
