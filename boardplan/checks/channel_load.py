"""Channel load: how full a channel is, whether the cables in it fit and may lie together."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where, two_percents, where_is
from boardplan.checks.spots import CableSpot, ChannelSpot
from boardplan.geometry.point import box_around
from boardplan.model.cable import CableClass
from boardplan.routing.route import Route

APART: tuple[CableClass, ...] = ("ac", "pv")
"""Classes that lie in a channel alone; extra-low voltage and signal may share one."""


def channel_too_full(site: Site, spot: ChannelSpot) -> Iterator[Finding]:
    """Yield a finding where the fullest section of a channel holds more than the rule set plans, or allows."""
    fill = site.fills.get(spot.id)
    if fill is None or fill.fullest is None:
        return
    most, design = site.limit("channel-fill-most"), site.limit("channel-fill-design")
    over = next((each for each in (most, design) if fill.percent > each.value + NOISE), None)
    if over is None:
        return
    section, (has, most_words) = fill.fullest, two_percents(fill.percent, over.value)
    words = (
        f"Channel {spot.id} is {has} full from {site.length(section.start)} to "
        f"{site.length(section.end)} along it, with {', '.join(section.cables)}; "
        f"{most_words} is {'the most' if over is most else 'planned with'}"
    )
    where = where_is(spot, at=fill.at, area=box_around([fill.at]).grown(spot.channel.width / 2))
    yield site.finding(
        "channel-too-full" if over is most else "channel-fuller-than-planned", over, where, words, fill.percent
    )


def classes_share_channel(site: Site, spot: ChannelSpot) -> Iterator[Finding]:
    """Yield a finding where mains or PV cables share a section of a channel with those of another class."""
    fill = site.fills.get(spot.id)
    sections = fill.sections if fill else ()
    inside = {cable: site.plan.cables[cable].cable_class for cable in set().union(*(each.cables for each in sections))}
    if not any(each in APART for each in inside.values()):
        return
    mixed: dict[str, CableClass] = {}
    for section in sections:
        classes = {cable: inside[cable] for cable in section.cables}
        if len(set(classes.values())) > 1 and any(each in APART for each in classes.values()):
            mixed |= classes
    if not mixed:
        return
    by_class = "; ".join(
        f"{sort}: {', '.join(cable for cable in sorted(mixed) if mixed[cable] == sort)}"
        for sort in sorted(set(mixed.values()))
    )
    divided = bool(spot.channel.dividers)
    limit = site.limit("channel-classes-divided" if divided else "channel-classes-apart")
    advice = "lay them on different sides of the divider" if divided else "they are to lie apart"
    words = f"Channel {spot.id} holds cables of different classes side by side ({by_class}); {advice}"
    yield site.finding("classes-share-channel", limit, where_is(spot), words)


def cable_fits_channel(site: Site, spot: CableSpot, channel: ChannelSpot) -> Iterator[Finding]:
    """Yield findings where a cable lies in a channel that is too shallow for it, or not meant for its size."""
    if not isinstance(spot.way, Route) or all(part.channel != channel.id for part in spot.way.in_channels):
        return
    conductor = spot.conductor
    where = Where((spot.id, channel.id), channel.board.id, channel.box.centre, channel.box)
    depth, share = channel.channel.inner_height, site.limit("channel-largest-cable")
    has = 100 * conductor.outside_diameter / depth
    if has > share.value + NOISE:
        thick, most = two_percents(has, share.value)
        words = (
            f"Cable {spot.id} is {site.length(conductor.outside_diameter)} thick, {thick} of the depth of "
            f"channel {channel.id}; {most} is asked at most"
        )
        yield site.finding("cable-too-thick-for-channel", share, where, words, has)
    largest = site.limit("channel-largest-conductor")
    if conductor.area is not None and conductor.area > largest.value + NOISE:
        words = (
            f"Cable {spot.id} with {conductor.area:g} mm² lies in channel {channel.id}; "
            f"up to {largest.value:g} mm² belongs in a channel"
        )
        yield site.finding("conductor-too-large-for-channel", largest, where, words, conductor.area)
