"""Drawing notes: whose board a drawing shows, what stands on its layers, and what must be known before it is cut."""

from collections.abc import Iterator, Sequence

from boardplan.drawing.picture import Picture
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import tidy_number
from boardplan.model.board import Board
from boardplan.output.exchange.hole_layers import QUESTIONS, DrilledLayer
from boardplan.output.exchange.layer import ASK_CUT_OUTS
from boardplan.output.exchange.wood import cut_by_itself
from boardplan.output.making import Making
from boardplan.output.printing.lettering import LARGE, LEADING, PLAIN, TITLE, TextLine, stacked, wrapped
from boardplan.output.template.tile_sheet import BEFORE_DRILLING
from boardplan.output.verdict import stop_words

SITE = "Layers that begin with SITE are drilled on site, not in the shop."
CLAMP = "Layers that begin with CLAMP: lay the cable and its clamp in place before drilling; jackets differ."
ASK = "Holes on layers with a question are not to be drilled before somebody has answered it."
_ROOM = 6.0
_LEAST_WIDTH = 260.0
_GROWS_FROM = 1300.0
"""Notes on a wider drawing are larger, so that they can be read when all of it is in sight, in mm."""


def drawing_notes(making: Making, board: Board, drilled: Sequence[DrilledLayer], box: Box) -> tuple[Picture, Box]:
    """Return the notes below a drawing, and the box that holds both."""
    width = max(box.width, _LEAST_WIDTH)
    room = width - 2 * _ROOM
    lines: list[TextLine] = []
    larger = max(1.0, width / _GROWS_FROM)
    for text, plain, bold, ink in _lines(making, board, drilled):
        height = plain * larger
        lines += [(each, height, bold, ink) for each in wrapped(text, room, height, making.fonts.width, bold=bold)]
    deep = sum(height * LEADING for _, height, _, _ in lines)
    whole = Box(box.left, box.bottom - _ROOM - deep, box.left + width, box.top)
    return stacked(lines, Point(box.left + _ROOM, box.bottom)), whole


def _lines(making: Making, board: Board, drilled: Sequence[DrilledLayer]) -> Iterator[TextLine]:
    job = making.plan.job
    box = board.box
    yield f"{job.number} {job.title}, board {board.id} {board.name}".strip(), TITLE, True, "ink"
    yield ", ".join(each for each in (f"revision {job.revision}", job.date) if each), LARGE, False, "ink"
    if making.stops:
        yield stop_words(making.stops), TITLE, True, "ink"
    size = f"{tidy_number(box.width, 2)} x {tidy_number(box.height, 2)} x {tidy_number(board.thickness, 2)} mm"
    yield f"Front side, true size: the bare sheet measures {size} overall.", PLAIN, True, "ink"
    yield "Millimetres from the lower left of the bare sheet, x to the right, y up.", PLAIN, False, "ink"
    yield from ((words, PLAIN, False, "ink") for words in _layer_lines(drilled))
    yield from ((words, PLAIN, True, "ink") for words in _questions(board, drilled))
    roles = {each.role for each in drilled}
    told = {"site": SITE, "clamp": CLAMP, "ask": ASK}
    yield from ((words, PLAIN, False, "ink") for role, words in told.items() if role in roles)
    yield BEFORE_DRILLING, PLAIN, True, "ink"


def _layer_lines(drilled: Sequence[DrilledLayer]) -> Iterator[str]:
    for each in drilled:
        count = len(each.holes)
        yield f"{each.name}: {count} {'hole' if count == 1 else 'holes'}"


def _questions(board: Board, drilled: Sequence[DrilledLayer]) -> Iterator[str]:
    for each in drilled:
        if each.name in QUESTIONS:
            yield f"? {', '.join(hole.id for hole in each.holes)}: {QUESTIONS[each.name]}"
    if not all(cut_by_itself(board.outline, board.cutouts, index) for index in range(len(board.cutouts))):
        yield f"? {ASK_CUT_OUTS}: cut-outs that meet an edge or each other: how are they meant?"
