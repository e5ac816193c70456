"""Pages: how a board is cut into tiles, each on a page of its own at full size."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from boardplan.geometry.point import Box, Point, signed_area
from boardplan.model.board import Board, Ring
from boardplan.output.printing.paper import MARGIN, PAPERS, Paper

__all__ = ["BORDER", "OVERLAP", "PAPERS", "Tile", "tiles_of"]

OVERLAP = 10.0
"""How much neighbouring tiles share, in mm (common practice, no source)."""
BORDER = 20.0
"""Paper round the board, in mm."""
_SMALLER_BORDERS = (15.0, 12.0, 10.0, 8.0, 6.0)
"""Tried before a board is split in strips; the ruler along the datum edges needs the least of them."""
_LONGEST = 4900.0
"""The longest strip, in mm: a PDF page ends at 14,400 points, 5080 mm (ISO 32000-1, annex C), and 3 % may be added."""
_MARK_REACH = 9.6
"""Half of the largest usual hole mark: what a seam should not cut."""
_SHIFTS = 16


@dataclass(frozen=True, slots=True)
class Tile:
    """A piece of the template: the rectangle `rect` of the board on a page, its lower left at `at` on the page.

    `rect` is in board coordinates and may reach past the board; page measures are in mm from the page's
    lower left; nothing is turned and nothing is scaled.
    """

    board: str
    column: int
    row: int
    rect: Box
    page_width: float
    page_height: float
    at: Point

    @property
    def name(self) -> str:
        """A letter for the column and a number for the row, A1 at the lower left.

        >>> Tile("A", 27, 0, Box(0, 0, 1, 1), 1, 1, Point(0, 0)).name
        'AB1'
        """
        letters, rest = "", self.column + 1
        while rest:
            rest, letter = divmod(rest - 1, 26)
            letters = chr(ord("A") + letter) + letters
        return f"{letters}{self.row + 1}"

    @property
    def on_page(self) -> Box:
        """Where the rectangle lies on the page."""
        return Box(self.at.x, self.at.y, self.at.x + self.rect.width, self.at.y + self.rect.height)

    def to_page(self, point: tuple[float, float]) -> Point:
        """Return where a point of the board lies on the page."""
        return Point(point[0] - self.rect.left + self.at.x, point[1] - self.rect.bottom + self.at.y)


@dataclass(frozen=True, slots=True)
class _Grid:
    """One way to cut a board: columns and rows of tiles of a printable width and height, and the border."""

    columns: int
    rows: int
    width: float
    height: float
    border: float

    @property
    def sheets(self) -> int:
        return self.columns * self.rows


def tiles_of(board: Board, paper: Paper, marks: Iterable[Point] = ()) -> tuple[Tile, ...]:
    """Return the tiles of a board, row by row from the lower left, on the fewest sheets of a paper.

    Room that is left over goes where the seams cut the fewest of the `marks`. Tiles that would show nothing
    of the board are left out, but for those of the bottom row and the left column: they keep the joints in a chain.
    """
    box = board.box
    grid = _fewest(box, paper)
    points = tuple(marks)
    lefts = _starts(box.left, box.right, grid.columns, grid.width, grid.border, [point.x for point in points])
    bottoms = _starts(box.bottom, box.top, grid.rows, grid.height, grid.border, [point.y for point in points])
    return tuple(
        Tile(board.id, column, row, rect, grid.width + 2 * MARGIN, grid.height + 2 * MARGIN, Point(MARGIN, MARGIN))
        for row, bottom in enumerate(bottoms)
        for column, left in enumerate(lefts)
        for rect in [Box(left, bottom, left + grid.width, bottom + grid.height)]
        if row == 0 or column == 0 or _shows(board.outline, rect)
    )


def _fewest(box: Box, paper: Paper) -> _Grid:
    """Return the grid of the fewest sheets; a smaller border only where it saves a strip or makes it one sheet."""
    wide = box.width >= box.height
    whole = list(_grids(box, paper, BORDER))
    if paper.height is None:
        whole += [grid for border in _SMALLER_BORDERS for grid in _grids(box, paper, border)]
    else:
        whole += [grid for border in _SMALLER_BORDERS for grid in _grids(box, paper, border) if grid.sheets == 1]
    return min(
        whole,
        key=lambda grid: (grid.sheets, -grid.border, grid.width * grid.height, (grid.width >= grid.height) != wide),
    )


def _grids(box: Box, paper: Paper, border: float) -> Iterator[_Grid]:
    width, height = box.width + 2 * border, box.height + 2 * border
    if paper.height is not None:
        upright = paper.width - 2 * MARGIN, paper.height - 2 * MARGIN
        for across, up in (upright, upright[::-1]):
            yield _Grid(_count(width, across), _count(height, up), across, up, border)
        return
    across = paper.width - 2 * MARGIN
    for length, columns_along in ((width, True), (height, False)):
        pieces = _count(length, _LONGEST)
        piece = (length + (pieces - 1) * OVERLAP) / pieces
        if columns_along:
            yield _Grid(pieces, _count(height, across), piece, across, border)
        else:
            yield _Grid(_count(width, across), pieces, across, piece, border)


def _count(length: float, printable: float) -> int:
    """Return how many tiles cover a length, neighbours sharing the overlap."""
    return max(1, math.ceil((length - OVERLAP) / (printable - OVERLAP) - 1e-9))


def _starts(
    low: float, high: float, count: int, printable: float, border: float, marks: Sequence[float]
) -> list[float]:
    """Return where each tile starts along one axis: seams where they cut the fewest marks, then the least shift."""
    step = printable - OVERLAP
    spare = count * step + OVERLAP - (high - low) - 2 * border
    first = low - border
    if count == 1:
        return [first - spare / 2]
    shifts = [spare * share / _SHIFTS for share in range(_SHIFTS + 1)]
    best = min(shifts, key=lambda shift: (_cut_marks(first - shift, step, count, marks), abs(shift - spare / 2)))
    return [first - best + index * step for index in range(count)]


def _cut_marks(first: float, step: float, count: int, marks: Sequence[float]) -> int:
    """Return how many marks lie whole in no tile."""
    starts = [first + index * step for index in range(count)]
    return sum(
        not any(start + _MARK_REACH <= mark <= start + step + OVERLAP - _MARK_REACH for start in starts)
        for mark in marks
    )


def _shows(outline: Ring, rect: Box) -> bool:
    """Say whether any of a board's outline lies within a rectangle."""
    ring: list[Point] = list(outline)
    for side, axis, sign in ((rect.left, 0, 1), (rect.right, 0, -1), (rect.bottom, 1, 1), (rect.top, 1, -1)):
        ring = _clipped(ring, side, axis, sign)
    return len(ring) > 2 and abs(signed_area(ring)) > 1e-6  # noqa: PLR2004 - an area has three corners


def _clipped(ring: Sequence[Point], side: float, axis: int, sign: int) -> list[Point]:
    """Return a ring cut off at a level line (Sutherland and Hodgman 1974)."""
    kept: list[Point] = []
    for a, b in zip(ring, (*ring[1:], *ring[:1]), strict=True):
        inside_a, inside_b = (sign * (point[axis] - side) >= 0 for point in (a, b))
        if inside_a:
            kept.append(a)
        if inside_a != inside_b:
            share = (side - a[axis]) / (b[axis] - a[axis])
            kept.append(Point(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)))
    return kept
