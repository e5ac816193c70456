"""Shut-off picture: the boards to scale, small, with every shut-off marked by its number."""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

from boardplan.drawing.picture import Area, Disc, Line, Mark, Picture, Words
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.output.printing.lettering import FINE, PLAIN, Measure, text_box

_STEPS = (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 22, 25, 30, 35, 40, 50, 60, 80, 100)
_LARGEST_DISC, _LEAST_DISC = 3.6, 1.6


def picture_scale(plan: Plan, width: float, height: float) -> int:
    """Return n of the scale 1:n at which all boards go into a room, a number that can be reckoned with."""
    around = _around(plan)
    needed = max(around.width / width, around.height / height)
    return next((each for each in _STEPS if each >= needed), math.ceil(needed))


def _around(plan: Plan) -> Box:
    """Return the box round all boards on the wall, and round what stands out over their edges."""
    boxes = [(each.id, each.box) for each in plan.boards.values()]
    boxes += [(each.board, placed(plan, each).box) for each in plan.components.values()]
    return box_around(plan.on_wall(board, corner) for board, box in boxes for corner in box.corners())


def shut_off_picture(plan: Plan, marked: Sequence[str], room: Box, scale: int, measure: Measure) -> Picture:
    """Return the boards at 1:scale in the middle of a room, what is on them, and numbers from 1 on what is marked."""
    around = _around(plan)
    middle = around.centre

    def at(board: str, point: Point) -> Point:
        x, y = plan.on_wall(board, point)
        return room.centre.moved((x - middle.x) / scale, (y - middle.y) / scale)

    marks: list[Mark] = []
    for board in plan.boards.values():
        rings = (board.outline, *board.cutouts)
        marks += [Line(tuple(at(board.id, each) for each in ring), "ink", 0.45, closed=True) for ring in rings]
    units = [
        (each, tuple(at(each.board, point) for point in placed(plan, each).outline))
        for each in plan.components.values()
    ]
    marks += [_body(outline, marked=each.id in marked) for each, outline in units]
    discs = [at(plan.components[each].board, placed(plan, plan.components[each]).centre) for each in marked]
    radius = _disc_radius(discs)
    taken = [box_around([each]).grown(radius) for each in discs]
    for each, outline in units:
        marks += _name(each.id, box_around(outline), taken, measure)
    for number, centre in enumerate(discs, start=1):
        marks += _disc(centre, str(number), radius)
    return tuple(marks)


def _body(outline: tuple[Point, ...], *, marked: bool) -> Mark:
    return Area((outline,), "faint", "ink", 0.6) if marked else Line(outline, "quiet", 0.15, closed=True)


def _name(name: str, box: Box, taken: list[Box], measure: Measure) -> Iterator[Mark]:
    """Yield a unit's reference where it has room for it and nothing else stands there."""
    words = Words(box.centre, name, FINE, "quiet")
    own = text_box(words, measure)
    if own.width + 1 <= box.width and box.height >= FINE + 1 and not any(own.touches(each) for each in taken):
        taken.append(own)
        yield words


def _disc_radius(centres: Sequence[Point]) -> float:
    """Return how large discs may be that don't cover each other."""
    nearest = min((a.distance_to(b) for a, b in combinations(centres, 2)), default=2 * _LARGEST_DISC)
    return max(_LEAST_DISC, min(_LARGEST_DISC, nearest / 2 - 0.15))


def _disc(centre: Point, number: str, radius: float) -> Iterator[Mark]:
    yield Disc(centre, radius, "ink", "paper", 0.3)
    yield Words(centre, number, min(PLAIN * 1.4, radius * 0.95), "paper", bold=True)


def number_disc(centre: Point, number: str, size: float) -> Picture:
    """Return the number of a shut-off as it stands in the picture, for the list beside it."""
    return tuple(_disc(centre, number, size * 0.95))
