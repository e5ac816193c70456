"""In channels: which stretches of a way lie in which channel, from geometry alone."""

from collections.abc import Sequence
from itertools import pairwise

from boardplan.geometry.point import Point, bearing, box_around, direction
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan
from boardplan.routing.route import InChannel

_LEAST_STRETCH = 1.0  # mm: a cable that crosses a channel squarely fills none of its length


def stretches_in_channels(plan: Plan, points: Sequence[Point]) -> tuple[InChannel, ...]:
    """Return the stretches of a way (on the wall) inside channels, along each centre line, in the plan's order."""
    found = []
    around = box_around(points)
    for channel in sorted(plan.channels.values(), key=lambda each: each.id):
        line = tuple(plan.on_wall(channel.board, each) for each in channel.line)
        if not box_around(line).grown(channel.width).touches(around):
            continue
        found += [InChannel(channel.id, start, end) for start, end in inside_channel(line, channel, points)]
    return tuple(found)


def inside_channel(line: Sequence[Point], channel: Channel, points: Sequence[Point]) -> tuple[tuple[float, float], ...]:
    """Return where a way is inside a channel's outside, as distances along its centre line (on the wall).

    >>> straight = Channel("RW1", "A", (Point(0, 0), Point(500, 0)), 60, 60, 56, 56)
    >>> inside_channel(straight.line, straight, (Point(100, 200), Point(100, 5), Point(600, 5)))
    ((100.0, 500.0),)
    """
    touched, before, last = [], 0.0, len(line) - 2
    for index, (a, b) in enumerate(pairwise(line)):
        length = a.distance_to(b)
        if length:
            slack = (channel.width / 2 if index else 0.0, channel.width / 2 if index < last else 0.0)
            for start, end in _inside_leg(a, b, channel.width / 2, slack, points):
                touched.append((before + min(max(start, 0.0), length), before + min(max(end, 0.0), length)))
        before += length
    return tuple(each for each in _merged(touched) if each[1] - each[0] >= _LEAST_STRETCH)


def _inside_leg(
    a: Point, b: Point, half: float, slack: tuple[float, float], points: Sequence[Point]
) -> list[tuple[float, float]]:
    """Return where legs of a way lie within one straight leg of a channel, along it from its start."""
    cos, sin = direction(bearing(a, b))
    low, high = -slack[0], a.distance_to(b) + slack[1]
    local = [((p.x - a.x) * cos + (p.y - a.y) * sin, (p.y - a.y) * cos - (p.x - a.x) * sin) for p in points]
    found = []
    for (u0, v0), (u1, v1) in pairwise(local):
        span = _clipped(_clipped((0.0, 1.0), u0, u1, low, high), v0, v1, -half, half)
        if span is not None:
            ends = sorted((u0 + (u1 - u0) * span[0], u0 + (u1 - u0) * span[1]))
            found.append((ends[0], ends[1]))
    return found


def _clipped(
    span: tuple[float, float] | None, start: float, end: float, low: float, high: float
) -> tuple[float, float] | None:
    """Return the share of a leg whose coordinate lies between two bounds."""
    if span is None:
        return None
    if start == end:
        return span if low <= start <= high else None
    near, far = sorted(((low - start) / (end - start), (high - start) / (end - start)))
    clipped = max(span[0], near), min(span[1], far)
    return clipped if clipped[0] <= clipped[1] else None


def _merged(spans: list[tuple[float, float]]) -> list[tuple[float, float]]:
    merged: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if merged and start <= merged[-1][1] + 1e-6:
            merged[-1] = merged[-1][0], max(merged[-1][1], end)
        else:
            merged.append((start, end))
    return merged
