"""Board words: the datum edges, channels, exits and what is behind the board, named on every sheet that shows them."""

from collections.abc import Iterator

from boardplan.drawing.picture import Area, Words
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board, Framing
from boardplan.model.plan import Plan
from boardplan.output.holes.datum import datum_point, directions, edge_words
from boardplan.output.printing.lettering import FINE, PLAIN, text_box
from boardplan.output.template.free_places import common_box
from boardplan.output.template.template_words import arrow
from boardplan.output.template.word_block import Inscription
from boardplan.output.template.word_desk import WordDesk
from boardplan.output.template.word_places import round_a_point, steps


def board_inscriptions(plan: Plan, board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield all names that belong to the board itself."""
    yield from _channels(plan, board, desk)
    yield from _framing(plan, board, desk)
    yield from _rooms(plan, board, desk)
    yield from edge_names(board, desk)
    yield from _exits(plan, board, desk)


def edge_names(board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield the words along both datum edges."""
    yield from _edge_a(board, desk)
    yield from _edge_b(board, desk)


def _channels(plan: Plan, board: Board, desk: WordDesk) -> Iterator[Inscription]:
    for channel in plan.channels.values():
        if channel.board == board.id:
            room = box_around(channel.line).grown(channel.width / 2 - 2)
            size = f"{channel.id}  channel {channel.width:g} x {channel.height:g}"
            cover = "cover comes off to the front" if channel.cover else "no cover"
            block = desk.block((size, PLAIN, True, "ink"), (cover, FINE, False, "quiet"))
            yield from desk.within(block, room)


def _framing(plan: Plan, board: Board, desk: WordDesk) -> Iterator[Inscription]:
    for member in plan.framing.values():
        if member.board == board.id:
            yield from member_names(board, member, desk)


def member_names(board: Board, member: Framing, desk: WordDesk) -> Iterator[Inscription]:
    """Yield a member's name once on each sheet that shows enough of it."""
    for rect in desk.own:
        room = common_box(rect, board.box)
        if room:
            yield from _along(member, room, desk)


def _along(member: Framing, room: Box, desk: WordDesk) -> Iterator[Inscription]:
    """Yield a member's name along its centre line, where a sheet shows enough of it."""
    text = f"{member.id}: {member.material}".rstrip(": ")
    upright = member.direction == "upright"
    half = desk.measure(text, FINE) / 2 + 4
    low, high = (room.bottom, room.top) if upright else (room.left, room.right)
    for along in steps(low + half, high - half, 6.0):
        at = Point(member.centre, along) if upright else Point(along, member.centre)
        words = Words(at, text, FINE, "quiet", turn=90.0 if upright else 0.0)
        box = text_box(words, desk.measure).grown(0.5)
        if room.holds(at) and desk.first([box]):
            yield Inscription(box, (Area((box.corners(),), "paper", opacity=0.85), words))
            return


def _rooms(plan: Plan, board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield the names of back parts, no-go boxes and cut-outs."""
    for part in plan.back_parts.values():
        if part.board == board.id:
            yield from desk.within(desk.block((f"behind: {part.name}", FINE, False, "quiet")), box_around(part.outline))
    for room in plan.no_go_boxes.values():
        shown = common_box(room.box, board.box) if room.board == board.id else None
        if shown:
            yield from desk.within(desk.block((f"no go: {room.name}", FINE, True, "ink")), shown)
    for cutout in board.cutouts:
        yield from desk.within(desk.block(("cut-out", FINE, True, "ink")), box_around(cutout))


def _edge_a(board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield the words along the level datum edge, inside the board, on each sheet that shows it."""
    block = desk.block((f"A  datum, {edge_words(board)}", PLAIN, True, "ink"))
    up, box = directions(board).y > 0, board.box
    for rect in desk.own:
        room = common_box(rect, box)
        if room and rect.grown(1).holds((room.centre.x, datum_point(board).y)):
            low = box.bottom + 1.2 if up else box.top - 1.2 - block.height
            lefts = steps(room.left + 8, room.right - block.width - 8)
            place = desk.first(Box(left, low, left + block.width, low + block.height) for left in lefts)
            if place:
                yield block.at(place)


def _edge_b(board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield the words along the upright datum edge, to be read from the right."""
    block = desk.block((f"B  datum, {edge_words(board)}", PLAIN, True, "ink"))
    right, box = directions(board).x > 0, board.box
    for rect in desk.own:
        room = common_box(rect, box)
        if room and rect.grown(1).holds((datum_point(board).x, room.centre.y)):
            left = box.left + 1.2 if right else box.right - 1.2 - block.height
            lows = steps(room.bottom + 14, room.top - block.width - 8)
            place = desk.first(Box(left, low, left + block.height, low + block.width) for low in lows)
            if place:
                yield block.upright_at(place)


def _exits(plan: Plan, board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield the name of each exit over an edge, with a small arrow out of the board."""
    for exit_ in plan.exits.values():
        if exit_.board == board.id and exit_.through == "edge":
            block = desk.block((f"{exit_.id}  exit: {exit_.name}", FINE, False, "quiet"))
            out = _way_out(board.box, exit_.position)
            inner = exit_.position.ahead(out + 180, 6)
            box = desk.beside(round_a_point(inner, block, 1.5), inner)
            yield block.at(box, arrow(exit_.position.ahead(out + 180, 4.5), out, 4.0, "quiet"))


def _way_out(box: Box, at: Point) -> float:
    """Return which way the nearest edge lies: 0 right, 90 top, 180 left, 270 bottom."""
    gaps = {0.0: box.right - at.x, 90.0: box.top - at.y, 180.0: at.x - box.left, 270.0: at.y - box.bottom}
    return min(gaps, key=lambda way: abs(gaps[way]))
