"""Wider channel: which larger section would have room for a cable that a channel stops. Slow: asked for.

A channel stops a cable that finds no way, that had to leave it to others as it is full, that lies in it where it is
overfull, or that is too thick for its depth. Each larger section within reach is tried out, the least first: all ways
are looked for again with it in its place.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from boardplan.geometry.point import Box
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.channel_section import ChannelSection
from boardplan.model.plan import Plan
from boardplan.routing.find_route import find_routes
from boardplan.routing.one_way import found_way, way_meant
from boardplan.routing.route import NoWay, Route, Way
from boardplan.routing.sharing.capacity import overfull, overlaps
from boardplan.routing.square.blockers import blockers_of, boxes_of_ring, channel_rings
from boardplan.routing.square.surroundings import surroundings_of

_NOISE = 1e-9


@dataclass(frozen=True, slots=True)
class WiderChannel:
    """A channel, and the section that would have room in its stead."""

    channel: Channel
    section: ChannelSection

    def words(self, cable: str) -> str:
        """Return what to take in its stead, as an offer for a cable."""
        now = f"{self.channel.width:g} x {self.channel.height:g}"
        return f"Take a channel of {self.section.words} mm for {self.channel.id}, not {now}: it has room for {cable}."


def wider_channels(plan: Plan, cable: Cable, sections: Sequence[ChannelSection]) -> Iterator[WiderChannel]:
    """Yield for each channel that stops a cable the least larger section of those given that has room for it."""
    ways = find_routes(plan) if sections else {}
    for channel in _stopping(plan, cable, ways):
        for section in _larger(channel, sections):
            if _has_room(plan, channel, _with_section(channel, section)) and _frees(
                plan, ways, cable, channel, section
            ):
                yield WiderChannel(channel, section)
                break


def _stopping(plan: Plan, cable: Cable, ways: Mapping[str, Way]) -> list[Channel]:
    """Return the channels that may stop a cable, by id: where it has no way any, if it may lie in channels at all."""
    way = ways.get(cable.id)
    if isinstance(way, NoWay):
        names = set() if way_meant(plan, cable)[0] == "outside" else set(plan.channels)
    elif way is None:
        names = set()
    else:
        names = {each.channel for each in way.full} | _too_small(plan, cable, ways)
    return [plan.channels[name] for name in sorted(names)]


def _too_small(plan: Plan, cable: Cable, ways: Mapping[str, Way]) -> set[str]:
    """Return the channels that a cable lies in where they are overfull, or too shallow for it."""
    way = ways[cable.id]
    inside = way.in_channels if isinstance(way, Route) else ()
    full = overfull(plan, ways, plan.rules.value("channel-fill-most")) if inside else ()
    diameter, share = plan.conductors[cable.conductor].outside_diameter, plan.rules.value("channel-largest-cable") / 100
    return {
        each.channel
        for each in inside
        if overlaps((each,), full) or diameter > share * plan.channels[each.channel].inner_height + _NOISE
    }


def _larger(channel: Channel, sections: Sequence[ChannelSection]) -> list[ChannelSection]:
    """Return the sections that are larger than that of a channel and nowhere smaller, the least first."""
    larger = [
        each
        for each in sections
        if min(each.width - channel.width, each.height - channel.height) >= 0
        and min(each.inner_width - channel.inner_width, each.inner_height - channel.inner_height) >= 0
        and each.inner_width * each.inner_height > channel.inner_area + _NOISE
    ]
    return sorted(larger, key=lambda each: (each.inner_width * each.inner_height, each.width, each.id))


def _with_section(channel: Channel, section: ChannelSection) -> Channel:
    return replace(
        channel,
        width=section.width,
        height=section.height,
        inner_width=section.inner_width,
        inner_height=section.inner_height,
    )


def _has_room(plan: Plan, before: Channel, after: Channel) -> bool:
    """Say whether a channel stands in nothing that it didn't stand in before: bodies, channels, no-go boxes, edges."""
    old, new = _boxes(plan, before), _boxes(plan, after)
    others = [each.box for each in blockers_of(plan) if each.sort != "channel" or each.thing != before.id]
    return not any(
        _overlap(box, other) and not any(_overlap(held, other) for held in old) for other in others for box in new
    )


def _boxes(plan: Plan, channel: Channel) -> list[Box]:
    return [box for ring in channel_rings(plan, channel) for box in boxes_of_ring(ring)]


def _overlap(one: Box, other: Box) -> bool:
    return one.left < other.right and other.left < one.right and one.bottom < other.top and other.bottom < one.top


def _frees(plan: Plan, ways: Mapping[str, Way], cable: Cable, channel: Channel, section: ChannelSection) -> bool:
    """Say whether with another section in place of a channel's a cable lies well, and no other one loses its way."""
    changed = plan.with_things([_with_section(channel, section)])
    stuck = isinstance(ways[cable.id], NoWay)
    if stuck and isinstance(found_way(surroundings_of(changed), cable), NoWay):
        return False
    found = find_routes(changed)
    way = found[cable.id]
    if isinstance(way, NoWay) or way.full or _too_small(changed, cable, found):
        return False
    uses_it = stuck or any(each.channel == channel.id for each in way.in_channels)
    return uses_it and all(isinstance(found[name], Route) or isinstance(held, NoWay) for name, held in ways.items())
