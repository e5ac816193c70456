"""Hole mark: the sign for a hole on a template; each sort has its own symbol, not only its own line."""

import math
from collections.abc import Iterator

from boardplan.drawing.picture import Disc, Line, Picture
from boardplan.drawing.rings import hexagon, rectangle
from boardplan.geometry.point import Box, Point
from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole, HoleSort

ARM = 7.0
"""How far the cross reaches from the centre, in mm."""
_GAP = 0.5
_DOT = 0.25
_FINE, _BOLD = 0.18, 0.3
_UNKNOWN = 2.0
"""Radius drawn, dotted, where nobody knows the bit."""


def hole_mark(hole: Hole, fastener: Fastener | None) -> Picture:
    """Return the mark of a hole: cross with an open centre, circle of the bit, and the symbol of its sort."""
    at = hole.position
    radius = _UNKNOWN if hole.bit is None else hole.bit / 2
    arm = max(ARM, radius + 3)
    cross = tuple(Line((at.ahead(turn, _GAP), at.ahead(turn, arm)), "ink", _FINE) for turn in (0, 90, 180, 270))
    circle = Disc(at, radius, None, "ink", _FINE, (0.6, 0.6) if hole.bit is None else ())
    site = (Disc(at, radius + 2.5, None, "ink", _BOLD, (1.6, 1.2)),) if hole.stage == "site" else ()
    return (*cross, circle, *_symbol(hole.sort, at, radius, fastener), *site)


def mark_reach(hole: Hole, fastener: Fastener | None) -> float:
    """Return how far the symbol reaches from the centre, the arms of the cross left out."""
    radius = _UNKNOWN if hole.bit is None else hole.bit / 2
    reach = _outer(hole.sort, radius, fastener)
    return max(reach, radius + 2.5) if hole.stage == "site" else reach


def mark_boxes(hole: Hole, fastener: Fastener | None) -> Iterator[Box]:
    """Yield boxes that words must not cover: the symbol and the arms."""
    x, y = hole.position
    yield Box(x, y, x, y).grown(mark_reach(hole, fastener) + 0.4)
    arm = max(ARM, (hole.bit or 0) / 2 + 3)
    yield Box(x - arm, y - 0.5, x + arm, y + 0.5)
    yield Box(x - 0.5, y - arm, x + 0.5, y + arm)


def _outer(sort: HoleSort, radius: float, fastener: Fastener | None) -> float:
    if sort == "t-nut":
        flange = fastener.flange_diameter if fastener else None
        return max(radius + 2, flange / 2) if flange else radius + 4
    return {"pilot": radius, "through": radius + 1.2, "fixing": (radius + 1.5) * 2 / math.sqrt(3), "exit": radius + 3}[
        sort
    ]


def _symbol(sort: HoleSort, at: Point, radius: float, fastener: Fastener | None) -> Picture:
    outer = _outer(sort, radius, fastener)
    if sort == "through":
        return (Disc(at, outer, None, "ink", _FINE),)
    if sort == "t-nut":
        return (Line(rectangle(at.x - outer, at.y - outer, 2 * outer, 2 * outer), "ink", _FINE, closed=True),)
    if sort == "fixing":
        return (Line(hexagon(at, 2 * (radius + 1.5)), "ink", _BOLD, closed=True),)
    if sort == "exit":
        ticks = (Line((at.ahead(turn, radius), at.ahead(turn, outer)), "ink", _BOLD) for turn in (45, 135, 225, 315))
        return (*ticks, Disc(at, _DOT, "ink"))  # the dot is where the pilot of the saw goes
    return ()


def hole_sign(sort: HoleSort) -> Picture:
    """Return the symbol of a sort of hole about the origin, small enough for a row of a table."""
    at, radius = Point(0, 0), 1.1
    cross = tuple(Line((at.ahead(turn, 0.35), at.ahead(turn, 2.9)), "ink", 0.12) for turn in (0, 90, 180, 270))
    outer = {"through": radius + 0.7, "t-nut": 2.1, "exit": radius + 1.2}.get(sort, radius)
    symbols: dict[str, Picture] = {
        "through": (Disc(at, outer, None, "ink", 0.15),),
        "t-nut": (Line(rectangle(-outer, -outer, 2 * outer, 2 * outer), "ink", 0.15, closed=True),),
        "fixing": (Line(hexagon(at, 3.6), "ink", 0.2, closed=True),),
        "exit": tuple(
            Line((at.ahead(turn, radius), at.ahead(turn, outer)), "ink", 0.2) for turn in (45, 135, 225, 315)
        ),
    }
    return (*cross, Disc(at, radius, None, "ink", 0.15), *symbols.get(sort, ()))
