"""Channel sharing, places: where along channels cables may enter and channels meet, on the wall.

Channels meet where their centre lines cross, or would if one went on through the other's half width.
"""

from collections.abc import Sequence
from itertools import combinations, pairwise
from typing import TypeAlias

from boardplan.geometry.bends import straight_length
from boardplan.geometry.point import Point
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_fill import point_along

Place: TypeAlias = tuple[str, float]
"""A channel and a distance along its centre line in mm."""
_APART = 1.0
"""mm: places of a channel nearer to each other are one."""


class Places:
    """The places along the channels of a plan that matter, hardly apart ones made one."""

    def __init__(self, plan: Plan) -> None:
        """Begin with the ends of all channels and where they meet."""
        channels = sorted(plan.channels.values(), key=lambda each: each.id)
        self.lines = {each.id: tuple(plan.on_wall(each.board, point) for point in each.line) for each in channels}
        self.halves = {each.id: each.width / 2 for each in channels}
        self.along = {name: {0.0, straight_length(line)} for name, line in self.lines.items()}
        self.joints: list[tuple[Place, Place, float]] = []
        for one, other in combinations(self.lines, 2):
            halves = self.halves[one], self.halves[other]
            for place, at, gap in meetings(self.lines[one], self.lines[other], halves):
                self.joints.append((self.add((one, place)), self.add((other, at)), gap))

    def add(self, place: Place) -> Place:
        """Return the place as it is known: another one where that is hardly apart."""
        channel, at = place
        near = [each for each in self.along[channel] if abs(each - at) < _APART]
        known = min(near, key=lambda each: (abs(each - at), each)) if near else at
        self.along[channel].add(known)
        return channel, known

    def point(self, place: Place) -> Point:
        """Return where a place is on the wall."""
        return point_along(self.lines[place[0]], place[1])

    def opposite(self, point: Point) -> list[tuple[float, Place]]:
        """Return the place nearest to a point in each channel, and how far off by the square, the nearest first."""
        found = []
        for name, line in self.lines.items():
            before, places = 0.0, []
            for a, b in pairwise(line):
                near = nearest_on(point, a, b)
                places.append((square(point, near), (name, before + a.distance_to(near))))
                before += a.distance_to(b)
            found.append(min(places))
        return sorted(found)


def meetings(
    one: Sequence[Point], other: Sequence[Point], halves: tuple[float, float]
) -> list[tuple[float, float, float]]:
    """Return the places along two lines of legs where they meet, and how far apart the lines are there, in mm."""
    found, place = [], 0.0
    for a, b in pairwise(one):
        at = 0.0
        for c, d in pairwise(other):
            meeting = _meeting((a, b), (c, d), halves)
            if meeting is not None:
                found.append((place + meeting[0], at + meeting[1], meeting[2]))
            at += c.distance_to(d)
        place += a.distance_to(b)
    return found


def _meeting(
    one: tuple[Point, Point], other: tuple[Point, Point], halves: tuple[float, float]
) -> tuple[float, float, float] | None:
    """Return where two square legs meet, along each, one going on through the other's half width at most."""
    (a, b), (c, d) = one, other
    if (a.y == b.y) == (c.y == d.y):
        return None
    crossing = Point(c.x, a.y) if a.y == b.y else Point(a.x, c.y)
    near = nearest_on(crossing, a, b), nearest_on(crossing, c, d)
    apart = crossing.distance_to(near[0]), crossing.distance_to(near[1])
    if apart[0] > halves[1] + _APART or apart[1] > halves[0] + _APART:
        return None
    return a.distance_to(near[0]), c.distance_to(near[1]), apart[0] + apart[1]


def nearest_on(point: Point, a: Point, b: Point) -> Point:
    """Return the place on an upright or level leg that is nearest to a point."""
    return Point(min(max(point.x, min(a.x, b.x)), max(a.x, b.x)), min(max(point.y, min(a.y, b.y)), max(a.y, b.y)))


def square(a: Point, b: Point) -> float:
    """Return how far two points are apart along level and upright lines, in mm."""
    return abs(a.x - b.x) + abs(a.y - b.y)
