"""Push way: drag a leg or a corner of a cable to another side; its way is pinned as it is shown."""

from collections.abc import Callable

from boardplan.editing.cable_edits import pin_way, unpin
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.corners import Line, moved_corner, shifted_leg, without_corner
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.laid_trouble import trouble_of
from boardplan.geometry.point import Point
from boardplan.model.plan import Plan
from boardplan.routing.route import Route

_STRAIGHT = "straight-at-gland"
"""The limit of the rule set that says how far a cable runs straight from its end."""


def corner_at(hand: Hand, event: Pointer) -> tuple[str, int] | None:
    """Return the selected cable one of whose pinned corners lies under the pointer, and which one it is from 1 on."""
    reach = CATCHING * event.reach
    for cable_id in hand.selection.ids:
        cable, way = hand.plan.cables.get(cable_id), hand.ways.get(cable_id)
        if cable is None or not cable.pins or not isinstance(way, Route):
            continue
        near = [(each.distance_to(event.at), index) for index, each in enumerate(way.points[1:-1], start=1)]
        near = [each for each in near if each[0] <= reach]
        if near:
            return cable_id, min(near)[1]
    return None


def push_leg(hand: Hand, cable: str, start: Pointer, event: Pointer) -> Gesture:
    """Drag the leg of a cable that lay under the pointer at the start."""
    way = hand.ways.get(cable)
    if not isinstance(way, Route):
        return Done(selection=Selection((cable,)))
    points, stub = way.points, _stub(hand, way)

    def shifted(at: Point, grid: float) -> Line:
        return shifted_leg(points, start.at, at, stub, grid)

    return (yield from _drag(hand, cable, start, event, shifted))


def push_corner(hand: Hand, cable: str, corner: int, start: Pointer, event: Pointer) -> Gesture:
    """Drag a pinned corner of a cable."""
    way = hand.ways.get(cable)
    if not isinstance(way, Route):
        return Done(selection=Selection((cable,)))
    points, stub = way.points, _stub(hand, way)

    def shifted(at: Point, grid: float) -> Line:
        return moved_corner(points, corner, at, stub, grid)

    return (yield from _drag(hand, cable, start, event, shifted))


def _stub(hand: Hand, way: Route) -> float:
    return hand.plan.rules.value(_STRAIGHT) + way.radius


def _drag(hand: Hand, cable: str, start: Pointer, event: Pointer, shifted: Callable[[Point, float], Line]) -> Gesture:
    selection = Selection((cable,))
    plan, hint, stuck = hand.plan, "", None
    while not (event.kind == "key" and event.key == "escape"):
        points = shifted(event.at, 0.0 if event.alt else hand.grid)
        try:
            plan = pin_way(hand.plan, cable, points[1:-1])
            trouble = trouble_of(plan, cable)
            hint = f"{cable}: {trouble.words}" if trouble else _corners(cable, len(points) - 2)
            stuck = trouble.area if trouble else None
        except EditRefused as refused:
            hint = refused.sentence
        if event.kind == "release":
            moved = start.at.distance_to(event.at) > start.reach
            return Done(plan if moved else None, f"Pin the way of {cable}", selection, again=True)
        event = yield Shown(plan, hint, selection=selection, pushed=cable, stuck=stuck)
    return Done(selection=selection, again=True)


def _corners(cable: str, count: int) -> str:
    return f"{cable}: {count} corner{'' if count == 1 else 's'} pinned"


def without_pin(plan: Plan, cable_id: str, way: Route, corner: int) -> Plan:
    """Return the plan with a cable that turns at one pinned corner less; its legs stay square. Raises EditRefused.

    The last pinned corner takes the pin from the whole way.
    """
    pins = plan.cables[cable_id].pins
    if not 0 < corner <= len(pins):
        raise EditRefused(f"Cable {cable_id} has no pinned corner {corner}.")
    line = without_corner(way.points, corner)
    if line is None and len(pins) > 1:
        raise EditRefused(f"{cable_id} needs that corner to reach its ends squarely.")
    return unpin(plan, cable_id) if line is None or len(pins) == 1 else pin_way(plan, cable_id, line[1:-1])
