"""Far off: how far off a way can lie that costs no more than so much, and so what can matter to it."""

from collections.abc import Sequence

from boardplan.geometry.point import Box, Point, box_around
from boardplan.routing.reach import Head, Reach
from boardplan.routing.square.ends import End
from boardplan.routing.square.least_left import by_lane
from boardplan.routing.square.open_lines import UNITS, WEIGHT, OpenLines, Spot, units
from boardplan.routing.square.rays import LONGEST_STUB, spot_of
from boardplan.routing.square.square_way import Ray, least_cost

EVERYTHING = 1e12
NOISE = 0.01  # mm: more than numbers are rounded by
_STUB_SAVES = round(units(LONGEST_STUB) * 0.42) * WEIGHT
"""What a slanted stub is shorter than its lengths along x and y, at most: 2 / sqrt(2) - 1 of it."""


class FarOff:
    """How far off ways between two ends can lie, in terms of what they cost."""

    def __init__(
        self,
        ends: tuple[End, End],
        lines: OpenLines,
        rays: tuple[Sequence[Ray], Sequence[Ray]],
        radius: float,
        legs: tuple[Box, ...] = (),
    ) -> None:
        """Take the legs that every way begins and ends with apart; `legs` are more boxes that matter, in mm."""
        self.least, self._corners = least_cost(rays, units(radius), lines)
        sure = [_sure(end, some, lines) for end, some in zip(ends, rays, strict=True)]
        self._taken = sum(cost for _, _, cost in sure)
        first, last = _head(ends[0], rays[0]), _head(ends[1], rays[1])
        self._heads = (first, last) if first and last else None
        self._start, self._end = sure[0][0], sure[1][0]
        self._legs = (*(leg for _, leg, _ in sure if leg is not None), *legs)
        self._lane_weight = lines.lane_weight if lines.lanes else WEIGHT
        a, b = spot_of(self._start), spot_of(self._end)
        self._by = [by_lane(a[axis], b[axis], lines.lane_lines[1 - axis]) / UNITS for axis in (0, 1)]

    def reach(self, cost: int, margin: float) -> Reach:
        """Return what ways of no more than a cost can touch; `margin` is how near they come by what blocks, in mm."""
        return Reach(
            self._start,
            self._end,
            limit=min(EVERYTHING, (cost - self._taken) / WEIGHT / UNITS + NOISE),
            margin=margin,
            in_lane=self._lane_weight / WEIGHT,
            by_x=self._by[0],
            by_y=self._by[1],
            legs=self._legs,
            corners=self._corners,
            heads=self._heads,
            excess=(cost - self.least) / WEIGHT / UNITS,
        )


def _head(end: End, rays: Sequence[Ray]) -> Head | None:
    """Return the direction in which a way is sure to leave an end, none where it may choose."""
    return (rays[0].axis, rays[0].sign) if len(rays) == 1 and rays[0].spot == spot_of(end.point) else None


def _sure(end: End, rays: Sequence[Ray], lines: OpenLines) -> tuple[Point, Box | None, int]:
    """Return up to where a way is sure to go straight, a box that matters for that, and what it costs at least."""
    spot = spot_of(end.point)
    if any(ray.spot != spot for ray in rays):
        return end.point, box_around((end.point,)).grown(LONGEST_STUB + NOISE), -_STUB_SAVES
    if len(rays) > 1:
        return end.point, None, 0
    ray: Ray = rays[0]
    sure: Spot = ray.ahead(ray.straight)
    point = Point(sure[0] / UNITS, sure[1] / UNITS)
    cost = lines.cost(ray.axis, ray.line, ray.at, sure[ray.axis])
    return point, box_around((end.point, point)).grown(NOISE), cost
