"""Weights: what a board weighs bare, carried and finished, and where its centre of mass lies."""

from collections.abc import Iterable
from dataclasses import dataclass

from boardplan.geometry.point import Point
from boardplan.model.board import Board, Ring
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Weights:
    """Masses in kg, centres in board coordinates, carried depth in mm: the board and its deepest shop-fitted unit.

    `unknown` names what nobody has weighed: the sums leave it out, and must not be shown without saying so.
    """

    bare: float
    carried: float
    carried_centre: Point
    finished: float
    finished_centre: Point
    carried_depth: float
    unknown: tuple[str, ...]


def weights_of(plan: Plan, board: Board) -> Weights:
    """Return the weights of a board with its components; cables and channels are not in the sums."""
    components = [each for each in plan.components.values() if each.board == board.id]
    in_shop = [each for each in components if (each.stage or plan.kind_of(each).stage) == "shop"]
    bare = board.mass or 0.0
    sheet = (bare, centre_of_area(board))
    carried, carried_centre = _sum([sheet, *_masses(plan, in_shop)])
    finished, finished_centre = _sum([sheet, *_masses(plan, components)])
    unknown = [each.id for each in components if plan.kind_of(each).mass is None]
    return Weights(
        bare=bare,
        carried=carried,
        carried_centre=carried_centre,
        finished=finished,
        finished_centre=finished_centre,
        carried_depth=board.thickness + max((plan.kind_of(each).depth for each in in_shop), default=0.0),
        unknown=tuple(unknown if board.mass is not None else [f"board {board.id}", *unknown]),
    )


def _masses(plan: Plan, components: Iterable[Component]) -> list[tuple[float, Point]]:
    return [(plan.kind_of(each).mass or 0.0, placed(plan, each).centre) for each in components]


def _sum(masses: list[tuple[float, Point]]) -> tuple[float, Point]:
    total = sum(mass for mass, _ in masses)
    if total == 0:
        return 0.0, masses[0][1]
    x = sum(mass * at.x for mass, at in masses) / total
    y = sum(mass * at.y for mass, at in masses) / total
    return total, Point(x, y)


def centre_of_area(board: Board) -> Point:
    """Return the centre of the sheet's area, cut-outs taken away."""
    area, mx, my = _moments(board.outline)
    for cutout in board.cutouts:
        cut, cx, cy = _moments(cutout)
        area, mx, my = area - cut, mx - cx, my - cy
    return Point(mx / area, my / area)


def _moments(ring: Ring) -> tuple[float, float, float]:
    """Return the area of a counter-clockwise ring and its first moments (the shoelace sums)."""
    area = mx = my = 0.0
    for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
        cross = a.x * b.y - b.x * a.y
        area += cross / 2
        mx += (a.x + b.x) * cross / 6
        my += (a.y + b.y) * cross / 6
    return area, mx, my
