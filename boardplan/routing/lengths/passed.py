"""Passed: which channels and bodies a way lies in or goes over, and where along its centre line.

Distances along the centre line and heights off the board's face in mm.
"""

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeVar

from boardplan.geometry.bends import Bend
from boardplan.geometry.clipping import share_in_box
from boardplan.geometry.point import Box, Point, bearing, box_around
from boardplan.model.board import Board
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.placed import Placed, placed
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way
from boardplan.routing.square.blockers import boxes_of_ring, channel_rings
from boardplan.routing.supports.clamp_spacing import Span
from boardplan.routing.supports.laid_way import laid

T = TypeVar("T")
_CHORDS = 8
"""A bend is looked at as so many straight pieces."""
_LEAST = 1.0  # mm: what a way touches for less than this it doesn't meet


@dataclass(frozen=True, slots=True)
class Passable:
    """A channel or a component on the wall that a way may meet, and how high it stands off the board.

    `inside` is the height at which a cable lies in a channel or goes through its walls, none for a component.
    """

    thing: str
    boxes: tuple[Box, ...]
    around: Box
    top: float
    covered: bool = True
    inside: float | None = None


def passables(plan: Plan, those: Collection[str] | None = None) -> tuple[Passable, ...]:
    """Return everything on the boards that a way may meet, or those alone."""
    bodies = (_body(plan, each) for each in _among(plan.components, those))
    return (*bodies, *(_channel(plan, each) for each in _among(plan.channels, those)))


def _among(things: Mapping[str, T], those: Collection[str] | None) -> Iterable[T]:
    return things.values() if those is None else (things[each] for each in those if each in things)


def cables_passing(ways: Mapping[str, Way], things: Sequence[Passable]) -> set[str]:
    """Return the cables whose way is near some things, so that its height may hang on them."""
    if not things:
        return set()
    around = [each.around for each in things]
    return {
        key for key, way in ways.items() if isinstance(way, Route) and any(_line(way).is_near(each) for each in around)
    }


_CACHE_SIZE = 4096
_cache: dict[int, tuple[Placed, Board, Passable]] = {}


def _body(plan: Plan, component: Component) -> Passable:
    """Return a component; remembered as long as it lies as it does, on the same board."""
    lies, board = placed(plan, component), plan.boards[component.board]
    held = _cache.get(id(lies))
    if held is not None and held[0] is lies and held[1] is board:
        return held[2]
    if len(_cache) >= _CACHE_SIZE:
        _cache.clear()
    ring = [plan.on_wall(component.board, point) for point in lies.outline]
    body = Passable(component.id, tuple(boxes_of_ring(ring)), box_around(ring), lies.kind.depth)
    _cache[id(lies)] = lies, board, body
    return body


def _channel(plan: Plan, channel: Channel) -> Passable:
    rings = channel_rings(plan, channel)
    around = box_around(point for ring in rings for point in ring)
    boxes = tuple(box for ring in rings for box in boxes_of_ring(ring))
    inside = plan.rules.value("channel-slot-height") / 100 * channel.height
    return Passable(channel.id, boxes, around, channel.height, channel.cover, inside)


def met(way: Route, things: Iterable[Passable]) -> Iterator[tuple[Passable, Span]]:
    """Yield what a way lies over or in, and where along its centre line."""
    line = _line(way)
    around = line.around
    for thing in things:
        if not around.touches(thing.around):
            continue
        found = []
        for along, a, b, place in line.chords:
            if place.touches(thing.around):
                length = a.distance_to(b)
                shares = (share_in_box(a, b, box) for box in thing.boxes)
                found += [(along + each[0] * length, along + each[1] * length) for each in shares if each]
        yield from ((thing, each) for each in _joined(found) if each[1] - each[0] > _LEAST)


@dataclass(frozen=True)
class _Line:
    """A way with the box round it and its straight pieces, bends in chords: where each begins, its ends, its box."""

    way: Route

    @cached_property
    def around(self) -> Box:
        return box_around(self.way.points)

    def is_near(self, box: Box) -> bool:
        """Say whether the box round a piece of it touches another."""
        return self.around.touches(box) and any(place.touches(box) for *_, place in self.chords)

    @cached_property
    def chords(self) -> tuple[tuple[float, Point, Point, Box], ...]:
        return tuple((along, a, b, box_around((a, b))) for along, a, b in _chords(self.way))


_lines: dict[int, _Line] = {}


def _line(way: Route) -> _Line:
    """Return a way as it is looked at here; remembered as long as the way is the same object."""
    held = _lines.get(id(way))
    if held is not None and held.way is way:
        return held
    if len(_lines) >= _CACHE_SIZE:
        _lines.clear()
    line = _lines[id(way)] = _Line(way)
    return line


def _chords(way: Route) -> Iterator[tuple[float, Point, Point]]:
    """Yield the straight pieces of a centre line with where each begins, bends in chords."""
    along = 0.0
    for piece in laid(way).pieces:
        if isinstance(piece, Bend):
            yield from _bend_chords(along, piece)
        else:
            yield along, piece.start, piece.end
        along += piece.length


def _bend_chords(along: float, bend: Bend) -> Iterator[tuple[float, Point, Point]]:
    towards, step = bearing(bend.centre, bend.start), bend.turn / _CHORDS
    places = [bend.centre.ahead(towards + step * index, bend.radius) for index in range(_CHORDS + 1)]
    for index in range(_CHORDS):
        yield along + bend.radius * math.radians(abs(step)) * index, places[index], places[index + 1]


def _joined(spans: Sequence[Span]) -> list[Span]:
    joined: list[Span] = []
    for start, end in sorted(spans):
        if joined and start <= joined[-1][1] + _LEAST:
            joined[-1] = joined[-1][0], max(joined[-1][1], end)
        else:
            joined.append((start, end))
    return joined
