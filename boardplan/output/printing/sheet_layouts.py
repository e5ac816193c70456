"""Sheet layouts: the ways to lay the fewest sheets of a paper over a board, in strips that may differ in their turn."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, islice, pairwise

from boardplan.geometry.point import Box
from boardplan.output.printing.paper import MARGIN, Paper

OVERLAP = 10.0
"""How much neighbouring tiles share, in mm (common practice, no source)."""
BORDER = 20.0
"""Paper round the board, in mm."""
_SMALLER_BORDERS = (15.0, 12.0, 10.0, 8.0, 6.0)
"""Tried before a board is split in strips; the ruler along the datum edges needs the least of them."""
_NARROW = (12.0, 6.0)
"""Tried where a drill point lies near the edge of a sheet, in mm."""
_LONGEST = 4900.0
"""The longest strip, in mm: a PDF page ends at 14,400 points, 5080 mm (ISO 32000-1, annex C), and 3 % may be added."""
_MOST_ORDERS = 24
"""How many orders of upright and lying strips are looked at; a large board has hundreds."""


@dataclass(frozen=True, slots=True)
class Strip:
    """Some tiles side by side: how many, how long each is along the strip, how deep it is across."""

    count: int
    length: float
    depth: float


@dataclass(frozen=True, slots=True)
class Layout:
    """Strips one beside the other from the lower left: level ones run along x and are stacked up."""

    level: bool
    strips: tuple[Strip, ...]
    border: float

    @property
    def sheets(self) -> int:
        """How many sheets it takes."""
        return sum(strip.count for strip in self.strips)

    @property
    def area(self) -> float:
        """How much printable paper it takes, in mm²."""
        return sum(strip.count * strip.length * strip.depth for strip in self.strips)

    @property
    def changes(self) -> int:
        """How often neighbouring strips differ."""
        return sum(a != b for a, b in pairwise(self.strips))


def fewest_layouts(box: Box, paper: Paper, *, whole: bool = True) -> list[Layout]:
    """Return all layouts of the fewest sheets; a smaller border only where it saves a strip or makes it one sheet.

    Of a board that is not `whole`, a rectangle, some sheets may show nothing: plain grids may do with fewer then, and
    are among those returned.
    """
    found = list(_layouts(box, paper, BORDER))
    roll = paper.height is None
    for border in _SMALLER_BORDERS:
        found += [layout for layout in _layouts(box, paper, border) if roll or layout.sheets == 1]

    def rank(layout: Layout) -> tuple[int, float, float]:
        return layout.sheets, -layout.border, round(layout.area)

    least = min(map(rank, found))
    plain = [] if whole or roll else [each for each in _grids(box, paper) if rank(each) > least]
    return [*(layout for layout in found if rank(layout) == least), *plain]


def narrow_layouts(box: Box, paper: Paper, sheets: int) -> list[Layout]:
    """Return the layouts of no more than a number of sheets with smaller borders: more room to move the seams in."""
    found = [layout for border in _NARROW for layout in _layouts(box, paper, border)]
    return [layout for layout in found if layout.sheets <= sheets]


def _grids(box: Box, paper: Paper) -> Iterator[Layout]:
    """Yield the grids of sheets that all stand, or all lie."""
    width, height = box.width + 2 * BORDER, box.height + 2 * BORDER
    for length, depth in _turns(paper):
        strip = Strip(tiles_along(width, length), length, depth)
        yield Layout(level=True, strips=(strip,) * tiles_along(height, depth), border=BORDER)


def _turns(paper: Paper) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return the printable part of a sheet as it lies and as it stands."""
    short, long = paper.width - 2 * MARGIN, (paper.height or paper.width) - 2 * MARGIN
    return (long, short), (short, long)


def _layouts(box: Box, paper: Paper, border: float) -> Iterator[Layout]:
    width, height = box.width + 2 * border, box.height + 2 * border
    for level, along, across in ((True, width, height), (False, height, width)):
        stacks = _roll(along, across, paper) if paper.height is None else _sheets(along, across, paper)
        for strips in stacks:
            yield Layout(level, strips, border)


def _roll(along: float, across: float, paper: Paper) -> Iterator[tuple[Strip, ...]]:
    """Yield the strips of a roll, each in as few pieces as a page may be long."""
    depth = paper.width - 2 * MARGIN
    pieces = tiles_along(along, _LONGEST)
    piece = (along + (pieces - 1) * OVERLAP) / pieces
    yield (Strip(pieces, piece, depth),) * tiles_along(across, depth)


def _sheets(along: float, across: float, paper: Paper) -> Iterator[tuple[Strip, ...]]:
    """Yield stacks of strips of sheets that cover a length across on the fewest sheets, in every order."""
    one, other = (Strip(tiles_along(along, length), length, depth) for length, depth in _turns(paper))
    numbers = list(_numbers(across, one, other))
    least = min(a * one.count + b * other.count for a, b in numbers)
    numbers = [(a, b) for a, b in numbers if a * one.count + b * other.count == least]
    for a, b in numbers:
        for places in islice(combinations(range(a + b), a), max(1, _MOST_ORDERS // len(numbers))):
            yield tuple(one if place in places else other for place in range(a + b))


def _numbers(across: float, one: Strip, other: Strip) -> Iterator[tuple[int, int]]:
    """Yield how many strips of each sort cover a length across, no more than are needed."""
    most = tiles_along(across, one.depth)
    for a in range(most + 1):
        rest = across - a * (one.depth - OVERLAP)
        if a == most:
            yield a, 0
        else:
            yield a, tiles_along(rest, other.depth)


def tiles_along(length: float, printable: float) -> int:
    """Return how many tiles cover a length, neighbours sharing the overlap."""
    return max(1, math.ceil((length - OVERLAP) / (printable - OVERLAP) - 1e-9))
