"""Survey tools: set exits and board fixings with a click, draw no-go boxes up with a drag."""

from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.survey_edits import add_exit as with_exit
from boardplan.editing.survey_edits import add_fixing as with_fixing
from boardplan.editing.survey_edits import add_no_go_box
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import nearest_board
from boardplan.editing.tools.squared import lined_up
from boardplan.geometry.nearest import nearest_on_ring
from boardplan.geometry.point import Box, Point, box_around
from boardplan.geometry.units import length_text
from boardplan.model.plan import Plan


def add_exit(hand: Hand) -> Gesture:
    """Set an exit: over the edge where the pointer is near one, otherwise through the board."""
    event = yield Shown(hint="Click an edge for an exit over it, or the board for one through it")
    while not (event.kind == "key" and event.key == "escape"):
        board = nearest_board(hand.plan, event.at)
        at = hand.plan.off_wall(board, event.at)
        over_edge = nearest_on_ring(hand.plan.boards[board].outline, at)
        if over_edge.distance_to(at) <= CATCHING * event.reach or not hand.plan.boards[board].box.holds(at):
            plan, reference = with_exit(hand.plan, board, _on_grid(hand, over_edge, event))
        else:
            place = at.moved(*lined_up(hand, board, event).shift)
            plan, reference = with_exit(hand.plan, board, place, through="hole", diameter=hand.diameter)
        if event.kind == "press" and event.button == "left":
            return Done(plan, f"Add exit {reference}", Selection((reference,)), again=True)
        words = "over the edge" if plan.exits[reference].through == "edge" else "through the board"
        event = yield Shown(plan, f"{reference} {words}")
    return Done()


def _on_grid(hand: Hand, at: Point, event: Pointer) -> Point:
    if event.alt or not hand.grid:
        return at
    return Point(round(at.x / hand.grid) * hand.grid, round(at.y / hand.grid) * hand.grid)


def add_fixing(hand: Hand) -> Gesture:
    """Set a board fixing, lined up with the framing behind the board."""
    diameter = hand.diameter or _diameter_used_last(hand.plan)
    if diameter is None:
        return Done(said="How wide is the hole for the board's fixings? Say so first.")
    event = yield Shown(
        hint=f"Click where the board is screwed to the framing, hole {length_text(diameter, hand.plan.job.units)}"
    )
    while not (event.kind == "key" and event.key == "escape"):
        board = nearest_board(hand.plan, event.at)
        snap = lined_up(hand, board, event)
        at = hand.plan.off_wall(board, event.at.moved(*snap.shift))
        plan, reference = with_fixing(hand.plan, board, at, diameter, hand.fastener)
        if event.kind == "press" and event.button == "left":
            return Done(plan, f"Add board fixing {reference}", Selection((reference,)), again=True)
        guides = tuple((guide.start, guide.end) for guide in snap.guides)
        event = yield Shown(plan, snap.words or reference, guides)
    return Done()


def _diameter_used_last(plan: Plan) -> float | None:
    used = [each.diameter for each in plan.fixings.values()]
    return used[-1] if used else None


def add_no_go(hand: Hand) -> Gesture:
    """Draw up a box that must stay empty, by a drag or by two presses."""
    event = yield Shown(hint="Drag a box over what must stay empty")
    while not (event.kind == "press" and event.button == "left"):
        if event.kind == "key" and event.key == "escape":
            return Done()
        event = yield Shown(hint="Drag a box over what must stay empty")
    return (yield from _draw_up(hand, event))


def _draw_up(hand: Hand, event: Pointer) -> Gesture:
    board = nearest_board(hand.plan, event.at)
    start, pressed = event.at.moved(*lined_up(hand, board, event).shift), event
    while not (event.kind == "key" and event.key == "escape"):
        box = _box(hand, board, start, event)
        if event.kind == "release" or (event.kind == "press" and event is not pressed):
            return _no_go(hand, board, box)
        done = _no_go(hand, board, box)
        width, height = (length_text(each, hand.plan.job.units) for each in (box.width, box.height))
        event = yield Shown(done.plan, f"{width} x {height}")
    return Done(again=True)


def _box(hand: Hand, board: str, start: Point, event: Pointer) -> Box:
    end = event.at.moved(*lined_up(hand, board, event).shift)
    return box_around(hand.plan.off_wall(board, each) for each in (start, end))


def _no_go(hand: Hand, board: str, box: Box) -> Done:
    try:
        plan, reference = add_no_go_box(hand.plan, board, box)
    except EditRefused:
        return Done(again=True, said="Drag from one corner of the box to the other.")
    return Done(plan, f"Add no-go box {reference}", Selection((reference,)), again=True)
