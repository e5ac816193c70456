"""Cover sheet: the sheets of a cover, each a drawing at the largest standard scale with its words beside or below."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.output.cover.board_view import BoardView
from boardplan.output.cover.cautions import FOOTER
from boardplan.output.cover.cover_words import (
    cautions_block,
    findings_block,
    legend_block,
    papers_block,
    sizes_block,
    weights_block,
)
from boardplan.output.drawn.blocks import Block, columns_of
from boardplan.output.drawn.drawn_sheet import DrawnPage, numbered, pages_with_words
from boardplan.output.drawn.scale import SCALES
from boardplan.output.making import Making
from boardplan.output.printing.sheet import Sheet
from boardplan.output.tables.list_sheets import ListPaper

_ASIDE = 64.0
"""Width of the words beside a drawing on a sheet that lies on its side, in mm."""
_BELOW = 92.0
"""Least height of the words below a drawing on an upright sheet, in mm."""
_GUTTER = 6.0
_LEAST_STRIP = 30.0
_LARGEST = 2.0
_NARROW_LEGEND = 25.0
"""Width in mm of a column of the legend where a wider one would send it to a sheet of its own."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Where things are on a sheet: its frame, the scale of its drawing and its columns; `use` is their area."""

    shared: ListPaper
    by: float
    columns: tuple[Box, ...]
    use: float


def cover_sheets(making: Making) -> tuple[Sheet, ...]:
    """Return the cover: one sheet for one board; for several a sheet with all of them, then one each.

    Words that find no room go on further sheets. How many sheets there are is among the words, so the sheets are made
    until the number agrees.
    """
    boards = tuple(making.plan.boards.values())
    together = [boards] if len(boards) == 1 else [boards, *((each,) for each in boards)]
    views = [BoardView(making.review, making.lying, each, making.fonts.width) for each in together]
    count = 1
    while True:
        pages = _pages(making, views, count)
        if len(pages) <= count:
            return numbered(pages)
        count = len(pages)


def _pages(making: Making, views: Sequence[BoardView], count: int) -> list[DrawnPage]:
    shared_words = [findings_block(making), cautions_block(making), papers_block(count, making.beside)]
    pages: list[DrawnPage] = []
    for index, view in enumerate(views):
        own = _board_words(making, view.alone) if view.alone else []
        pages += _board_pages(making, view, [*own, *(shared_words if index == 0 else ())])
    return pages


def _board_words(making: Making, board: Board) -> list[Block]:
    return [sizes_block(making.plan, board), weights_block(making.plan, board)]


def _board_pages(making: Making, view: BoardView, blocks: Sequence[Block]) -> list[DrawnPage]:
    """Return the page of a drawing with its words, and pages for the words it has no room for.

    The sheet lies as the larger drawing wants it; where both ways allow the same, as fewer pages do, then as fills it.
    """
    layouts = [_on(making, view, landscape=landscape) for landscape in (True, False)]
    largest = min(each.by for each in layouts)
    tries = [
        (_laid(making, view, each, blocks), each)
        for each in sorted(layouts, key=lambda each: -each.use)
        if each.by == largest
    ]
    return min(tries, key=lambda each: len(each[0]))[0]


def _laid(making: Making, view: BoardView, layout: Layout, blocks: Sequence[Block]) -> list[DrawnPage]:
    room = layout.shared.room
    drawing = view.parts(layout.by, Point(room.left, room.top))
    legend = legend_block(making.plan, view.boards, view.unnamed, view.unmarked)
    tries = [
        pages_with_words(layout.shared, drawing, [*blocks, each], layout.columns)
        for each in (legend, replace(legend, narrow=_NARROW_LEGEND))
    ]
    return min(tries, key=len)


def _title(making: Making, boards: tuple[Board, ...]) -> str:
    title = making.plan.job.title
    return f"{title}, board {boards[0].id}" if len(boards) == 1 else f"{title}, all boards"


def _on(making: Making, view: BoardView, *, landscape: bool) -> Layout:
    shared = making.frame(_title(making, view.boards), FOOTER, landscape=landscape)
    room = shared.room
    free = (room.width - _ASIDE - _GUTTER, room.height) if landscape else (room.width, room.height - _BELOW)
    scales = [each for each in SCALES if each >= _LARGEST]
    by = next((each for each in scales if _fits(view.size(each), free)), scales[-1])
    wide, high = view.size(by)
    columns = _columns_beside(room, (wide, high)) if landscape else _columns_below(room, high)
    free_area = sum(each.width * each.height for each in columns)
    return Layout(shared, by, columns, free_area)


def _fits(size: tuple[float, float], free: tuple[float, float]) -> bool:
    return size[0] <= free[0] and size[1] <= free[1]


def _columns_beside(room: Box, size: tuple[float, float]) -> tuple[Box, ...]:
    """Return the column to the right of a drawing, and those below it where that is worth while."""
    edge = min(room.left + size[0] + _GUTTER, room.right - _ASIDE)
    edge = max(edge, room.right - 1.25 * _ASIDE)
    right = Box(edge, room.bottom, room.right, room.top)
    low = Box(room.left, room.bottom, edge - _GUTTER, room.top - size[1] - _GUTTER)
    if low.height < _LEAST_STRIP:
        return (right,)
    return right, low


def _columns_below(room: Box, high: float) -> tuple[Box, ...]:
    return columns_of(Box(room.left, room.bottom, room.right, room.top - high - _GUTTER), 3)
