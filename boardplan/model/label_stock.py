"""Label stock: the sheets that labels are printed on, described by their measures alone."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from boardplan.geometry.point import Box

OVERLAP = 6.0
"""How far a label that goes round lies over its own beginning, in mm: common practice, no source."""
LEAST_SIDE = 12.0
"""A label with a shorter side has no room for three lines of the least type, in mm."""
_NOISE = 1e-6
_HEAD, _FOOT = 16.0, 10.0


@dataclass(frozen=True, slots=True)
class LabelGrid:
    """A page of labels, all alike, in mm.

    `left` and `top` are the margins before the first label, the pitches from a label's edge to the next one's.
    `round` is the side that goes round a cable; the words run along the other. `cut` says that lines are printed to
    cut along, as on plain sticky paper.
    """

    page_width: float
    page_height: float
    columns: int
    rows: int
    width: float
    height: float
    left: float
    top: float
    column_pitch: float
    row_pitch: float
    round: Literal["height", "width"] = "height"
    cut: bool = False

    @property
    def count(self) -> int:
        """How many labels a page holds."""
        return self.columns * self.rows

    @property
    def wrap(self) -> float:
        """How long the side is that goes round."""
        return self.height if self.round == "height" else self.width

    @property
    def along(self) -> float:
        """How long the side is that lies along a cable."""
        return self.width if self.round == "height" else self.height

    def box(self, index: int) -> Box:
        """Return where a label lies on its page, from the page's lower left; row by row from the top."""
        row, column = divmod(index, self.columns)
        left = self.left + column * self.column_pitch
        top = self.page_height - self.top - row * self.row_pitch
        return Box(left, top - self.height, left + self.width, top)


@dataclass(frozen=True, slots=True)
class LabelStock:
    """What a job's labels are printed on: grids for cable ends, the first that goes round is taken, and for plates."""

    id: str
    name: str
    cables: tuple[LabelGrid, ...]
    plates: LabelGrid
    overlap: float = OVERLAP


def grid_faults(grid: LabelGrid) -> Iterator[str]:
    """Yield in words why labels can't lie on a page as a grid says."""
    if min(grid.width, grid.height) < LEAST_SIDE:
        yield f"a label needs sides of at least {LEAST_SIDE:g} mm for three lines of words"
    if grid.columns > 1 and grid.column_pitch < grid.width - _NOISE:
        yield f"columns {grid.column_pitch:g} mm apart overlap: a label is {grid.width:g} mm wide"
    if grid.rows > 1 and grid.row_pitch < grid.height - _NOISE:
        yield f"rows {grid.row_pitch:g} mm apart overlap: a label is {grid.height:g} mm high"
    wide = grid.left + (grid.columns - 1) * grid.column_pitch + grid.width
    if wide > grid.page_width + _NOISE:
        yield f"{grid.columns} columns reach {wide:g} mm from the left; the page is {grid.page_width:g} mm wide"
    high = grid.top + (grid.rows - 1) * grid.row_pitch + grid.height
    if high > grid.page_height + _NOISE:
        yield f"{grid.rows} rows reach {high:g} mm from the top; the page is {grid.page_height:g} mm high"


def hand_cut_stock(name: str, page_width: float, page_height: float) -> LabelStock:
    """Return plain sticky paper of a page's size, cut by hand: small and large labels for cables, and plates."""
    words = f"{name} sticky paper, cut by hand along the lines"
    grids = tuple(_hand_cut(page_width, page_height, *size) for size in ((46.0, 36.0), (46.0, 63.0), (61.0, 25.0)))
    return LabelStock("hand-cut", words, grids[:2], grids[2])


def _hand_cut(page_width: float, page_height: float, width: float, height: float) -> LabelGrid:
    columns = int((page_width - 2 * _FOOT) // width)
    rows = int((page_height - _HEAD - _FOOT) // height)
    left = (page_width - columns * width) / 2
    return LabelGrid(page_width, page_height, columns, rows, width, height, left, _HEAD, width, height, cut=True)
