"""Board view: boards seen from the front at a standard scale, with references and main dimensions."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

from boardplan.checks.review import Review
from boardplan.drawing.picture import Line, Mark, Picture, placed_picture
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board
from boardplan.model.weights import weights_of
from boardplan.output.cover.reference_tags import Tags, cable_tags, component_tags, tag_picture
from boardplan.output.cover.side_view import BELOW, depths_of, side_view, side_width
from boardplan.output.cover.soft_picture import soft_picture, stage_outlines
from boardplan.output.drawn.dimensions import (
    Station,
    dimension_text,
    linear_level,
    linear_upright,
    running_depth,
    running_level,
    running_upright,
)
from boardplan.output.drawn.fixing_sign import fixing_sign
from boardplan.output.drawn.mass_mark import mass_mark
from boardplan.output.drawn.scale import Scaled, scale_bar
from boardplan.output.holes.datum import datum_point, running
from boardplan.output.printing.lettering import Measure
from boardplan.output.printing.sheet import Part
from boardplan.output.template.free_places import MARK

_OVERALL = 6.5
_LINE_AWAY = 5.0
_PAST = 3.5
"""How far what reaches past the boards is shown, in mm of the page."""
_SIDE_GAP = 3.0
_SCALE_BAR = 6.5
_TOGETHER = 2.5
"""Centres of mass no farther apart on the page, in mm, share a sign."""


@dataclass(frozen=True)
class BoardView:
    """A drawing of one board with its fixings and its side view, or of several side by side with their edges only.

    `lying` are the pictures of all things on the wall by their ids, the lowest first.
    """

    review: Review
    lying: Sequence[tuple[str, Picture]]
    boards: tuple[Board, ...]
    measure: Measure
    unnamed: list[str] = field(default_factory=list)
    unmarked: list[str] = field(default_factory=list)
    drawn: dict[tuple[float, Point], tuple[Part, ...]] = field(default_factory=dict)

    @property
    def box(self) -> Box:
        """The box round the boards on the wall."""
        corners = [each for board in self.boards for each in board.box.moved(*board.position).corners()]
        return box_around(corners)

    @property
    def alone(self) -> Board | None:
        """The board, where it is only one."""
        return self.boards[0] if len(self.boards) == 1 else None

    def margins(self, by: float) -> tuple[float, float, float, float]:
        """Return the room round the boards on the page, in mm: left, bottom, right, top."""
        beside, below = (
            running_depth(each, self.measure) + _LINE_AWAY if each else _PAST for each in reversed(self._stations())
        )
        other = _OVERALL + 3
        corner = self.alone.datum.corner if self.alone else "lower-left"
        left, right = (beside, other) if "left" in corner else (other, beside)
        bottom, top = (below, other) if "lower" in corner else (other, below)
        side = _SIDE_GAP + side_width(depths_of(self.review.plan, self.alone), by) if self.alone else 0.0
        return left, max(bottom, BELOW if self.alone else 0.0) + _SCALE_BAR, right + side, top

    def size(self, by: float) -> tuple[float, float]:
        """Return how large the drawing is at a scale, with its dimensions."""
        left, bottom, right, top = self.margins(by)
        return self.box.width / by + left + right, self.box.height / by + bottom + top

    def parts(self, by: float, upper_left: Point) -> tuple[Part, ...]:
        """Return the drawing on a page; it is made once."""
        if (by, upper_left) not in self.drawn:
            self.drawn[by, upper_left] = self._parts(by, upper_left)
        return self.drawn[by, upper_left]

    def _parts(self, by: float, upper_left: Point) -> tuple[Part, ...]:
        left, _, _, top = self.margins(by)
        box = self.box
        at = Point(upper_left.x + left, upper_left.y - top - box.height / by)
        drawing = Scaled(by, at, Point(box.left, box.bottom))
        shown = drawing.box(box)
        clip = shown.grown(_PAST)
        unscaled = Box(at.x, at.y, at.x + box.width, at.y + box.height).grown(_PAST * by)
        scaled = Part(placed_picture(self._marks, drawing.shift), unscaled, (1 / by, 1 / by), at)
        return scaled, Part((*self._lettering(drawing, clip), *self._measures(drawing, upper_left)))

    @cached_property
    def _marks(self) -> Picture:
        """All that is drawn at the scale, in wall coordinates."""
        plan = self.review.plan
        outlines = (mark for board in self.boards for mark in stage_outlines(plan, board))
        return (*soft_picture(plan, self.lying, {board.id for board in self.boards}), *outlines)

    def _lettering(self, drawing: Scaled, clip: Box) -> Picture:
        tags = Tags(drawing, self.measure, clip)
        plan = self.review.plan
        masses = self._masses(drawing)
        fixings = [each for each in plan.fixings.values() if each.board in {board.id for board in self.boards}]
        heads = [drawing.point(plan.on_wall(each.board, each.position)) for each in fixings]
        for at in (*masses, *heads):
            tags.places.take(Box(*at, *at).grown(1.6), MARK)
        for at in masses:
            tags.places.take(Box(at.x - 2, at.y - 2, at.x + 5, at.y + 3.6), MARK)
        for board in self.boards:
            component_tags(tags, plan, board)
        cable_tags(tags, plan, dict(self.review.ways), self.boards)
        self.unnamed[:] = tags.unnamed
        self.unmarked[:] = tags.unmarked
        signs = [mark for at in heads for mark in fixing_sign(at)]
        marked = [mark for at, letter in masses.items() for mark in mass_mark(at, letter)]
        return (*signs, *marked, *tag_picture(tags))

    def _masses(self, drawing: Scaled) -> dict[Point, str]:
        """Return where the centres of mass lie on the page, of what is carried and of what is finished."""
        found: dict[Point, str] = {}
        for board in self.boards:
            weights = weights_of(self.review.plan, board)
            pairs = [("F", weights.finished, weights.finished_centre), ("C", weights.carried, weights.carried_centre)]
            for letter, mass, centre in pairs:
                if mass > 0:
                    at = drawing.point(self.review.plan.on_wall(board.id, centre))
                    near = next((each for each in found if each.distance_to(at) < _TOGETHER), at)
                    found[near] = f"{letter}{found.get(near, '')}"
        return found

    def _stations(self) -> tuple[list[Station], list[Station]]:
        """Return what running dimensions lead to, on the wall, across and upwards, with the values written there."""
        units, plan = self.review.plan.job.units, self.review.plan
        board = self.alone
        if board is None:
            origin = Point(self.box.left, self.box.bottom)
            edges = [each for one in self.boards for each in one.box.moved(*one.position).corners()]
            inner = self.box.grown(-0.5)
            across = [each for each in edges if inner.left < each.x < inner.right]
            up = [each for each in edges if inner.bottom < each.y < inner.top]
            return (
                [Station(at, dimension_text(at.x - origin.x, units)) for at in across],
                [Station(at, dimension_text(at.y - origin.y, units)) for at in up],
            )
        places = [each.position for each in plan.fixings.values() if each.board == board.id]
        places += [each.position for each in plan.exits.values() if each.board == board.id and each.through == "hole"]
        pairs = [(plan.on_wall(board.id, at), running(board, at)) for at in places]
        return (
            [Station(at, dimension_text(run.x, units)) for at, run in pairs],
            [Station(at, dimension_text(run.y, units)) for at, run in pairs],
        )

    def _measures(self, drawing: Scaled, upper_left: Point) -> Picture:
        shown, units = drawing.box(self.box), self.review.plan.job.units
        corner = self.alone.datum.corner if self.alone else "lower-left"
        datum = self.review.plan.on_wall(self.alone.id, datum_point(self.alone)) if self.alone else None
        origin = drawing.point(datum or (self.box.left, self.box.bottom))
        lower, to_left = "lower" in corner, "left" in corner
        across, up = self._stations()
        y = shown.bottom - _LINE_AWAY if lower else shown.top + _LINE_AWAY
        x = shown.left - _LINE_AWAY if to_left else shown.right + _LINE_AWAY
        placed_across = [
            Station(Point(drawing.point(each.at).x, shown.bottom if lower else shown.top), each.text) for each in across
        ]
        placed_up = [
            Station(Point(shown.left if to_left else shown.right, drawing.point(each.at).y), each.text) for each in up
        ]
        marks: list[Mark] = []
        if placed_across:
            marks += running_level(origin, placed_across, y, "below" if lower else "above")
        if placed_up:
            marks += running_upright(origin, placed_up, x, "left" if to_left else "right")
        wide, high = dimension_text(self.box.width, units), dimension_text(self.box.height, units)
        level = shown.top + _OVERALL if lower else shown.bottom - _OVERALL
        upright = shown.right + _OVERALL if to_left else shown.left - _OVERALL
        top, side = (shown.top, shown.right) if lower else (shown.bottom, shown.right)
        side = shown.right if to_left else shown.left
        marks += linear_level(Point(shown.left, top), Point(shown.right, top), level, wide, self.measure)
        marks += linear_upright(Point(side, shown.bottom), Point(side, shown.top), upright, high, self.measure)
        marks += _datum_mark(origin, to_left, lower)
        if self.alone:
            right = self.margins(drawing.by)[2] - side_width(depths_of(self.review.plan, self.alone), drawing.by)
            marks += side_view(self.review.plan, self.alone, drawing, shown.right + right, self.measure)
        low = upper_left.y - self.size(drawing.by)[1] + 1.5
        marks += scale_bar(Point(shown.left, low), drawing.by, units)
        return tuple(marks)


def _datum_mark(at: Point, to_left: bool, lower: bool) -> Picture:  # noqa: FBT001 - which corner
    """Return the corner that dimensions run from: a heavy angle."""
    x, y = (1 if to_left else -1), (1 if lower else -1)
    return (Line((at.moved(x * 7, 0), at, at.moved(0, y * 7)), "ink", 0.7),)
