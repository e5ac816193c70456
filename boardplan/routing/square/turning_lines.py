"""Turning lines: the lines on which a way may turn, and which stretches its legs on them must touch.

They are those that the ends, their bends and the channels ask for, and those just past what blocks. A leg past
what blocks goes by it: on another stretch of such a line it has no business. So what blocks matters only to ways
that come by it, and a change far off a way can't move the way.
"""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from itertools import product
from typing import TypeAlias

from boardplan.routing.square.open_lines import UNITS, Barrier, OpenLines, Span, units
from boardplan.routing.square.square_way import BEND_ROOM, Ray, Turning

PITCH = 5.0
"""Cables turn on whole multiples of this, in mm, wherever nothing asks for another place."""
_FINE = 1.0
_SHARES = (0.0, 0.15, BEND_ROOM, 0.45, 0.6, 1.0)
"""How far off what it goes round a winding way may turn, in radii: near on one side of a corner, far on the other."""
_Asides: TypeAlias = tuple[tuple[int, int], ...]


def turning_lines(
    rays: Sequence[Ray], lines: OpenLines, radius: float, near: Sequence[Barrier], *, exact: bool, winding: bool = False
) -> Turning:
    """Return where a way may turn: x of upright and y of level lines, in units, with what legs on them must touch.

    Lines past what blocks are on whole PITCH, tidy to lay and to measure; where `exact` also close to it. A `winding`
    way may turn on whole mm, nearer and farther off, and turn back at once beside what it goes round, two bends on.
    """
    turning: Turning = ({}, {})
    asides = _asides(radius, exact=exact, winding=winding)
    for each in near:
        beside = [[_past(side, *aside) for aside in asides] for side in each.sides]
        for axis in (0, 1):
            touched = min(low for low, _ in beside[1 - axis]), max(high for _, high in beside[1 - axis])
            for line in {line for pair in beside[axis] for line in pair}:
                turning[axis].setdefault(line, []).append(touched)
    anywhere = set(_anywhere(rays, lines, units(radius)))
    if winding:
        for axis, line, touched in _by_corners(anywhere, near, units(radius)):
            turning[axis].setdefault(line, []).append(touched)
    for axis, line in anywhere:
        turning[axis][line] = []
    return turning


def farthest_past(radius: float, *, exact: bool, winding: bool = False) -> float:
    """Return how far off a barrier its turning lines and the bends it blocks lie at most, in mm."""
    return max((aside + pitch) / UNITS for aside, pitch in _asides(radius, exact=exact, winding=winding))


def _anywhere(rays: Sequence[Ray], lines: OpenLines, radius: int) -> Iterable[tuple[int, int]]:
    """Yield axis and line of what ends, their bends and channels ask for."""
    for ray in rays:
        yield ray.axis, ray.at
        for aside in (-2 * radius, 0, 2 * radius):
            for straight in {ray.straight, max(ray.straight, ray.roomy)}:
                yield ray.axis, ray.at + ray.sign * (straight + radius) + aside
            yield 1 - ray.axis, ray.line + aside
    for lane in lines.lanes:
        yield 1 - lane.axis, lane.line


def _by_corners(
    anywhere: Iterable[tuple[int, int]], near: Iterable[Barrier], radius: int
) -> Iterator[tuple[int, int, Span]]:
    """Yield axis and line, and what legs on it must touch, where a bend from a line given just clears a corner.

    In a narrow place, or where ways turn back at once, there is room for a bend between two corners and nowhere else.
    Slanting sides, which are many boxes, are left out.
    """
    given = [sorted(line for on, line in anywhere if on == axis) for axis in (0, 1)]
    for each in (one for one in near if not one.blocker.parts):
        margin, reach = each.body[2], radius + each.body[2]
        for axis, sign in product((0, 1), (-1, 1)):
            corner, lines = each.bare[axis][max(sign, 0)], given[axis]
            touched = corner - reach, corner + reach
            for line in lines[bisect_left(lines, touched[0]) : bisect_right(lines, touched[1])]:
                off = _just_clear(sign * (line - corner), radius, margin)
                if off is not None:
                    for beyond in _past(each.bare[1 - axis], off, units(_FINE)):
                        yield 1 - axis, beyond, touched


def _just_clear(off: int, radius: int, margin: int) -> int | None:
    """Return how far beyond a corner one leg of a bend lies that just clears it, for how far beyond it the other lies.

    Nearer than the margin the bend swings past outside of the corner, farther it goes round it; none where none does.
    """
    round_it = off >= margin
    far = radius - off if round_it else radius + off
    span = radius - margin if round_it else radius + margin
    if not 0 < far <= span:
        return None
    left = math.sqrt(span * span - far * far)
    return math.ceil(radius - left if round_it else left - radius)


def _asides(radius: float, *, exact: bool, winding: bool) -> _Asides:
    """Return how far off what blocks lines lie, each with the pitch they keep."""
    kept = [(share * radius, PITCH) for share in (0.0, BEND_ROOM)]
    if winding:
        kept = [(share * radius, _FINE) for share in (*_SHARES, 2.0, 2.0 + BEND_ROOM)]
    close = [(share * radius, 1 / UNITS) for share in (0.0, BEND_ROOM, 1.0)] if exact else []
    return tuple((units(aside), units(pitch)) for aside, pitch in (*kept, *close))


def _past(side: Span, aside: int, pitch: int) -> Span:
    """Return the lines just past both sides."""
    return (side[0] - aside) // pitch * pitch, -(-(side[1] + aside) // pitch) * pitch
