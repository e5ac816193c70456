"""Table: rows and columns on as many sheets as they need, with room to tick with a pencil."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from boardplan.drawing.picture import Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Point
from boardplan.output.printing.lettering import FINE, LARGE, LEADING, PLAIN, Measure, TextLine, wrapped

PAD = 1.3
TICK = 5.2
_ROW_AIR = 1.6
_LEAST_SHARE = 0.25
_HEAD_SHARE = 0.55
"""A head takes about two lines at most."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What stands in a cell: words, an alert, smaller words below, a box to tick, or a picture about its middle."""

    text: str = ""
    small: str = ""
    alert: str = ""
    bold: bool = False
    large: bool = False
    tick: bool = False
    picture: Picture = ()
    picture_size: float = 0.0

    @property
    def size(self) -> float:
        """The height of its capitals in mm."""
        return LARGE if self.large else PLAIN


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its head, where its words stand, whether it may grow and wrap."""

    head: str
    align: Literal["start", "middle", "end"] = "start"
    grows: bool = False


@dataclass(frozen=True, slots=True)
class Heading:
    """A row of words across the table that opens a group."""

    text: str
    aside: str = ""


Row = tuple[Cell, ...] | Heading


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its columns and its rows; `title` and `notes` stand above it; it takes a share of the width.

    One that `opens_sheet` is handed out by itself: it begins on a sheet of its own.
    """

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    title: str = ""
    notes: tuple[str, ...] = ()
    share: float = 1.0
    opens_sheet: bool = False


@dataclass(frozen=True, slots=True)
class Strip:
    """A piece of a table as high as `height`, drawn from its upper left; `keep` stays with what follows it."""

    height: float
    picture: Picture
    keep: bool = False


@dataclass(frozen=True, slots=True)
class LaidTable:
    """A table ready to be put on sheets: its head, repeated on each, and its strips."""

    head: Strip
    strips: tuple[Strip, ...]


def laid(table: Table, width: float, measure: Measure) -> LaidTable:
    """Return a table as strips of a width; words that are too long wrap, nothing is cut off."""
    widths = column_widths(table, width * table.share, measure)
    strips = tuple(
        _heading(row, sum(widths), measure) if isinstance(row, Heading) else _row(table.columns, row, widths, measure)
        for row in table.rows
    )
    return LaidTable(_head(table.columns, widths, measure), strips)


def column_widths(table: Table, width: float, measure: Measure) -> list[float]:
    """Return how wide each column is: what it needs; those that grow wrap alike where there is too little room."""
    needed = [_needed(table, index, measure) for index in range(len(table.columns))]
    growing = [index for index, column in enumerate(table.columns) if column.grows]
    spare = width - sum(needed)
    if spare >= 0:
        takers = growing or range(len(needed))
        return [each + (spare / len(takers) if index in takers else 0) for index, each in enumerate(needed)]
    fixed = sum(each for index, each in enumerate(needed) if index not in growing)
    level = _level([needed[index] for index in growing], width - fixed)
    widths = [
        max(min(each, level), _least(table, index, measure)) if index in growing else each
        for index, each in enumerate(needed)
    ]
    return _held(widths, growing, fixed, width)


def _held(widths: Sequence[float], growing: Sequence[int], fixed: float, width: float) -> list[float]:
    """Return widths that don't go past a width: long words are broken before any other column gives way."""
    wrapping = sum(widths[index] for index in growing)
    share = min(1.0, (width - fixed) / wrapping) if wrapping else 1.0
    if share < _LEAST_SHARE:
        return [each * min(1.0, width / sum(widths)) for each in widths]
    return [each * share if index in growing else each for index, each in enumerate(widths)]


def _level(needs: Sequence[float], room: float) -> float:
    """Return the width that needs are held down to so that together they fill a room."""
    level, rest, left = 0.0, room, len(needs)
    for need in sorted(needs):
        level = rest / left
        if need > level:
            break
        rest, left = rest - need, left - 1
    return max(level, 0.0)


def _cells(table: Table, index: int) -> Iterator[Cell]:
    for row in table.rows:
        if not isinstance(row, Heading):
            yield row[index]


def _needed(table: Table, index: int, measure: Measure) -> float:
    head = table.columns[index].head
    heads = [measure(word, FINE, bold=True) for word in head.split()]
    heads.append(measure(head, FINE, bold=True) * _HEAD_SHARE)
    return 2 * PAD + max([*heads, *(_cell_width(cell, measure) for cell in _cells(table, index)), 0.0])


def _cell_width(cell: Cell, measure: Measure) -> float:
    lines = [measure(line, cell.size, bold=cell.bold) for line in cell.text.split("\n")]
    lines += [measure(line, FINE) for line in cell.small.split("\n")]
    lines += [measure(line, FINE, bold=True) for line in cell.alert.split("\n")]
    return max([*lines, TICK if cell.tick else 0.0, cell.picture_size])


def _least(table: Table, index: int, measure: Measure) -> float:
    words = [measure(word, FINE, bold=True) for word in table.columns[index].head.split()]
    for cell in _cells(table, index):
        words += [measure(word, cell.size, bold=cell.bold) for word in cell.text.split()]
        words += [measure(word, FINE, bold=True) for word in (cell.small + " " + cell.alert).split()]
    return 2 * PAD + max([*words, 6.0])


def _head(columns: Sequence[Column], widths: Sequence[float], measure: Measure) -> Strip:
    lines = [
        wrapped(column.head, width - 2 * PAD, FINE, measure, bold=True)
        for column, width in zip(columns, widths, strict=True)
    ]
    height = max(len(each) for each in lines) * FINE * LEADING + 1.6
    marks: list[Mark] = []
    left = 0.0
    for column, width, words in zip(columns, widths, lines, strict=True):
        bottom = -height + 1.4
        for index, text in enumerate(reversed(words)):
            at = Point(_anchor(column, left, width), bottom + index * FINE * LEADING)
            marks.append(Words(at, text, FINE, "ink", column.align, bold=True, centred=False))
        left += width
    marks.append(Line((Point(0, -height), Point(left, -height)), "ink", 0.3))
    return Strip(height, tuple(marks))


def _anchor(column: Column, left: float, width: float) -> float:
    return {"start": left + PAD, "middle": left + width / 2, "end": left + width - PAD}[column.align]


def _heading(heading: Heading, width: float, measure: Measure) -> Strip:
    height = 8.0
    words = [Words(Point(0, -height + 1.9), heading.text, PLAIN, "ink", "start", bold=True, centred=False)]
    if heading.aside:
        after = measure(heading.text, PLAIN, bold=True) + 4
        words.append(Words(Point(after, -height + 1.9), heading.aside, FINE, "quiet", "start", centred=False))
    line = Line((Point(0, -height), Point(width, -height)), "quiet", 0.2)
    return Strip(height, (*words, line), keep=True)


def _row(columns: Sequence[Column], row: Sequence[Cell], widths: Sequence[float], measure: Measure) -> Strip:
    texts = [_lines(cell, width - 2 * PAD, measure) for cell, width in zip(row, widths, strict=True)]
    least = TICK + 1.4 if any(cell.tick for cell in row) else 0.0
    pictured = max((cell.picture_size + 1 for cell in row), default=0.0)
    tallest = max((lines[0][1] for lines in texts if lines), default=PLAIN)
    several = any(len(lines) > 1 for lines in texts)
    hung = [(tallest - lines[0][1] if several and lines else 0.0) for lines in texts]
    heights = [_height(lines) + drop + 2 * _ROW_AIR for lines, drop in zip(texts, hung, strict=True)]
    height = max([*heights, least, pictured])
    top = (height - max(heights)) / 2 + _ROW_AIR if several else None
    marks: list[Mark] = []
    left = 0.0
    for index, (column, cell, width) in enumerate(zip(columns, row, widths, strict=True)):
        lines = texts[index]
        first = -(height - _height(lines)) / 2 if top is None else -(top + hung[index])
        marks += _signs(cell, Point(left + width / 2, -height / 2))
        marks += _words(column, lines, Point(_anchor(column, left, width), first))
        left += width
    marks.append(Line((Point(0, -height), Point(left, -height)), "line", 0.12))
    return Strip(height, tuple(marks))


def _lines(cell: Cell, width: float, measure: Measure) -> list[TextLine]:
    lines: list[TextLine] = []
    if cell.text:
        lines += [
            (line, cell.size, cell.bold, "ink")
            for line in wrapped(cell.text, width, cell.size, measure, bold=cell.bold)
        ]
    if cell.alert:
        lines += [(line, FINE, True, "ink") for line in wrapped(cell.alert, width, FINE, measure, bold=True)]
    if cell.small:
        lines += [(line, FINE, False, "quiet") for line in wrapped(cell.small, width, FINE, measure)]
    return lines


def _height(lines: Sequence[TextLine]) -> float:
    return sum(height * LEADING for _, height, _, _ in lines) - (lines[-1][1] * (LEADING - 1) if lines else 0)


def _signs(cell: Cell, middle: Point) -> Iterator[Mark]:
    if cell.tick:
        yield tick_box(middle)
    yield from placed_picture(cell.picture, Placement(0, middle))


def _words(column: Column, lines: Sequence[TextLine], top: Point) -> Iterator[Mark]:
    y = top.y
    for text, size, bold, ink in lines:
        y -= size
        yield Words(Point(top.x, y), text, size, ink, column.align, bold=bold, centred=False)
        y -= size * (LEADING - 1)


def tick_box(at: Point) -> Line:
    """Return a square for a carpenter's pencil about a point."""
    half = TICK / 2
    corners = tuple(at.moved(x, y) for x, y in ((-half, -half), (half, -half), (half, half), (-half, half)))
    return Line(corners, "quiet", 0.2, closed=True)
