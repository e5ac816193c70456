"""Rings: rectangles, discs and hexagons as corners, and strips along their edges."""

import math
from collections.abc import Sequence
from itertools import groupby, pairwise

from boardplan.geometry.point import Point, bearing, box_around, direction, signed_area
from boardplan.model.board import Ring

_ARC_STEPS = 4
_SHARPEST_MITRE = 0.2
"""Keeps the point of a very sharp corner from running away."""


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


def disc(centre: Point, radius: float, sides: int = 0) -> Ring:
    """Return a disc as a ring of many sides; of as many as its radius needs to look round, where none are given."""
    sides = sides or max(14, min(48, round(radius * 2.2)))
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
    outward = _outward(ring)
    return tuple(
        Point(at.x - (a[0] + b[0]) * share, at.y - (a[1] + b[1]) * share)
        for at, a, b in zip(ring, (outward[-1], *outward), outward, strict=False)
        for share in (by / max(_SHARPEST_MITRE, 1 + a[0] * b[0] + a[1] * b[1]),)
    )


def _outward(ring: Ring) -> list[tuple[float, float]]:
    """Return the unit vector that points out of a counter-clockwise ring, for each edge from its corner on."""
    found: list[tuple[float, float]] = []
    for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
        dx, dy = b.x - a.x, b.y - a.y
        length = math.hypot(dx, dy) or 1.0
        found.append((dy / length, -dx / length))
    return found


def edge_strips(ring: Ring, width: float, light: float) -> tuple[tuple[Ring, ...], tuple[Ring, ...]]:
    """Return strips along the edges that face the light, and along those that turn away from it.

    `light` is the bearing the light comes from, in degrees. Edges in a row share one strip.
    """
    if signed_area(ring) < 0:
        ring = tuple(reversed(ring))
    box = box_around(ring)
    inner = inset(ring, min(width, 0.3 * box.width, 0.3 * box.height))
    towards = direction(light)
    lit = [out[0] * towards[0] + out[1] * towards[1] > 0 for out in _outward(ring)]
    first = next((at for at in range(len(lit)) if lit[at] != lit[at - 1]), 0)
    order = [(first + step) % len(ring) for step in range(len(ring))]
    strips: dict[bool, list[Ring]] = {True: [], False: []}
    for is_lit, run in groupby(order, key=lambda edge: lit[edge]):
        edges = list(run)
        corners = [*edges, (edges[-1] + 1) % len(ring)]
        strips[is_lit].append((*(ring[at] for at in corners), *(inner[at] for at in reversed(corners))))
    return tuple(strips[True]), tuple(strips[False])


def beside_line(line: Sequence[Point], offset: float) -> tuple[Point, ...]:
    """Return a line beside another, to its left where the offset is positive, its corners mitred."""
    bearings = [bearing(a, b) for a, b in pairwise(line)]
    into = (bearings[0], *bearings)
    out = (*bearings, bearings[-1])
    result: list[Point] = []
    for at, first, second in zip(line, into, out, strict=True):
        left, right = direction(first + 90), direction(second + 90)
        share = offset / max(_SHARPEST_MITRE, 1 + left[0] * right[0] + left[1] * right[1])
        result.append(Point(at.x + (left[0] + right[0]) * share, at.y + (left[1] + right[1]) * share))
    return tuple(result)
