"""Board drawing: a board for machines and other programs, in layers; every backend draws these same marks.

Each circle is a hole, and each hole is a circle as wide as its bit, at its place from the lower left of the board.
"""

from collections.abc import Iterable, Iterator, Mapping
from typing import Protocol, TypeVar

from boardplan.drawing.picture import Line, Mark, Strand, Words
from boardplan.geometry.point import Point, box_around
from boardplan.model.board import Board
from boardplan.model.holes import Hole, holes_of
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.output.exchange.drawing_notes import drawing_notes
from boardplan.output.exchange.hole_layers import drilled_layers
from boardplan.output.exchange.layer import ASK_CUT_OUTS, CUT_OUTS, OUTLINE, BoardDrawing, Layer, Role
from boardplan.output.exchange.wood import cut_by_itself
from boardplan.output.making import Making
from boardplan.output.printing.pages import Tile
from boardplan.output.template.board_ruler import datum_edges, ruler
from boardplan.output.template.template import (
    Template,
    cable_lines,
    channel_lines,
    keep_clear_lines,
    member_box,
    template_of,
    unit_lines,
)
from boardplan.routing.route import Way

_BORDER = 20.0
"""Room round the board and its holes, in mm."""
_CENTRE = 0.5, 5.0
"""Where the arms of a centre cross begin and end, in mm from the centre, or from the edge of a wide hole."""
_THIN = 0.18


class _Hung(Protocol):
    """Anything on a board."""

    @property
    def board(self) -> str:
        """The id of the board."""


_H = TypeVar("_H", bound=_Hung)


def board_drawing(making: Making, board: Board) -> BoardDrawing:
    """Return the layers of a board, what is cut and drilled on top; reckoned once for all files."""
    return making.once(f"drawing of board {board.id}", lambda: _drawing(making, board))


def _drawing(making: Making, board: Board) -> BoardDrawing:
    plan = making.plan
    own = box_around((*board.box.corners(), *(each.position for each in holes_of(plan) if each.board == board.id)))
    box = own.grown(_BORDER)
    whole = Tile(board.id, 0, 0, box, box.width, box.height, Point(0, 0))
    template = template_of(plan, making.review, board, (whole,), making.fonts.width)
    drilled = drilled_layers(board, template.holes, template.clamp_holes)
    layers = (*_reference(making, template), *_cut(board), *(each.layer for each in drilled))
    shown = tuple(layer for layer in layers if layer.picture)
    notes, box = drawing_notes(making, board, drilled, box)
    return BoardDrawing(
        f"{plan.job.title}, board {board.id}", (*shown, Layer("REFERENCE-NOTES", "reference", notes)), box
    )


def _cut(board: Board) -> Iterator[Layer]:
    """Yield the outline and the cut-outs; one that meets an edge or another one has to be asked about."""
    yield Layer(OUTLINE, "cut", (Line(board.outline, "ink", 0.35, closed=True),))
    by_itself = {index: cut_by_itself(board.outline, board.cutouts, index) for index in range(len(board.cutouts))}
    roles: tuple[tuple[str, Role, bool], ...] = ((CUT_OUTS, "cut", True), (ASK_CUT_OUTS, "ask", False))
    for name, role, wanted in roles:
        rings = [ring for index, ring in enumerate(board.cutouts) if by_itself[index] == wanted]
        yield Layer(name, role, tuple(Line(ring, "ink", 0.35, closed=True) for ring in rings))


def _reference(making: Making, template: Template) -> Iterator[Layer]:
    """Yield all that is only looked at."""
    plan, board = making.plan, template.board
    units = [placed(plan, each) for each in plan.components.values() if each.board == board.id]
    pictures: tuple[tuple[str, Iterable[Mark]], ...] = (
        ("FRAMING", _framing(plan, board)),
        ("BACK", (Line(p.outline, "quiet", _THIN, (4, 2), closed=True) for p in _on(board, plan.back_parts.values()))),
        ("NO-GO", (Line(p.box.corners(), "quiet", _THIN, closed=True) for p in _on(board, plan.no_go_boxes.values()))),
        ("CABLES", _cables(plan, making.review.ways, board)),
        ("CHANNELS", channel_lines(plan, board)),
        ("KEEP-CLEAR", keep_clear_lines(units)),
        ("COMPONENTS", unit_lines(units)),
        ("DATUM", datum_edges(board)),
        ("RULER", (mark for mark in ruler(board, plan.job.units) if not isinstance(mark, Words))),
        ("CENTRES", (mark for hole in (*template.holes, *template.clamp_holes) for mark in _centre(hole))),
        ("WORDS", (mark for each in template.words for mark in each.picture)),
    )
    for name, picture in pictures:
        yield Layer(f"REFERENCE-{name}", "reference", tuple(picture))


def _on(board: Board, things: Iterable[_H]) -> Iterator[_H]:
    return (each for each in things if each.board == board.id)


def _framing(plan: Plan, board: Board) -> Iterator[Mark]:
    for member in _on(board, plan.framing.values()):
        yield Line(member_box(board, member).corners(), "line", _THIN, closed=True)


def _cables(plan: Plan, ways: Mapping[str, Way], board: Board) -> Iterator[Mark]:
    """Yield the centre lines of the cables that come over the board; others hang beside it."""
    for mark in cable_lines(plan, ways, board):
        ends = [end for piece in mark.pieces for end in (piece.start, piece.end)] if isinstance(mark, Strand) else []
        if ends and box_around(ends).touches(board.box):
            yield mark


def _centre(hole: Hole) -> Iterator[Mark]:
    """Yield the arms of a cross, which reach out of the circle; the centre itself stays open."""
    start, arm = _CENTRE
    for turn in (0.0, 90.0, 180.0, 270.0):
        reach = (hole.bit or 0.0) / 2 + arm
        yield Line((hole.position.ahead(turn, start), hole.position.ahead(turn, reach)), "ink", _THIN)
