"""Grip: what is being dragged, and how far it goes so that it lines up with what is near."""

from collections.abc import Iterable
from dataclasses import dataclass

from boardplan.editing.board_lines import snap_boxes, snap_lines
from boardplan.editing.placing import is_on_board, reach_of
from boardplan.editing.tools.gesture import Pointer
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import nearest_board
from boardplan.geometry.point import Box, Point, box_around
from boardplan.geometry.snapping import Snap, snap_box
from boardplan.model.board import Board
from boardplan.model.component import Component
from boardplan.model.plan import Plan

CATCHING = 4.0
"""How many reaches away things catch each other."""


@dataclass(frozen=True, slots=True)
class Grip:
    """The things that are dragged and the box round them on the wall."""

    ids: tuple[str, ...]
    box: Box

    @property
    def words(self) -> str:
        """How the Undo menu calls them."""
        return self.ids[0] if len(self.ids) == 1 else f"{len(self.ids)} things"

    def snap(self, hand: Hand, start: Point, event: Pointer) -> Snap:
        """Return how far the things go from where they were, and what they line up with there."""
        by = event.at.minus(start)
        if event.shift:
            by = Point(by.x, 0.0) if abs(by.x) >= abs(by.y) else Point(0.0, by.y)
        if event.alt:
            return Snap(by)
        board = nearest_board(hand.plan, event.at)
        snap = snap_box(
            self.box.moved(*by),
            snap_boxes(hand.plan, board, self.ids),
            snap_lines(hand.plan, board),
            reach=CATCHING * event.reach,
            grid=hand.grid,
        )
        return _on_one_axis(snap, by) if event.shift else Snap(by.moved(*snap.shift), snap.guides)


def _on_one_axis(snap: Snap, by: Point) -> Snap:
    """Return a snap that leaves the axis alone along which nothing moves."""
    if by.x:
        guides = tuple(guide for guide in snap.guides if guide.start.x == guide.end.x)
        return Snap(Point(by.x + snap.shift.x, 0.0), guides)
    guides = tuple(guide for guide in snap.guides if guide.start.y == guide.end.y)
    return Snap(Point(0.0, by.y + snap.shift.y), guides)


def grip_on(plan: Plan, ids: Iterable[str]) -> Grip | None:
    """Return a grip on those things that can be dragged: not cables, not locked components; none for none."""
    things = [plan.things[each] for each in ids if each in plan.things]
    free = [each for each in things if not (isinstance(each, Component) and each.locked)]
    hung = [each for each in free if is_on_board(each)]
    boxes = [reach_of(plan, each).moved(*plan.boards[each.board].position) for each in hung]
    if not boxes:
        return None
    held = tuple(each.id for each in free if is_on_board(each) or isinstance(each, Board))
    return Grip(held, box_around(corner for box in boxes for corner in box.corners()))
