"""Pages: how a board is cut into tiles, each on a page of its own at full size."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from boardplan.geometry.point import Box, Point, box_around, signed_area
from boardplan.model.board import Board, Ring
from boardplan.output.printing.paper import MARGIN, PAPERS, Paper
from boardplan.output.printing.seams import Placing, all_placings, best_first, loosened_placings
from boardplan.output.printing.sheet_layouts import BORDER, OVERLAP, fewest_layouts, narrow_layouts

_NOISE = 1e-6
_LOOSENED = 4
"""How many layouts are looked at with seams that move each by itself."""

__all__ = ["BORDER", "OVERLAP", "PAPERS", "Tile", "tiles_of"]


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


def tiles_of(
    board: Board, paper: Paper, marks: Iterable[Point] = (), patterns: Iterable[Sequence[Point]] = ()
) -> tuple[Tile, ...]:
    """Return the tiles of a board, row by row or column by column from the lower left, on the fewest sheets of a paper.

    Sheets stand or lie in strips. Room that is left over goes where the seams spare the `marks` and cut the fewest of
    the `patterns`, holes that belong together. Where a drill point would lie near
    a sheet's edge, border is given up first. Tiles that would show nothing of the board and none of the marks are left
    out, but for the row and the column of the datum: they keep the joints in a chain.
    """
    boxes = [box_around(each) for each in patterns if each]
    whole = abs(signed_area(board.outline)) > board.box.width * board.box.height - _NOISE
    layouts = fewest_layouts(board.box, paper, whole=whole)
    points = tuple(marks)
    placings = best_first(board.box, all_placings(board.box, layouts, points, boxes))
    if whole and placings[0].spared.clear < len(points):
        narrow = narrow_layouts(board.box, paper, placings[0].layout.sheets)
        placings = best_first(board.box, (*placings, *all_placings(board.box, narrow, points, boxes)))
    if whole and placings[0].spared.clear < len(points):
        loose = loosened_placings(board.box, placings[:_LOOSENED], points, boxes)
        placings = best_first(board.box, (*placings, *loose))
    return min((_tiles(board, placing, points) for placing in (placings[:1] if whole else placings)), key=len)


def _tiles(board: Board, placing: Placing, points: Sequence[Point]) -> tuple[Tile, ...]:
    level, datum = placing.layout.level, board.datum.corner
    kept_strip, kept_place = (_from_end(datum, "upper"), _from_end(datum, "right"))[:: 1 if level else -1]
    counts = [strip.count for strip in placing.layout.strips]
    tiles = []
    for strip, place, rect in placing.rects:
        column, row = (place, strip) if level else (strip, place)
        in_chain = strip == kept_strip % len(counts) or place == kept_place % counts[strip]
        if in_chain or _shows(board.outline, rect) or any(rect.holds(each) for each in points):
            size = rect.width + 2 * MARGIN, rect.height + 2 * MARGIN
            tiles.append(Tile(board.id, column, row, rect, *size, Point(MARGIN, MARGIN)))
    return tuple(tiles)


def _from_end(corner: str, end: str) -> int:
    """Return which of several tiles in line is that of the datum: the last where its corner is at the end."""
    return -1 if end in corner else 0


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
