"""Laid way: a way as it lies, cut in its straight stretches and in boxes that hold its pieces."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.point import Box, Point, bearing, box_around, direction
from boardplan.routing.route import Route
from boardplan.routing.supports.clamp_spacing import NOISE

_SLICES = 6
"""A stretch askew is cut in as many pieces, each with its own box."""

Sides: TypeAlias = tuple[float, float, float, float]
"""Left, bottom, right and top, plain: there are very many of them."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A straight stretch of a cable: where it begins along the centre line, its start, direction and length."""

    along: float
    start: Point
    towards: float
    length: float

    @property
    def box(self) -> Box:
        """The box round its centre line."""
        return box_around((self.start, self.at(self.along + self.length)))

    def at(self, along: float) -> Point:
        """Return the point at a distance along the whole centre line."""
        return self.start.ahead(self.towards, along - self.along)

    def holds(self, along: float, half: float) -> bool:
        """Say whether a clamp of half a length lies on it whole."""
        return self.along + half - NOISE <= along <= self.along + self.length - half + NOISE

    def seen(self, point: tuple[float, float]) -> Point:
        """Return a point as seen from the start: along the stretch, and how far to the left of it."""
        cos, sin = direction(self.towards)
        x, y = point[0] - self.start.x, point[1] - self.start.y
        return Point(x * cos + y * sin, y * cos - x * sin)

    def seen_boxes(self, boxes: Iterable[Box]) -> Iterator[Sides]:
        """Yield the sides of boxes that hold others as seen from the start, along and to the left."""
        cos, sin = direction(self.towards)
        start_x, start_y = self.start
        for left, bottom, right, top in boxes:
            x, y = (left + right) / 2 - start_x, (bottom + top) / 2 - start_y
            wide, high = (right - left) / 2, (top - bottom) / 2
            on, over = wide * abs(cos) + high * abs(sin), wide * abs(sin) + high * abs(cos)
            along, aside = x * cos + y * sin, y * cos - x * sin
            yield along - on, aside - over, along + on, aside + over


@dataclass(frozen=True, slots=True)
class Laid:
    """A way as it lies: its pieces and its length, its straight stretches, boxes round all of its pieces."""

    pieces: tuple[Straight | Bend, ...]
    length: float
    stretches: tuple[Stretch, ...]
    boxes: tuple[Box, ...]


_CACHE_SIZE = 4096
_cache: dict[int, tuple[Route, Laid]] = {}


def laid(way: Route) -> Laid:
    """Return a way as it lies; remembered as long as the way is the same object."""
    held = _cache.get(id(way))
    if held is not None and held[0] is way:
        return held[1]
    if len(_cache) >= _CACHE_SIZE:
        _cache.clear()
    result = _laid(way)
    _cache[id(way)] = way, result
    return result


def _laid(way: Route) -> Laid:
    pieces, stretches, along = way.pieces, [], 0.0
    for piece in pieces:
        if isinstance(piece, Straight):
            stretches.append(Stretch(along, piece.start, bearing(piece.start, piece.end), piece.length))
        along += piece.length
    return Laid(pieces, along, tuple(stretches), tuple(box for piece in pieces for box in _piece_boxes(piece)))


def _piece_boxes(piece: Straight | Bend) -> Iterator[Box]:
    a, b = piece.start, piece.end
    askew = isinstance(piece, Straight) and abs(a.x - b.x) > 1 and abs(a.y - b.y) > 1
    parts = _SLICES if askew else 1
    cuts = [Point(a.x + (b.x - a.x) * n / parts, a.y + (b.y - a.y) * n / parts) for n in range(parts + 1)]
    for pair in pairwise(cuts):
        yield box_around(pair)
