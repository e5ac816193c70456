"""Channel room: whether there is room for fingers between a channel and terminals, and beside its cover."""

from collections.abc import Iterator

from shapely import LineString
from shapely import Point as Spike

from boardplan.checks.bodies_apart import between_box, bodies_overlap, body_gap, box_gap
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import ChannelSpot, ComponentSpot
from boardplan.geometry.point import Box, Point, box_around


def little_finger_room(site: Site, spot: ComponentSpot, channel: ChannelSpot) -> Iterator[Finding]:
    """Yield a finding where terminals that look at a channel stand too near it."""
    limit = site.limit("channel-finger-room")
    if box_gap(spot.box, channel.box) >= limit.value:
        return
    origin, near = spot.board.position, []
    for each in spot.placed.terminals.values():
        at = each.position.moved(origin.x, origin.y)
        room = None if each.exit is None else _ahead(at, each.exit, limit.value, channel)
        if room is not None and room < limit.value - NOISE:
            near.append((room, each.terminal.id, at))
    if not near:
        return
    room, _, at = min(near)
    names = ", ".join(name for _, name, _ in near)
    has, wants = site.two_lengths(room, limit.value)
    subject = f"Terminal {names} of {spot.id} is" if len(near) == 1 else f"Terminals {names} of {spot.id} are"
    words = f"{subject} {has} from channel {channel.id}; {wants} is asked for fingers"
    where = where_is(spot, channel, area=box_around([at]).grown(10.0))
    yield site.finding("little-finger-room", limit, where, words, room)


def _ahead(at: Point, towards: float, reach: float, channel: ChannelSpot) -> float | None:
    """Return how far ahead of a terminal a channel begins, none where it isn't met within reach."""
    box = channel.box.grown(reach)
    if not box.holds(at):
        return None
    met = LineString([at, at.ahead(towards, reach)]).intersection(channel.body)
    return None if met.is_empty else float(met.distance(Spike(at)))


def cover_crowded(site: Site, spot: ComponentSpot, channel: ChannelSpot) -> Iterator[Finding]:
    """Yield a finding where a body at least half as high as a channel stands too near its cover to take it off."""
    limit = site.limit("channel-cover-side")
    if not channel.channel.cover or spot.height < channel.height / 2 or bodies_overlap(spot, channel):
        return
    if box_gap(spot.box, channel.box) >= limit.value - NOISE or not _stands_beside(spot.box, channel):
        return
    room = body_gap(spot, channel)
    if room < limit.value - NOISE:
        has, wants = site.two_lengths(room, limit.value)
        words = f"{spot.id} stands {has} beside the cover of channel {channel.id}; {wants} is asked to take it off"
        where = where_is(spot, channel, area=between_box(spot.box, channel.box))
        yield site.finding("cover-crowded", limit, where, words, room)


def _stands_beside(box: Box, channel: ChannelSpot) -> bool:
    """Say whether a box stands at the side of a straight channel, not off its end; of a bent one it always does."""
    if not channel.upright:
        return True
    level = channel.line[0].y == channel.line[-1].y
    if level:
        return box.left < channel.box.right and channel.box.left < box.right
    return box.bottom < channel.box.top and channel.box.bottom < box.top
