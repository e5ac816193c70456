"""Thing edits: move, nudge, remove and rename whatever has an id."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Literal, TypeAlias, TypeVar

from boardplan.editing.lookup import things_of
from boardplan.editing.placing import is_on_board, moved_thing
from boardplan.editing.references import refuse_bad_reference
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.geometry.nearest import nearest_on_ring
from boardplan.geometry.point import Point
from boardplan.model.board import Board, Exit
from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.joins import with_dependants
from boardplan.model.plan import COLLECTIONS, Plan, Thing

Direction: TypeAlias = Literal["left", "right", "up", "down"]
T = TypeVar("T", bound=Thing)

_STEPS: dict[Direction, Point] = {
    "left": Point(-1, 0),
    "right": Point(1, 0),
    "up": Point(0, 1),
    "down": Point(0, -1),
}


def move_things(plan: Plan, ids: Iterable[str], by: Point) -> Plan:
    """Return the plan with things moved on their boards, and boards on the wall.

    Framing moves across its own direction, an exit over an edge slides along the outline, a locked
    component stays, a cable's pins stay. What is on a moved board goes with it, and so do the pins of
    cables that don't leave the moved boards.
    """
    things = things_of(plan, ids)
    boards = {thing.id for thing in things if isinstance(thing, Board)}
    moved = [_moved(plan, thing, by) for thing in things if getattr(thing, "board", None) not in boards]
    return with_changed(plan, [*moved, *_carried_pins(plan, boards, by)])


def nudge(plan: Plan, ids: Iterable[str], direction: Direction, step: float = 1.0) -> Plan:
    """Return the plan with things moved one step of a length in a direction."""
    unit = _STEPS[direction]
    return move_things(plan, ids, Point(unit.x * step, unit.y * step))


def _moved(plan: Plan, thing: Thing, by: Point) -> Thing:
    if isinstance(thing, Component) and thing.locked:
        return thing
    moved = moved_thing(thing, by)
    return replace(moved, position=_exit_place(plan, moved)) if isinstance(moved, Exit) else moved


def _exit_place(plan: Plan, exit_: Exit) -> Point:
    at = exit_.position
    return nearest_on_ring(plan.boards[exit_.board].outline, at) if exit_.through == "edge" else at


def _carried_pins(plan: Plan, boards: set[str], by: Point) -> list[Cable]:
    def at_home(end: CableEnd) -> bool:
        thing = plan.components[end.component] if isinstance(end, TerminalEnd) else plan.exits[end.exit]
        return thing.board in boards

    return [
        replace(cable, pins=tuple(pin.moved(*by) for pin in cable.pins))
        for cable in plan.cables.values()
        if boards and cable.pins and all(at_home(end) for end in cable.ends)
    ]


def remove_things(plan: Plan, ids: Iterable[str]) -> Plan:
    """Return the plan without things and all that can't be without them; acceptances about them go too.

    Raises EditRefused for a locked component and for the last board.
    """
    things = things_of(plan, ids)
    locked = [thing.id for thing in things if isinstance(thing, Component) and thing.locked]
    if locked:
        raise EditRefused(f"{', '.join(locked)} is locked. Unlock it to remove it.")
    gone = with_dependants(plan, (thing.id for thing in things))
    if plan.boards and gone.issuperset(plan.boards):
        raise EditRefused("A job needs at least one board.")
    if not gone:
        return plan
    kept = tuple(each for each in plan.accepted if gone.isdisjoint(each.things))
    return replace(plan.without(gone), accepted=kept if len(kept) < len(plan.accepted) else plan.accepted)


def put_thing(plan: Plan, thing: Thing) -> Plan:
    """Return the plan with a thing's new value in the place of the old one; its id and sort stay.

    Raises EditRefused.
    """
    old = plan.things.get(thing.id)
    if old is None:
        raise EditRefused(f"There is nothing called {thing.id} in this job.")
    if type(old) is not type(thing):
        raise EditRefused(f"{thing.id} can't become something else.")
    return with_changed(plan, [thing])


def rename_thing(plan: Plan, old: str, new: str) -> Plan:
    """Return the plan with another reference for a thing; cables, boards and acceptances that name it follow.

    Raises EditRefused.
    """
    (thing,) = things_of(plan, [old])
    new = new.strip()
    if new == old:
        return plan
    refuse_bad_reference(plan, new)
    collections: dict[str, Mapping[str, Thing]] = {
        name: _renamed(getattr(plan, name), isinstance(thing, Board), old, new) for name in COLLECTIONS.values()
    }
    accepted = tuple(
        replace(each, things=tuple(new if thing_id == old else thing_id for thing_id in each.things))
        for each in plan.accepted
    )
    return replace(plan, accepted=accepted, **collections)  # type: ignore[arg-type]


def _renamed(things: Mapping[str, T], board: bool, old: str, new: str) -> Mapping[str, T]:  # noqa: FBT001
    """Return a collection in its order with one name changed; the same mapping where it isn't in there."""
    renamed = {}
    for key, thing in things.items():
        held: Thing = replace(thing, id=new) if key == old else thing
        if isinstance(held, Cable):
            held = replace(held, start=_end_renamed(held.start, old, new), end=_end_renamed(held.end, old, new))
        elif board and is_on_board(held) and held.board == old:
            held = replace(held, board=new)
        renamed[held.id] = held if held != thing else thing
    return things if all(renamed.get(key) is thing for key, thing in things.items()) else renamed  # type: ignore[return-value]


def _end_renamed(end: CableEnd, old: str, new: str) -> CableEnd:
    if isinstance(end, TerminalEnd):
        return replace(end, component=new) if end.component == old else end
    return replace(end, exit=new) if end.exit == old else end
