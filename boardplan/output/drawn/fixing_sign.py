"""Fixing sign: a board fixing on a drawing that is too small to show it as it is."""

from boardplan.drawing.picture import Area, Line, Picture
from boardplan.drawing.rings import hexagon
from boardplan.geometry.point import Point


def fixing_sign(at: Point, *, misses: bool = False) -> Picture:
    """Return a hexagon with a cross about a point of the page; black where no member is known to hold the fixing."""
    if misses:
        return (Area((hexagon(at, 3.0),), "ink"),)
    cross = tuple(Line((at.ahead(turn, 0.8), at.ahead(turn + 180, 0.8)), "ink", 0.13) for turn in (0, 90))
    return (Area((hexagon(at, 2.6),), "paper", "ink", 0.25), *cross)
