"""Template words: names, numbers and check dimensions on a template, where they cover nothing that matters."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board
from boardplan.model.holes import Hole
from boardplan.model.placed import Placed, PlacedTerminal
from boardplan.model.plan import Plan
from boardplan.output.datum import datum_point, directions, edge_words, pitch_text
from boardplan.output.free_places import TERMINAL, WORDS, FreePlaces, common_box, places_within
from boardplan.output.hole_mark import ARM, mark_reach
from boardplan.output.hole_words import depth_text, nearest_drill
from boardplan.output.lettering import FINE, LARGE, PLAIN, TITLE, Measure, TextLine, text_box
from boardplan.output.word_block import Block, block_of
from boardplan.output.word_places import outside, round_a_hole, round_a_point, steps

_OFF_SHEET = 12.0
_BIG = 120.0
"""A unit at least as wide and high as this has its name in large type, in mm."""
_LEAST_ROOM = 24.0
"""A unit that shows less than this on a sheet is not named on it, in mm."""


def words_of(writer: "Writer", units: Sequence[Placed], holes: Sequence[Hole]) -> Picture:
    """Return all words of a template, the most needed first, each where it is free."""
    places = writer.places
    for unit in units:
        for terminal in unit.terminals.values():
            places.take(Box(*terminal.position, *terminal.position).grown(1.3), TERMINAL)
    hole_words = [mark for hole in holes for mark in writer.hole(hole)]
    terminal_words = [mark for unit in units for each in unit.terminals.values() for mark in writer.terminal(each)]
    unit_words = [mark for unit in units for mark in writer.unit(unit)]
    other = [*writer.channels(), *writer.behind(), *writer.edges(), *writer.exits()]
    return (*other, *unit_words, *terminal_words, *hole_words)


@dataclass(frozen=True, slots=True)
class Writer:
    """Puts words on a board cut in sheets."""

    plan: Plan
    board: Board
    rects: tuple[Box, ...]
    own: tuple[Box, ...]
    places: FreePlaces
    measure: Measure

    def hole(self, hole: Hole) -> Iterator[Mark]:
        """Yield the number, bit, depth and fastener of a hole, with a leader where it stands far off."""
        bit = "Ø ?" if hole.bit is None else f"Ø {hole.bit:.1f} ({nearest_drill(hole.bit)})"
        site = "  SITE" if hole.stage == "site" else ""
        lines = [(f"{hole.id}{site}", PLAIN, True, "ink"), (f"{bit}  {depth_text(hole)}", FINE, False, "ink")]
        fastener = hole.fastener or {"fixing": "board fixing", "exit": "exit"}.get(hole.sort, "")
        if fastener:
            lines.append((fastener, FINE, False, "ink"))
        block = self._block(*lines)
        reach = mark_reach(hole, self.plan.fasteners.get(hole.fastener))
        box = self._put(round_a_hole(hole.position, block, reach), hole.position)
        middle = box.centre
        near = Point(min(max(hole.position.x, box.left), box.right), min(max(hole.position.y, box.bottom), box.top))
        if near.distance_to(hole.position) > reach + ARM:
            way = Point(near.x - hole.position.x, near.y - hole.position.y)
            share = (reach + 1) / math.hypot(*way)
            start = Point(hole.position.x + way.x * share, hole.position.y + way.y * share)
            yield Line((start, near if near != middle else middle), "ink", 0.12)
        yield from block.at(box)

    def terminal(self, terminal: PlacedTerminal) -> Iterator[Mark]:
        """Yield the name of a terminal and its pole, where the name does not say it."""
        own = terminal.terminal
        pole = "" if own.pole == "signal" or own.pole in own.id else f" {own.pole}"
        block = self._block((f"{own.id}{pole}", FINE, False, "quiet"))
        box = self._put(round_a_point(terminal.position, block, 1.9), terminal.position)
        yield from block.at(box)

    def unit(self, unit: Placed) -> Iterator[Mark]:
        """Yield a unit's name once on each sheet that shows enough of it, all else of it on one."""
        rooms = [room for rect in self.own if (room := common_box(unit.box.grown(-1), rect)) and _roomy(room, unit.box)]
        rooms.sort(key=lambda room: -room.width * room.height)
        block = self._unit_block(unit, full=True)
        for room in rooms or [unit.box]:
            step = max(3.0, min(room.width, room.height) / 12)
            middle = room.centre
            candidates = (
                (box, 0.05 * box.centre.distance_to(middle))
                for box in places_within(room, block.width, block.height, step)
            )
            found = self.places.best(candidates)
            if found is None:
                box = Box(middle.x, middle.y, middle.x, middle.y)
                found = (
                    Box(
                        box.left - block.width / 2,
                        box.bottom - block.height / 2,
                        box.left + block.width / 2,
                        box.bottom + block.height / 2,
                    ),
                    0.0,
                )
            self.places.take(found[0], WORDS)
            yield from block.at(found[0])
            block = self._unit_block(unit, full=False)

    def _unit_block(self, unit: Placed, *, full: bool) -> Block:
        kind = unit.kind
        name = f"{unit.component.id} {unit.component.label}".strip()
        size = TITLE if min(unit.box.width, unit.box.height) >= _BIG else LARGE
        lines = [(name, size, True, "ink")]
        if full:
            lines.append((kind.name, FINE, False, "quiet"))
            lines += [(words, FINE, False, "ink") for words in self._checks(unit)]
            if kind.non_combustible_backing:
                lines.append(("non-combustible pad, no fabric here", FINE, True, "ink"))
        block = block_of(lines, self.measure, indent=5.0)
        up = _up_mark(Point(1.9, block.height - size / 2), unit.placement.direction(90))
        return Block(block.width, block.height, (*block.marks, *up))

    def _checks(self, unit: Placed) -> Iterator[str]:
        """Yield the dimensions of a pattern, to compare with the unit in the hand."""
        if len(unit.holes) < 2:  # noqa: PLR2004 - one hole has no pitch
            return
        box = box_around(point for _, point in unit.holes)
        units = self.plan.job.units
        if box.width < 0.05 or box.height < 0.05:  # noqa: PLR2004 - a row of holes
            yield f"check pitch {pitch_text(max(box.width, box.height), units)}"
            return
        yield f"check {pitch_text(box.width, units)} x {pitch_text(box.height, units)}"
        yield f"diagonal {pitch_text(math.hypot(box.width, box.height), units)}"

    def channels(self) -> Iterator[Mark]:
        """Yield the name, size and cut of each channel."""
        for channel in self.plan.channels.values():
            if channel.board != self.board.id:
                continue
            room = box_around(channel.line).grown(channel.width / 2 - 2)
            size = f"{channel.width:g} x {channel.height:g}"
            cover = "cover comes off to the front" if channel.cover else "no cover"
            block = self._block((f"{channel.id}  channel {size}", PLAIN, True, "ink"), (cover, FINE, False, "quiet"))
            yield from self._in_rooms(block, room)

    def behind(self) -> Iterator[Mark]:
        """Yield the names of framing, back parts, no-go boxes and cut-outs."""
        for member in self.plan.framing.values():
            if member.board == self.board.id:
                yield from self._along_member(
                    member.centre, f"{member.id}: {member.material}".rstrip(": "), member.direction
                )
        for part in self.plan.back_parts.values():
            if part.board == self.board.id:
                yield from self._in_rooms(
                    self._block((f"behind: {part.name}", FINE, False, "quiet")), box_around(part.outline)
                )
        for room in self.plan.no_go_boxes.values():
            if room.board == self.board.id and common_box(room.box, self.board.box):
                yield from self._in_rooms(self._block((f"no go: {room.name}", FINE, True, "ink")), room.box)
        for cutout in self.board.cutouts:
            yield from self._in_rooms(self._block(("cut-out", FINE, True, "ink")), box_around(cutout))

    def _along_member(self, centre: float, text: str, direction: str) -> Iterator[Mark]:
        """Yield a member's name along its centre line, once on each sheet that shows it."""
        wide = self.measure(text, FINE)
        sheet = self.board.box
        upright = direction == "upright"
        turn = 90.0 if upright else 0.0
        for rect in self.own:
            room = common_box(rect, sheet)
            low, high = (room.bottom, room.top) if upright and room else (room.left, room.right) if room else (0, 0)
            steps = range(int(max(0.0, high - low - wide - 8) // 6) + 1) if high - low > wide + 8 else ()
            spots = [Point(centre, low + 4 + wide / 2 + 6 * step) for step in steps]
            spots = spots if upright else [Point(spot.y, centre) for spot in spots]
            words = [Words(spot, text, FINE, "quiet", turn=turn) for spot in spots if room and room.holds(spot)]
            boxes = [(text_box(each, self.measure).grown(0.5), 0.02 * index) for index, each in enumerate(words)]
            found = self.places.best(boxes)
            if found and found[1] < 2 * WORDS:
                self.places.take(found[0], WORDS)
                spot = words[[box for box, _ in boxes].index(found[0])]
                yield Area((found[0].corners(),), "paper", opacity=0.85)
                yield spot

    def edges(self) -> Iterator[Mark]:
        """Yield the words along the two datum edges, inside the board."""
        origin, towards, box = datum_point(self.board), directions(self.board), self.board.box
        words = edge_words(self.board)
        level = self._block((f"A  datum, {words}", PLAIN, True, "ink"))
        upright = self._block((f"B  datum, {words}", PLAIN, True, "ink"))
        for rect in self.own:
            room = common_box(rect, box)
            if room is None:
                continue
            if room.bottom <= origin.y + 1 if towards.y > 0 else room.top >= origin.y - 1:
                y = box.bottom + 1.2 if towards.y > 0 else box.top - 1.2 - level.height
                spots = [
                    Box(x, y, x + level.width, y + level.height)
                    for x in steps(room.left + 8, room.right - level.width - 8)
                ]
                yield from self._first(level, spots)
            if room.left <= origin.x + 1 if towards.x > 0 else room.right >= origin.x - 1:
                x = box.left + 1.2 if towards.x > 0 else box.right - 1.2 - upright.height
                yield from self._up(upright, x, room)

    def _up(self, block: Block, x: float, room: Box) -> Iterator[Mark]:
        lows = steps(room.bottom + 14, room.top - block.width - 8)
        spots = [Box(x, y, x + block.height, y + block.width) for y in lows]
        found = self.places.best((box, 0.01 * index) for index, box in enumerate(spots))
        if found and found[1] < WORDS:
            self.places.take(found[0], WORDS)
            yield from placed_picture(block.marks, Placement(90, Point(found[0].right, found[0].bottom)))

    def exits(self) -> Iterator[Mark]:
        """Yield the name of each exit beside it, with a small arrow out of the board where it is at an edge."""
        for exit_ in self.plan.exits.values():
            if exit_.board != self.board.id or exit_.through == "hole":
                continue
            block = self._block((f"{exit_.id}  exit: {exit_.name}", FINE, False, "quiet"))
            out = _way_out(self.board.box, exit_.position)
            yield from _arrow(exit_.position.ahead(out + 180, 4.5), out, 4.0, "quiet")
            inner = exit_.position.ahead(out + 180, 6)
            yield from block.at(self._put(round_a_point(inner, block, 1.5), inner))

    def _in_rooms(self, block: Block, room: Box) -> Iterator[Mark]:
        for rect in self.own:
            shown = common_box(room, rect)
            if shown and shown.width > block.width and shown.height > block.height:
                middle = shown.centre
                spots = places_within(shown, block.width, block.height, 4.0)
                ordered = sorted(spots, key=lambda box: box.centre.distance_to(middle))
                yield from self._first(block, ordered)

    def _first(self, block: Block, spots: Iterable[Box]) -> Iterator[Mark]:
        found = self.places.best((box, 0.01 * index) for index, box in enumerate(spots))
        if found and found[1] < WORDS:
            self.places.take(found[0], WORDS)
            yield from block.at(found[0])

    def _put(self, candidates: Iterable[tuple[Box, float]], of: Point) -> Box:
        """Return the best place for a block whose meaning lies at a point, on a sheet that shows both."""
        shown = [rect for rect in self.own if rect.holds(of)] or [rect for rect in self.rects if rect.holds(of)]
        rects = [rect.grown(-1) for rect in shown] or list(self.rects)

        def judged() -> Iterator[tuple[Box, float]]:
            for box, own in candidates:
                off = min(outside(box, rect) for rect in rects)
                yield box, own + _OFF_SHEET * off

        found = self.places.best(judged())
        if found is None:
            raise ValueError("no candidates were given")
        self.places.take(found[0], WORDS)
        return found[0]

    def _block(self, *lines: TextLine) -> Block:
        return block_of(lines, self.measure)


def _roomy(room: Box, whole: Box) -> bool:
    return room.width >= min(_LEAST_ROOM, whole.width - 4) and room.height >= min(_LEAST_ROOM, whole.height - 4)


def _up_mark(at: Point, towards: float) -> Picture:
    return _arrow(at.ahead(towards + 180, 2.0), towards, 4.0, "ink")


def _arrow(at: Point, towards: float, length: float, ink: str) -> Picture:
    """Return an arrow from a point in a direction."""
    tip = at.ahead(towards, length)
    head = (tip, tip.ahead(towards + 155, 1.9), tip.ahead(towards + 205, 1.9))
    return Line((at, tip.ahead(towards + 180, 1.2)), ink, 0.3), Area((head,), ink)


def _way_out(box: Box, at: Point) -> float:
    """Return which way the nearest edge lies: 0 right, 90 top, 180 left, 270 bottom."""
    gaps = {0.0: box.right - at.x, 90.0: box.top - at.y, 180.0: at.x - box.left, 270.0: at.y - box.bottom}
    return min(gaps, key=lambda way: abs(gaps[way]))
