"""Channel picture: the slotted base, and the cover apart from it, so that cables can be drawn between."""

from collections.abc import Iterator
from itertools import pairwise

from boardplan.drawing.picture import Area, Picture, Words
from boardplan.drawing.relief import cast_shadow, edges
from boardplan.drawing.rings import bar, beside_line
from boardplan.drawing.words import readable_turn
from boardplan.geometry.point import Point, bearing
from boardplan.model.board import Ring
from boardplan.model.channel import Channel

_PITCH = 12.5
_SLOT = 5.0
_MOST_SLOTS = 400


def channel_picture(channel: Channel) -> Picture:
    """Return a channel as it looks with nothing in it, in board coordinates."""
    return (*channel_base_picture(channel), *(channel_cover_picture(channel) if channel.cover else ()))


def channel_base_picture(channel: Channel) -> Picture:
    """Return the open channel: its floor in the shade of its walls, and the slots between its fingers."""
    outer, inner = _run(channel, channel.width), _run(channel, channel.inner_width)
    wall = (channel.width - channel.inner_width) / 2
    return (
        *cast_shadow(outer, channel.height),
        Area((outer,), "channel"),
        Area((inner,), "channel-floor"),
        *edges([inner], ("channel-line", "channel"), edge=min(7.0, channel.height * 0.1)),
        Area(tuple(_slots(channel, wall)), "channel-line"),
        *edges([outer], ("channel-light", "channel-line"), edge=0.8),
        *(Area((_strip(channel, divider),), "channel") for divider in channel.dividers),
    )


def channel_cover_picture(channel: Channel) -> Picture:
    """Return the cover: thin enough to hint at what lies under it, with a soft sheen and its name."""
    lid = _run(channel, channel.inner_width)
    sheen = (
        *beside_line(channel.line, channel.width * 0.30),
        *reversed(beside_line(channel.line, channel.width * 0.12)),
    )
    return (
        Area((lid,), "channel", opacity=0.70),
        Area((sheen,), "channel-light", opacity=0.5),
        *edges([lid], ("channel-light", "channel-line"), edge=1.6),
        *_seams(channel),
        *_name(channel),
    )


def _run(channel: Channel, width: float) -> Ring:
    """Return the outline of the channel's line at a width, counter-clockwise."""
    return (*beside_line(channel.line, -width / 2), *reversed(beside_line(channel.line, width / 2)))


def _strip(channel: Channel, divider: float) -> Ring:
    offset = channel.inner_width / 2 - divider
    return (*beside_line(channel.line, offset - 0.8), *reversed(beside_line(channel.line, offset + 0.8)))


def _slots(channel: Channel, wall: float) -> Iterator[Ring]:
    """Yield the slots between the fingers of both walls, seen from above; none in the corners."""
    legs = list(pairwise(channel.line))
    pitch = max(_PITCH, 2 * sum(a.distance_to(b) for a, b in legs) / _MOST_SLOTS)
    for index, (start, end) in enumerate(legs):
        towards = bearing(start, end)
        first = channel.width / 2 if index > 0 else 0.0
        last = start.distance_to(end) - (channel.width / 2 if index < len(legs) - 1 else 0.0)
        for slot in range(int((last - first - _SLOT) // pitch)):
            at = start.ahead(towards, first + pitch * (slot + 0.7))
            for side in (90, -90):
                yield bar(at.ahead(towards + side, (channel.width - wall) / 2), towards, _SLOT, max(wall, 1.2))


def _seams(channel: Channel) -> Picture:
    """Return the mitred seams of the cover at the channel's corners."""
    left, right = beside_line(channel.line, channel.width / 2), beside_line(channel.line, -channel.width / 2)
    return tuple(
        Area((bar(a, bearing(a, b), a.distance_to(b), 0.8),), "channel-line")
        for a, b in zip(left[1:-1], right[1:-1], strict=True)
    )


def _name(channel: Channel) -> Picture:
    start, end = max(pairwise(channel.line), key=lambda leg: leg[0].distance_to(leg[1]))
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    turn = readable_turn(bearing(start, end), 0)
    height = max(4.0, min(9.0, channel.width * 0.2))
    return (Words(middle, channel.id, height, "body-ink", turn=turn, bold=True),)
