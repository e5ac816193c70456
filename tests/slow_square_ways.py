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
from way_sampler import EndThere, behind_lugs, end_there, things_of

from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, CableEnd
from boardplan.model.plan import Plan
from boardplan.routing.reach import OVER_OWN

COARSE = 4.0
"""The pitch of the lattice at most, in mm; a bend's radius is a whole number of pitches."""
NEVER = 1e6
_MOST_BENDS = 16
_PIXEL = 1.0
_TRACED = 1e-6
_TINY = 0.02  # mm: what grown shapes may be out by
_AHEAD = ((1, 0), (0, 1), (-1, 0), (0, -1))
"""The four headings, counter-clockwise from the right."""


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
        smaller = self.solid.buffer(-0.8 * _PIXEL)
        shapely.prepare(smaller)
        left, bottom, right, top = self.frame.bounds
        x, y = np.meshgrid(np.arange(left, right, _PIXEL), np.arange(bottom, top, _PIXEL), indexing="ij")
        return shapely.contains_xy(smaller, x.ravel(), y.ravel()).reshape(x.shape), (left, bottom)

    def end(self, there: EndThere) -> SlowEnd | None:
        """Return an end of a cable, none where it does not leave squarely.

        Its own unit is no matter to its first leg and bend, the edge it comes over none to its first leg; what
        stands nearer than the clearance asks blocks the first leg only where it stands.
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
            if thing.shape.distance(shapely.Point(there.at)) >= self.half + thing.clearance - _TINY / 2:
                leg.append(grown)
            elif not (thing.sort == "edge" and there.over_edge):
                leg.append(thing.shape)
        shapes = (shapely.union_all(each).buffer(-_TINY) for each in (leg, bend))
        return SlowEnd(Point(*there.at), headings, prices, there.straight, *shapes)

    def _over_own(self, there: EndThere, heading: int) -> float:
        """Return what a first line in a heading counts for on top, for its length over the end's own unit."""
        (x, y), (dx, dy) = there.at, _AHEAD[heading]
        ahead = LineString([(x, y), (x + 1e4 * dx, y + 1e4 * dy)])
        own = [each.shape for each in self.things if each.sort == "body" and each.name == there.owner]
        return OVER_OWN * sum(ahead.intersection(each).length for each in own)


def shortest_square(board: SlowBoard, cable: Cable, radius: float, *, roomy: bool = False) -> list[float]:
    """Return the least length of a square way with bends of a radius, for no bend, up to one, up to two and so on.

    A `roomy` way also stays straight behind its lugs as the rule set asks. Where an end may leave any way, what the
    program counts for leaving over its own unit is in the length.

    NEVER where there is no such way; nothing at all where the ends are not square, so that nothing can be said.
    """
    start, end = (board.end(_there(board.plan, cable, each, radius, roomy=roomy)) for each in cable.ends)
    if start is None or end is None:
        return []
    lattice = _Lattice(board, radius, start, end)
    bend = math.pi / 2 * radius
    mouths = [board.end(end_there(board.plan, cable, each)) for each in cable.ends] if roomy else (start, end)
    best = [_straight_between(*mouths)]
    after, arrivals = _departed(lattice, start, bend), _arrivals(lattice, end)
    best.append(min(best[0], _one_bend(start, end, radius)))
    for _ in range(_MOST_BENDS):
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


def shortest_points(board: SlowBoard, cable: Cable, radius: float) -> list[Point]:
    """Return the corners of a least way with two bends or more, ends and all; none where there is none.

    Followed back from the end through the least lengths just after each bend.
    """
    start, end = (board.end(end_there(board.plan, cable, each)) for each in cable.ends)
    if start is None or end is None:
        return []
    lattice, bend = _Lattice(board, radius, start, end), math.pi / 2 * radius
    rounds = [_departed(lattice, start, bend)]
    for _ in range(_MOST_BENDS):
        ahead = [lattice.gone_straight(rounds[-1][heading], heading) for heading in range(4)]
        rounds.append(lattice.bent_everywhere(rounds[-1], ahead, bend))
    least = [lattice.gone_straight(rounds[-1][heading], heading) for heading in range(4)]
    arrivals = [(float(least[heading][at]) + length, heading, at) for heading, at, length in _arrivals(lattice, end)]
    length, heading, at = min(arrivals, default=(NEVER, 0, (0, 0)))
    points = [] if length >= NEVER / 2 else [end.at, lattice.corner(at, heading)]
    while points:
        rounds, at = _before_straight(lattice, rounds, heading, at)
        step = _before_bend(lattice, rounds, heading, at) if len(rounds) > 1 else None
        if step is None:
            return [start.at, _first_corner(lattice, start, heading, at, float(rounds[0][heading][at])), *points[::-1]]
        heading, at = step
        rounds = rounds[:-1]
        points.append(lattice.corner(at, heading))
    return []


def _before_straight(lattice, rounds, heading, at):
    """Return the rounds up to the first in which a place is reached as it is at last, and where its straight began."""
    dx, dy = _AHEAD[heading]
    target, place = float(lattice.gone_straight(rounds[-1][heading], heading)[at]), at
    while abs(rounds[-1][heading][place] + lattice.apart(place, at) - target) > _TRACED:
        place = (place[0] - dx, place[1] - dy)
    value, count = rounds[-1][heading][place], len(rounds)
    while count > 1 and abs(rounds[count - 2][heading][place] - value) < _TRACED:
        count -= 1
    return rounds[:count], place


def _before_bend(lattice, rounds, heading, at):
    """Return the heading before the bend that ends at a place, and where it began."""
    for turn in (1, -1):
        before = (heading - turn) % 4
        (dx, dy), (tx, ty) = _AHEAD[before], _AHEAD[heading]
        place = tuple(int(lattice.shift[axis][-by][at[axis]]) for axis, by in ((0, dx + tx), (1, dy + ty)))
        if min(place) >= 0 and lattice.clear[before, turn][place]:
            length = float(lattice.gone_straight(rounds[-2][before], before)[place]) + math.pi / 2 * lattice.radius
            if abs(length - rounds[-1][heading][at]) < _TRACED:
                return before, place
    raise AssertionError("a bend comes from nowhere")


def _first_corner(lattice, start, heading, at, length):
    for out in start.headings:
        for turn in (1, -1):
            for place, straight in lattice.along(start, out, start.prices[out]):
                there = straight + math.pi / 2 * lattice.radius
                if (
                    (out + turn) % 4 == heading
                    and lattice.bent(place, out, turn) == at
                    and abs(there - length) < _TRACED
                ):
                    return lattice.corner(place, out)
    raise AssertionError("a first bend comes from nowhere")


def _straight_between(start: SlowEnd, end: SlowEnd) -> float:
    """Return the length of the straight way between ends that face each other in line, NEVER where they don't."""
    best = NEVER
    for heading in start.headings:
        dx, dy = _AHEAD[heading]
        along = (end.at.x - start.at.x) * dx + (end.at.y - start.at.y) * dy
        aside = abs((end.at.x - start.at.x) * dy) + abs((end.at.y - start.at.y) * dx)
        facing = (heading + 2) % 4 in end.headings and along >= start.straight + end.straight - 1e-6
        both = start.leg.intersection(end.leg)
        if facing and aside < 1e-6 and not both.intersects(LineString([start.at, end.at])):
            best = min(best, along + start.prices[heading] + end.prices[(heading + 2) % 4])
    return best


def _departed(lattice: "_Lattice", start: SlowEnd, bend: float) -> list[np.ndarray]:
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
    ahead, across = np.array(_AHEAD[heading]), np.array(_AHEAD[(heading + turn) % 4])
    between = np.array(end.at) - np.array(start.at)
    first, last = float(between @ ahead) - radius, float(between @ across) - radius
    if first < start.straight - 1e-6 or last < end.straight - 1e-6:
        return NEVER
    at, out = np.array(start.at) + ahead * first, np.array(end.at) - across * last
    if start.leg.intersects(LineString([start.at, at])) or end.leg.intersects(LineString([out, end.at])):
        return NEVER
    blocked = _arc_blocked(Point(*at), heading, turn, radius, start.bend.intersection(end.bend))
    return NEVER if blocked else first + math.pi / 2 * radius + last


def _arrivals(lattice: "_Lattice", end: SlowEnd) -> list[tuple[int, tuple[int, int], float]]:
    """Return heading and place before the last bend, and the length of the last leg after it, for all there are."""
    found = []
    for out in end.headings:
        for place, length in lattice.along(end, out, end.prices[out]):
            for turn in (1, -1):  # seen from the end: bend away, then go on against the way's own direction
                spot = lattice.bent(place, out, turn)
                if spot and not _arc_blocked(lattice.point(place), out, turn, lattice.radius, end.bend):
                    found.append((((out + turn) % 4 + 2) % 4, spot, length))
    return found


def _arc_points(heading, turn, radius, count=10):
    """Return places along a bend from its beginning, the beginning itself left out."""
    dx, dy = _AHEAD[heading]
    tx, ty = _AHEAD[(heading + turn) % 4]
    angles = np.linspace(0, math.pi / 2, count)[1:]
    return np.stack(
        [
            dx * radius * np.sin(angles) + tx * radius * (1 - np.cos(angles)),
            dy * radius * np.sin(angles) + ty * radius * (1 - np.cos(angles)),
        ],
        axis=1,
    )


def _arc_blocked(at, heading, turn, radius, floor):
    points = [(at.x, at.y), *(np.array(at) + _arc_points(heading, turn, radius, 24))]
    return floor.intersects(LineString(points))


class _Lattice:
    """Lines through both ends, a pitch apart, and how far one can go along each."""

    def __init__(self, board, radius, start, end):
        self.board, self.radius = board, radius
        self.count = math.ceil(radius / COARSE)
        pitch = radius / self.count
        left, bottom, right, top = board.frame.bounds
        self.x = _lines([_anchor(each, 0) for each in (start, end)], pitch, left, right)
        self.y = _lines([_anchor(each, 1) for each in (start, end)], pitch, bottom, top)
        self.shape = len(self.x), len(self.y)
        self.shift = _shifts(self.x, radius), _shifts(self.y, radius)
        self._parts = [
            np.array([_parts(board.solid, self.x, y, level=True) for y in self.y]).T,
            np.array([_parts(board.solid, self.y, x, level=False) for x in self.x]),
        ]
        self.clear = {(h, t): self._arcs_clear(h, t) for h in range(4) for t in (1, -1)}

    def point(self, place):
        return Point(float(self.x[place[0]]), float(self.y[place[1]]))

    def corner(self, place, heading):
        """Return the corner of the bend that begins at a place."""
        (x, y), (dx, dy) = self.point(place), _AHEAD[heading]
        return Point(x + dx * self.radius, y + dy * self.radius)

    def apart(self, a, b):
        return abs(self.x[a[0]] - self.x[b[0]]) + abs(self.y[a[1]] - self.y[b[1]])

    def gone_straight(self, lengths, heading):
        """Return the least length at each place for who may go on straight in a heading."""
        axis = heading % 2
        values = np.where(self._parts[axis] % 2, NEVER, lengths)  # odd where blocked
        values = values if axis == 0 else values.T
        along = self.x if axis == 0 else self.y
        parts = self._parts[axis] if axis == 0 else self._parts[axis].T
        if heading >= 2:
            values, along, parts = values[::-1], -along[::-1], parts.max() - parts[::-1]
        far = 1e9
        rest = values - along[:, None] + (parts.max() - parts) * far
        least = np.minimum.accumulate(rest, axis=0) - (parts.max() - parts) * far + along[:, None]
        least = np.where(least < NEVER / 2, least, NEVER)
        if heading >= 2:
            least = least[::-1]
        return least if axis == 0 else least.T

    def bent_everywhere(self, after, ahead, bend):
        """Return the least length just after a bend at each place, with one more bend everywhere it is open."""
        fresh = [each.copy() for each in after]
        for heading in range(4):
            for turn in (1, -1):
                self._bend_all(ahead[heading], heading, turn, bend, fresh[(heading + turn) % 4])
        return fresh

    def _bend_all(self, lengths, heading, turn, bend, into):
        places = np.nonzero((lengths < NEVER / 2) & self.clear[heading, turn])
        to = self._after(places, heading, turn)
        fits = (to[0] >= 0) & (to[1] >= 0)
        np.minimum.at(into, (to[0][fits], to[1][fits]), lengths[places][fits] + bend)

    def bent(self, place, heading, turn):
        to = self._after((np.array([place[0]]), np.array([place[1]])), heading, turn)
        return None if to[0][0] < 0 or to[1][0] < 0 else (int(to[0][0]), int(to[1][0]))

    def _after(self, places, heading, turn):
        dx, dy = _AHEAD[heading]
        tx, ty = _AHEAD[(heading + turn) % 4]
        return self.shift[0][dx + tx][places[0]], self.shift[1][dy + ty][places[1]]

    def along(self, end, heading, price):
        """Yield the places where a first bend can begin, with the length up to there and the price of leaving so."""
        dx, dy = _AHEAD[heading]
        axis, lines = heading % 2, (self.x, self.y)[heading % 2]
        line = np.flatnonzero(np.isclose((self.y, self.x)[axis], (end.at.y, end.at.x)[axis], atol=1e-6))[0]
        for number, at in enumerate(lines):
            length = (at - (end.at.x, end.at.y)[axis]) * (dx + dy)
            if length < end.straight - 1e-6:
                continue
            point = Point(at, end.at.y) if axis == 0 else Point(end.at.x, at)
            if not end.leg.intersects(LineString([end.at, point])):
                yield ((number, line) if axis == 0 else (line, number)), float(length) + price

    def _arcs_clear(self, heading, turn):
        picture, (left, bottom) = self.board.picture
        clear = np.ones(self.shape, dtype=bool)
        for dx, dy in _arc_points(heading, turn, self.radius):
            i = np.clip(np.round((self.x + dx - left) / _PIXEL).astype(int), 0, picture.shape[0] - 1)
            j = np.clip(np.round((self.y + dy - bottom) / _PIXEL).astype(int), 0, picture.shape[1] - 1)
            clear &= ~picture[np.ix_(i, j)]
        return clear


def _anchor(end, axis):
    """Return where a line across an axis must run for an end: where its first bend can begin at the earliest."""
    if len(end.headings) == 1 and end.headings[0] % 2 == axis:
        return end.at[axis] + sum(_AHEAD[end.headings[0]]) * end.straight
    return end.at[axis]


def _lines(anchors, pitch, low, high):
    """Return the places of lines a pitch apart from some anchors on."""
    found = [
        at + pitch * np.arange(math.ceil((low - at) / pitch), math.floor((high - at) / pitch) + 1) for at in anchors
    ]
    places = np.sort(np.concatenate(found))
    return places[np.concatenate([[True], np.diff(places) > 1e-6])]


def _shifts(lines, radius):
    """Return for -1, 0 and 1 which line lies so many radii from each, -1 for none."""
    found = {0: np.arange(len(lines))}
    for sign in (-1, 1):
        near = np.clip(np.searchsorted(lines, lines + sign * radius), 1, len(lines) - 1)
        near = np.where(
            np.abs(lines[near - 1] - lines - sign * radius) < np.abs(lines[near] - lines - sign * radius),
            near - 1,
            near,
        )
        found[sign] = np.where(np.abs(lines[near] - lines - sign * radius) < 1e-5, near, -1)
    return found


def _parts(solid, places, line, *, level):
    """Return numbers for places along a line: the same number where nothing blocks between them."""
    ends = [(places[0] - 1, line), (places[-1] + 1, line)]
    blocked = LineString(ends if level else [each[::-1] for each in ends]).intersection(solid)
    stops = []
    for piece in shapely.get_parts(blocked):
        at = [each[0 if level else 1] for each in piece.coords]
        if max(at) - min(at) > 0.02:
            stops.append((min(at) + 0.01, max(at) - 0.01))
    if not stops:
        return np.zeros(len(places), dtype=int)
    low, high = (np.array(sorted(each)) for each in zip(*stops, strict=True))
    begun = np.searchsorted(low, places)
    # a place's number grows by two for each blocked stretch that begins before it, by one inside of it
    return 2 * begun - (begun > np.searchsorted(high, places, side="right"))
