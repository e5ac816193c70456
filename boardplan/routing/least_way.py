"""Least way: the straight or square way between two ends that costs least, looking no farther off than it could pay."""

from collections.abc import Mapping, Sequence

from boardplan.geometry.bends import turn_between, without_repeats
from boardplan.geometry.point import Point, bearing
from boardplan.routing.ends import End
from boardplan.routing.open_lines import FAR, UNITS, WEIGHT, OpenLines, units
from boardplan.routing.rays import Leaving, clear_between, distance_over, leavings, spot_of, turning_lines
from boardplan.routing.square_way import CORNER, Found, Search, least_cost

_NEARLY = 10.0
"""Degrees a straight cable may leave askew of its terminals. Common practice, no source."""
_ANY = FAR * WEIGHT
_SLACKS = (
    (units(60) * WEIGHT, False),
    (units(300) * WEIGHT, False),
    (units(1200) * WEIGHT, False),
    (_ANY, False),
    (_ANY, True),
)
"""How much more than the least a way may cost, one try after the other, and whether it may turn anywhere."""
EVERYTHING = 1e9


def straight_way(ends: tuple[End, End], lines: OpenLines, radius: float) -> tuple[tuple[Point, ...], float] | None:
    """Return the straight way between two ends that face each other, in line or nearly, with nothing between."""
    start, end = ends
    length = start.point.distance_to(end.point)
    if not length or length < start.straight + end.straight - 1e-6:
        return None
    heading = bearing(start.point, end.point)
    if not (_faces(start, heading) and _faces(end, heading + 180.0)):
        return None
    if lines.lanes and length > 2 * radius:
        return None
    if not clear_between(start.point, end.point, lines, ends):
        return None
    return (start.point, end.point), abs(start.point.x - end.point.x) + abs(start.point.y - end.point.y)


def _faces(end: End, heading: float) -> bool:
    wanted = end.heading if end.heading is not None else round(heading / 90.0) * 90.0
    return abs(turn_between(wanted, heading)) <= _NEARLY


def least_way(ends: tuple[End, End], lines: OpenLines, radius: float) -> tuple[tuple[Point, ...], float] | None:
    """Return the least costly square way, looking no farther off than it could pay to go."""
    starts, stops = (leavings(end, lines, radius) for end in ends)
    rays = [each.ray for each in starts], [each.ray for each in stops]
    if not rays[0] or not rays[1]:
        return None
    least, corners = least_cost(*rays, units(radius), lines.lane_weight)
    spots = spot_of(ends[0].point), spot_of(ends[1].point)
    for slack, exact in _SLACKS:
        bound = least + slack
        within = (bound - corners * CORNER) // lines.lane_weight
        near = [each for each in lines.barriers if distance_over(each.sides, *spots) <= within]
        turning = turning_lines((*starts, *stops), lines, radius, near, exact=exact)
        found = Search(lines, *rays, units(radius), turning).run(bound)
        if found is not None:
            points = _points(found, ends, starts[found.start], stops[found.end])
            return without_repeats(points), within / UNITS if slack < _ANY else EVERYTHING
    return None


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
