"""Hatching: parallel lines within an outline and outside its cut-outs."""

import math
from collections.abc import Iterable, Iterator, Sequence

from boardplan.geometry.point import Point, box_around
from boardplan.model.board import Ring


def hatch(rings: Sequence[Ring], towards: float, spacing: float) -> Iterator[tuple[Point, Point]]:
    """Yield lines in a direction that lie within rings by the even-odd rule, evenly spaced from the origin."""
    box = box_around(point.turned(-towards) for ring in rings for point in ring)
    steps = range(math.ceil(box.bottom / spacing), math.floor(box.top / spacing) + 1)
    return lines_at(rings, towards, (step * spacing for step in steps))


def lines_at(rings: Sequence[Ring], towards: float, levels: Iterable[float]) -> Iterator[tuple[Point, Point]]:
    """Yield lines in a direction at distances to the left of the origin, as far as they lie within rings."""
    turned = [tuple(point.turned(-towards) for point in ring) for ring in rings]
    for level in levels:
        crossings = sorted(_crossings(turned, level))
        for start, end in zip(crossings[::2], crossings[1::2], strict=False):
            yield Point(start, level).turned(towards), Point(end, level).turned(towards)


def inside(rings: Sequence[Ring], point: Point) -> bool:
    """Say whether a point lies within rings by the even-odd rule."""
    return sum(crossing > point.x for crossing in _crossings(rings, point.y)) % 2 == 1


def _crossings(rings: Sequence[Ring], level: float) -> Iterator[float]:
    for ring in rings:
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
            if (a.y <= level) != (b.y <= level):
                yield a.x + (level - a.y) / (b.y - a.y) * (b.x - a.x)
