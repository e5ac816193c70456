"""Self-crossing: whether a line of legs comes back to itself."""

from collections.abc import Sequence
from itertools import pairwise

from boardplan.geometry.point import Point, box_around

_Leg = tuple[Point, Point]


def crosses_itself(points: Sequence[Point]) -> bool:
    """Say whether any two legs of a line that don't follow each other share a place.

    >>> crosses_itself([Point(0, 0), Point(9, 0), Point(9, 9), Point(5, 9), Point(5, -9)])
    True
    """
    legs = list(pairwise(points))
    return any(_meet(one, other) for number, one in enumerate(legs) for other in legs[number + 2 :])


def _meet(one: _Leg, other: _Leg) -> bool:
    """Say whether two legs share a place: neither lies wholly on one side of the line through the other."""
    return (
        box_around(one).touches(box_around(other))
        and _side(*one, other[0]) * _side(*one, other[1]) <= 0
        and _side(*other, one[0]) * _side(*other, one[1]) <= 0
    )


def _side(a: Point, b: Point, at: Point) -> float:
    """Return on which side of a line through two points a third lies: positive to the left, nought on the line."""
    return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x)
