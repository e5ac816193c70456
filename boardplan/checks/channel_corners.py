"""Channel corners: whether a cable finds room for its bend radius inside each corner of the channels it lies in."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot, ChannelSpot
from boardplan.geometry.bends import turns, without_repeats
from boardplan.geometry.corner_room import widest_bend
from boardplan.geometry.point import box_around
from boardplan.model.channel import Channel
from boardplan.routing.route import Route

_PAST = 1.0  # mm: a cable that goes no farther past a corner leaves the channel there


def bend_fits_corner(site: Site, spot: CableSpot, channel: ChannelSpot) -> Iterator[Finding]:
    """Yield a finding for the tightest corner of a channel that a cable goes round, at the least or preferred radius.

    The inside corner is taken to be as sharp as the channel's walls make it: no plan says that it is cut back. A cable
    is thought to have the corner to itself, or in a divided channel the widest part of it: one that finds no room even
    so never does.
    """
    if not (site.knows("channel-corner-least") and site.knows("channel-corner-preferred")):
        return
    passed = _corners_passed(spot.way, channel) if isinstance(spot.way, Route) else ()
    tightest = max(passed, key=lambda each: (abs(each[1]), -each[0]), default=None)
    if tightest is not None:
        number, turn = tightest
        width = _widest_part(channel.channel)
        fits = widest_bend(width, spot.conductor.outside_diameter, turn)
        if fits is None:
            yield _misses_corner(site, spot, channel, number, width)
        else:
            yield from _bends_tighter(site, spot, channel, number, fits)


def _misses_corner(site: Site, spot: CableSpot, channel: ChannelSpot, number: int, width: float) -> Finding:
    diameter = spot.conductor.outside_diameter
    thick, wide = site.two_lengths(diameter, width)
    words = f"Cable {spot.id}, {thick} thick, does not fit at all round {_corner(channel, number)}, {wide} wide inside"
    limit = replace(site.limit("channel-corner-least"), value=diameter)
    return site.finding("channel-corner-too-tight", limit, _where(spot, channel, number), words, width)


def _bends_tighter(site: Site, spot: CableSpot, channel: ChannelSpot, number: int, fits: float) -> Iterator[Finding]:
    """Yield a finding where the radius that fits a corner is under the least, or else under the preferred one."""
    rule, diameter = site.plan.rules.bends[spot.conductor.construction], spot.conductor.outside_diameter
    for name, limit, times in (
        ("channel-corner-too-tight", site.limit("channel-corner-least"), rule.least),
        ("channel-corner-tighter-than-preferred", site.limit("channel-corner-preferred"), rule.prefer),
    ):
        if fits < times * diameter - NOISE:
            has, wants = site.two_lengths(fits, times * diameter)
            words = (
                f"Cable {spot.id}, {site.length(diameter)} thick, bends with radius {has} at most round "
                f"{_corner(channel, number)}, {site.length(_widest_part(channel.channel))} wide inside; {wants} is "
                f"asked: cut its inside corner back, or take a wider channel"
            )
            yield site.finding(name, replace(limit, value=times * diameter), _where(spot, channel, number), words, fits)
            return


def _corners_passed(way: Route, channel: ChannelSpot) -> Iterator[tuple[int, float]]:
    """Yield the number, from one on along the channel's line, and the turn of each corner that a way goes round."""
    spans = [(each.start, each.end) for each in way.in_channels if each.channel == channel.id]
    line, along = without_repeats(channel.line), 0.0
    for number, turn in enumerate(turns(line) if spans else (), start=1):
        along += line[number - 1].distance_to(line[number])
        if any(start < along - _PAST and along + _PAST < end for start, end in spans):
            yield number, turn


def _widest_part(channel: Channel) -> float:
    """Return how wide a channel is inside, between its dividers where it has any."""
    walls = (0.0, *sorted(channel.dividers), channel.inner_width)
    return max(b - a for a, b in pairwise(walls))


def _corner(channel: ChannelSpot, number: int) -> str:
    return f"corner {number} of channel {channel.id}"


def _where(spot: CableSpot, channel: ChannelSpot, number: int) -> Where:
    at = without_repeats(channel.line)[number]
    area = box_around([at]).grown(channel.channel.width / 2)
    return Where((spot.id, channel.id), channel.board.id, at, area)
