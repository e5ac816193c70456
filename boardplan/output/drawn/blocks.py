"""Blocks: headed groups of short lines that are set in columns beside or below a drawing."""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from boardplan.drawing.picture import Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.output.printing.lettering import FINE, PLAIN, Measure, fitting_height, wrapped

_LINE = FINE * 1.8
_ROW_GAP = 0.7
_HEAD = 6.0
_AFTER = 3.6
_BLANK = 5.4
"""Height of a line that waits for a pencil, in mm."""
_TO_WRITE = 20.0
"""Room that is enough to write in beside a question, in mm."""
_GUTTER = 4.0


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a block: what it is about, what is said of it, a sign before it, something at its right end.

    A `blank` row has a line to write on; `bold` is what must not be overlooked.
    """

    text: str = ""
    lead: str = ""
    end: str = ""
    sign: Picture = ()
    blank: bool = False
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Block:
    """A heading and its rows; `lead` is how wide the first column is, of leads or signs, in mm.

    Where a column is `narrow` enough for it, the rows stand side by side in several. A block that is `wide` looks for
    the widest column with room.
    """

    title: str
    rows: Sequence[Row]
    lead: float = 0.0
    narrow: float = 56.0
    wide: bool = False
    again: bool = False


def block_height(block: Block, width: float, measure: Measure) -> float:
    """Return how high a block is in a column of a width, with the gap after it."""
    return _HEAD + max(_height(block, rows, width, measure) for rows in _side_by_side(block, width, measure)) + _AFTER


def _inner(block: Block, width: float) -> tuple[int, float]:
    """Return in how many columns a block's rows stand in a width, and how wide each of them is."""
    count = max(1, min(len(block.rows), int((width + _GUTTER) // (block.narrow + _GUTTER))))
    return count, (width - _GUTTER * (count - 1)) / count


def _height(block: Block, rows: Sequence[Row], width: float, measure: Measure) -> float:
    inner = _inner(block, width)[1]
    return sum(_row_height(block, row, inner, measure) for row in rows)


def _side_by_side(block: Block, width: float, measure: Measure) -> list[Sequence[Row]]:
    """Return a block's rows in columns, the highest of which is as low as can be with the rows in their order."""
    count, inner = _inner(block, width)
    heights = [_row_height(block, row, inner, measure) for row in block.rows]
    runs = itertools.combinations(range(len(heights) + 1), 2)
    for most in sorted({sum(heights[first:last]) for first, last in runs}):
        columns = _filled(block.rows, heights, most)
        if len(columns) <= count:
            return columns
    return [block.rows]


def _filled(rows: Sequence[Row], heights: Sequence[float], most: float) -> list[Sequence[Row]]:
    columns: list[list[Row]] = [[]]
    used = 0.0
    for row, high in zip(rows, heights, strict=True):
        if columns[-1] and used + high > most + 1e-6:
            columns.append([])
            used = 0.0
        columns[-1].append(row)
        used += high
    return list(columns)


def _lines(block: Block, row: Row, width: float, measure: Measure) -> list[str]:
    room = width - block.lead - (measure(row.end, FINE) + 2 if row.end else 0)
    return wrapped(row.text, room, FINE, measure, bold=row.bold) if row.text else []


def _row_height(block: Block, row: Row, width: float, measure: Measure) -> float:
    lines = _lines(block, row, width, measure)
    lead = len(wrapped(row.lead, block.lead - 1.5, FINE, measure)) if row.lead else 1
    high = max(1, len(lines), lead) * _LINE + _ROW_GAP
    if not row.blank:
        return high
    return max(high, _BLANK) if _beside(block, lines, width, measure) else high + _BLANK


def _beside(block: Block, lines: Sequence[str], width: float, measure: Measure) -> bool:
    """Say whether there is room to write beside the last line of a question."""
    return width - block.lead - (measure(lines[-1], FINE) + 1.5 if lines else 0.0) >= _TO_WRITE


def flow(blocks: Sequence[Block], columns: Sequence[Box], measure: Measure) -> tuple[Picture, tuple[Block, ...]]:
    """Return blocks set in columns in their order, and those for which there was no room.

    Where not all find room in their order, each goes in the first column that has any.
    """
    marks, left = _flow(blocks, columns, measure, in_order=True)
    return _flow(blocks, columns, measure, in_order=False) if left else (marks, left)


def _flow(
    blocks: Sequence[Block], columns: Sequence[Box], measure: Measure, *, in_order: bool
) -> tuple[Picture, tuple[Block, ...]]:
    tops = [column.top for column in columns]
    marks: list[Mark] = []
    left: list[Block] = []
    first = 0
    for block in blocks:
        order = list(range(0 if block.wide else first, len(columns)))
        if block.wide:
            order.sort(key=lambda index: -columns[index].width)
        place = next((index for index in order if _fits(block, columns[index], tops[index], measure)), None)
        if place is None:
            left.append(block)
            continue
        column = columns[place]
        first = place if in_order and not block.wide else first
        marks += set_block(block, Point(column.left, tops[place]), column.width, measure)
        tops[place] -= block_height(block, column.width, measure)
    return tuple(marks), tuple(left)


def _fits(block: Block, column: Box, top: float, measure: Measure) -> bool:
    return top - block_height(block, column.width, measure) + _AFTER >= column.bottom - 1e-6


def split(block: Block, width: float, height: float, measure: Measure) -> tuple[Block, ...]:
    """Return a block in pieces no higher than a height; a single row that is higher stays whole."""
    pieces: list[list[Row]] = [[]]
    used = _HEAD + _AFTER
    for row in block.rows:
        high = _row_height(block, row, width, measure)
        if pieces[-1] and used + high > height:
            pieces.append([])
            used = _HEAD + _AFTER
        pieces[-1].append(row)
        used += high
    return tuple(replace(block, rows=tuple(rows), again=index > 0) for index, rows in enumerate(pieces))


def set_block(block: Block, top: Point, width: float, measure: Measure) -> Iterator[Mark]:
    """Yield the marks of a block, `top` its upper left."""
    title = f"{block.title} (continued)" if block.again else block.title
    size = fitting_height(title, width, PLAIN, measure, bold=True)
    yield Words(top.moved(0, -PLAIN), title, size, "ink", "start", bold=True, centred=False)
    yield Line((top.moved(0, -PLAIN - 1.5), top.moved(width, -PLAIN - 1.5)), "ink", 0.18)
    inner = _inner(block, width)[1]
    for index, rows in enumerate(_side_by_side(block, width, measure)):
        x, y = top.x + index * (inner + _GUTTER), top.y - _HEAD
        for row in rows:
            yield from _row(block, row, Point(x, y), inner, measure)
            y -= _row_height(block, row, inner, measure)


def _row(block: Block, row: Row, top: Point, width: float, measure: Measure) -> Iterator[Mark]:
    indent = block.lead
    base = top.y - FINE
    yield from placed_picture(row.sign, Placement(0, Point(top.x + indent / 2 - 0.8, base + FINE / 2)))
    for index, line in enumerate(wrapped(row.lead, indent - 1.5, FINE, measure) if row.lead else []):
        yield Words(Point(top.x, base - index * _LINE), line, FINE, "quiet", "start", centred=False)
    lines = _lines(block, row, width, measure)
    for index, line in enumerate(lines):
        at = Point(top.x + indent, base - index * _LINE)
        yield Words(at, line, FINE, "ink", "start", bold=row.bold, centred=False)
    if row.end:
        yield Words(Point(top.x + width, base), row.end, FINE, "ink", "end", centred=False)
    if row.blank:
        beside = _beside(block, lines, width, measure)
        low = base - max(0, len(lines) - 1) * _LINE - (0.6 if beside else _BLANK - 0.6)
        start = top.x + indent + (measure(lines[-1], FINE) + 1.5 if beside and lines else 0.0)
        yield Line((Point(start, low), Point(top.x + width, low)), "quiet", 0.13)


def columns_of(room: Box, count: int, gutter: float = 6.0) -> tuple[Box, ...]:
    """Return columns side by side in a room."""
    wide = (room.width - gutter * (count - 1)) / count
    return tuple(
        Box(room.left + index * (wide + gutter), room.bottom, room.left + index * (wide + gutter) + wide, room.top)
        for index in range(count)
    )
