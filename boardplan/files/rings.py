"""Rings: whether an outline in a file is a shape one can cut."""

from collections.abc import Sequence

from boardplan.geometry.point import Point, signed_area
from boardplan.model.board import Ring

_LEAST_AREA = 1.0


def turned_counter_clockwise(ring: Ring) -> Ring:
    """Return the ring running counter-clockwise."""
    return ring if signed_area(ring) > 0 else tuple(reversed(ring))


def ring_fault(ring: Sequence[Point]) -> str | None:
    """Say what is wrong with an outline, none where it is sound: distinct corners, an area, no crossing."""
    if len(set(ring)) != len(ring):
        return "expected an outline that visits each corner once, and doesn't repeat the first at its end"
    if _crosses_itself(ring):
        return "expected an outline that doesn't cross or touch itself"
    if abs(signed_area(ring)) < _LEAST_AREA:
        return "expected an outline with an area"
    return None


def _crosses_itself(ring: Sequence[Point]) -> bool:
    count = len(ring)
    edges = [(ring[i], ring[(i + 1) % count]) for i in range(count)]
    for i in range(count):
        for j in range(i + 2, count):
            if i == 0 and j == count - 1:
                continue
            if _meet(*edges[i], *edges[j]):
                return True
    return any(_folds_back(ring[i - 1], ring[i], ring[(i + 1) % count]) for i in range(count))


def _side(a: Point, b: Point, c: Point) -> float:
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    sides = _side(a, b, c), _side(a, b, d), _side(c, d, a), _side(c, d, b)
    if sides[0] * sides[1] < 0 and sides[2] * sides[3] < 0:
        return True
    touching = ((sides[0], a, b, c), (sides[1], a, b, d), (sides[2], c, d, a), (sides[3], c, d, b))
    return any(side == 0 and _within(start, end, point) for side, start, end, point in touching)


def _within(start: Point, end: Point, point: Point) -> bool:
    return min(start.x, end.x) <= point.x <= max(start.x, end.x) and min(start.y, end.y) <= point.y <= max(
        start.y, end.y
    )


def _folds_back(before: Point, corner: Point, after: Point) -> bool:
    if _side(before, corner, after) != 0:
        return False
    return (before.x - corner.x) * (after.x - corner.x) + (before.y - corner.y) * (after.y - corner.y) > 0
