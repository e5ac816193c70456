"""Blocking view: the wall behind a board from the front, dimensioned from the corner that the survey was taken from."""

from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.drawing.hatching import hatch
from boardplan.drawing.picture import Area, Disc, Line, Mark, Picture, Words
from boardplan.drawing.wall_picture import framing_box
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board, Framing
from boardplan.model.plan import Plan
from boardplan.output.customer.blocking import (
    Piece,
    blocking_of,
    from_corner,
    held_fixings,
    members_of,
    stations_of,
    survey_corner,
)
from boardplan.output.drawn.dimensions import (
    Station,
    dimension_text,
    running_depth,
    running_level,
    running_upright,
)
from boardplan.output.drawn.fixing_sign import fixing_sign
from boardplan.output.drawn.scale import Scaled, scale_bar
from boardplan.output.printing.lettering import FINE, Measure
from boardplan.output.template.free_places import MARK, WORDS, FreePlaces

_AWAY, _OTHER, _BAR = 6.0, 11.0, 7.0
_PAST = 5.0
NOTE = "#E9E9E9"
"""The tint of a member."""


@dataclass(frozen=True)
class BlockingView:
    """A board's wall, to be drawn at a scale."""

    plan: Plan
    board: Board
    measure: Measure

    @property
    def box(self) -> Box:
        """The board and the corner dimensions run from."""
        return box_around([*self.board.box.corners(), survey_corner(self.board)])

    def _values(self) -> tuple[list[Station], list[Station]]:
        units, (across, up) = self.plan.job.units, stations_of(self.plan, self.board)
        return (
            [Station(at, dimension_text(from_corner(self.board, at).x, units)) for at in across],
            [Station(at, dimension_text(from_corner(self.board, at).y, units)) for at in up],
        )

    def margins(self) -> tuple[float, float, float, float]:
        """Return the room round the drawing for dimensions and names, in mm: left, bottom, right, top."""
        across, up = self._values()
        beside, below = running_depth(up, self.measure) + _AWAY, running_depth(across, self.measure) + _AWAY
        corner = self.board.datum.corner
        left, right = (beside, _OTHER) if "left" in corner else (_OTHER, beside)
        bottom, top = (below, _OTHER) if "lower" in corner else (_OTHER, below)
        return left, bottom + _BAR, right, top

    def size(self, by: float) -> tuple[float, float]:
        """Return how large the drawing is at a scale, in mm of the page."""
        left, bottom, right, top = self.margins()
        return self.box.width / by + left + right, self.box.height / by + bottom + top

    def picture(self, by: float, upper_left: Point) -> Picture:
        """Return the drawing, its upper left at a point of the page."""
        left, bottom, _, top = self.margins()
        box = self.box
        at = Point(upper_left.x + left, upper_left.y - top - box.height / by)
        drawing = Scaled(by, at, Point(box.left, box.bottom))
        bar = scale_bar(Point(at.x, at.y - bottom + 1.5), by, self.plan.job.units)
        return (*self._wall(drawing), *self._measures(drawing), *bar)

    def _wall(self, drawing: Scaled) -> Iterator[Mark]:
        places = FreePlaces()
        board = drawing.box(self.board.box)
        held = held_fixings(self.plan, self.board)
        for each in held:
            at = drawing.point(each.fixing.position)
            places.take(Box(*at, *at).grown(1.6), MARK)
        for member in members_of(self.plan, self.board):
            yield from self._member(member, drawing, board, places)
        for number, piece in enumerate(blocking_of(self.plan, self.board), start=1):
            yield from self._piece(piece, number, drawing, places)
        for ring in (self.board.outline, *self.board.cutouts):
            yield Line(tuple(drawing.point(each) for each in ring), "ink", 0.45, (5.0, 1.6), closed=True)
        yield from self._corner(drawing)
        for each in held:
            yield from fixing_sign(drawing.point(each.fixing.position), misses=each.misses)
        for each in held:
            at = drawing.point(each.fixing.position)
            yield from self._name(each.fixing.id, at, places, bold=each.misses)
        yield from self._exits(drawing, places)

    def _member(self, member: Framing, drawing: Scaled, board: Box, places: FreePlaces) -> Iterator[Mark]:
        own, shown = drawing.box(framing_box(member, self.board)), board.grown(_PAST)
        box = Box(
            max(own.left, shown.left),
            max(own.bottom, shown.bottom),
            min(own.right, shown.right),
            min(own.top, shown.top),
        )
        if box.width <= 0 or box.height <= 0:
            return
        yield Area((box.corners(),), NOTE)
        yield Line(box.corners(), "quiet", 0.2, closed=True)
        upright = member.direction == "upright"
        centre = drawing.point((member.centre, member.centre))
        ends = (
            (Point(centre.x, box.bottom - 1), Point(centre.x, box.top + 1))
            if upright
            else (Point(box.left - 1, centre.y), Point(box.right + 1, centre.y))
        )
        yield Line(ends, "quiet", 0.13, (4, 0.8, 0.6, 0.8))
        wide = self.measure(member.id, FINE)
        at = Point(min(max(centre.x, board.left + wide / 2 - 4), board.right - wide / 2 + 4), box.top + 2.4)
        if not upright:
            at = Point(board.right - wide / 2 - 2, centre.y)
        places.take(Box(at.x - wide / 2, at.y - 1, at.x + wide / 2, at.y + 1), WORDS)
        yield Words(at, member.id, FINE, "ink")

    def _piece(self, piece: Piece, number: int, drawing: Scaled, places: FreePlaces) -> Iterator[Mark]:
        """Yield the place of blocking: from member to member, as high as they are wide, in dashes."""
        box = self.board.box
        left = piece.left.centre + piece.left.width / 2 if piece.left else box.left
        right = piece.right.centre - piece.right.width / 2 if piece.right else box.right
        high = max((each.width for each in (piece.left, piece.right) if each), default=40.0)
        ring = drawing.box(Box(left, piece.level - high / 2, right, piece.level + high / 2)).corners()
        yield Area((ring,), "paper")
        for a, b in hatch([ring], 45, 2.2):
            yield Line((a, b), "ink", 0.1)
        yield Line(ring, "ink", 0.5, (2.4, 1.2), closed=True)
        low, across, middle = ring[0], ring[1].x - ring[0].x, (ring[0].y + ring[2].y) / 2
        spots = [Point(low.x + across * share, middle) for share in (0.5, 0.25, 0.75, 0.12, 0.88)]
        found = places.best((Box(*at, *at).grown(2.2), 0.1 * index) for index, at in enumerate(spots))
        if found:
            places.take(found[0], WORDS)
            yield Area((found[0].corners(),), "paper", "ink", 0.13)
            yield Words(found[0].centre, f"B{number}", FINE, "ink", bold=True)

    def _name(self, name: str, at: Point, places: FreePlaces, *, bold: bool) -> Iterator[Mark]:
        wide = self.measure(name, FINE, bold=bold)
        offsets = [(x * (1.9 + wide / 2), y * 2.6) for x, y in ((1, 0), (-1, 0), (1, 1), (1, -1), (-1, 1), (-1, -1))]
        offsets += [(0, 2.9), (0, -2.9)]
        spots = [at.moved(*each) for each in offsets]
        boxes = [Box(each.x - wide / 2 - 0.3, each.y - 1.2, each.x + wide / 2 + 0.3, each.y + 1.2) for each in spots]
        found = places.best((box, 0.1 * index) for index, box in enumerate(boxes))
        if found:
            places.take(found[0], WORDS)
            yield Area((found[0].corners(),), "paper", opacity=0.8)
            yield Words(found[0].centre, name, FINE, "ink", bold=bold)

    def _exits(self, drawing: Scaled, places: FreePlaces) -> Iterator[Mark]:
        board = drawing.box(self.board.box)
        exits = [each for each in self.plan.exits.values() if each.board == self.board.id]
        for number, way_out in enumerate(exits, start=1):
            at = drawing.point(way_out.position)
            if way_out.through == "hole":
                radius = max(0.8, (way_out.diameter or 0) / drawing.by / 2)
                yield Disc(at, radius, "paper", "ink", 0.3, (0.8, 0.5) if way_out.diameter is None else ())
            else:
                gaps = {
                    180.0: at.x - board.left,
                    0.0: board.right - at.x,
                    270.0: at.y - board.bottom,
                    90.0: board.top - at.y,
                }
                out = min(gaps, key=lambda side: abs(gaps[side]))
                tip = at.ahead(out, 3.2)
                head = (tip, tip.ahead(out + 155, 2.2), tip.ahead(out - 155, 2.2))
                yield Line((at.ahead(out, -2), tip), "ink", 0.25)
                yield Area((head,), "ink")
                places.take(box_around([at, tip]).grown(0.8), MARK)
                at = tip.ahead(out, 0.6)
            yield from self._name(f"E{number}", at, places, bold=False)

    def _corner(self, drawing: Scaled) -> Iterator[Mark]:
        """Yield the corner that dimensions run from, hatched outside like a wall, where a compartment was surveyed."""
        if self.board.compartment is None:
            return
        at = drawing.point(survey_corner(self.board))
        x, y = (1 if "left" in self.board.datum.corner else -1), (1 if "lower" in self.board.datum.corner else -1)
        yield Line((at.moved(x * 16, 0), at, at.moved(0, y * 16)), "ink", 0.7)
        for step in range(7):
            run = 1.5 + 2.2 * step
            yield Line((at.moved(x * run, 0), at.moved(x * (run - 1.2), -y * 1.4)), "ink", 0.13)
            yield Line((at.moved(0, y * run), at.moved(-x * 1.4, y * (run - 1.2))), "ink", 0.13)

    def _measures(self, drawing: Scaled) -> Picture:
        shown, origin = drawing.box(self.box), drawing.point(survey_corner(self.board))
        corner = self.board.datum.corner
        lower, to_left = "lower" in corner, "left" in corner
        across, up = self._values()
        board = drawing.box(self.board.box)
        y, x = (
            (shown.bottom - _AWAY, shown.left - _AWAY)
            if lower and to_left
            else (
                shown.bottom - _AWAY if lower else shown.top + _AWAY,
                shown.left - _AWAY if to_left else shown.right + _AWAY,
            )
        )
        from_y, from_x = (board.bottom if lower else board.top), (board.left if to_left else board.right)
        level = [Station(Point(drawing.point(each.at).x, from_y), each.text) for each in across]
        upright = [Station(Point(from_x, drawing.point(each.at).y), each.text) for each in up]
        return (
            *running_level(origin, level, y, "below" if lower else "above"),
            *running_upright(origin, upright, x, "left" if to_left else "right"),
        )
