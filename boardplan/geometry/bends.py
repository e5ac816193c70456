"""Bends: what a rounded corner does to a centre line, its length and its shape."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from boardplan.geometry.point import Point, bearing


def turn_between(before: float, after: float) -> float:
    """Return the turn from one direction to another, in degrees, -180 up to 180, left positive."""
    return (after - before + 180.0) % 360.0 - 180.0


def corner_saving(radius: float, turn: float) -> float:
    """Return how much shorter a bend is than the two legs to its corner.

    The legs hold a tangent of R tan(t/2) each, the bend an arc of R t: R (2 tan(t/2) - t).
    A square corner saves (2 - pi/2) R = 0.4292 R. Elementary geometry of a fillet.

    >>> round(corner_saving(64, 90), 2)
    27.47
    """
    angle = math.radians(abs(turn))
    return radius * (2 * math.tan(angle / 2) - angle)


def tangent_length(radius: float, turn: float) -> float:
    """Return how far before its corner a bend begins: R tan(t/2)."""
    return radius * math.tan(math.radians(abs(turn)) / 2)


def straight_length(points: Sequence[tuple[float, float]]) -> float:
    """Return the length along straight legs from corner to corner."""
    return sum(math.dist(a, b) for a, b in pairwise(points))


def turns(points: Sequence[tuple[float, float]]) -> tuple[float, ...]:
    """Return the turn at each inner point of a line of legs, none of them of no length."""
    bearings = [bearing(a, b) for a, b in pairwise(points)]
    return tuple(turn_between(a, b) for a, b in pairwise(bearings))


def without_repeats(points: Sequence[Point]) -> tuple[Point, ...]:
    """Return the line without points that repeat the one before or lie straight between neighbours."""
    kept: list[Point] = []
    for point in points:
        if kept and point.distance_to(kept[-1]) < 1e-9:  # noqa: PLR2004 - same place for any saw
            continue
        while len(kept) > 1 and _straight_on(kept[-2], kept[-1], point):
            kept.pop()
        kept.append(point)
    return tuple(kept)


def _straight_on(first: Point, middle: Point, last: Point) -> bool:
    return abs(turn_between(bearing(first, middle), bearing(middle, last))) < 1e-7  # noqa: PLR2004


@dataclass(frozen=True, slots=True)
class Straight:
    """A straight stretch of a centre line."""

    start: Point
    end: Point

    @property
    def length(self) -> float:
        """How long it is."""
        return self.start.distance_to(self.end)


@dataclass(frozen=True, slots=True)
class Bend:
    """A bend of a centre line about a centre; turn in degrees, left positive."""

    start: Point
    end: Point
    centre: Point
    radius: float
    turn: float

    @property
    def length(self) -> float:
        """How long the arc is."""
        return self.radius * math.radians(abs(self.turn))


def rounded(points: Sequence[Point], radius: float) -> tuple[Straight | Bend, ...]:
    """Return the stretches of a line whose corners are bent with a radius, where the legs have room.

    Where two corners stand too close for the radius, both are drawn with what the leg between them
    holds; the cut length still reckons with the full radius, and a check says that the room is missing.
    """
    corners = without_repeats(points)
    if len(corners) < 2:  # noqa: PLR2004 - a line has two ends
        return ()
    bent = turns(corners)
    tangents = _tangents_that_fit(corners, bent, radius)
    pieces: list[Straight | Bend] = []
    at = corners[0]
    for index, turn in enumerate(bent):
        corner, tangent = corners[index + 1], tangents[index]
        into, out = bearing(corners[index], corner), bearing(corner, corners[index + 2])
        start, end = corner.ahead(into + 180, tangent), corner.ahead(out, tangent)
        if at.distance_to(start) > 1e-9:  # noqa: PLR2004
            pieces.append(Straight(at, start))
        bend_radius = tangent / math.tan(math.radians(abs(turn)) / 2)
        centre = start.ahead(into + (90 if turn > 0 else -90), bend_radius)
        pieces.append(Bend(start, end, centre, bend_radius, turn))
        at = end
    if at.distance_to(corners[-1]) > 1e-9:  # noqa: PLR2004
        pieces.append(Straight(at, corners[-1]))
    return tuple(pieces)


def _tangents_that_fit(corners: Sequence[Point], bent: Sequence[float], radius: float) -> list[float]:
    """Return each corner's tangent, shortened in proportion where a leg can't hold both of its ends."""
    wanted = [tangent_length(radius, min(abs(turn), 170.0)) for turn in bent]
    fitted = list(wanted)
    for leg, (start, end) in enumerate(pairwise(corners)):
        before = wanted[leg - 1] if leg > 0 else 0.0
        after = wanted[leg] if leg < len(wanted) else 0.0
        length = start.distance_to(end)
        if before + after > length:
            share = length / (before + after)
            if leg > 0:
                fitted[leg - 1] = min(fitted[leg - 1], before * share)
            if leg < len(wanted):
                fitted[leg] = min(fitted[leg], after * share)
    return fitted
