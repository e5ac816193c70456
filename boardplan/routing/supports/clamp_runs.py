"""Clamp runs: the stretches of a cable that lie outside of channels, between the mouths of its lugs."""

from collections.abc import Iterable, Iterator

from boardplan.geometry.point import Box, Point
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.routing.square.blockers import boxes_of_ring, channel_rings
from boardplan.routing.square.ends import End
from boardplan.routing.supports.clamp_room import joined
from boardplan.routing.supports.clamp_spacing import Run, Span
from boardplan.routing.supports.laid_way import laid


def runs_of(plan: Plan, way: Route, ends: tuple[End, End]) -> list[Run]:
    """Return the stretches of a way outside of channels, from the mouth of one lug to that of the other."""
    start, end = ends[0].straight, laid(way).length - ends[1].straight
    runs, at, after_channel = [], start, False
    for low, high in _in_channels(plan, way):
        if low > at + 1:
            runs.append(Run(at, low, after_channel, channel_after=True))
        at, after_channel = max(at, high), True
    if end > at + 1:
        runs.append(Run(at, end, after_channel))
    return runs


def _in_channels(plan: Plan, way: Route) -> list[Span]:
    """Return where a way lies in the channels it takes, as distances along its centre line."""
    inside = {part.channel for part in way.in_channels}
    boxes = [
        box
        for channel in plan.channels.values()
        if channel.id in inside
        for ring in channel_rings(plan, channel)
        for box in boxes_of_ring(ring)
    ]
    found, along = [], 0.0
    for piece in laid(way).pieces if boxes else ():
        found += [
            (along + low * piece.length, along + high * piece.length)
            for low, high in _shares(piece.start, piece.end, boxes)
        ]
        along += piece.length
    merged = joined((low - _STEP, high + _STEP) for low, high in found)
    return [(low + _STEP, high - _STEP) for low, high in merged]


_STEP = 1.0  # mm: a shorter way out of a channel and into the next is none


def _shares(a: Point, b: Point, boxes: Iterable[Box]) -> Iterator[Span]:
    """Yield the shares of a straight line that lie in boxes; a bend counts by the line between its ends."""
    for box in boxes:
        low, high = 0.0, 1.0
        for start, end, least, most in ((a.x, b.x, box.left, box.right), (a.y, b.y, box.bottom, box.top)):
            if start == end:
                low, high = (low, high) if least <= start <= most else (1.0, 0.0)
            else:
                near, far = sorted(((least - start) / (end - start), (most - start) / (end - start)))
                low, high = max(low, near), min(high, far)
        if low < high:
            yield low, high
