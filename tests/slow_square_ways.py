"""Slow square ways: the shortest way of level and upright legs between two ends, by all places of a fine lattice.

Independent of the program's finding of ways: what blocks is grown with shapely, lattice lines run through both ends,
bends are true arcs. From any lattice place a cable may go straight as far as nothing blocks, or bend; the least lengths
are worked out for all places at once, over and over, until none gets less (R. Bellman, 1958). Where it errs, it errs
towards shorter ways: arcs are looked up in a picture of what blocks that is made a little smaller.
"""

import math
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import shapely
from shapely import LineString, Polygon
from slow_lattice import AHEAD, NEVER, PIXEL, Lattice, arc_points
from way_sampler import EndThere, behind_lugs, end_there, over_edge_of, things_of

from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, CableEnd
from boardplan.model.plan import Plan
from boardplan.routing.reach import OVER_OWN

MOST_BENDS = 16
NEITHER = (False, False)
_TINY = 0.02  # mm: what grown shapes may be out by


@dataclass(frozen=True)
class SlowEnd:
    """An end as the cable would leave it: where, by which headings at what price each, how far straight.

    And what blocks its leg and bend. A price is what leaving so counts for on top of the length, in mm.
    """

    at: Point
    headings: tuple[int, ...]
    prices: tuple[float, ...]
    straight: float
    leg: Polygon
    bend: Polygon


class SlowBoard:
    """What blocks cables of one diameter that stay outside of channels on a plan, and a picture of it."""

    def __init__(self, plan: Plan, diameter: float) -> None:
        """Grow what blocks."""
        self.plan, self.half = plan, diameter / 2
        self.things = things_of(plan, channels=True)
        self.grown = [each.shape.buffer(self.half + each.clearance) for each in self.things]
        self.solid = shapely.union_all(self.grown)
        shapely.prepare(self.solid)
        sheets = [shapely.MultiPoint([plan.on_wall(b.id, p) for p in b.outline]) for b in plan.boards.values()]
        self.frame = shapely.union_all(sheets).envelope.buffer(60, join_style="mitre")

    @cached_property
    def picture(self) -> tuple[np.ndarray, tuple[float, float]]:
        """Which square millimetres are blocked, a little too few, and where the first one lies."""
        smaller = self.solid.buffer(-0.8 * PIXEL)
        shapely.prepare(smaller)
        left, bottom, right, top = self.frame.bounds
        x, y = np.meshgrid(np.arange(left, right, PIXEL), np.arange(bottom, top, PIXEL), indexing="ij")
        return shapely.contains_xy(smaller, x.ravel(), y.ravel()).reshape(x.shape), (left, bottom)

    def end(self, there: EndThere) -> SlowEnd | None:
        """Return an end of a cable, none where it does not leave squarely.

        Its own unit is no matter to its first leg and bend, the edge none to its first leg where it comes over it; what
        else stands nearer than the clearance asks blocks the first leg only where it stands.
        """
        if there.heading is not None and min(there.heading % 90, 90 - there.heading % 90) > 1e-6:
            return None
        headings = (0, 1, 2, 3) if there.heading is None else (round(there.heading / 90) % 4,)
        prices = tuple(self._over_own(there, heading) for heading in range(4)) if there.heading is None else (0.0,) * 4
        leg, bend = [], []
        for thing, grown in zip(self.things, self.grown, strict=True):
            if thing.sort == "body" and thing.name == there.owner:
                continue
            bend.append(grown)
            if thing.sort == "edge" and there.over_edge:
                leg.append(grown.difference(over_edge_of(there, self.half)))
            elif thing.shape.distance(shapely.Point(there.at)) >= self.half + thing.clearance - _TINY / 2:
                leg.append(grown)
            else:
                leg.append(thing.shape)
        shapes = (shapely.union_all(each).buffer(-_TINY) for each in (leg, bend))
        return SlowEnd(Point(*there.at), headings, prices, there.straight, *shapes)

    def _over_own(self, there: EndThere, heading: int) -> float:
        """Return what a first line in a heading counts for on top, for its length over the end's own unit.

        As in the program, a line along a side of the unit is not over it.
        """
        (x, y), (dx, dy) = there.at, AHEAD[heading]
        ahead = LineString([(x, y), (x + 1e4 * dx, y + 1e4 * dy)])
        own = [each.shape.buffer(-_TINY) for each in self.things if each.sort == "body" and each.name == there.owner]
        return OVER_OWN * sum(ahead.intersection(each).length for each in own)


def ends_of_cable(board: SlowBoard, cable: Cable, radius: float, roomy: tuple[bool, bool]) -> list[SlowEnd | None]:
    """Return both ends of a cable; where `roomy` as straight behind its lug as the rule set asks."""
    return [
        board.end(_there(board.plan, cable, end, radius, roomy=has_room))
        for end, has_room in zip(cable.ends, roomy, strict=True)
    ]


def shortest_square(
    board: SlowBoard, cable: Cable, radius: float, *, roomy: tuple[bool, bool] = NEITHER
) -> list[float]:
    """Return the least length of a square way with bends of a radius, for no bend, up to one, up to two and so on.

    At a `roomy` end it also stays straight behind its lug as the rule set asks. Where an end may leave any way, what
    the program counts for leaving over its own unit is in the length.

    NEVER where there is no such way; nothing at all where the ends are not square, so that nothing can be said.
    """
    start, end = ends_of_cable(board, cable, radius, roomy)
    if start is None or end is None:
        return []
    lattice = Lattice(board, radius, start, end)
    bend = math.pi / 2 * radius
    best = [_straight_between(*ends_of_cable(board, cable, radius, NEITHER))]
    after, arrivals = departed(lattice, start, bend), arrivals_at(lattice, end)
    best.append(min(best[0], _one_bend(start, end, radius)))
    for _ in range(MOST_BENDS):
        ahead = [lattice.gone_straight(after[heading], heading) for heading in range(4)]
        reached = [float(ahead[heading][place]) + bend + length for heading, place, length in arrivals]
        best.append(min([best[-1], *(each for each in reached if each < NEVER / 2)]))
        fresh = lattice.bent_everywhere(after, ahead, bend)
        if all(np.array_equal(a, b) for a, b in zip(after, fresh, strict=True)):
            break
        after = fresh
    return best


def _there(plan: Plan, cable: Cable, end: CableEnd, radius: float, *, roomy: bool) -> EndThere:
    there = end_there(plan, cable, end)
    return replace(there, straight=there.straight + behind_lugs(plan, cable, end, radius)) if roomy else there


def _straight_between(start: SlowEnd, end: SlowEnd) -> float:
    """Return the length of the straight way between ends that face each other in line, NEVER where they don't."""
    best = NEVER
    for heading in start.headings:
        dx, dy = AHEAD[heading]
        along = (end.at.x - start.at.x) * dx + (end.at.y - start.at.y) * dy
        aside = abs((end.at.x - start.at.x) * dy) + abs((end.at.y - start.at.y) * dx)
        facing = (heading + 2) % 4 in end.headings and along >= start.straight + end.straight - 1e-6
        both = start.leg.intersection(end.leg)
        if facing and aside < 1e-6 and not both.intersects(LineString([start.at, end.at])):
            best = min(best, along + start.prices[heading] + end.prices[(heading + 2) % 4])
    return best


def departed(lattice: Lattice, start: SlowEnd, bend: float) -> list[np.ndarray]:
    """Return for each heading the least length at each place just after the first bend."""
    after = [np.full(lattice.shape, NEVER) for _ in range(4)]
    for heading in start.headings:
        for place, length in lattice.along(start, heading, start.prices[heading]):
            for turn in (1, -1):
                to = (heading + turn) % 4
                spot = lattice.bent(place, heading, turn)
                if spot and not _arc_blocked(lattice.point(place), heading, turn, lattice.radius, start.bend):
                    after[to][spot] = min(after[to][spot], length + bend)
    return after


def _one_bend(start: SlowEnd, end: SlowEnd, radius: float) -> float:
    """Return the least length with a single bend, which is next to both ends."""
    best = NEVER
    for heading in start.headings:
        for turn in (1, -1):
            to = (heading + turn) % 4
            if (to + 2) % 4 in end.headings:
                price = start.prices[heading] + end.prices[(to + 2) % 4]
                best = min(best, price + _length_with_bend(start, end, radius, heading, turn))
    return best


def _length_with_bend(start: SlowEnd, end: SlowEnd, radius: float, heading: int, turn: int) -> float:
    ahead, across = np.array(AHEAD[heading]), np.array(AHEAD[(heading + turn) % 4])
    between = np.array(end.at) - np.array(start.at)
    first, last = float(between @ ahead) - radius, float(between @ across) - radius
    if first < start.straight - 1e-6 or last < end.straight - 1e-6:
        return NEVER
    at, out = np.array(start.at) + ahead * first, np.array(end.at) - across * last
    if start.leg.intersects(LineString([start.at, at])) or end.leg.intersects(LineString([out, end.at])):
        return NEVER
    blocked = _arc_blocked(Point(*at), heading, turn, radius, start.bend.intersection(end.bend))
    return NEVER if blocked else first + math.pi / 2 * radius + last


def arrivals_at(lattice: Lattice, end: SlowEnd) -> list[tuple[int, tuple[int, int], float]]:
    """Return heading and place before the last bend, and the length of the last leg after it, for all there are."""
    found = []
    for out in end.headings:
        for place, length in lattice.along(end, out, end.prices[out]):
            for turn in (1, -1):  # seen from the end: bend away, then go on against the way's own direction
                spot = lattice.bent(place, out, turn)
                if spot and not _arc_blocked(lattice.point(place), out, turn, lattice.radius, end.bend):
                    found.append((((out + turn) % 4 + 2) % 4, spot, length))
    return found


def _arc_blocked(at, heading, turn, radius, floor):
    points = [(at.x, at.y), *(np.array(at) + arc_points(heading, turn, radius, 24))]
    return floor.intersects(LineString(points))
