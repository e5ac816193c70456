"""Clamp picture: a saddle over a cable, with the heads of its screws, on the wall."""

from boardplan.drawing.metal import screws
from boardplan.drawing.picture import Picture
from boardplan.drawing.relief import cast_shadow, solid
from boardplan.drawing.rings import bar
from boardplan.geometry.point import Point
from boardplan.model.board import Ring
from boardplan.routing.supports.clamp import Clamp

_HEAD = 8.2
"""Diameter of the screw heads; only for the look."""
_FOOT_WIDTH = 0.62
_RIM = 2.0


def clamp_picture(clamp: Clamp) -> Picture:
    """Return a clamp in wall coordinates: its feet, the saddle over the jackets, its screws."""
    saddle = _across(clamp, clamp.at, clamp.width + 2 * _RIM, clamp.length * 0.8)
    feet = [_foot(clamp, screw) for screw in clamp.screws]
    return (
        *cast_shadow(saddle, 20.0),
        *solid(feet, "steel", "raised", edge=0.8),
        *solid([saddle], "graphite", "raised", edge=1.2),
        *screws([(screw, _HEAD) for screw in clamp.screws]),
    )


def _across(clamp: Clamp, middle: Point, width: float, length: float) -> Ring:
    """Return a bar across the cable."""
    return bar(middle.ahead(clamp.towards - 90, width / 2), clamp.towards + 90, width, length, 2.5)


def _foot(clamp: Clamp, screw: Point) -> Ring:
    """Return the foot from under the saddle to past its screw."""
    x, y = screw.x - clamp.at.x, screw.y - clamp.at.y
    share = 0.5 + 0.5 * (1 + _HEAD * 0.75 / max(1.0, (x * x + y * y) ** 0.5))
    middle = Point(clamp.at.x + x * share / 2, clamp.at.y + y * share / 2)
    return _across(clamp, middle, clamp.at.distance_to(screw) * share, clamp.length * _FOOT_WIDTH)
