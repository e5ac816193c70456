"""Template: all that is drawn of a board at full size, in board coordinates, before it is cut in sheets."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from boardplan.checks.review import Review
from boardplan.drawing.hatching import hatch
from boardplan.drawing.picture import Area, Line, Mark, Picture, Strand, Words, placed_picture
from boardplan.drawing.rings import beside_line
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board, Framing
from boardplan.model.channel import Channel
from boardplan.model.holes import Hole, holes_of
from boardplan.model.placed import Placed, placed
from boardplan.model.plan import Plan
from boardplan.output.holes.hole_mark import hole_mark, mark_boxes
from boardplan.output.printing.joints import own_parts
from boardplan.output.printing.lettering import Measure, text_box
from boardplan.output.printing.pages import Tile
from boardplan.output.template.board_ruler import datum_edges, ruler, ruler_boxes
from boardplan.output.template.board_words import board_inscriptions
from boardplan.output.template.clamp_mark import clamp_box, clamp_mark, placed_clamps
from boardplan.output.template.free_places import LINE, MARK, TERMINAL, WORDS, FreePlaces
from boardplan.output.template.grid_numbers import grid_levels, grid_uprights
from boardplan.output.template.ledger import ledger_marks, ledger_words
from boardplan.output.template.register_crosses import register_crosses
from boardplan.output.template.retainer_mark import placed_retainers, retainer_box, retainer_mark
from boardplan.output.template.template_words import (
    hole_inscription,
    hole_number,
    terminal_inscription,
    unit_inscriptions,
)
from boardplan.output.template.word_block import Inscription
from boardplan.output.template.word_desk import WordDesk
from boardplan.routing.route import Route, Way
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.clamp_holes import clamp_holes
from boardplan.routing.supports.retainers import Retainer

THIN, FINE_LINE = 0.18, 0.12


@dataclass(frozen=True, slots=True)
class Template:
    """A board's drawing: `ground` is cut off at the board's edge, `marks` are not; `words` are shown whole.

    `clamps` and `retainers` are in board coordinates; `clamp_holes` are for those screws of clamps that are known, and
    in no count.
    `places` knows what is drawn where, so that each sheet finds room for its bars and its name.
    """

    plan: Plan
    board: Board
    holes: tuple[Hole, ...]
    clamps: tuple[Clamp, ...]
    retainers: tuple[Retainer, ...]
    clamp_holes: tuple[Hole, ...]
    ground: Picture
    words: tuple[Inscription, ...]
    marks: Picture
    places: FreePlaces


def template_of(plan: Plan, review: Review, board: Board, tiles: Sequence[Tile], measure: Measure) -> Template:
    """Return the drawing of a board, words placed so that each can be read on one of the tiles."""
    holes = tuple(hole for hole in holes_of(plan) if hole.board == board.id)
    units = [placed(plan, each) for each in plan.components.values() if each.board == board.id]
    clamps = tuple(placed_clamps(plan, review.clamps, board))
    retainers = tuple(placed_retainers(plan, review.retainers, board))
    screws = tuple(hole for hole in clamp_holes(plan, review.clamps) if hole.board == board.id)
    places = FreePlaces()
    for box in (*map(clamp_box, clamps), *map(retainer_box, retainers)):
        places.take(box, TERMINAL)
    taken = [box for hole in (*holes, *screws) for box in mark_boxes(hole, plan.fasteners.get(hole.fastener))]
    for box in taken:
        places.take(box, MARK)
    for ring in (unit.outline for unit in units):
        for box in edge_boxes(ring):
            places.take(box, LINE)
    for ring in board.cutouts:
        places.take(box_around(ring), LINE)
    for box in (*edge_boxes(board.outline), *ruler_boxes(board)):
        places.take(box, WORDS)
    crosses = register_crosses(tiles, places)
    desk = WordDesk(tuple(tile.rect for tile in tiles), tuple(own_parts(tiles)), places, measure)
    along = ruler(board, plan.job.units)
    numbers = [Inscription(text_box(mark, measure), (mark,)) for mark in along if isinstance(mark, Words)]
    words = (*_words(plan, board, units, (holes, screws), desk), *numbers)
    ground = (
        *light_grid(board),
        *_behind(plan, board),
        *cable_lines(plan, review.ways, board),
        *channel_lines(plan, board),
        *keep_clear_lines(units),
        *unit_lines(units),
        *ledger_marks(units),
        *long_diagonal(board),
    )
    marks = (
        *sheet_edges(board),
        *datum_edges(board),
        *(mark for mark in along if not isinstance(mark, Words)),
        *crosses,
        *(mark for retainer in retainers for mark in retainer_mark(retainer, taken)),
        *(mark for clamp in clamps for mark in clamp_mark(clamp, by_hand=not screws)),
        *(mark for hole in (*holes, *screws) for mark in hole_mark(hole, plan.fasteners.get(hole.fastener))),
    )
    return Template(plan, board, holes, clamps, retainers, screws, ground, words, marks, places)


def _words(
    plan: Plan, board: Board, units: Sequence[Placed], drilled: tuple[Sequence[Hole], Sequence[Hole]], desk: WordDesk
) -> Iterator[Inscription]:
    """Yield all words, the most needed first, since each stays clear of those before it.

    `drilled` are the holes, then the screws of clamps, which have their number alone.
    """
    for unit in units:
        for terminal in unit.terminals.values():
            desk.places.take(Box(*terminal.position, *terminal.position).grown(1.3), TERMINAL)
    for hole in drilled[0]:
        yield hole_inscription(plan, hole, desk)
    for hole in drilled[1]:
        yield hole_number(plan, hole, desk)
    for unit in units:
        for terminal in unit.terminals.values():
            yield terminal_inscription(terminal, desk)
    for unit in units:
        yield from unit_inscriptions(unit, plan.job.units, desk)
        yield from ledger_words(board, unit, plan.job.units, desk)
    yield from board_inscriptions(plan, board, desk)


def edge_boxes(ring: Sequence[Point]) -> Iterator[Box]:
    """Yield boxes along the edges of an outline, as wide as their line."""
    for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
        yield box_around((a, b)).grown(0.4)


def light_grid(board: Board) -> Iterator[Mark]:
    """Yield a light grid of 100 mm, from the datum edges as the ruler and the schedule are."""
    box = board.box
    for _, x in grid_uprights(board):
        yield Line((Point(x, box.bottom), Point(x, box.top)), "faint", THIN)
    for _, y in grid_levels(board):
        yield Line((Point(box.left, y), Point(box.right, y)), "faint", THIN)


def long_diagonal(board: Board) -> Iterator[Mark]:
    """Yield one line over the whole board: a wrong joint breaks it."""
    box = board.box
    yield Line((Point(box.left, box.bottom), Point(box.right, box.top)), "line", THIN, (12, 2, 1, 2))


def member_box(board: Board, member: Framing) -> Box:
    """Return the part of a member that lies behind the board, its own length or the board's."""
    box, half = board.box, member.width / 2
    if member.direction == "upright":
        low = box.bottom if member.start is None else member.start
        high = box.top if member.end is None else member.end
        return Box(member.centre - half, low, member.centre + half, high)
    low = box.left if member.start is None else member.start
    high = box.right if member.end is None else member.end
    return Box(low, member.centre - half, high, member.centre + half)


def _behind(plan: Plan, board: Board) -> Iterator[Mark]:
    """Yield what a bit or a screw could meet: framing hatched, back parts dashed, no-go boxes and cut-outs crossed."""
    for member in plan.framing.values():
        if member.board == board.id:
            ring = member_box(board, member).corners()
            yield from hatched([ring], 45, 9.0, "faint")
            yield Line(ring, "line", THIN, closed=True)
    for part in plan.back_parts.values():
        if part.board == board.id:
            yield Line(part.outline, "quiet", THIN, (4, 2), closed=True)
    for room in plan.no_go_boxes.values():
        if room.board == board.id:
            yield from hatched([room.box.corners()], 45, 5.0, "line")
            yield from hatched([room.box.corners()], 135, 5.0, "line")
            yield Line(room.box.corners(), "quiet", THIN, closed=True)
    for cutout in board.cutouts:
        yield from hatched([cutout], 45, 4.0, "line")
        yield from hatched([cutout], 135, 4.0, "line")


def hatched(rings: Sequence[tuple[Point, ...]], towards: float, spacing: float, ink: str) -> Iterator[Mark]:
    """Yield fine lines within rings by the even-odd rule."""
    for line in hatch(rings, towards, spacing):
        yield Line(line, ink, FINE_LINE)


def cable_lines(plan: Plan, ways: Mapping[str, Way], board: Board) -> Picture:
    """Return the centre line of every cable that has a way, light."""
    lines = [
        Strand(way.pieces, "line", 0.3)
        for way in (ways.get(cable) for cable in plan.cables)
        if isinstance(way, Route) and len(way.points) > 1
    ]
    return placed_picture(lines, Placement(0, Point(-board.position.x, -board.position.y)))


def channel_ring(channel: Channel) -> tuple[Point, ...]:
    """Return the outline of a channel round its centre line."""
    left = beside_line(channel.line, channel.width / 2)
    return (*beside_line(channel.line, -channel.width / 2), *reversed(left))


def channel_lines(plan: Plan, board: Board) -> Iterator[Mark]:
    """Yield the outline and the centre line of every channel."""
    for channel in plan.channels.values():
        if channel.board == board.id:
            yield Line(channel_ring(channel), "quiet", THIN, closed=True)
            yield Line(channel.line, "line", THIN, (8, 2, 1, 2))


def keep_clear_lines(units: Iterable[Placed]) -> Iterator[Mark]:
    """Yield the edges of what units want kept clear, dotted."""
    for unit in units:
        for zone in unit.zones:
            yield Line(zone.ring, "line", 0.25, (0.25, 1.6), closed=True)


def unit_lines(units: Iterable[Placed]) -> Iterator[Mark]:
    """Yield the outlines of units and their terminals as small squares."""
    for unit in units:
        yield Line(unit.outline, "quiet", 0.25, closed=True)
        for terminal in unit.terminals.values():
            yield Area((Box(*terminal.position, *terminal.position).grown(1.1).corners(),), "paper", "quiet", THIN)


def sheet_edges(board: Board) -> Iterator[Mark]:
    """Yield the edges of the bare sheet and of its cut-outs."""
    yield Line(board.outline, "ink", 0.35, closed=True)
    for cutout in board.cutouts:
        yield Line(cutout, "ink", 0.35, closed=True)
