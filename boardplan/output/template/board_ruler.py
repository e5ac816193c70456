"""Board ruler: the datum edges of a template, with running numbers along both."""

import math
from collections.abc import Iterator

from boardplan.drawing.picture import Line, Mark, Picture, Words
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH
from boardplan.model.board import Board
from boardplan.model.job import Units
from boardplan.output.holes.datum import datum_box, datum_point, directions
from boardplan.output.printing.lettering import FINE

_HEAVY = 0.7
DEPTH = 5.0
"""Room the ruler takes beside an edge, in mm; the smallest border holds it."""


def datum_edges(board: Board) -> Picture:
    """Return the two datum edges as heavy lines that meet in a square corner."""
    box, origin = datum_box(board), datum_point(board)
    return (
        Line((Point(box.left, origin.y), Point(box.right, origin.y)), "ink", _HEAVY),
        Line((Point(origin.x, box.bottom), Point(origin.x, box.top)), "ink", _HEAVY),
    )


def ruler_boxes(board: Board) -> tuple[Box, Box]:
    """Return the strips that the ruler takes, below or above edge A and beside edge B."""
    box, towards = datum_box(board), directions(board)
    low = box.bottom - DEPTH if towards.y > 0 else box.top
    left = box.left - DEPTH if towards.x > 0 else box.right
    return Box(box.left - DEPTH, low, box.right + DEPTH, low + DEPTH), Box(left, box.bottom, left + DEPTH, box.top)


def ruler(board: Board, units: Units) -> Picture:
    """Return ticks and numbers along both datum edges, outside the board: every 10 mm, or every 1/4 in."""
    box, towards = datum_box(board), directions(board)
    level = tuple(_edge(board, box.width, towards.x, -towards.y, units, upright=False))
    upright = tuple(_edge(board, box.height, towards.y, -towards.x, units, upright=True))
    return (*level, *upright)


def _edge(board: Board, length: float, along: float, out: float, units: Units, *, upright: bool) -> Iterator[Mark]:
    origin = datum_point(board)
    step, numbered = (INCH / 4, 4) if units == "inch" else (10.0, 10)

    def at(distance: float, away: float) -> Point:
        if upright:
            return Point(origin.x + out * away, origin.y + along * distance)
        return Point(origin.x + along * distance, origin.y + out * away)

    for index in range(math.floor(length / step + 1e-9) + 1):
        whole, half = index % numbered == 0, index % (numbered // 2) == 0
        reach = 2.2 if whole else 1.6 if half else 1.0
        yield Line((at(index * step, 0.35), at(index * step, 0.35 + reach)), "ink", 0.15)
        if whole:
            number = index // 4 if units == "inch" else index * 10
            yield Words(at(index * step, 4.0), str(number), FINE, "ink", turn=90.0 if upright else 0.0)
