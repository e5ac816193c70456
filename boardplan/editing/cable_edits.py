"""Cable edits: connect two ends, change what a cable is, pin its way."""

from collections.abc import Sequence
from dataclasses import replace
from typing import TypedDict, Unpack

from boardplan.editing.lookup import cable_of
from boardplan.editing.references import next_reference
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, CableClass, CableEnd, SlackClass, TerminalEnd, Way
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan

_MOST_PINS = 200
_MOST_ALIKE = 1000


class CableFields(TypedDict, total=False):
    """What can be changed of a cable; a conductor is copied into the job."""

    start: CableEnd
    end: CableEnd
    conductor: Conductor
    colour: str
    cable_class: CableClass
    way: Way
    count: int
    slack: SlackClass | None
    group: str
    label: str


def connect(
    plan: Plan, start: CableEnd, end: CableEnd, conductor: Conductor, colour: str, cable_class: CableClass
) -> tuple[Plan, str]:
    """Return the plan with a cable between two ends, and its reference: W01, W02 and so on.

    The conductor is copied into the job unless it has its own of that name. Raises EditRefused.
    """
    _refuse_ends(plan, start, end)
    reference = next_reference(plan, "W", digits=2)
    cable = Cable(reference, start, end, conductor.id, colour.strip(), cable_class)
    return with_changed(with_conductor(plan, conductor), [cable]), reference


def with_conductor(plan: Plan, conductor: Conductor) -> Plan:
    """Return the plan with a conductor among its own; one of that name in the job is kept as it is."""
    if conductor.id in plan.conductors:
        return plan
    return replace(plan, conductors={**plan.conductors, conductor.id: conductor})


def set_cable(plan: Plan, cable_id: str, **fields: Unpack[CableFields]) -> Plan:
    """Return the plan with fields of a cable changed. Raises EditRefused."""
    cable = cable_of(plan, cable_id)
    conductor = fields.pop("conductor", None)
    changed = replace(cable, **fields)  # type: ignore[arg-type]
    if conductor is not None:
        plan = with_conductor(plan, conductor)
        changed = replace(changed, conductor=conductor.id)
    if changed.ends != cable.ends:
        _refuse_ends(plan, *changed.ends)
    if not 1 <= changed.count <= _MOST_ALIKE:
        raise EditRefused(f"There can be 1 to {_MOST_ALIKE} cables alike, not {changed.count}.")
    return with_changed(plan, [changed])


def reverse(plan: Plan, cable_id: str) -> Plan:
    """Return the plan with a cable's ends exchanged; it lies as before.

    The clocking of a lug is seen from the first end, so seen from the other end it turns the other way.
    """
    cable = cable_of(plan, cable_id)
    changed = replace(cable, start=_seen_from_behind(cable.end), end=_seen_from_behind(cable.start))
    return with_changed(plan, [replace(changed, pins=tuple(reversed(cable.pins)))])


def _seen_from_behind(end: CableEnd) -> CableEnd:
    if isinstance(end, TerminalEnd) and end.lug:
        return replace(end, lug=replace(end.lug, clocking=0.0 - end.lug.clocking))
    return end


def pin_way(plan: Plan, cable_id: str, pins: Sequence[Point]) -> Plan:
    """Return the plan with a cable that turns at these corners, on the wall, and nowhere else."""
    if len(pins) > _MOST_PINS:
        raise EditRefused(f"A way can't have more than {_MOST_PINS} corners.")
    return with_changed(plan, [replace(cable_of(plan, cable_id), pins=tuple(pins))])


def move_pin(plan: Plan, cable_id: str, index: int, to: Point) -> Plan:
    """Return the plan with one corner of a pinned way elsewhere. Raises EditRefused."""
    pins = cable_of(plan, cable_id).pins
    if not 0 <= index < len(pins):
        raise EditRefused(f"Cable {cable_id} has no pinned corner {index + 1}.")
    return pin_way(plan, cable_id, (*pins[:index], to, *pins[index + 1 :]))


def unpin(plan: Plan, cable_id: str) -> Plan:
    """Return the plan with a cable whose way is left to the program."""
    return pin_way(plan, cable_id, ())


def end_words(end: CableEnd) -> str:
    """Return an end as people name it: component and terminal, exit, or what lies beyond the exit."""
    if isinstance(end, TerminalEnd):
        return f"{end.component} {end.terminal}"
    return end.exit


def _refuse_ends(plan: Plan, start: CableEnd, end: CableEnd) -> None:
    for each in (start, end):
        if isinstance(each, TerminalEnd):
            _refuse_terminal(plan, each)
        elif each.exit not in plan.exits:
            raise EditRefused(f"There is no exit {each.exit}.")
    if end_words(start) == end_words(end):
        raise EditRefused(f"A cable needs two ends; both are {end_words(start)}.")


def _refuse_terminal(plan: Plan, end: TerminalEnd) -> None:
    component = plan.components.get(end.component)
    if component is None:
        raise EditRefused(f"There is no component {end.component}.")
    if plan.kind_of(component).terminal(end.terminal) is None:
        raise EditRefused(f"{end.component} has no terminal {end.terminal}.")
