"""Grounds: every board as it hangs on the wall, with its edges, the room round it and what its fixings carry."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Literal, TypeAlias

from shapely import LineString, Polygon, unary_union
from shapely.geometry.base import BaseGeometry

from boardplan.geometry.point import Box, Point, bearing, box_around, signed_area
from boardplan.model.board import Board, Ring
from boardplan.model.plan import Plan

Side: TypeAlias = Literal["left", "bottom", "right", "top"]
_SIDES: dict[int, Side] = {0: "bottom", 1: "right", 2: "top", 3: "left"}


@dataclass(frozen=True, slots=True)
class Edge:
    """A stretch of a board's outline, the side it counts to, and the margin of that side."""

    line: LineString
    side: Side
    margin: float


@dataclass(frozen=True, eq=False)
class Ground:
    """A board on the wall. `sheet` has its cut-outs; `plain` says that the outline is an upright rectangle."""

    board: Board
    box: Box
    sheet: Polygon
    outer: Polygon
    cutouts: tuple[Polygon, ...]
    edges: tuple[Edge, ...]
    plain: bool
    room: Polygon | None

    @cached_property
    def widest_margin(self) -> float:
        """The greatest margin of any edge."""
        return max(edge.margin for edge in self.edges)


def grounds_of(plan: Plan) -> dict[str, Ground]:
    """Return every board of a plan on the wall."""
    return {board.id: ground_of(board) for board in plan.boards.values()}


def ground_of(board: Board) -> Ground:
    """Return a board on the wall."""
    outline = _on_wall(board, board.outline)
    box = box_around(outline)
    cutouts = tuple(_on_wall(board, each) for each in board.cutouts)
    around = board.compartment
    room = None
    if around is not None:
        free = Box(box.left - around.left, box.bottom - around.bottom, box.right + around.right, box.top + around.top)
        room = Polygon(free.corners())
    return Ground(
        board=board,
        box=box,
        sheet=Polygon(outline, cutouts),
        outer=Polygon(outline),
        cutouts=tuple(Polygon(each) for each in cutouts),
        edges=_edges(board, outline),
        plain=set(outline) == set(box.corners()) and len(outline) == 4,  # noqa: PLR2004 - corners of a rectangle
        room=room,
    )


def _on_wall(board: Board, ring: Ring) -> Ring:
    return tuple(point.moved(board.position.x, board.position.y) for point in ring)


def _edges(board: Board, outline: Ring) -> tuple[Edge, ...]:
    ring = outline if signed_area(outline) > 0 else outline[::-1]
    edges = []
    for start, end in pairwise((*ring, ring[0])):
        side = side_of(start, end)
        edges.append(Edge(LineString([start, end]), side, getattr(board.edge_margins, side)))
    return tuple(edges)


def side_of(start: Point, end: Point) -> Side:
    """Return the side that an edge of a counter-clockwise outline counts to: the one it faces most.

    >>> side_of(Point(0, 0), Point(100, 30))
    'bottom'
    """
    return _SIDES[round(bearing(start, end) / 90) % 4]


def all_room(grounds: Mapping[str, Ground]) -> BaseGeometry:
    """Return all boards together with the room round them, as far as somebody measured it."""
    return unary_union([ground.room or ground.outer for ground in grounds.values()])


def fixing_loads(plan: Plan) -> dict[str, float | None]:
    """Return what each fixing of a board carries in kg: the finished mass by the number of fixings.

    None where something on the board was never weighed.
    """
    masses: dict[str, float | None] = {board.id: board.mass for board in plan.boards.values()}
    for component in plan.components.values():
        so_far, own = masses[component.board], plan.kinds[component.kind].mass
        masses[component.board] = None if so_far is None or own is None else so_far + own
    counts = dict.fromkeys(plan.boards, 0)
    for fixing in plan.fixings.values():
        counts[fixing.board] += 1
    return {
        board: None if mass is None or not counts[board] else mass / counts[board] for board, mass in masses.items()
    }
