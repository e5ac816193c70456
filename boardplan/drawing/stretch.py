"""Stretch: a part of a centre line, and lines beside it."""

import math
from collections.abc import Sequence

from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.point import Point, bearing

Pieces = Sequence[Straight | Bend]


def stretch_of(pieces: Pieces, start: float, end: float) -> tuple[Straight | Bend, ...]:
    """Return what lies between two distances along a centre line."""
    found: list[Straight | Bend] = []
    before = 0.0
    for piece in pieces:
        length = piece.length
        first, last = max(0.0, start - before), min(length, end - before)
        if last - first > 1e-6:  # noqa: PLR2004 - nothing left to see
            found.append(_part(piece, first, last))
        before += length
    return tuple(found)


def _part(piece: Straight | Bend, first: float, last: float) -> Straight | Bend:
    if isinstance(piece, Straight):
        towards = bearing(piece.start, piece.end)
        return Straight(piece.start.ahead(towards, first), piece.start.ahead(towards, last))
    sign = 1 if piece.turn > 0 else -1
    base = bearing(piece.centre, piece.start)
    angles = [base + sign * math.degrees(at / piece.radius) for at in (first, last)]
    start, end = (piece.centre.ahead(angle, piece.radius) for angle in angles)
    return Bend(start, end, piece.centre, piece.radius, angles[1] - angles[0])


def beside(pieces: Pieces, offset: float) -> tuple[Straight | Bend, ...]:
    """Return the line that runs beside a centre line, to its left where the offset is positive."""
    return tuple(_piece_beside(piece, offset) for piece in pieces)


def _piece_beside(piece: Straight | Bend, offset: float) -> Straight | Bend:
    if isinstance(piece, Straight):
        across = bearing(piece.start, piece.end) + 90
        return Straight(piece.start.ahead(across, offset), piece.end.ahead(across, offset))
    radius = max(0.05, piece.radius - (offset if piece.turn > 0 else -offset))
    start, end = (piece.centre.ahead(bearing(piece.centre, at), radius) for at in (piece.start, piece.end))
    return Bend(start, end, piece.centre, radius, piece.turn)


def length_of(pieces: Pieces) -> float:
    """Return the length of a centre line."""
    return sum(piece.length for piece in pieces)


def longest_straight(pieces: Pieces) -> tuple[Point, float, float] | None:
    """Return the middle of the longest straight, its direction and its length; none where all is bent."""
    straights = [piece for piece in pieces if isinstance(piece, Straight)]
    if not straights:
        return None
    longest = max(straights, key=lambda piece: piece.length)
    a, b = longest.start, longest.end
    return Point((a.x + b.x) / 2, (a.y + b.y) / 2), bearing(a, b), longest.length
