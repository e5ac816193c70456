"""Select: click things, draw up a band round them, drag what is selected to another place."""

from dataclasses import replace

from boardplan.editing.refused import EditRefused
from boardplan.editing.rehanging import rehung
from boardplan.editing.selection import Selection
from boardplan.editing.thing_edits import Direction, move_things, nudge
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import grip_on
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import thing_at, things_in
from boardplan.editing.tools.push_way import corner_at, push_corner, push_leg
from boardplan.geometry.point import Point, box_around
from boardplan.geometry.units import length_text

_BEFORE_A_DRAG = 2.0
"""How many reaches the pointer must go before a click becomes a drag."""

_ARROWS: dict[str, Direction] = {"left": "left", "right": "right", "up": "up", "down": "down"}


def select(hand: Hand) -> Gesture:
    """Wait for a press; then pick, drag or draw up a band. The right button picks without dragging."""
    event = yield Shown()
    while event.kind not in {"press", "double"} or event.button == "none":
        if event.kind == "key" and event.key == "escape":
            return Done(selection=Selection())
        if event.kind == "key" and event.key in _ARROWS and hand.selection.ids:
            return _nudged(hand, event)
        event = yield Shown(hint=_hint(hand, event))
    corner = corner_at(hand, event) if event.button == "left" else None
    if corner is not None and not (event.shift or event.control):
        return (yield from _press_on_corner(hand, event, corner))
    over = _over(hand, event)
    if over is None or over in hand.plan.boards:
        return (yield from _on_board(hand, event, over))
    if event.shift or event.control:
        return Done(selection=hand.selection.toggled(over))
    selection = hand.selection if over in hand.selection else Selection((over,))
    return (yield from _press_on(replace(hand, selection=selection), event, over))


def _press_on_corner(hand: Hand, start: Pointer, corner: tuple[str, int]) -> Gesture:
    """Pick a pinned corner of a selected cable; when the pointer goes on with the button down, drag it."""
    event = yield Shown(selection=hand.selection)
    while event.kind != "release":
        if event.kind == "key" and event.key == "escape":
            return Done(selection=hand.selection)
        if event.kind == "move" and _dragged(start, event):
            return (yield from push_corner(hand, *corner, start, event))
        event = yield Shown(selection=hand.selection)
    return Done(selection=Selection(corner[:1]), corner=corner)


def _nudged(hand: Hand, event: Pointer) -> Done:
    """Move what is selected by a step of the grid, with shift by ten of them, with alt by half a millimetre."""
    grip = grip_on(hand.plan, hand.selection.ids)
    if grip is None:
        return Done(selection=hand.selection, said=_why_not(hand))
    step = 0.5 if event.alt else hand.grid * (10 if event.shift else 1)
    try:
        plan = nudge(hand.plan, grip.ids, _ARROWS[event.key], step)
    except EditRefused as refused:
        return Done(selection=hand.selection, said=refused.sentence)
    return Done(plan, f"Nudge {grip.words}", hand.selection)


def _hint(hand: Hand, event: Pointer) -> str:
    corner = corner_at(hand, event)
    if corner is not None:
        return f"{corner[0]}: drag the corner, or click it and press Del to take it out"
    over = _over(hand, event)
    if over is None or over in hand.plan.boards:
        return ""
    if over in hand.plan.cables:
        return f"{over}: click to select, drag a leg to push it to another side"
    component = hand.plan.components.get(over)
    kind = f", {hand.plan.kind_of(component).name}" if component is not None else ""
    return f"{over}{kind}: click to select, drag to move"


def _over(hand: Hand, event: Pointer) -> str | None:
    return event.over or thing_at(hand.plan, hand.ways, event.at, event.reach)


def _on_board(hand: Hand, start: Pointer, board: str | None) -> Gesture:
    """Draw up a band from an empty place; without a drag, select the board, or nothing beside it."""
    event = start
    while event.kind != "release":
        if event.kind == "key" and event.key == "escape":
            return Done(selection=hand.selection)
        if _dragged(start, event):
            picked = _picked(hand, start, event)
            event = yield Shown(hint=_count(picked), band=_band(start, event), selection=picked)
        else:
            event = yield Shown()
    if _dragged(start, event):
        return Done(selection=_picked(hand, start, event))
    if start.shift or start.control:
        return Done(selection=hand.selection)
    return Done(selection=Selection((board,) if board else ()))


def _dragged(start: Pointer, event: Pointer) -> bool:
    return start.at.distance_to(event.at) > _BEFORE_A_DRAG * start.reach


def _band(start: Pointer, event: Pointer) -> tuple[Point, Point]:
    box = box_around((start.at, event.at))
    return Point(box.left, box.bottom), Point(box.right, box.top)


def _picked(hand: Hand, start: Pointer, event: Pointer) -> Selection:
    inside = things_in(hand.plan, hand.ways, box_around((start.at, event.at)))
    before = hand.selection.ids if start.shift or start.control else ()
    return hand.selection.only(*before, *inside)


def _count(selection: Selection) -> str:
    return "1 thing" if len(selection.ids) == 1 else f"{len(selection.ids)} things"


def _press_on(hand: Hand, start: Pointer, over: str) -> Gesture:
    """Pick a thing; when the pointer goes on with the button down, drag all that is selected."""
    event = yield Shown(selection=hand.selection)
    while event.kind != "release":
        if event.kind == "key" and event.key == "escape":
            return Done(selection=hand.selection)
        if event.kind == "move" and start.button == "left" and _dragged(start, event):
            if over in hand.plan.cables and grip_on(hand.plan, hand.selection.ids) is None:
                return (yield from push_leg(hand, over, start, event))
            return (yield from drag(hand, start, event))
        event = yield Shown(selection=hand.selection)
    return Done(selection=hand.selection if start.button == "right" else Selection((over,)))


def drag(hand: Hand, start: Pointer, event: Pointer) -> Gesture:
    """Drag the selected things until the button is let go; alt leaves out all catching, shift keeps to one axis."""
    grip = grip_on(hand.plan, hand.selection.ids)
    if grip is None:
        return Done(selection=hand.selection, said=_why_not(hand))
    plan = hand.plan
    while not (event.kind == "key" and event.key == "escape"):
        snap = grip.snap(hand, start.at, event)
        try:
            plan = rehung(move_things(hand.plan, grip.ids, snap.shift), grip.ids)
            hint = snap.words or _way_words(hand, snap.shift)
        except EditRefused as refused:
            hint = refused.sentence
        if event.kind == "release":
            return Done(plan=plan, words=f"Move {grip.words}", selection=hand.selection)
        guides = tuple((guide.start, guide.end) for guide in snap.guides)
        event = yield Shown(plan=plan, hint=hint, guides=guides, selection=hand.selection)
    return Done(selection=hand.selection)


def _way_words(hand: Hand, way: Point) -> str:
    across, up = (f"{'-' if each < 0 else '+'}{length_text(abs(each), hand.plan.job.units)}" for each in way)
    return f"{across} across, {up} up"


def _why_not(hand: Hand) -> str:
    locked = [each for each in hand.selection.ids if each in hand.plan.components]
    return f"{', '.join(locked)} is locked. Unlock it to move it." if locked else ""
