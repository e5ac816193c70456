"""Retainer picture: a strap across a channel over the cables in it, clipped in at both walls, on the wall."""

from boardplan.drawing.picture import Picture
from boardplan.drawing.relief import cast_shadow, solid
from boardplan.drawing.rings import bar
from boardplan.model.board import Ring
from boardplan.model.channel import Channel
from boardplan.routing.supports.retainers import Retainer

_STRAP, _CLIP = 9.0, 15.0
"""How wide the strap and its clips are along the channel, in mm; only for the look."""
_DEEP = 3.0
"""How far a clip reaches over the edge of its wall to both sides, in mm: it is seen beside the cover."""
_THIN = 4.0


def retainer_picture(channel: Channel, retainer: Retainer) -> Picture:
    """Return a retainer of a channel in wall coordinates; the channel's cover lies over all but its clips."""
    strap = _across(retainer, -retainer.width / 2, retainer.width / 2, _STRAP)
    inner, outer = retainer.width / 2 - _DEEP, channel.width / 2 + _DEEP / 2
    clips = [_across(retainer, *ends, _CLIP) for ends in ((-outer, -inner), (inner, outer))]
    return (
        *cast_shadow(strap, _THIN),
        *solid([strap], "graphite", "raised", edge=0.8),
        *solid(clips, "graphite", "raised", edge=0.6),
    )


def _across(retainer: Retainer, right: float, left: float, wide: float) -> Ring:
    """Return a bar across the channel, between two distances to the left of its line."""
    towards = retainer.towards + 90
    return bar(retainer.at.ahead(towards, right), towards, left - right, wide, 0.8)
