"""Pin a way: drag a leg of a cable aside; its corners stay where a person put them from then on."""

from boardplan.editing.cable_edits import pin_way as with_pins
from boardplan.editing.cable_edits import unpin
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import cable_at
from boardplan.geometry.bends import without_repeats
from boardplan.geometry.nearest import nearest_leg
from boardplan.geometry.point import Point, bearing, direction
from boardplan.routing.route import Route

_STRAIGHT = "straight-at-gland"
"""The limit of the rule set that says how far a cable runs straight from its end."""


def pin_way(hand: Hand) -> Gesture:
    """Wait for a cable, then drag the leg under the pointer; a double click gives a way back to the program."""
    event = yield Shown(hint="Drag a leg of a cable aside")
    while True:
        if event.kind == "key" and event.key == "escape":
            return Done()
        cable = cable_at(hand.plan, hand.ways, event.at, CATCHING * event.reach)
        if cable is not None and event.kind == "double":
            return Done(unpin(hand.plan, cable), f"Unpin {cable}", Selection((cable,)), again=True)
        if cable is not None and event.kind == "press" and event.button == "left":
            return (yield from _drag_leg(hand, cable, event))
        pinned = cable is not None and hand.plan.cables[cable].pins
        words = "double click leaves its way to the program" if pinned else "drag a leg aside to pin its way"
        event = yield Shown(hint=f"{cable}: {words}" if cable else "Drag a leg of a cable aside")


def _drag_leg(hand: Hand, cable: str, start: Pointer) -> Gesture:
    way = hand.ways[cable]
    selection = Selection((cable,))
    event = yield Shown(selection=selection)
    if not isinstance(way, Route):
        return Done(selection=selection, again=True)
    stub = hand.plan.rules.value(_STRAIGHT) + way.radius
    plan, hint = hand.plan, ""
    while not (event.kind == "key" and event.key == "escape"):
        points = shifted_leg(way.points, start.at, event.at, stub, 0.0 if event.alt else hand.grid)
        try:
            plan, hint = with_pins(hand.plan, cable, points[1:-1]), f"{cable}: {len(points) - 2} corners pinned"
        except EditRefused as refused:
            hint = refused.sentence
        if event.kind == "release":
            moved = start.at.distance_to(event.at) > start.reach
            return Done(plan if moved else None, f"Pin the way of {cable}", selection, again=True)
        event = yield Shown(plan, hint, selection=selection)
    return Done(selection=selection, again=True)


def shifted_leg(
    points: tuple[Point, ...], start: Point, at: Point, stub: float, grid: float = 0.0
) -> tuple[Point, ...]:
    """Return a line of legs with the leg nearest to `start` moved aside by as much as `at` lies aside of it.

    Both ends of the line stay: where the leg holds one, a stub of it stays too and a square step follows.
    """
    leg, _ = nearest_leg(points, start)
    first, last = points[leg], points[leg + 1]
    towards = bearing(first, last)
    aside = direction(towards + 90.0)
    by = (at.x - start.x) * aside[0] + (at.y - start.y) * aside[1]
    across = first.x * aside[0] + first.y * aside[1]
    if grid > 0:
        by = round((across + by) / grid) * grid - across
    shift = Point(aside[0] * by, aside[1] * by)
    kept = min(stub, first.distance_to(last) / 3)
    before, after = list(points[:leg]), list(points[leg + 2 :])
    if leg == 0:
        before, first = [first, first.ahead(towards, kept)], first.ahead(towards, kept)
    if leg == len(points) - 2:
        last, after = last.ahead(towards, -kept), [last.ahead(towards, -kept), last]
    return without_repeats([*before, first.moved(*shift), last.moved(*shift), *after])
