"""Channel edits: draw a channel, move and add corners, give it another section."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from boardplan.editing.lookup import board_of, channel_of
from boardplan.editing.references import next_reference
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.geometry.bends import turn_between, without_repeats
from boardplan.geometry.point import Point, bearing
from boardplan.model.channel import Channel, ChannelScrews
from boardplan.model.channel_section import ChannelSection
from boardplan.model.fastener import Fastener
from boardplan.model.plan import Plan

SECTIONS = tuple(
    ChannelSection(f"{width}x{height}", f"Slotted channel {width} x {height}", width, height, inner_width, inner_height)
    for width, height, inner_width, inner_height in (
        (25, 40, 21, 37),
        (40, 40, 36, 37),
        (40, 60, 36, 57),
        (60, 60, 56, 56),
        (60, 40, 56, 37),
        (80, 60, 76, 57),
    )
)
"""The sections of our own shelf, for where no shelf is at hand."""


def section_of(channel: Channel) -> ChannelSection:
    """Return the section a channel has: one of ours by its sizes, or one without a name."""
    sizes = channel.width, channel.height, channel.inner_width, channel.inner_height
    bare = ChannelSection("", f"{channel.width:g} x {channel.height:g} mm", *sizes)
    return next((each for each in SECTIONS if _sizes(each) == sizes), bare)


def _sizes(section: ChannelSection) -> tuple[float, float, float, float]:
    return section.width, section.height, section.inner_width, section.inner_height


def draw_channel(
    plan: Plan, board: str, line: Sequence[Point], section: ChannelSection, fastener: Fastener | None = None
) -> tuple[Plan, str]:
    """Return the plan with a channel along a centre line in board coordinates, and its reference.

    The fastener is copied into the job unless it has its own. Raises EditRefused.
    """
    board_of(plan, board)
    reference = next_reference(plan, "RW")
    screws = ChannelScrews(fastener=fastener.id if fastener else "")
    channel = Channel(
        id=reference,
        board=board,
        line=_line_or_refusal(without_repeats(line)),
        width=section.width,
        height=section.height,
        inner_width=section.inner_width,
        inner_height=section.inner_height,
        screws=screws,
    )
    if fastener and fastener.id not in plan.fasteners:
        plan = replace(plan, fasteners={**plan.fasteners, fastener.id: fastener})
    return with_changed(plan, [channel]), reference


def move_channel_corner(plan: Plan, channel_id: str, index: int, to: Point) -> Plan:
    """Return the plan with one corner or end of a channel elsewhere on its board."""
    channel = channel_of(plan, channel_id)
    place = _place_or_refusal(channel, index)
    return _with_line(plan, channel, (*channel.line[:place], to, *channel.line[place + 1 :]))


def slide_channel_leg(plan: Plan, channel_id: str, leg: int, by: Point) -> Plan:
    """Return the plan with a leg of a channel moved; its neighbours stretch to follow."""
    channel = channel_of(plan, channel_id)
    place = _place_or_refusal(channel, leg)
    _place_or_refusal(channel, leg + 1)
    ends = (each.moved(*by) for each in channel.line[place : place + 2])
    return _with_line(plan, channel, (*channel.line[:place], *ends, *channel.line[place + 2 :]))


def insert_channel_corner(plan: Plan, channel_id: str, leg: int, at: Point) -> Plan:
    """Return the plan with a new corner of a channel between both ends of a leg."""
    channel = channel_of(plan, channel_id)
    place = _place_or_refusal(channel, leg) + 1
    _place_or_refusal(channel, place)
    return _with_line(plan, channel, (*channel.line[:place], at, *channel.line[place:]))


def remove_channel_corner(plan: Plan, channel_id: str, index: int) -> Plan:
    """Return the plan with a channel that passes by one of its corners or is shorter by an end."""
    channel = channel_of(plan, channel_id)
    place = _place_or_refusal(channel, index)
    return _with_line(plan, channel, (*channel.line[:place], *channel.line[place + 1 :]))


def set_channel_section(plan: Plan, channel_id: str, section: ChannelSection) -> Plan:
    """Return the plan with another section for a channel; dividers that no longer fit inside are left out."""
    channel = channel_of(plan, channel_id)
    changed = replace(
        channel,
        width=section.width,
        height=section.height,
        inner_width=section.inner_width,
        inner_height=section.inner_height,
        dividers=tuple(each for each in channel.dividers if each < section.inner_width),
    )
    return with_changed(plan, [changed])


def _with_line(plan: Plan, channel: Channel, line: Sequence[Point]) -> Plan:
    return with_changed(plan, [replace(channel, line=_line_or_refusal(tuple(line)))])


def _place_or_refusal(channel: Channel, index: int) -> int:
    if not 0 <= index < len(channel.line):
        raise EditRefused(f"Channel {channel.id} has no corner {index + 1}.")
    return index


def _line_or_refusal(line: tuple[Point, ...]) -> tuple[Point, ...]:
    if len(line) < 2:  # noqa: PLR2004 - a line has two ends
        raise EditRefused("A channel needs two different ends.")
    if any(a == b for a, b in pairwise(line)):
        raise EditRefused("Two corners of a channel can't lie on the same place.")
    bearings = [bearing(a, b) for a, b in pairwise(line)]
    if any(abs(turn_between(a, b)) > 179.999 for a, b in pairwise(bearings)):  # noqa: PLR2004
        raise EditRefused("A channel can't double back on itself.")
    return line
