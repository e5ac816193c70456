"""Least way: the straight or square way between two ends that costs least, looking no farther off than it could pay."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from boardplan.geometry.bends import turn_between, without_repeats
from boardplan.geometry.point import Box, Point, bearing, box_around
from boardplan.routing.ends import End
from boardplan.routing.open_lines import FAR, UNITS, WEIGHT, OpenLines, box_of_lane, units
from boardplan.routing.rays import Leaving, clear_between, leavings, spot_of, turning_lines
from boardplan.routing.route import Reach
from boardplan.routing.square_way import CORNER, Found, Ray, Search, least_cost

_NOISE = 0.01  # mm: more than numbers are rounded by
_NEARLY = 10.0
"""Degrees a straight cable may leave askew of its terminals. Common practice, no source."""
_ANY = FAR * WEIGHT
_SLACKS = (*((units(30 * 1.3**step) * WEIGHT, False) for step in range(18)), (_ANY, False), (_ANY, True))
"""How much more than the least a way may cost, one try after the other, and whether it may turn anywhere."""
_DOUBTS = {6: 8, 13: 400}
"""After how many tries to ask whether an end is shut in, and how many corners to look at for it."""
EVERYTHING = 1e12


@dataclass(frozen=True, slots=True)
class Tried:
    """The corners of a way, none where there is none, and how far off things lie that could change that."""

    points: tuple[Point, ...] | None
    reach: Reach


def straight_way(ends: tuple[End, End], lines: OpenLines, radius: float) -> Tried | None:
    """Return the straight way between two ends that face each other, in line or nearly, with nothing between."""
    start, end = ends
    length = start.point.distance_to(end.point)
    if not length or length < start.straight + end.straight - 1e-6:
        return None
    heading = bearing(start.point, end.point)
    if max(_askew(start, heading), _askew(end, heading + 180.0)) > _NEARLY:
        return None
    askew = length * math.sin(math.radians(max(_askew(start, heading), _askew(end, heading + 180.0))))
    if askew >= 2 * radius or not clear_between(start.point, end.point, lines, ends):
        return None
    between = abs(start.point.x - end.point.x) + abs(start.point.y - end.point.y)
    return Tried((start.point, end.point), Reach(start.point, end.point, between + _NOISE))


def _askew(end: End, heading: float) -> float:
    """Return how many degrees a heading is off the one an end asks for, off square where it asks for none."""
    wanted = end.heading if end.heading is not None else round(heading / 90.0) * 90.0
    return abs(turn_between(wanted, heading))


def least_way(ends: tuple[End, End], lines: OpenLines, radius: float, most: float = EVERYTHING) -> Tried:
    """Return the least costly square way, looking no farther off than it could pay to go.

    `most` is how much more than the least it may cost, in mm.
    """
    leaving = [leavings(end, lines, radius) for end in ends]
    starts, stops = ([each.ray for each in some] for some in leaving)
    reach = Reach(ends[0].point, ends[1].point, EVERYTHING)
    for number, (slack, exact) in enumerate(_SLACKS if starts and stops else ()):
        if slack > most * UNITS * WEIGHT:
            break
        if number in _DOUBTS and _shut_in(ends, lines, radius, leaving, _DOUBTS[number]):
            return Tried(None, Reach(ends[0].point, ends[1].point, EVERYTHING))
        trial = _Trial(ends, lines, radius, (starts, stops), slack)
        reach = trial.reach
        if trial.hopeless:
            continue
        near = [each for each in lines.barriers if reach.touches(each.box)]
        turning = turning_lines([*leaving[0], *leaving[1]], lines, radius, near, exact=exact)
        owners = ends[0].owner or "-", ends[1].owner or "-"
        found = Search(lines, starts, stops, units(radius), turning, near, owners, trial.weights).run(trial.bound)
        if found is not None:
            points = _points(found, ends, leaving[0][found.start], leaving[1][found.end])
            return Tried(without_repeats(points), reach)
    return Tried(None, reach)


def _shut_in(
    ends: tuple[End, End], lines: OpenLines, radius: float, leaving: Sequence[Sequence[Leaving]], most: int
) -> bool:
    """Say whether one of the ends is shut in, so that looking farther and farther off from the other is in vain."""
    near = list(lines.barriers)
    turning = turning_lines([*leaving[0], *leaving[1]], lines, radius, near, exact=True)
    rays = [[each.ray for each in some] for some in leaving]
    owners = [end.owner or "-" for end in ends]
    return any(
        Search(lines, rays[one], rays[other], units(radius), turning, near, (owners[one], owners[other])).shut_in(most)
        for one, other in ((1, 0), (0, 1))
    )


class _Trial:
    """How far a search looks that may cost a slack more than the least: its bound, its weights, its reach."""

    def __init__(
        self, ends: tuple[End, End], lines: OpenLines, radius: float, rays: tuple[list[Ray], list[Ray]], slack: int
    ) -> None:
        """Take lengths along an axis as cheap only where a channel of that axis lies near enough to be used."""
        self._ends, self._rays, self._radius = ends, rays, units(radius)
        self.weights = (lines.lane_weight, lines.lane_weight) if lines.lanes else (WEIGHT, WEIGHT)
        least, corners = least_cost(*self._rays, self._radius, self.weights)
        slanted = any(spot_of(end.point) != ray.spot for end, some in zip(ends, rays, strict=True) for ray in some)
        anything = slack >= _ANY or slanted
        self.bound, self._corners, self._anything = least + slack, corners, anything
        self.reach = self._reach()
        if lines.lanes:
            axes = {lane.axis for lane in lines.lanes if self.reach.touches(box_of_lane(lane))}
            self.weights = lines.lane_weight if 0 in axes else WEIGHT, lines.lane_weight if 1 in axes else WEIGHT
            self.reach = self._reach()

    @property
    def hopeless(self) -> bool:
        """Whether no way can cost so little, now that it is known which channels are near enough."""
        return least_cost(*self._rays, self._radius, self.weights)[0] > self.bound

    def _reach(self) -> Reach:
        """Return how far off a way can lie that costs no more than the bound."""
        sure = [self._sure(end, rays) for end, rays in zip(self._ends, self._rays, strict=True)]
        room = self.bound - self._corners * CORNER - sum(cost for _, _, cost in sure)
        return Reach(
            sure[0][0],
            sure[1][0],
            limit=EVERYTHING if self._anything else room / WEIGHT / UNITS + _NOISE,
            weight_x=self.weights[0] / WEIGHT,
            weight_y=self.weights[1] / WEIGHT,
            legs=tuple(leg for _, leg, _ in sure if leg is not None),
        )

    def _sure(self, end: End, rays: list[Ray]) -> tuple[Point, Box | None, int]:
        """Return up to where a way is sure to go straight, that leg as a box, and what it costs at least."""
        if len(rays) > 1 or spot_of(end.point) != rays[0].spot:
            return end.point, None, 0
        length = rays[0].straight
        x, y = rays[0].ahead(length)
        point = Point(x / UNITS, y / UNITS)
        return point, box_around((end.point, point)).grown(_NOISE), length * self.weights[rays[0].axis]


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
