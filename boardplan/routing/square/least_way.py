"""Least way: the straight or square way between two ends that costs least, looking no farther off than it could pay."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from boardplan.geometry.bends import turn_between, without_repeats
from boardplan.geometry.point import Point, bearing, box_around
from boardplan.geometry.self_crossing import crosses_itself
from boardplan.routing.reach import Reach
from boardplan.routing.square.ends import End
from boardplan.routing.square.far_off import EVERYTHING, NOISE, FarOff
from boardplan.routing.square.open_lines import FAR, UNITS, WEIGHT, Lane, OpenLines, Spot, units
from boardplan.routing.square.open_parts import open_parts_of
from boardplan.routing.square.pulled_tight import may_be_loose, pulled_tight
from boardplan.routing.square.rays import Leaving, clear_between, leavings, spot_of
from boardplan.routing.square.square_way import Found, Ray, Search, Turning
from boardplan.routing.square.turning_lines import farthest_past, turning_lines
from boardplan.routing.square.untangled_search import UntangledSearch

_NEARLY = 10.0
"""Degrees a straight cable may leave askew of its terminals. Common practice, no source."""
_ANY = FAR * WEIGHT
_SLACKS = (*((units(60 * 2**step) * WEIGHT, False) for step in range(6)), (_ANY, False), (_ANY, True))
"""How much more than the least a way may cost, one try after the other, and whether it may turn close to bodies."""
WINDING = 1.25
"""From how many times the least on a way is looked at once more, with more places to turn back at."""
_LITTLE = 10.0  # mm: a way may become so much longer by a small change
_APART_AFTER = 2
"""After how many searches in vain to ask whether the ends lie in parts of the wall that don't hang together."""
_DOUBTS = {3: 8, 5: 400}
"""After how many searches in vain to ask whether an end is shut in, and how many corners to look at for it."""
_Rays: TypeAlias = tuple[list[Ray], list[Ray]]


@dataclass(frozen=True, slots=True)
class _Asked:
    """What is asked for: a way between two ends that begins and ends with some rays, with bends of a radius in mm."""

    ends: tuple[End, End]
    lines: OpenLines
    radius: float
    rays: _Rays
    search: type[Search]


@dataclass(frozen=True, slots=True)
class Tried:
    """The corners of a way, none where there is none, and how far off things lie that could change that.

    `apart` says that there is none at any angle: the ends lie in parts of the wall that don't hang together.
    """

    points: tuple[Point, ...] | None
    reach: Reach
    apart: bool = False


def straight_way(ends: tuple[End, End], lines: OpenLines, radius: float) -> Tried | None:
    """Return the straight way between two ends that face each other, in line or nearly, with nothing between."""
    start, end = ends
    if not face_each_other(start, end, radius) or not clear_between(start.point, end.point, lines, ends):
        return None
    if any(_by_its_wall(spot_of(start.point), spot_of(end.point), lane, lines) for lane in lines.lanes):
        return None
    between = abs(start.point.x - end.point.x) + abs(start.point.y - end.point.y)
    return Tried((start.point, end.point), Reach(start.point, end.point, between + NOISE))


def _by_its_wall(a: Spot, b: Spot, lane: Lane, lines: OpenLines) -> bool:
    """Say whether a straight way runs along a channel by a wall of it: half on the wall, or with no room beside it.

    It may where it is a lane, or lies so near the middle that there is room for a cable on both sides.
    """
    axis, across = lane.axis, 1 - lane.axis
    along = abs(b[axis] - a[axis])
    start, stop = max(min(a[axis], b[axis]), lane.start), min(max(a[axis], b[axis]), lane.end)
    if along <= abs(b[across] - a[across]) or start >= stop:
        return False
    slope = (b[across] - a[across]) / (b[axis] - a[axis])
    first, last = sorted(a[across] + slope * (at - a[axis]) - lane.centre for at in (start, stop))
    nearest, farthest = max(first, -last, 0), max(-first, last)
    if nearest >= lane.half + lines.half or (first == last and lines.is_lane(lane, a[across])):
        return False
    return farthest >= lane.half - 2 * lines.half


def face_each_other(start: End, end: End, radius: float) -> bool:
    """Say whether a straight way between two ends leaves both about in their directions."""
    length = start.point.distance_to(end.point)
    if not length or length < start.straight + end.straight - 1e-6:
        return False
    heading = bearing(start.point, end.point)
    askew = max(_askew(start, heading), _askew(end, heading + 180.0))
    return askew <= _NEARLY and length * math.sin(math.radians(askew)) < 2 * radius


def _askew(end: End, heading: float) -> float:
    """Return how many degrees a heading is off the one an end asks for, off square where it asks for none."""
    wanted = end.heading if end.heading is not None else round(heading / 90.0) * 90.0
    return abs(turn_between(wanted, heading))


def untangled_way(ends: tuple[End, End], lines: OpenLines, radius: float, most: float = EVERYTHING) -> Tried:
    """Return the least costly square way that does not cross itself; any change can matter to it."""
    tried = least_way(ends, lines, radius, most, search=UntangledSearch)
    return replace(tried, reach=Reach(ends[0].point, ends[1].point, EVERYTHING))


def least_way(
    ends: tuple[End, End],
    lines: OpenLines,
    radius: float,
    most: float = EVERYTHING,
    expected: float = 0.0,
    search: type[Search] = Search,
) -> Tried:
    """Return the least costly square way.

    `most` is how much more than the least it may cost, `expected` how much more it cost before a change, in mm.
    How far off it looks for one makes no difference: what lies farther off than the way's cost is no part of it.
    """
    leaving = leavings(ends[0], lines, radius), leavings(ends[1], lines, radius)
    nowhere = Tried(None, Reach(ends[0].point, ends[1].point, EVERYTHING))
    if not leaving[0] or not leaving[1]:
        return nowhere
    rays = [each.ray for each in leaving[0]], [each.ray for each in leaving[1]]
    straight = (box_around((ends[0].point, ends[1].point)),) if face_each_other(*ends, radius) else ()
    far_off, dearest = FarOff(ends, lines, rays, radius, straight), round(most * UNITS) * WEIGHT
    asked = _Asked(ends, lines, radius, rays, search)
    for in_vain, (slack, exact) in enumerate(_slacks(expected)):
        if in_vain == _APART_AFTER and slack < dearest and _apart(lines, rays):
            square = all(ray.spot == spot_of(end.point) for end, some in zip(ends, rays, strict=True) for ray in some)
            return Tried(None, nowhere.reach, apart=square)
        if in_vain in _DOUBTS and _shut_in(ends, lines, radius, rays, _DOUBTS[in_vain]):
            return nowhere
        cost, margin = far_off.least + min(slack, dearest), farthest_past(radius, exact=exact)
        reach = far_off.reach(cost, margin)
        found = _found(asked, (reach, cost, exact))
        if found is not None:
            reach = nowhere.reach if exact else far_off.reach(found.cost, margin)
            found, reach = _shortened(asked, (far_off, reach, found), winding=not exact)
            points = _points(found, ends, leaving[0][found.start], leaving[1][found.end])
            return Tried(without_repeats(points), reach)
        if slack >= dearest:
            return Tried(None, reach)
    return nowhere


def _shortened(asked: _Asked, before: tuple[FarOff, Reach, Found], *, winding: bool) -> tuple[Found, Reach]:
    """Return the best way beside a found one, where it may be longer than need be, and what can matter to it."""
    far_off, reach, found = before
    if _tangled(found):
        return found, reach
    if winding and found.cost > WINDING * far_off.least:
        found, reach = _wound(asked, far_off, found)
    return _pulled(asked, (far_off, reach, found)), reach


def _tangled(found: Found) -> bool:
    """Say whether a way crosses itself: another one will be looked for in its stead, so that it need not be short."""
    return crosses_itself([Point(*spot) for spot in found.spots])


def _wound(asked: _Asked, far_off: FarOff, first: Found) -> tuple[Found, Reach]:
    """Return the best way that may also turn back at once beside what it goes round, and what can matter to it.

    Whether to look for such a way at all hangs on what the first one costs, so that all matters that could make
    that one cost less than it takes for a winding one.
    """
    margin = farthest_past(asked.radius, exact=False, winding=True)
    reach = far_off.reach(first.cost, margin)
    found = _found(asked, (reach, first.cost, False), winding=True) or first
    return found, far_off.reach(max(found.cost, math.ceil(WINDING * far_off.least)), margin)


def _pulled(asked: _Asked, before: tuple[FarOff, Reach, Found]) -> Found:
    """Return a found way pulled tight among what is within reach, where it may be loose."""
    far_off, reach, found = before
    if not may_be_loose(found, far_off.least):
        return found
    rays, near = asked.rays, asked.lines.near(reach)
    chosen, radius = ([rays[0][found.start]], [rays[1][found.end]]), units(asked.radius)

    def search(turning: Turning) -> Search:
        return asked.search(asked.lines, chosen, radius, turning, near, spared(asked.ends, rays))

    return pulled_tight(found, radius, search)


def _slacks(expected: float) -> Iterator[tuple[int, bool]]:
    """Yield how much more than the least a way may cost, first as much as expected and a little."""
    first = units(expected + _LITTLE) * WEIGHT
    if expected:
        yield first, False
    yield from (each for each in _SLACKS if not expected or each[0] > first)


def _found(asked: _Asked, within: tuple[Reach, int, bool], *, winding: bool = False) -> Found | None:
    """Return the best way within reach that costs no more than so much, turning close to bodies where exact."""
    lines, rays, (reach, cost, exact) = asked.lines, asked.rays, within
    near, past = lines.near(reach), lines.past(reach)
    turning = turning_lines([*rays[0], *rays[1]], lines, asked.radius, past, exact=exact, winding=winding)
    owners = spared(asked.ends, rays)
    return asked.search(lines, rays, units(asked.radius), turning, near, owners).run(cost)


def spared(ends: tuple[End, End], rays: _Rays) -> tuple[str, str]:
    """Return the owners that bends next to the ends need not clear, "-" for none: after a slanted stub all clear it."""
    first, last = (
        end.owner if end.owner and some[0].spot == spot_of(end.point) else "-"
        for end, some in zip(ends, rays, strict=True)
    )
    return first, last


def _apart(lines: OpenLines, rays: _Rays) -> bool:
    """Say whether the first legs of both ends lead into parts of the wall that don't hang together."""
    if any(one.axis == other.axis and one.line == other.line for one in rays[0] for other in rays[1]):
        return False  # they may run straight into each other, over bodies that only ends may run over
    open_parts = open_parts_of(lines)
    parts = [set[int]().union(*(open_parts.along(ray.spot, ray.ahead(ray.reach)) for ray in some)) for some in rays]
    return parts[0].isdisjoint(parts[1])


def _shut_in(ends: tuple[End, End], lines: OpenLines, radius: float, rays: _Rays, most: int) -> bool:
    """Say whether one of the ends is shut in, so that looking farther and farther off from the other is in vain."""
    turning = turning_lines([*rays[0], *rays[1]], lines, radius, lines.turned_past, exact=True)
    bodies = [each for each in lines.barriers if each.blocker.sort != "edge"]  # a bend may come over an edge
    owners = spared(ends, rays)
    return any(
        Search(lines, (rays[one], rays[other]), units(radius), turning, bodies, (owners[one], owners[other])).shut_in(
            most
        )
        for one, other in ((1, 0), (0, 1))
    )


def _points(found: Found, ends: tuple[End, End], first: Leaving, last: Leaving) -> Sequence[Point]:
    """Return the corners in mm, on exactly the lines of the ends they belong to."""
    exact: Sequence[Mapping[int, float]] = _exact_lines(ends, first, last)
    points = [Point(exact[0].get(x, x / UNITS), exact[1].get(y, y / UNITS)) for x, y in found.spots]
    if first.stub is not None:
        points.insert(0, ends[0].point)
    if last.stub is not None:
        points.append(ends[1].point)
    return points


def _exact_lines(ends: tuple[End, End], first: Leaving, last: Leaving) -> tuple[dict[int, float], dict[int, float]]:
    known: tuple[dict[int, float], dict[int, float]] = {}, {}
    for end, leaving in zip(ends, (first, last), strict=True):
        for point in (end.point, leaving.stub):
            if point is not None:
                known[0].setdefault(units(point.x), point.x)
                known[1].setdefault(units(point.y), point.y)
    return known
