"""Back view: a board as it lies with its back up, mirrored about its upright middle line (x' = left + right - x)."""

from collections.abc import Iterable
from dataclasses import replace

from boardplan.geometry.point import Point
from boardplan.model.board import Board, Corner, Framing, Ring, Sides
from boardplan.model.holes import Hole, holes_of
from boardplan.model.plan import Plan

_OTHER_SIDE: dict[Corner, Corner] = {
    "lower-left": "lower-right",
    "lower-right": "lower-left",
    "upper-left": "upper-right",
    "upper-right": "upper-left",
}


def from_behind(board: Board, point: Point) -> Point:
    """Return where a point of the front is seen from behind, in mm from the lower left of the mirrored board.

    >>> from boardplan.geometry.point import Box
    >>> from_behind(Board("A", "", Box(0, 0, 900, 600).corners()), Point(100, 50))
    Point(x=800, y=50)
    """
    return Point(board.box.left + board.box.right - point.x, point.y)


def ring_from_behind(board: Board, ring: Iterable[Point]) -> Ring:
    """Return an outline as seen from behind; turned about, so that it runs the way round it did."""
    return tuple(from_behind(board, point) for point in reversed(tuple(ring)))


def board_from_behind(board: Board) -> Board:
    """Return the mirrored board: its datum corner lies on the other side, so running dimensions stay what they are."""

    def swapped(sides: Sides) -> Sides:
        return replace(sides, left=sides.right, right=sides.left)

    return replace(
        board,
        outline=ring_from_behind(board, board.outline),
        cutouts=tuple(ring_from_behind(board, each) for each in board.cutouts),
        edge_margins=swapped(board.edge_margins),
        lip=swapped(board.lip),
        datum=replace(board.datum, corner=_OTHER_SIDE[board.datum.corner]),
    )


def back_holes(plan: Plan, board: Board) -> tuple[Hole, ...]:
    """Return the holes that are worked from the back, where a nut or an insert is set, as seen from behind."""
    return _seen(plan, board, [hole for hole in holes_of(plan) if hole.sort == "t-nut"])


def check_holes(plan: Plan, board: Board) -> tuple[Hole, ...]:
    """Return the other holes that come out on the back, to check the lie of the paper by, as seen from behind."""
    through = [hole for hole in holes_of(plan) if hole.sort in {"through", "fixing", "exit"} and hole.depth is None]
    return _seen(plan, board, through)


def _seen(plan: Plan, board: Board, holes: Iterable[Hole]) -> tuple[Hole, ...]:
    own = plan.boards[board.id]
    return tuple(replace(each, position=from_behind(own, each.position)) for each in holes if each.board == board.id)


def member_from_behind(board: Board, member: Framing) -> Framing:
    """Return a framing member as it is seen from behind."""
    if member.direction == "upright":
        return replace(member, centre=board.box.left + board.box.right - member.centre)

    def other(end: float | None) -> float | None:
        return None if end is None else board.box.left + board.box.right - end

    return replace(member, start=other(member.end), end=other(member.start))
