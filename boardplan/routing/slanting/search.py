"""Free way search: a way of bends and straights at any angle, by going on from pose to pose.

A search over poses (A*, by Hart, Nilsson and Raphael 1968) that goes on by a short bend to either side or a straight,
keeps one pose of each small cell and heading, and tries Dubins' ways to the end: the hybrid search of D. Dolgov,
S. Thrun, M. Montemerlo and J. Diebel, "Path planning for autonomous vehicles in unknown semi-structured environments",
International Journal of Robotics Research 29 (2010) 485-501.
"""

import heapq
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from boardplan.geometry.dubins import DubinsWay, Pose, ways_between
from boardplan.geometry.point import Point
from boardplan.routing.slanting.left import Left
from boardplan.routing.slanting.parts import Letter, Part, corners_of, piece_of
from boardplan.routing.slanting.room import Boxes, FreeRoom, open_to

_TURN = 22.5  # degrees of a step that bends
_SPARED = 90.0
"""Degrees: how far the bend next to an end may turn at most while it need not clear the end's owner."""
_MOST_STEPS = 3000
_TRIES_NEAR = 3.0
"""Radii: how near the end Dubins' ways are tried from every pose; from farther off every few poses."""
_NOW_AND_THEN = 8
_LETTERS: dict[str, Letter] = {"L": "L", "R": "R", "S": "S"}


@dataclass(frozen=True, slots=True)
class Step:
    """A pose reached, by which part from which step before; `spared` while on the first leg or in the first bend."""

    pose: Pose
    part: Part | None
    before: "Step | None"
    length: float
    spared: bool
    turned: float = 0.0


class FreeSearch:
    """One search between two poses for a radius in mm, in the room between two ends."""

    def __init__(self, room: FreeRoom, start: Pose, end: Pose, radius: float, left: Left) -> None:
        """Take where the straight of one end stops and where that of the other begins."""
        self._room, self._start, self._end, self._radius, self._left = room, start, end, radius, left
        self._cell = max(5.0, radius / 6)
        self._parts = _parts(radius)

    def run(self) -> tuple[Point, ...] | None:
        """Return the corners of the first way found from end to end, none where there is none."""
        first = Step(self._start, None, None, 0.0, spared=True)
        heap: list[tuple[float, int, Step]] = [(self._left.at(first.pose.at), 0, first)]
        done: set[tuple[int, int, int, bool]] = set()
        count = 0
        while heap and len(done) < _MOST_STEPS:
            _, _, step = heapq.heappop(heap)
            key = self._key(step)
            if key in done:
                continue
            done.add(key)
            points = self._shot(step, len(done))
            if points is not None:
                return points
            for after in self._after(step):
                left = self._left.at(after.pose.at)
                if math.isfinite(left) and self._key(after) not in done:
                    count += 1
                    heapq.heappush(heap, (after.length + left, count, after))
        return None

    def _key(self, step: Step) -> tuple[int, int, int, bool]:
        at, cell = step.pose.at, self._cell
        heading = round((step.pose.heading - self._start.heading) / _TURN) % 16
        return round(at.x / cell), round(at.y / cell), heading, step.spared

    def _after(self, step: Step) -> Iterator[Step]:
        """Yield the poses a part farther on that nothing keeps the cable from."""
        for part in self._parts:
            piece, pose = piece_of(step.pose, part, self._radius)
            spared, boxes = self._spared(step, part)
            if open_to(piece, boxes):
                turned = step.turned + (part.much if part.letter != "S" else 0.0)
                yield Step(pose, part, step, step.length + piece.length, spared, turned)

    def _spared(self, step: Step, part: Part) -> tuple[bool, Boxes]:
        """Say whether a part belongs to the first leg or the first bend, and return what it must clear."""
        if not step.spared:
            return False, self._room.all
        if part.letter == "S":
            straight_on = step.turned == 0
            return straight_on, self._room.first if straight_on else self._room.all
        one_bend = step.turned == 0 or (step.part is not None and step.part.letter == part.letter)
        spared = one_bend and step.turned + part.much <= _SPARED
        return spared, self._room.first_bend if spared else self._room.all

    def _shot(self, step: Step, count: int) -> tuple[Point, ...] | None:
        """Return the way on from a step by the shortest of Dubins' ways that is open, none where none is."""
        near = self._left.at(step.pose.at) < _TRIES_NEAR * self._radius
        if not near and count % _NOW_AND_THEN != 1:
            return None
        ways = sorted(ways_between(step.pose, self._end, self._radius), key=lambda way: way.length)
        for way in ways:
            points = whole_way(self._room, self._start, (*_behind(step), *parts_of(way)), self._radius)
            if self._room.clears(points, self._radius):
                return points
        return None


def whole_way(room: FreeRoom, start: Pose, parts: Sequence[Part], radius: float) -> tuple[Point, ...]:
    """Return the corners from end to end of parts that begin where the straight of the first end stops."""
    first, last = room.ends
    on_end = Pose(first.point, start.heading)
    points = corners_of(on_end, (Part("S", first.straight), *parts, Part("S", last.straight)), radius)
    return (first.point, *points[1:-1], last.point)


def parts_of(way: DubinsWay) -> tuple[Part, ...]:
    """Return the parts of one of Dubins' ways."""
    return tuple(Part(_LETTERS[letter], much) for letter, much in zip(way.word, way.parts, strict=True))


def _behind(step: Step) -> tuple[Part, ...]:
    found: list[Part] = []
    at: Step | None = step
    while at is not None:
        if at.part is not None:
            found.append(at.part)
        at = at.before
    return tuple(reversed(found))


def _parts(radius: float) -> tuple[Part, ...]:
    """Return the parts a pose goes on by."""
    length = radius * math.radians(_TURN)
    return Part("S", length), Part("L", _TURN), Part("R", _TURN), Part("S", max(4.0, length / 3))
