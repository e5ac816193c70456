"""Rings: rectangles, discs and hexagons as corners, and strips along their edges."""

import math
from collections.abc import Sequence
from itertools import pairwise

from boardplan.geometry.point import Point, bearing, box_around, direction, signed_area
from boardplan.model.board import Ring

_ARC_STEPS = 4


def rectangle(left: float, bottom: float, width: float, height: float, radius: float = 0.0) -> Ring:
    """Return a rectangle, its corners rounded."""
    right, top = left + width, bottom + height
    radius = min(radius, width / 2, height / 2)
    if radius <= 0:
        return (Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top))
    corners = (
        (Point(left + radius, bottom + radius), 180),
        (Point(right - radius, bottom + radius), 270),
        (Point(right - radius, top - radius), 0),
        (Point(left + radius, top - radius), 90),
    )
    return tuple(
        centre.ahead(start + 90 * step / _ARC_STEPS, radius)
        for centre, start in corners
        for step in range(_ARC_STEPS + 1)
    )


def disc(centre: Point, radius: float, sides: int = 20) -> Ring:
    """Return a disc as a ring of many sides."""
    return tuple(centre.ahead(360 * side / sides, radius) for side in range(sides))


def hexagon(centre: Point, across_flats: float, turn: float = 0.0) -> Ring:
    """Return a hexagon by its width across the flats, a flat facing up where it isn't turned."""
    radius = across_flats / math.sqrt(3)
    return tuple(centre.ahead(turn + 60 * corner, radius) for corner in range(6))


def bar(start: Point, towards: float, length: float, width: float, radius: float = 0.0) -> Ring:
    """Return a rectangle that begins at a point and runs in a direction, its width to both sides."""
    along = direction(towards)
    own = rectangle(0, -width / 2, length, width, radius)
    return tuple(Point(start.x + x * along[0] - y * along[1], start.y + x * along[1] + y * along[0]) for x, y in own)


def inset(ring: Ring, by: float) -> Ring:
    """Return the ring with every edge moved inwards, corners mitred; for a counter-clockwise ring."""
    result: list[Point] = []
    for before, at, after in zip((ring[-1], *ring[:-1]), ring, (*ring[1:], ring[0]), strict=True):
        first, second = _inward(before, at), _inward(at, after)
        share = by / max(0.2, 1 + first.x * second.x + first.y * second.y)
        result.append(Point(at.x + (first.x + second.x) * share, at.y + (first.y + second.y) * share))
    return tuple(result)


def _inward(start: Point, end: Point) -> Point:
    return Point(*direction(bearing(start, end) + 90))


def edge_strips(ring: Ring, width: float, light: float) -> tuple[tuple[Ring, ...], tuple[Ring, ...]]:
    """Return strips along the edges that face the light, and along those that turn away from it.

    `light` is the bearing the light comes from, in degrees.
    """
    if signed_area(ring) < 0:
        ring = tuple(reversed(ring))
    box = box_around(ring)
    inner = inset(ring, min(width, 0.3 * box.width, 0.3 * box.height))
    lit: list[Ring] = []
    dark: list[Ring] = []
    towards = direction(light)
    for index, start in enumerate(ring):
        following = (index + 1) % len(ring)
        end = ring[following]
        outward = direction(bearing(start, end) - 90)
        facing = outward[0] * towards[0] + outward[1] * towards[1]
        strip = (start, end, inner[following], inner[index])
        (lit if facing > 0 else dark).append(strip)
    return tuple(lit), tuple(dark)


def beside_line(line: Sequence[Point], offset: float) -> tuple[Point, ...]:
    """Return a line beside another, to its left where the offset is positive, its corners mitred."""
    bearings = [bearing(a, b) for a, b in pairwise(line)]
    into = (bearings[0], *bearings)
    out = (*bearings, bearings[-1])
    result: list[Point] = []
    for at, first, second in zip(line, into, out, strict=True):
        left, right = direction(first + 90), direction(second + 90)
        share = offset / max(0.2, 1 + left[0] * right[0] + left[1] * right[1])
        result.append(Point(at.x + (left[0] + right[0]) * share, at.y + (left[1] + right[1]) * share))
    return tuple(result)
