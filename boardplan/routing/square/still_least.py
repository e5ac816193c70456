"""Still least: whether a way that was the least costly one is sure to be so still, after what blocks changed somewhere.

All ways that go by nothing that changed are open as before, cost as much as before, and equal ones are chosen among as
before. So the way is still the one that a search would find, if it goes by nothing that changed itself and no way that
does costs as little; and it is still not worth pulling tight, if no tighter one that does could be.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product

from boardplan.geometry.point import Box, Point, around_boxes, box_around
from boardplan.routing.reach import Reach
from boardplan.routing.square.ends import End
from boardplan.routing.square.far_off import FarOff
from boardplan.routing.square.least_left import BENT_SOON, CORNER
from boardplan.routing.square.least_way import WINDING, spared
from boardplan.routing.square.open_lines import UNITS, WEIGHT, Barrier, OpenLines, Spot, units
from boardplan.routing.square.passing import Passing
from boardplan.routing.square.pulled_tight import lines_beside, may_be_loose, worth_pulling
from boardplan.routing.square.rays import leavings, spot_of
from boardplan.routing.square.square_way import Found, Ray, Turning
from boardplan.routing.square.turning_lines import turning_lines


def still_least(
    ends: tuple[End, End],
    lines: OpenLines,
    points: Sequence[Point],
    reach: Reach,
    changed: Iterable[Box],
    radius: float,
) -> bool:
    """Say whether `least_way` is sure to return a way again that it once returned, with its reach.

    `changed` are the boxes, grown by what the cable keeps off them, of all within reach that has come or gone; the ends
    and all channels must be as they were. It says no where it would take long to be sure.
    """
    leaving = leavings(ends[0], lines, radius), leavings(ends[1], lines, radius)
    if any(not some or some[0].stub for some in leaving):
        return False
    rays = [each.ray for each in leaving[0]], [each.ray for each in leaving[1]]
    least = FarOff(ends, lines, rays, radius).least
    cost = least + round(reach.excess * UNITS * WEIGHT)
    box = around_boxes(changed).grown(reach.margin)
    legs = (*reach.legs, *(box_around(pair) for pair in pairwise(points)))
    if cost > WINDING * least or any(leg.touches(box) for leg in legs):
        return False
    found = next(_alike(points, rays, lines, units(radius)), None)
    if found is None or found.cost != cost:  # straight, or already pulled tight
        return False
    near = lines.near(reach, box)
    by = _By(lines, units(radius), near, spared(ends, rays), box)
    turning = turning_lines([*rays[0], *rays[1]], lines, radius, lines.past(reach, box), exact=False)
    if by.costs_at_most(cost, rays, turning):
        return False
    if not may_be_loose(found, least):
        return True
    chosen = [rays[0][found.start]], [rays[1][found.end]]
    return not by.costs_at_most(worth_pulling(found), chosen, lines_beside(found.spots, units(radius)))


@dataclass(frozen=True)
class _By:
    """Ways that touch a box, in mm: the lines open to them, their radius in units, and what their bends must clear."""

    lines: OpenLines
    radius: int
    near: Sequence[Barrier]
    owners: tuple[str, str]
    box: Box

    def costs_at_most(self, bound: int, rays: tuple[list[Ray], list[Ray]], turning: Turning) -> bool:
        """Say whether one of them costs no more than a bound."""
        left, bottom, right, top = map(units, self.box)
        sides = (left, right), (bottom, top)
        return Passing(self.lines, rays, self.radius, turning, self.near, self.owners).costs_at_most(bound, sides)


def _alike(
    points: Sequence[Point], rays: tuple[list[Ray], list[Ray]], lines: OpenLines, radius: int
) -> Iterator[Found]:
    """Yield a way as a search would have found it, if it was one and left it as it was."""
    spots = tuple(spot_of(each) for each in points)
    square = all(a[0] == b[0] or a[1] == b[1] for a, b in pairwise(spots))
    for (start, ray), (end, goal) in product(enumerate(rays[0]), enumerate(rays[1])) if square else ():
        both = (ray, spots), (goal, spots[::-1])
        if len(spots) > 2 and all(_begins(*each) for each in both):  # noqa: PLR2004 - not straight
            cost = sum(_leg_cost(lines, a, b) for a, b in pairwise(spots)) + CORNER * (len(spots) - 2)
            cost += sum(one.cost + BENT_SOON * _bent_soon(one, some[1], radius) for one, some in both)
            yield Found(spots, cost, start, end)


def _begins(ray: Ray, spots: Sequence[Spot]) -> bool:
    """Say whether the first leg of a way runs along a ray."""
    corner = spots[1]
    ahead = (corner[ray.axis] - ray.at) * ray.sign
    return ray.spot == spots[0] and corner[1 - ray.axis] == ray.line and ahead > 0


def _bent_soon(ray: Ray, corner: Spot, radius: int) -> bool:
    """Say whether the first bend begins sooner than asked."""
    return abs(corner[ray.axis] - ray.at) - radius < ray.roomy


def _leg_cost(lines: OpenLines, a: Spot, b: Spot) -> int:
    axis = 0 if a[1] == b[1] else 1
    return lines.cost(axis, a[1 - axis], a[axis], b[axis])
