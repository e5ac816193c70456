"""Reshape a channel: drag its corners, its ends and its legs; double clicks add and remove corners."""

from boardplan.editing.channel_edits import (
    insert_channel_corner,
    move_channel_corner,
    remove_channel_corner,
    slide_channel_leg,
)
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.squared import lined_up
from boardplan.geometry.nearest import distance_to_line, nearest_leg, nearest_on_leg
from boardplan.geometry.point import Point, bearing, direction
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan

_HINT = "Drag a corner, an end or a leg of a channel; a double click adds or removes a corner"


def reshape_channel(hand: Hand) -> Gesture:
    """Wait for a channel, then drag what the pointer caught of it."""
    event = yield Shown(hint=_HINT)
    while True:
        if event.kind == "key" and event.key == "escape":
            return Done()
        channel = _channel_at(hand, event)
        if channel is not None and event.kind == "double":
            return _corner_toggled(hand, channel, event)
        if channel is not None and event.kind == "press" and event.button == "left":
            return (yield from _drag(hand, channel, event))
        event = yield Shown(hint=f"{channel.id}: drag a corner, an end or a leg" if channel else _HINT)


def _channel_at(hand: Hand, event: Pointer) -> Channel | None:
    for channel in reversed(list(hand.plan.channels.values())):
        at = hand.plan.off_wall(channel.board, event.at)
        if distance_to_line(channel.line, at) <= max(channel.width / 2, event.reach):
            return channel
    return None


def _corner_at(hand: Hand, channel: Channel, event: Pointer) -> int | None:
    """Return the corner or end that the pointer catches, none on the open leg."""
    at = hand.plan.off_wall(channel.board, event.at)
    index = min(range(len(channel.line)), key=lambda each: channel.line[each].distance_to(at))
    near = channel.line[index].distance_to(at) <= max(CATCHING * event.reach, channel.width / 2)
    return index if near else None


def _corner_toggled(hand: Hand, channel: Channel, event: Pointer) -> Done:
    corner = _corner_at(hand, channel, event)
    selection = Selection((channel.id,))
    try:
        if corner is not None:
            plan = remove_channel_corner(hand.plan, channel.id, corner)
            return Done(plan, f"Remove a corner of {channel.id}", selection, again=True)
        leg, at = nearest_leg(channel.line, hand.plan.off_wall(channel.board, event.at))
        plan = insert_channel_corner(hand.plan, channel.id, leg, at)
    except EditRefused as refused:
        return Done(selection=selection, again=True, said=refused.sentence)
    return Done(plan, f"Add a corner to {channel.id}", selection, again=True)


def _drag(hand: Hand, channel: Channel, start: Pointer) -> Gesture:
    corner = _corner_at(hand, channel, start)
    selection = Selection((channel.id,))
    plan: Plan | None = None
    event = yield Shown(hint=f"Drag {channel.id}", selection=selection)
    while not (event.kind == "key" and event.key == "escape"):
        if event.kind == "release" and start.at.distance_to(event.at) <= start.reach:
            return Done(selection=selection, again=True)
        try:
            plan = _leg_dragged(hand, channel, start, event) if corner is None else None
            plan = plan or _corner_dragged(hand, channel, corner or 0, event)
            hint = f"{channel.id}"
        except EditRefused as refused:
            hint = refused.sentence
        if event.kind == "release":
            return Done(plan, f"Reshape {channel.id}", selection, again=True)
        event = yield Shown(plan, hint, selection=selection)
    return Done(selection=selection, again=True)


def _corner_dragged(hand: Hand, channel: Channel, corner: int, event: Pointer) -> Plan:
    """Return the plan with a corner at the pointer; an end stays in the direction of its leg unless alt is held."""
    snap = lined_up(hand, channel.board, event, channel.width, [channel.id])
    at = hand.plan.off_wall(channel.board, event.at.moved(*snap.shift))
    line = channel.line
    if not event.alt and corner in {0, len(line) - 1}:
        inner = line[1] if corner == 0 else line[-2]
        towards = bearing(inner, line[corner])
        at = nearest_on_leg(inner, inner.ahead(towards, 1e5), at)
    return move_channel_corner(hand.plan, channel.id, corner, at)


def _leg_dragged(hand: Hand, channel: Channel, start: Pointer, event: Pointer) -> Plan:
    """Return the plan with a leg moved square to itself."""
    leg, _ = nearest_leg(channel.line, hand.plan.off_wall(channel.board, start.at))
    aside = direction(bearing(*channel.line[leg : leg + 2]) + 90.0)
    snap = lined_up(hand, channel.board, event, channel.width, [channel.id])
    by = event.at.moved(*snap.shift).minus(hand.plan.on_wall(channel.board, channel.line[leg]))
    across = by.x * aside[0] + by.y * aside[1]
    return slide_channel_leg(hand.plan, channel.id, leg, Point(aside[0] * across, aside[1] * across))
