"""Retainer mark: one bar across a channel with a foot along each wall; it wants no hole."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from shapely import LineString, get_parts, union_all
from shapely import box as rectangle

from boardplan.drawing.picture import Line, Picture
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.output.template.free_places import common_box
from boardplan.routing.supports.retainers import Retainer

_WIDTH = 0.3
_FOOT = 8.0
"""Length of a foot along the channel's wall, in mm: so that nobody takes the bar for one of a clamp's two."""


def placed_retainers(plan: Plan, retainers: Mapping[str, tuple[Retainer, ...]], board: Board) -> Iterator[Retainer]:
    """Yield the retainers on a board in the board's own coordinates."""
    for channel, those in retainers.items():
        if plan.channels[channel].board == board.id:
            yield from (replace(each, at=plan.off_wall(board.id, each.at)) for each in those)


def retainer_mark(retainer: Retainer, taken: Iterable[Box] = ()) -> Picture:
    """Return the mark of a retainer on the template, left out where the marks of holes take the paper."""
    walls = _walls(retainer)
    lines = (LineString(each) for each in (walls, *(_foot(retainer, wall) for wall in walls)))
    reach = retainer_box(retainer)
    holes = union_all([rectangle(*each) for each in taken if each.touches(reach)])
    parts = (part for line in lines for part in get_parts(line.difference(holes)) if part.length)
    return tuple(Line(tuple(Point(*at) for at in part.coords), "quiet", _WIDTH) for part in parts)


def retainer_box(retainer: Retainer) -> Box:
    """Return the box round the mark of a retainer."""
    return box_around(point for wall in _walls(retainer) for point in _foot(retainer, wall)).grown(_WIDTH)


def retainer_note(retainers: Sequence[Retainer], rect: Box) -> str:
    """Return what the mark says, for a sheet that shows any; nothing for others."""
    if not any(common_box(retainer_box(each), rect) for each in retainers):
        return ""
    return "Bar with two feet: retainer across a channel, clips in, no hole."


def _walls(retainer: Retainer) -> tuple[Point, Point]:
    """Return where it meets the insides of the channel's walls, left and right."""
    half = retainer.width / 2
    return retainer.at.ahead(retainer.towards + 90, half), retainer.at.ahead(retainer.towards - 90, half)


def _foot(retainer: Retainer, wall: Point) -> tuple[Point, Point]:
    return wall.ahead(retainer.towards, -_FOOT / 2), wall.ahead(retainer.towards, _FOOT / 2)
