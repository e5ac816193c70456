"""Relief: bodies that stand out of the board or are let into it, lit from the upper left."""

from collections.abc import Iterable, Sequence
from typing import Literal, TypeAlias

from boardplan.drawing.picture import Area, Ink, Picture
from boardplan.drawing.rings import edge_strips
from boardplan.model.board import Ring

Relief: TypeAlias = Literal["", "raised", "sunk"]

LIGHT = 135.0
"""The bearing the light comes from, on the wall: the upper left."""


def solid(rings: Sequence[Ring], tone: Ink, relief: Relief = "", light: float = LIGHT, edge: float = 1.0) -> Picture:
    """Return shapes of one tone; however many there are, they make three marks at most.

    `edge` is the width of the lit and the dark edge, in mm.
    """
    body = Area(tuple(rings), tone)
    if not relief:
        return (body,)
    return (body, *edges(rings, (f"{tone}-light", f"{tone}-dark"), light if relief == "raised" else light + 180, edge))


def edges(rings: Iterable[Ring], inks: tuple[Ink, Ink], light: float = LIGHT, edge: float = 1.0) -> Picture:
    """Return the lit and the dark edges of shapes, as two marks."""
    strips = [edge_strips(ring, edge, light) for ring in rings]
    lit = tuple(strip for each, _ in strips for strip in each)
    dark = tuple(strip for _, each in strips for strip in each)
    return Area(lit, inks[0]), Area(dark, inks[1])


def cast_shadow(ring: Ring, height: float, light: float = LIGHT) -> Picture:
    """Return the soft shadow of a body of a height on the board, in two steps."""
    reach = min(9.0, 1.5 + height * 0.045)
    return tuple(
        Area(
            (tuple(point.ahead(light + 180, reach * share) for point in ring),), "shadow", corner_radius=3, opacity=dim
        )
        for share, dim in ((1.0, 0.14), (0.55, 0.18))
    )
