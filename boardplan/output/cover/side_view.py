"""Side view: how far everything stands out from the wall, at the scale of the front view and level with it."""

from dataclasses import dataclass

from boardplan.drawing.picture import Area, Line, Mark, Picture
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.placed import Placed, placed
from boardplan.model.plan import Plan
from boardplan.output.cover.soft_picture import stage_of
from boardplan.output.drawn.dimensions import dimension_text, linear_level
from boardplan.output.drawn.scale import Scaled
from boardplan.output.printing.lettering import Measure

BELOW = 15.0
"""Room for its dimensions below the board, in mm of the page."""
_TEXT_ROOM = 2.0


@dataclass(frozen=True, slots=True)
class Depths:
    """What a side view shows, in mm: the gap behind a board (none if unknown), its thickness, its deepest units."""

    stand_off: float | None
    thickness: float
    in_shop: float
    finished: float

    @property
    def behind(self) -> float:
        """How much is behind the back of the board, as far as anybody knows."""
        return self.stand_off or 0.0


def depths_of(plan: Plan, board: Board) -> Depths:
    """Return how deep a board is, before and after what is mounted on site."""
    units = [each for each in plan.components.values() if each.board == board.id]
    deep = {each.id: plan.kind_of(each).depth for each in units}
    in_shop = [deep[each.id] for each in units if stage_of(plan, each) == "shop"]
    return Depths(board.stand_off, board.thickness, max(in_shop, default=0.0), max(deep.values(), default=0.0))


def side_width(depths: Depths, by: float) -> float:
    """Return how much room a side view takes across, with its dimensions, in mm of the page."""
    return (depths.behind + depths.thickness + depths.finished) / by + _TEXT_ROOM


def side_view(plan: Plan, board: Board, drawing: Scaled, left: float, measure: Measure) -> Picture:
    """Return a board seen from its right, the wall on the left at `left` on the page."""
    depths = depths_of(plan, board)
    box = board.box.moved(*board.position)
    low, high = drawing.point((0, box.bottom)).y, drawing.point((0, box.top)).y
    back = left + depths.behind / drawing.by
    face = back + depths.thickness / drawing.by
    marks: list[Mark] = []
    if depths.stand_off is not None:
        marks.append(Line((Point(left, low - 4), Point(left, high + 4)), "quiet", 0.35, (3, 1.2)))
    marks.append(Area((Box(back, low, face, high).corners(),), "#D9D4C7", "ink", 0.3))
    units = [placed(plan, each) for each in plan.components.values() if each.board == board.id]
    for unit in sorted(units, key=lambda each: -each.kind.depth):
        marks += _unit(plan, unit, board, drawing, face)
    marks += _dimensions(plan, depths, drawing, (left, back, face, low), measure)
    return tuple(marks)


def _unit(plan: Plan, unit: Placed, board: Board, drawing: Scaled, face: float) -> Picture:
    box = unit.box.moved(*board.position)
    low, high = drawing.point((0, box.bottom)).y, drawing.point((0, box.top)).y
    ring = Box(face, low, face + unit.kind.depth / drawing.by, high).corners()
    if stage_of(plan, unit.component) == "site":
        return Area((ring,), "#FFFFFF", opacity=0.6), Line(ring, "ink", 0.3, (2.2, 1.3), closed=True)
    return Area((ring,), "#C9C6C0", opacity=0.75), Line(ring, "ink", 0.18, closed=True)


def _dimensions(
    plan: Plan, depths: Depths, drawing: Scaled, at: tuple[float, float, float, float], measure: Measure
) -> Picture:
    left, back, face, low = at
    units = plan.job.units
    marks: list[Mark] = []
    carried = depths.thickness + depths.in_shop
    whole = depths.behind + depths.thickness + depths.finished
    if depths.in_shop:
        end = Point(face + depths.in_shop / drawing.by, low)
        marks += linear_level(Point(back, low), end, low - 5, dimension_text(carried, units), measure)
    if whole > carried or not depths.in_shop:
        end = Point(face + depths.finished / drawing.by, low)
        start = Point(left if depths.stand_off else back, low)
        marks += linear_level(start, end, low - 10, dimension_text(whole, units), measure)
    return tuple(marks)
