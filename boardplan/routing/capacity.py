"""Capacity: no more cables into a stretch of channel than the rule set lets in, where they have another way.

Pinned cables come first, then the thickest, then by id; a cable that no longer fits looks for another way with
the full stretches closed, and stays where it was if there is none: a check then says so.
"""

from collections.abc import Callable, Mapping
from itertools import pairwise

from boardplan.geometry.bends import straight_length
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.channel_fill import channel_fills, jacket_area
from boardplan.routing.route import InChannel, Route, Way


def spread_over_channels(
    plan: Plan, ways: Mapping[str, Way], another: Callable[[Cable, tuple[InChannel, ...]], Way]
) -> dict[str, Way]:
    """Return the ways with cables moved out of overfull stretches; `another` finds a way beside those given."""
    most = plan.rules.value("channel-fill-most")
    if all(each.percent <= most for each in channel_fills(plan, ways).values()):
        return dict(ways)
    settled, laid = dict(ways), _Laid(plan, most)
    for cable in sorted(plan.cables.values(), key=lambda each: _order(plan, each)):
        way = settled[cable.id]
        if not isinstance(way, Route) or not way.in_channels:
            continue
        full = laid.full_for(cable)
        if not cable.pins and overlaps(way.in_channels, full):
            other = another(cable, full)
            if isinstance(other, Route) and not overlaps(other.in_channels, full):
                way = settled[cable.id] = other
        laid.add(cable, way)
    return settled


def _order(plan: Plan, cable: Cable) -> tuple[bool, float, str]:
    return not cable.pins, -_area(plan, cable), cable.id


def _area(plan: Plan, cable: Cable) -> float:
    return jacket_area(plan.conductors[cable.conductor].outside_diameter, cable.count)


_SHARED = 1e-6  # mm: stretches that only touch share nothing


def overlaps(stretches: tuple[InChannel, ...], full: tuple[InChannel, ...]) -> bool:
    """Say whether any stretch shares some length with a full one."""
    return any(
        a.channel == b.channel and min(a.end, b.end) - max(a.start, b.start) > _SHARED for a in stretches for b in full
    )


class _Laid:
    """What has been laid into the channels so far."""

    def __init__(self, plan: Plan, most: float) -> None:
        """Begin with empty channels; `most` in percent of their inner area."""
        self._plan = plan
        self._most = most
        self._stretches: dict[str, list[tuple[float, float, float]]] = {each: [] for each in plan.channels}

    def add(self, cable: Cable, way: Route) -> None:
        """Lay a cable in."""
        for each in way.in_channels:
            self._stretches[each.channel].append((each.start, each.end, _area(self._plan, cable)))

    def full_for(self, cable: Cable) -> tuple[InChannel, ...]:
        """Return the stretches that can't take a cable any more."""
        area = _area(self._plan, cable)
        found: list[InChannel] = []
        for channel in sorted(self._stretches):
            room = self._plan.channels[channel].inner_area * self._most / 100 - area
            found += [InChannel(channel, start, end) for start, end in self._over(channel, room)]
        return tuple(found)

    def _over(self, channel: str, room: float) -> list[tuple[float, float]]:
        laid = self._stretches[channel]
        length = straight_length(self._plan.channels[channel].line)
        cuts = sorted({0.0, length, *(place for start, end, _ in laid for place in (start, end))})
        full: list[tuple[float, float]] = []
        for start, end in pairwise(cuts):
            if sum(area for a, b, area in laid if a <= start and end <= b) > room + 1e-9:
                if full and full[-1][1] == start:
                    full[-1] = full[-1][0], end
                else:
                    full.append((start, end))
        return full
