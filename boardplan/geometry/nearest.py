"""Nearest: the point of a leg, a line or a ring that lies closest to a place."""

from collections.abc import Sequence
from itertools import pairwise

from boardplan.geometry.point import Point


def nearest_on_leg(start: Point, end: Point, at: tuple[float, float]) -> Point:
    """Return the point of a straight leg nearest to a place.

    >>> nearest_on_leg(Point(0, 0), Point(100, 0), (30, 40))
    Point(x=30.0, y=0.0)
    """
    dx, dy = end.x - start.x, end.y - start.y
    square = dx * dx + dy * dy
    if square == 0:
        return start
    share = min(1.0, max(0.0, ((at[0] - start.x) * dx + (at[1] - start.y) * dy) / square))
    if share in (0.0, 1.0):
        return end if share else start
    return Point(start.x + share * dx, start.y + share * dy)


def nearest_leg(line: Sequence[Point], at: tuple[float, float]) -> tuple[int, Point]:
    """Return the number of the leg of a line nearest to a place, and the nearest point on it."""
    found = [(nearest_on_leg(a, b, at), leg) for leg, (a, b) in enumerate(pairwise(line))]
    point, leg = min(found, key=lambda each: each[0].distance_to(at))
    return leg, point


def nearest_on_ring(ring: Sequence[Point], at: tuple[float, float]) -> Point:
    """Return the point of a closed outline nearest to a place."""
    return nearest_leg((*ring, ring[0]), at)[1]


def distance_to_line(line: Sequence[Point], at: tuple[float, float]) -> float:
    """Return how far a place is from a line of legs."""
    return nearest_leg(line, at)[1].distance_to(at)
