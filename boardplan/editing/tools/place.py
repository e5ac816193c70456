"""Place: the kind in hand follows the pointer, turns on a key, and is dropped with a click."""

from dataclasses import replace

from boardplan.editing.board_lines import snap_boxes, snap_lines
from boardplan.editing.component_edits import place_component
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import nearest_board
from boardplan.geometry.point import Box, Point, box_around
from boardplan.geometry.snapping import Snap, snap_box
from boardplan.model.component_kind import ComponentKind
from boardplan.model.plan import Plan

_QUARTERS = (0.0, 90.0, 180.0, 270.0)


def place(hand: Hand) -> Gesture:
    """Carry a kind until it is dropped; with shift another of it stays in hand."""
    if hand.kind is None:
        return Done(said="Take a component from the shelf first.")
    kind = hand.kind
    event = yield Shown(hint=f"{kind.name}: click where it goes, R turns it")
    while not (event.kind == "key" and event.key == "escape"):
        hint = ""
        if event.kind == "key" and event.key == "r":
            turn = next_turn(kind, hand.turn)
            hint = f"{kind.name} hangs only this way" if turn == hand.turn else ""
            hand = replace(hand, turn=turn)
        try:
            plan, reference, snap = carried(hand, kind, event)
        except EditRefused as refused:
            event = yield Shown(hint=refused.sentence)
            continue
        selection = Selection((reference,))
        if event.kind == "press" and event.button == "left":
            return Done(plan, f"Place {reference}", selection, again=event.shift, hand=hand)
        guides = tuple((guide.start, guide.end) for guide in snap.guides)
        event = yield Shown(plan, hint or snap.words or f"{reference} {kind.name}", guides, selection)
    return Done()


def next_turn(kind: ComponentKind, turn: float) -> float:
    """Return the next quarter turn counter-clockwise that a kind may hang in."""
    allowed = _QUARTERS if kind.allowed_turns is None else kind.allowed_turns
    steps = ((turn + step) % 360.0 for step in _QUARTERS[1:])
    return next((each for each in steps if each in allowed), turn)


def carried(hand: Hand, kind: ComponentKind, event: Pointer) -> tuple[Plan, str, Snap]:
    """Return the plan with the kind in hand about the pointer, its reference, and what it lines up with."""
    board = nearest_board(hand.plan, event.at)
    box = box_around(Point(*each).turned(hand.turn) for each in kind.outline)
    left, bottom = event.at.x - box.width / 2, event.at.y - box.height / 2
    about = Box(left, bottom, left + box.width, bottom + box.height)
    snap = Snap(Point(0, 0))
    if not event.alt:
        boxes, lines = snap_boxes(hand.plan, board), snap_lines(hand.plan, board)
        snap = snap_box(about, boxes, lines, reach=CATCHING * event.reach, grid=hand.grid)
    at = hand.plan.off_wall(board, Point(left + snap.shift.x, bottom + snap.shift.y))
    plan, reference = place_component(hand.plan, kind, hand.shelf.fasteners, board, at, turn=hand.turn)
    return plan, reference, snap
