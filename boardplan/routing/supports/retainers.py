"""Retainers: what keeps cables in a channel that runs up, so that nothing hangs on friction.

In every upright stretch of a channel that cables lie in, retainers stand evenly, none farther from the next than the
rule set says: common practice, no source.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from boardplan.geometry.point import Point, bearing
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way
from boardplan.routing.supports.clamp_room import joined
from boardplan.routing.supports.clamp_spacing import NOISE, Span, common
from boardplan.routing.supports.laid_way import Stretch

_STEEP = math.sin(math.radians(45.0))
"""A stretch that rises by more than this share of its length counts as upright: its cables slide down."""


@dataclass(frozen=True, slots=True)
class Retainer:
    """A retainer across a channel: its middle on the wall, the channel's direction there, how wide it is inside."""

    channel: str
    at: Point
    towards: float
    width: float


def retainers_of(plan: Plan, ways: Mapping[str, Way]) -> dict[str, tuple[Retainer, ...]]:
    """Return the retainers of every channel that wants any; none under an edition that does not ask for them."""
    if not plan.rules.knows("retainer-most"):
        return {}
    spans = _spans(ways)
    found = {key: tuple(_retainers(plan, each, spans[key])) for key, each in plan.channels.items() if key in spans}
    return {key: each for key, each in found.items() if each}


def _spans(ways: Mapping[str, Way]) -> dict[str, list[Span]]:
    """Return where cables lie in each channel, as distances along its centre line."""
    found: dict[str, list[Span]] = {}
    for way in ways.values():
        if isinstance(way, Route):
            for part in way.in_channels:
                found.setdefault(part.channel, []).append((part.start, part.end))
    return found


def _retainers(plan: Plan, channel: Channel, spans: list[Span]) -> Iterator[Retainer]:
    most, along = plan.rules.value("retainer-most"), 0.0
    for a, b in pairwise(channel.line):
        leg = Stretch(along, plan.on_wall(channel.board, a), bearing(a, b), a.distance_to(b))
        along += leg.length
        if abs(b.y - a.y) > leg.length * _STEEP:
            for low, high in joined(common(spans, leg.along, along)):
                for at in _places(low, high, most):
                    yield Retainer(channel.id, leg.at(at), leg.towards, channel.inner_width)


def _places(low: float, high: float, most: float) -> list[float]:
    """Return as few places as can be, each in the middle of its share of a stretch.

    >>> _places(0, 900, 300)
    [150.0, 450.0, 750.0]
    """
    count = math.ceil((high - low) / most - NOISE)
    share = (high - low) / count
    return [low + share * (number + 0.5) for number in range(count)]
