"""Channel load: how full a channel is, how many conductors load it, whether its cables fit and may lie together."""

from collections.abc import Iterable, Iterator, Mapping

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where, two_percents, where_is
from boardplan.checks.spots import CableSpot, ChannelSpot
from boardplan.geometry.point import box_around
from boardplan.model.cable import CableClass
from boardplan.model.rule_set import Limit
from boardplan.routing.channels.channel_fill import Section, point_along
from boardplan.routing.route import Route

APART: tuple[CableClass, ...] = ("ac", "pv")
"""Classes that lie in a channel alone; extra-low voltage and signal may share one."""
LOW: tuple[CableClass, ...] = ("dc", "signal")
"""Classes of extra-low voltage."""


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


def many_loaded_conductors(site: Site, spot: ChannelSpot) -> Iterator[Finding]:
    """Yield a note where more conductors may carry current in a section of a channel than warm each other unasked.

    What they may then carry is the designer's: the program only counts.
    """
    fill = site.fills.get(spot.id)
    if not site.knows("channel-loaded-conductors") or fill is None:
        return
    limit = site.limit("channel-loaded-conductors")
    section = max(fill.sections, key=lambda each: (each.loaded, -each.start), default=None)
    if section is None or section.loaded <= limit.value:
        return
    words = (
        f"{section.loaded} conductors that may carry current lie in channel {spot.id} from "
        f"{site.length(section.start)} to {site.length(section.end)} along it; with more than {limit.value:g}, ask "
        f"the designer what each may carry"
    )
    at = site.plan.on_wall(spot.board.id, point_along(spot.channel.line, section.start))
    where = where_is(spot, at=at, area=box_around([at]).grown(spot.channel.width / 2))
    yield site.finding("many-loaded-conductors", limit, where, words, section.loaded)


def classes_share_channel(site: Site, spot: ChannelSpot) -> Iterator[Finding]:
    """Yield a finding where mains or PV cables share a section of a channel with those of another class.

    A divider keeps classes apart, but not PV strings above a voltage from extra-low-voltage cables. No job says what
    the voltage of a string is, so that under an edition that knows that limit it is asked for.
    """
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
    if site.knows("pv-string-voltage") and _pv_among_low_voltage(sections, inside):
        limit = site.limit("pv-string-voltage")
        advice += _asks_voltage(limit, divided=divided)
    words = f"Channel {spot.id} holds cables of different classes side by side ({by_class}); {advice}"
    yield site.finding("classes-share-channel", limit, where_is(spot), words)


def _pv_among_low_voltage(sections: Iterable[Section], inside: Mapping[str, CableClass]) -> bool:
    """Say whether PV cables share a section with those of an extra-low-voltage class."""
    classes = ({inside[cable] for cable in section.cables} for section in sections)
    return any("pv" in each and not each.isdisjoint(LOW) for each in classes)


def _asks_voltage(limit: Limit, *, divided: bool) -> str:
    """Return the question that a PV string among extra-low-voltage cables raises, and what hangs on the answer."""
    even = ", divided or not" if divided else ""
    return (
        f". What is the highest voltage of the PV strings? Above {limit.value:g} V they never lie with extra-low "
        f"voltage{even}, unless all insulation is rated for the highest voltage"
    )


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
