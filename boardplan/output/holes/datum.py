"""Datum: running dimensions from the two datum edges of a board, A level and B upright."""

import math

from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import inches_text, tidy_number
from boardplan.model.board import Board
from boardplan.model.job import Units


def datum_point(board: Board) -> Point:
    """Return the corner that dimensions run from, in board coordinates: on the fabric where the edge is covered."""
    box = datum_box(board)
    corner = board.datum.corner
    return Point(box.left if "left" in corner else box.right, box.bottom if "lower" in corner else box.top)


def datum_box(board: Board) -> Box:
    """Return the box of the edges that dimensions run from: the sheet's, or that of the fabric round it."""
    covered = board.fabric is not None and board.datum.edge == "covered"
    return board.box.grown(board.fabric.thickness) if covered and board.fabric else board.box


def running(board: Board, point: Point) -> Point:
    """Return the distances of a point from edge B (x) and from edge A (y), both positive on the board."""
    origin = datum_point(board)
    towards = directions(board)
    return Point((point.x - origin.x) * towards.x, (point.y - origin.y) * towards.y)


def directions(board: Board) -> Point:
    """Return which way x and y run from the datum corner, 1 or -1 each."""
    corner = board.datum.corner
    return Point(1 if "left" in corner else -1, 1 if "lower" in corner else -1)


def edge_words(board: Board) -> str:
    """Return which edge dimensions run from: bare or covered; an edge without fabric is bare whatever was meant."""
    return f"{board.datum.edge if board.fabric else 'bare'} edge"


def datum_words(board: Board) -> str:
    """Return where dimensions run from: edges, corner, and the fabric that is counted in.

    >>> from boardplan.model.board import Datum
    >>> datum_words(Board("A", "", Box(0, 0, 9, 9).corners(), datum=Datum("upper-right")))
    'bare edges, upper right corner'
    """
    corner = board.datum.corner.replace("-", " ")
    fabric = board.fabric if board.fabric and board.datum.edge == "covered" else None
    counted = f", {tidy_number(fabric.thickness)} mm of fabric counted in" if fabric else ""
    return f"{edge_words(board)}s, {corner} corner{counted}"


def half_mm(length: float) -> str:
    """Return a running dimension to the nearest 0.5 mm, as a metric tape is read.

    >>> half_mm(46.2), half_mm(46.25)
    ('46.0', '46.5')
    """
    return f"{math.floor(length * 2 + 0.5 + 1e-9) / 2 + 0.0:.1f}"


def pitch_text(length: float, units: Units) -> str:
    """Return a pitch, for comparing with a unit in the hand: mm to 0.1, and to 1/64 in.

    >>> pitch_text(168.0, "inch")
    '6-39/64 in (168)'
    """
    return f"{inches_text(length, 64)} in ({tidy_number(length)})" if units == "inch" else tidy_number(length)
