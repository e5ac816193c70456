"""Printer tiles: the tiles of a board on a paper, with room for what a printer's correction adds to them."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.holes import Hole
from boardplan.output.printing.pages import Tile, tiles_of
from boardplan.output.printing.paper import MARGIN, Paper
from boardplan.output.printing.printer_correction import Printing


def tiles_for(board: Board, printing: Printing, holes: Iterable[Hole]) -> tuple[Tile, ...]:
    """Return the tiles of a board that spare its holes; those of one thing belong together."""
    patterns: dict[str, list[Point]] = {}
    for hole in holes:
        patterns.setdefault(hole.owner, []).append(hole.position)
    marks = [position for pattern in patterns.values() for position in pattern]
    return printed_tiles(board, printing, marks, [each for each in patterns.values() if len(each) > 1])


def printed_tiles(
    board: Board, printing: Printing, marks: Iterable[Point] = (), patterns: Iterable[Sequence[Point]] = ()
) -> tuple[Tile, ...]:
    """Return the tiles of a board, each small enough that it is within the margins as it is drawn."""
    room = _room(printing)
    tiles = tiles_of(board, room, marks, patterns)
    return tuple(_on_paper(tile, printing, upright=_is_upright(tile, room)) for tile in tiles)


def page_factors(printing: Printing, tile: Tile) -> tuple[float, float]:
    """Return what x and y of a tile's page are drawn at: a page that lies on its side has the paper's long side in x.

    Printers turn such a page, so that it runs through them as an upright one does.
    """
    short, long = printing.factors
    return (short, long) if _is_upright(tile, printing.paper) else (long, short)


def drawn_box(printing: Printing, tile: Tile) -> Box:
    """Return where a tile lies on its page as it is drawn."""
    (x, y), at = page_factors(printing, tile), tile.at
    return Box(at.x, at.y, at.x + tile.rect.width * x, at.y + tile.rect.height * y)


def _is_upright(tile: Tile, paper: Paper) -> bool:
    return math.isclose(tile.page_width, paper.width, abs_tol=1e-6)


def _room(printing: Printing) -> Paper:
    """Return the paper with its printable part made smaller where all on it is drawn larger."""
    paper, (short, long) = printing.paper, printing.factors
    height = None if paper.height is None else _less(paper.height, long)
    return replace(paper, width=_less(paper.width, short), height=height)


def _less(side: float, factor: float) -> float:
    return (side - 2 * MARGIN) / factor + 2 * MARGIN if factor > 1 else side


def _on_paper(tile: Tile, printing: Printing, *, upright: bool) -> Tile:
    """Return a tile on a page of exactly the real paper; a piece of a roll is as long as what is drawn on it."""
    paper, along = printing.paper, printing.factors.long
    if paper.height is None:
        long = (tile.rect.height if upright else tile.rect.width) * along + 2 * MARGIN
    else:
        long = paper.height
    width, height = (paper.width, long) if upright else (long, paper.width)
    return replace(tile, page_width=width, page_height=height)
