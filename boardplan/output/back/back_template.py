"""Back template: a board mirrored at full size, with what is worked from its back and nothing of the front's own."""

from collections.abc import Iterator, Sequence

from boardplan.drawing.picture import Disc, Line, Mark, Words
from boardplan.geometry.point import Box, box_around
from boardplan.model.board import Board
from boardplan.model.holes import Hole
from boardplan.model.placed import Placed, placed
from boardplan.model.plan import Plan
from boardplan.output.back.back_cover import back_rings, covered_words, flange_words
from boardplan.output.back.back_heading import headings
from boardplan.output.back.back_view import (
    back_holes,
    board_from_behind,
    check_holes,
    member_from_behind,
    ring_from_behind,
)
from boardplan.output.holes.hole_mark import hole_mark, mark_boxes
from boardplan.output.printing.joints import own_parts
from boardplan.output.printing.lettering import FINE, Measure, TextLine, text_box
from boardplan.output.printing.pages import Tile
from boardplan.output.template.board_ruler import datum_edges, ruler, ruler_boxes
from boardplan.output.template.board_words import edge_names, member_names
from boardplan.output.template.free_places import LINE, MARK, WORDS, FreePlaces
from boardplan.output.template.register_crosses import register_crosses
from boardplan.output.template.template import (
    FINE_LINE,
    THIN,
    Template,
    edge_boxes,
    hatched,
    light_grid,
    long_diagonal,
    sheet_edges,
)
from boardplan.output.template.template_words import hole_inscription
from boardplan.output.template.word_block import Inscription
from boardplan.output.template.word_desk import WordDesk
from boardplan.output.template.word_places import round_a_point

_ARM = 4.0
"""How far the cross of a hole that is only there to check by reaches, in mm; shorter than that of a hole to work."""


def back_template_of(plan: Plan, board: Board, tiles: Sequence[Tile], measure: Measure) -> Template:
    """Return the mirrored drawing of a board; `tiles` are those of the mirrored board."""
    mirrored, holes, checks = board_from_behind(board), back_holes(plan, board), check_holes(plan, board)
    units = [placed(plan, each) for each in plan.components.values() if each.board == board.id]
    places = _taken(plan, mirrored, holes, checks)
    crosses = register_crosses(tiles, places)
    desk = WordDesk(tuple(tile.rect for tile in tiles), tuple(own_parts(tiles)), places, measure)
    along = ruler(mirrored, plan.job.units)
    numbers = [Inscription(text_box(mark, measure), (mark,)) for mark in along if isinstance(mark, Words)]
    words = (*_words(plan, board, units, (holes, checks), desk), *numbers)
    ground = (*light_grid(mirrored), *_behind(plan, board), *_front(board, units), *long_diagonal(mirrored))
    marks = (
        *sheet_edges(mirrored),
        *datum_edges(mirrored),
        *(mark for mark in along if not isinstance(mark, Words)),
        *crosses,
        *(mark for hole in checks for mark in _check_cross(hole)),
        *(mark for hole in holes for mark in hole_mark(hole, plan.fasteners.get(hole.fastener))),
        *(mark for hole in holes for mark in _flange(plan, hole)),
    )
    return Template(plan, mirrored, holes, (), (), (), ground, words, marks, places)


def _taken(plan: Plan, mirrored: Board, holes: Sequence[Hole], checks: Sequence[Hole]) -> FreePlaces:
    """Return what no word may cover."""
    places = FreePlaces()
    for hole in holes:
        for box in mark_boxes(hole, plan.fasteners.get(hole.fastener)):
            places.take(box, MARK)
    for hole in checks:
        places.take(Box(*hole.position, *hole.position).grown(_ARM), WORDS)
    for ring in mirrored.cutouts:
        places.take(box_around(ring), LINE)
    for box in (*edge_boxes(mirrored.outline), *ruler_boxes(mirrored)):
        places.take(box, WORDS)
    return places


def _behind(plan: Plan, board: Board) -> Iterator[Mark]:
    """Yield framing and parts of the back, in solid lines since they lie on this side, and the cut-outs."""
    for _, _, ring in back_rings(plan, board):
        yield from hatched([ring], 45, 6.0, "line")
        yield Line(ring, "ink", 0.35, closed=True)
    for cutout in board.cutouts:
        for towards in (45, 135):
            yield from hatched([ring_from_behind(board, cutout)], towards, 4.0, "line")


def _front(board: Board, units: Sequence[Placed]) -> Iterator[Mark]:
    """Yield the outlines of the units, dashed since they lie on the other side."""
    for unit in units:
        yield Line(ring_from_behind(board, unit.outline), "quiet", THIN, (4, 2), closed=True)


def _check_cross(hole: Hole) -> Iterator[Mark]:
    at = hole.position
    for turn in (0, 90):
        yield Line((at.ahead(turn, _ARM), at.ahead(turn + 180, _ARM)), "line", FINE_LINE)


def _flange(plan: Plan, hole: Hole) -> Iterator[Mark]:
    """Yield the circle that the flange of a nut takes, where its diameter is known."""
    fastener = plan.fasteners.get(hole.fastener)
    if fastener and fastener.flange_diameter:
        yield Disc(hole.position, fastener.flange_diameter / 2, None, "ink", FINE_LINE)


def _words(
    plan: Plan, board: Board, units: Sequence[Placed], drilled: tuple[Sequence[Hole], Sequence[Hole]], desk: WordDesk
) -> Iterator[Inscription]:
    """Yield all words, the most needed first; `drilled` are the holes to work, then those to check by."""
    mirrored = board_from_behind(board)
    yield from headings(mirrored, desk)
    for hole in drilled[0]:
        more: list[TextLine] = [(flange_words(plan.fasteners.get(hole.fastener)), FINE, False, "ink")]
        more += [(words, FINE, True, "ink") for words in covered_words(plan, board, hole)]
        yield hole_inscription(plan, hole, desk, more)
    for hole in drilled[1]:
        block = desk.block((hole.id, FINE, False, "quiet"))
        yield block.at(desk.beside(round_a_point(hole.position, block, _ARM + 0.6), hole.position))
    yield from edge_names(mirrored, desk)
    for member in plan.framing.values():
        if member.board == board.id:
            yield from member_names(mirrored, member_from_behind(board, member), desk)
    for part in plan.back_parts.values():
        if part.board == board.id:
            block = desk.block((f"{part.id}: {part.name}", FINE, False, "ink"))
            yield from desk.within(block, box_around(ring_from_behind(board, part.outline)))
    for unit in units:
        name = f"{unit.component.id} {unit.component.label}".strip()
        block = desk.block((f"on the front: {name}", FINE, False, "quiet"))
        yield from desk.within(block, box_around(ring_from_behind(board, unit.outline)))
