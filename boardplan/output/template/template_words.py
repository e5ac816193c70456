"""Template words: numbers of holes, names of terminals and units, dimensions to check a pattern by."""

from collections.abc import Iterator, Sequence

from boardplan.drawing.picture import Area, Line, Picture
from boardplan.geometry.point import Box, Point
from boardplan.model.fastener import Fastener
from boardplan.model.hole_pattern import pattern_dimensions
from boardplan.model.holes import Hole
from boardplan.model.job import Units
from boardplan.model.placed import Placed, PlacedTerminal
from boardplan.model.plan import Plan
from boardplan.output.holes.datum import pitch_text
from boardplan.output.holes.drills import nearest_inch_drill
from boardplan.output.holes.hole_mark import ARM, mark_reach
from boardplan.output.holes.hole_words import depth_text
from boardplan.output.printing.lettering import FINE, LARGE, PLAIN, TITLE, TextLine
from boardplan.output.template.free_places import WORDS, common_box, places_within
from boardplan.output.template.word_block import Block, Inscription, block_of
from boardplan.output.template.word_desk import WordDesk
from boardplan.output.template.word_places import round_a_hole, round_a_point

_BIG = 120.0
"""A unit at least as wide and high as this has its name in large type, in mm."""
_LEAST_ROOM = 24.0
"""A unit that shows less than this on a sheet is not named on it, in mm."""


def hole_inscription(plan: Plan, hole: Hole, desk: WordDesk, more: Sequence[TextLine] = ()) -> Inscription:
    """Return the number, bit, depth and fastener of a hole and more lines, with a leader where they stand far off."""
    bit = "Ø ?" if hole.bit is None else f"Ø {hole.bit:.1f} ({nearest_inch_drill(hole.bit).words})"
    lines: list[TextLine] = [_number_line(hole), (f"{bit}  {depth_text(hole)}", FINE, False, "ink")]
    fastener = hole.fastener or {"fixing": "board fixing", "exit": "exit"}.get(hole.sort, "")
    if fastener:
        lines.append((fastener, FINE, False, "ink"))
    lines += more
    return _beside_hole(hole, desk.block(*lines), desk, plan.fasteners.get(hole.fastener))


def hole_number(plan: Plan, hole: Hole, desk: WordDesk) -> Inscription:
    """Return only the number of a hole, for a second sheet that shows its mark too."""
    return _beside_hole(hole, desk.block(_number_line(hole)), desk, plan.fasteners.get(hole.fastener))


def _number_line(hole: Hole) -> TextLine:
    site = "  SITE" if hole.stage == "site" else ""
    return f"{hole.id}{site}", PLAIN, True, "ink"


def _beside_hole(hole: Hole, block: Block, desk: WordDesk, fastener: Fastener | None) -> Inscription:
    at, reach = hole.position, mark_reach(hole, fastener)
    box = desk.beside(round_a_hole(at, block, reach), at)
    near = Point(min(max(at.x, box.left), box.right), min(max(at.y, box.bottom), box.top))
    leader: Picture = ()
    if near.distance_to(at) > reach + ARM:
        share = (reach + 1) / near.distance_to(at)
        start = Point(at.x + (near.x - at.x) * share, at.y + (near.y - at.y) * share)
        leader = (Line((start, near), "ink", 0.12),)
    return block.at(box, leader, hole.id)


def terminal_inscription(terminal: PlacedTerminal, desk: WordDesk) -> Inscription:
    """Return the name of a terminal and its pole, where the name does not say it."""
    own = terminal.terminal
    pole = "" if own.pole == "signal" or own.pole in own.id else f" {own.pole}"
    block = desk.block((f"{own.id}{pole}", FINE, False, "quiet"))
    return block.at(desk.beside(round_a_point(terminal.position, block, 1.9), terminal.position))


def unit_inscriptions(unit: Placed, units: Units, desk: WordDesk) -> Iterator[Inscription]:
    """Yield a unit's name once on each sheet that shows enough of it, all else about it on the first."""
    rooms = [room for rect in desk.own if (room := common_box(unit.box.grown(-1), rect)) and _roomy(room, unit.box)]
    rooms.sort(key=lambda room: -room.width * room.height)
    block = _unit_block(unit, _unit_lines(unit, units), desk)
    for room in rooms or [unit.box]:
        box = _in_room(room, block, desk)
        desk.places.take(box, WORDS)
        yield block.at(box)
        block = _unit_block(unit, [], desk)


def _roomy(room: Box, whole: Box) -> bool:
    return room.width >= min(_LEAST_ROOM, whole.width - 4) and room.height >= min(_LEAST_ROOM, whole.height - 4)


def _in_room(room: Box, block: Block, desk: WordDesk) -> Box:
    """Return the best place for a block in a room, near its middle; over its middle where it is too small."""
    middle = room.centre
    step = max(3.0, min(room.width, room.height) / 12)
    spots = places_within(room, block.width, block.height, step)
    found = desk.places.best((box, 0.05 * box.centre.distance_to(middle)) for box in spots)
    if found:
        return found[0]
    left, bottom = middle.x - block.width / 2, middle.y - block.height / 2
    return Box(left, bottom, left + block.width, bottom + block.height)


def _unit_block(unit: Placed, more: Sequence[TextLine], desk: WordDesk) -> Block:
    size = TITLE if min(unit.box.width, unit.box.height) >= _BIG else LARGE
    name = f"{unit.component.id} {unit.component.label}".strip()
    block = block_of([(name, size, True, "ink"), *more], desk.measure, indent=5.0)
    towards = unit.placement.direction(90)
    tail = Point(1.9, block.height - size / 2).ahead(towards + 180, 2.0)
    return Block(block.width, block.height, (*block.marks, *arrow(tail, towards, 4.0, "ink")))


def _unit_lines(unit: Placed, units: Units) -> list[TextLine]:
    lines: list[TextLine] = [(unit.kind.name, FINE, False, "quiet")]
    lines += [(words, FINE, False, "ink") for words in pattern_checks(unit, units)]
    if unit.kind.non_combustible_backing:
        lines.append(("non-combustible pad, no fabric here", FINE, True, "ink"))
    return lines


def pattern_checks(unit: Placed, units: Units) -> Iterator[str]:
    """Yield the dimensions of a unit's pattern, to compare with the unit in the hand."""
    pattern = pattern_dimensions(unit)
    if pattern is None:
        return
    if pattern.pitch_x < 0.05 or pattern.pitch_y < 0.05:  # noqa: PLR2004 - a row of holes
        yield f"check pitch {pitch_text(pattern.diagonal, units)}"
        return
    yield f"check {pitch_text(pattern.pitch_x, units)} x {pitch_text(pattern.pitch_y, units)}"
    yield f"diagonal {pitch_text(pattern.diagonal, units)}"


def arrow(at: Point, towards: float, length: float, ink: str) -> Picture:
    """Return an arrow from a point in a direction."""
    tip = at.ahead(towards, length)
    head = (tip, tip.ahead(towards + 155, 1.9), tip.ahead(towards + 205, 1.9))
    return Line((at, tip.ahead(towards + 180, 1.2)), ink, 0.3), Area((head,), ink)
