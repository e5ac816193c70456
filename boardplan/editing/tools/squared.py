"""Squared: where the next corner of a line falls - square to the last one, lined up with what is near."""

from collections.abc import Collection

from boardplan.editing.board_lines import snap_boxes, snap_lines
from boardplan.editing.tools.gesture import Pointer
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.geometry.point import Box, Point
from boardplan.geometry.snapping import Snap, snap_box


def square_to(last: Point, at: Point) -> Point:
    """Return the place straight across or straight up from a point, whichever is nearer to another place."""
    if abs(at.x - last.x) >= abs(at.y - last.y):
        return Point(at.x, last.y)
    return Point(last.x, at.y)


def lined_up(hand: Hand, board: str, event: Pointer, width: float = 0.0, without: Collection[str] = ()) -> Snap:
    """Return how far a place on the wall is shifted so that something of a width about it lines up with its neighbours.

    With alt nothing catches.
    """
    if event.alt:
        return Snap(Point(0, 0))
    half = width / 2
    box = Box(event.at.x - half, event.at.y - half, event.at.x + half, event.at.y + half)
    boxes, lines = snap_boxes(hand.plan, board, without), snap_lines(hand.plan, board)
    caught = snap_box(box, boxes, lines, reach=CATCHING * event.reach)
    to_grid = snap_box(Box(*event.at, *event.at), reach=0.0, grid=hand.grid)
    # a guide's direction doesn't say which axis was caught: one that repeats a gap runs along its axis, not across it
    return Snap(Point(caught.shift.x or to_grid.shift.x, caught.shift.y or to_grid.shift.y), caught.guides)


def next_corner(
    hand: Hand, board: str, last: Point | None, event: Pointer, width: float, without: Collection[str] = ()
) -> tuple[Point, Snap]:
    """Return the next corner of a line on the wall: square to the last one unless alt is held."""
    snap = lined_up(hand, board, event, width, without)
    at = event.at.moved(*snap.shift)
    if last is None or event.alt:
        return at, snap
    corner = square_to(last, at)
    kept = tuple(guide for guide in snap.guides if (guide.start.y == guide.end.y) == (corner.x == last.x))
    return corner, Snap(corner.minus(event.at), kept)
