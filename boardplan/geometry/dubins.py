"""Dubins: the shortest way between two poses that never bends tighter than a radius.

L. E. Dubins, "On curves of minimal length with a constraint on average curvature", Amer. J. Math. 79 (1957)
497-516: it is one of six words of left bends, right bends and straights. The closed forms are those of A. M. Shkel
and V. Lumelsky, "Classification of the Dubins set", Robotics and Autonomous Systems 34 (2001) 179-202.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.bends import tangent_length, without_repeats
from boardplan.geometry.point import Point, bearing

Word: TypeAlias = Literal["LSL", "RSR", "LSR", "RSL", "RLR", "LRL"]
_Parts: TypeAlias = tuple[float, float, float]
_FULL = 2 * math.pi
_NOISE = 1e-12
"""What sums of sines come out wrong by: a bend that lacks no more of a full turn is none."""
_WIDEST_BEND = 120.0  # degrees: a corner stands for less than half a turn, so wider bends are several corners


@dataclass(frozen=True, slots=True)
class Pose:
    """A place, and the direction in degrees in which something passes it."""

    at: Point
    heading: float


@dataclass(frozen=True, slots=True)
class DubinsWay:
    """A way as its word and what each of its three parts measures: bends in degrees, a straight in mm."""

    start: Pose
    radius: float
    word: Word
    parts: _Parts

    @property
    def lengths(self) -> _Parts:
        """How long each part is, in mm."""
        first, middle, last = (
            part if letter == "S" else math.radians(part) * self.radius
            for letter, part in zip(self.word, self.parts, strict=True)
        )
        return first, middle, last

    @property
    def length(self) -> float:
        """How long the way is, in mm."""
        return math.fsum(self.lengths)

    def pose_at(self, distance: float) -> Pose:
        """Return the pose after a distance along the way, in mm; before its start and past its end it goes straight."""
        at = self.start
        if distance < 0:
            return Pose(at.at.ahead(at.heading, distance), at.heading)
        for letter, length in zip(self.word, self.lengths, strict=True):
            step = min(distance, length)
            at = _ahead(at, letter, step, self.radius)
            distance -= step
        return Pose(at.at.ahead(at.heading, distance), at.heading)

    def corners(self) -> tuple[Point, ...]:
        """Return the corners of the way: bent with its radius, they are the way itself."""
        pose, points = self.start, [self.start.at]
        for letter, part, length in zip(self.word, self.parts, self.lengths, strict=True):
            count = 1 if letter == "S" else math.ceil(part / _WIDEST_BEND)
            for _ in range(count):
                if letter != "S":
                    points.append(pose.at.ahead(pose.heading, tangent_length(self.radius, part / count)))
                pose = _ahead(pose, letter, length / count, self.radius)
        return without_repeats((*points, pose.at))


def shortest_between(start: Pose, end: Pose, radius: float) -> DubinsWay:
    """Return the shortest way from one pose to another; of equally short ones the first in the order of `Word`.

    >>> way = shortest_between(Pose(Point(0, 0), 0), Pose(Point(10, 10), 90), 10)
    >>> way.word, round(way.length, 6)
    ('LSL', 15.707963)
    """
    return min(ways_between(start, end, radius), key=lambda way: round(way.length, 9))


def ways_between(start: Pose, end: Pose, radius: float) -> tuple[DubinsWay, ...]:
    """Return the way of every word there is between two poses. Raises ValueError for a radius that is not positive."""
    if radius <= 0:
        raise ValueError(f"a bend needs a radius, not {radius}")
    apart = start.at.distance_to(end.at) / radius
    line = bearing(start.at, end.at) if apart else 0.0
    a, b = (math.radians((pose.heading - line) % 360.0) for pose in (start, end))
    found = []
    for word, parts_of in _WORDS.items():
        parts = parts_of(apart, a, b)
        if parts is not None:
            first, last = math.degrees(parts[0]), math.degrees(parts[2])
            middle = parts[1] * radius if word[1] == "S" else math.degrees(parts[1])
            found.append(DubinsWay(start, radius, word, (first, middle, last)))
    return tuple(found)


def _ahead(pose: Pose, letter: str, length: float, radius: float) -> Pose:
    """Return the pose after a length of a straight or a bend."""
    if letter == "S":
        return Pose(pose.at.ahead(pose.heading, length), pose.heading)
    side = 1 if letter == "L" else -1
    turn = side * math.degrees(length / radius)
    centre = pose.at.ahead(pose.heading + 90 * side, radius)
    return Pose(centre.ahead(pose.heading - 90 * side + turn, radius), (pose.heading + turn) % 360.0)


def _turn(angle: float) -> float:
    """Return an angle as a turn onwards, less than a full one; noise about a full turn is none."""
    turn = angle % _FULL
    return 0.0 if min(turn, _FULL - turn) < _NOISE else turn


def _straight(square: float) -> float | None:
    """Return a straight by its square, none where the circles lie too near for one."""
    return None if square < -_NOISE else math.sqrt(max(0.0, square))


def _lsl(d: float, a: float, b: float) -> _Parts | None:
    x, y = d + math.sin(a) - math.sin(b), math.cos(b) - math.cos(a)
    if math.hypot(x, y) < math.sqrt(_NOISE):  # both bends lie on one circle: there is no line to hold angles against
        return _turn(b - a), math.hypot(x, y), 0.0
    line = math.atan2(y, x)
    return _turn(line - a), math.hypot(x, y), _turn(b - line)


def _rsr(d: float, a: float, b: float) -> _Parts | None:
    return _lsl(d, -a, -b)  # seen in a mirror along the line


def _lsr(d: float, a: float, b: float) -> _Parts | None:
    x, y = d + math.sin(a) + math.sin(b), -math.cos(a) - math.cos(b)
    straight = _straight(x**2 + y**2 - 4)
    if straight is None:
        return None
    line = math.atan2(y, x) - math.atan2(-2.0, straight)
    return _turn(line - a), straight, _turn(line - b)


def _rsl(d: float, a: float, b: float) -> _Parts | None:
    return _lsr(d, -a, -b)


def _rlr(d: float, a: float, b: float) -> _Parts | None:
    x, y = d - math.sin(a) + math.sin(b), math.cos(a) - math.cos(b)
    cosine = 1 - (x**2 + y**2) / 8
    if cosine < -1 - _NOISE:
        return None
    middle = _FULL - math.acos(max(cosine, -1.0))
    first = _turn(a - math.atan2(y, x) + middle / 2)
    return first, middle, _turn(a - b - first + middle)


def _lrl(d: float, a: float, b: float) -> _Parts | None:
    return _rlr(d, -a, -b)


_WORDS: dict[Word, Callable[[float, float, float], _Parts | None]] = {
    "LSL": _lsl,
    "RSR": _rsr,
    "LSR": _lsr,
    "RSL": _rsl,
    "RLR": _rlr,
    "LRL": _lrl,
}
