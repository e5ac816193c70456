"""Board snapshot: a board as the window shows it by light, to send to somebody; nothing to measure by."""

from collections.abc import Iterable
from dataclasses import replace

from boardplan.drawing.palette import colour
from boardplan.drawing.picture import Area, Disc, Mark, Picture, placed_picture
from boardplan.drawing.rings import rectangle
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.output.exchange.png_file import png_bytes
from boardplan.output.making import Making
from boardplan.output.printing.lettering import LEADING, TextLine, fitting_height, stacked
from boardplan.output.printing.page_raster import page_pixels
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.verdict import stop_words

LONGEST = 2400
"""Pixels along the longer side."""
DOTS_PER_INCH = 150.0
MEASURE_NOTHING = "A picture: measure nothing by it."
_BORDER = 45.0
"""Wall shown round the board, in mm."""
_LETTERS = 1 / 90
"""Height of a capital of the caption as a share of the longer side."""


def snapshot_bytes(making: Making, board: Board) -> bytes:
    """Return a board's picture as a PNG."""
    sheet = snapshot_sheet(making, board)
    pdf = pdf_of([sheet], making.fonts, sheet.name)
    return png_bytes(page_pixels(pdf, 0, LONGEST), DOTS_PER_INCH)


def snapshot_sheet(making: Making, board: Board) -> Sheet:
    """Return a page as large as the board with what is on it, cables too, and a caption below."""
    job = making.once("picture of all boards", lambda: in_light(mark for _, each in making.lying for mark in each))
    width, height = board.box.width + 2 * _BORDER, board.box.height + 2 * _BORDER
    capital = max(width, height) * _LETTERS
    lines = [
        (text, fitting_height(text, width - 4 * capital, size, making.fonts.width, bold=bold), bold, ink)
        for text, size, bold, ink in _caption(making, board, capital)
    ]
    deep = sum(size * LEADING for _, size, _, _ in lines) + 2 * capital
    shown = Box(0, deep, width, deep + height)
    shift = Point(_BORDER - board.box.left - board.position.x, deep + _BORDER - board.box.bottom - board.position.y)
    caption = in_light(stacked(lines, Point(2 * capital, deep - 1.4 * capital)))
    parts = (
        Part(in_light((Area((rectangle(0, 0, width, deep + height),), "panel"),))),
        Part(in_light((Area((shown.corners(),), "wall"),))),
        Part(placed_picture(job, Placement(0, shift)), shown),
        Part(caption),
    )
    return Sheet(f"Board {board.id}", width, deep + height, parts)


def _caption(making: Making, board: Board, capital: float) -> Iterable[TextLine]:
    job = making.plan.job
    yield f"{job.number} {job.title}, board {board.id} {board.name}".strip(), capital, True, "ink"
    if making.stops:
        yield stop_words(making.stops), capital, True, "stop"
    about = ", ".join(each for each in (f"revision {job.revision}", job.date) if each)
    yield f"{about}. {MEASURE_NOTHING}", capital * 0.75, False, "quiet"


def in_light(picture: Iterable[Mark]) -> Picture:
    """Return a picture in the colours that its inks have by light, whatever they are on paper."""
    return tuple(_coloured(mark) for mark in picture)


def _coloured(mark: Mark) -> Mark:
    if isinstance(mark, Area | Disc):
        return replace(mark, fill=_real(mark.fill), edge=_real(mark.edge))
    return replace(mark, ink=colour(mark.ink, "light"))


def _real(ink: str | None) -> str | None:
    return None if ink is None else colour(ink, "light")
