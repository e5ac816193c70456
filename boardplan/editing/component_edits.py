"""Component edits: place, move, turn, label components, and put another kind in a component's place."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from typing import Literal, TypeAlias

from boardplan.editing.lookup import board_of, component_of, components_of
from boardplan.editing.references import next_reference
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, Stage
from boardplan.model.fastener import Fastener
from boardplan.model.placed import placed
from boardplan.model.plan import Plan

About: TypeAlias = Literal["each", "group"]

TURN_STEP = 0.5
"""Turned components come to lie on multiples of this, in mm: what a tape measure shows."""


def place_component(
    plan: Plan,
    kind: ComponentKind,
    fasteners: Mapping[str, Fastener],
    board: str,
    at: Point,
    *,
    turn: float = 0.0,
) -> tuple[Plan, str]:
    """Return the plan with a component of a kind, and its reference; its lower left comes to lie at a point.

    Kind and fastener are copied into the job unless it has its own. Raises EditRefused.
    """
    board_of(plan, board)
    stocked = with_kind(plan, kind, fasteners)
    component = Component(next_reference(plan, kind.prefix), kind.id, board, at, turn % 360.0)
    return with_changed(stocked, [component]), component.id


def with_kind(plan: Plan, kind: ComponentKind, fasteners: Mapping[str, Fastener]) -> Plan:
    """Return the plan with a kind and its fastener among its own; what the job has already is kept as it is.

    Raises EditRefused where the kind's fastener is nowhere to be found.
    """
    if kind.id in plan.kinds:
        return plan
    held = plan.fasteners
    if kind.fastener and kind.fastener not in held:
        if kind.fastener not in fasteners:
            raise EditRefused(f"{kind.name} wants the fastener {kind.fastener}, which is not on the shelf.")
        held = {**held, kind.fastener: fasteners[kind.fastener]}
    return replace(plan, kinds={**plan.kinds, kind.id: kind}, fasteners=held)


def move_components(plan: Plan, ids: Iterable[str], by: Point) -> Plan:
    """Return the plan with components moved; locked ones stay, pinned ways of cables stay as they are."""
    moved = [replace(each, position=each.position.moved(*by)) for each in components_of(plan, ids) if not each.locked]
    return with_changed(plan, moved)


def put_component(plan: Plan, component_id: str, at: Point, board: str | None = None) -> Plan:
    """Return the plan with the lower left of a component at a point, if wanted of another board.

    Raises EditRefused for a locked component.
    """
    component = component_of(plan, component_id)
    put = replace(component, position=at, board=board or component.board)
    if component.locked and put != component:
        raise EditRefused(f"{component_id} is locked. Unlock it to move it.")
    return with_changed(plan, [put])


def turn_components(plan: Plan, ids: Iterable[str], degrees: float, about: About = "each") -> Plan:
    """Return the plan with components turned counter-clockwise, each about its middle or all about the group's.

    The box round a turned outline lands on half millimetres; locked components stay.
    """
    turned = [each for each in components_of(plan, ids) if not each.locked]
    if not turned or degrees % 360.0 == 0:
        return plan
    pivot = box_of(plan, [each.id for each in turned]).centre
    return with_changed(plan, [_turned(plan, each, degrees, pivot if about == "group" else None) for each in turned])


def _turned(plan: Plan, component: Component, degrees: float, pivot: Point | None) -> Component:
    centre = placed(plan, component).centre
    if pivot is not None:
        centre = centre.minus(pivot).turned(degrees).moved(*pivot)
    turn = (component.turn + degrees) % 360.0
    box = box_around(Point(*each).turned(turn) for each in plan.kind_of(component).outline)
    corner = Point(_on_step(centre.x - box.width / 2), _on_step(centre.y - box.height / 2))
    return replace(component, turn=turn, position=corner)


def _on_step(value: float) -> float:
    return round(value / TURN_STEP) * TURN_STEP


def box_of(plan: Plan, ids: Collection[str]) -> Box:
    """Return the box round components, in board coordinates. Raises EditRefused for none."""
    if not ids:
        raise EditRefused("No component is selected.")
    return box_around(corner for each in components_of(plan, ids) for corner in placed(plan, each).box.corners())


def set_label(plan: Plan, component_id: str, label: str) -> Plan:
    """Return the plan with other words on a component's label."""
    return with_changed(plan, [replace(component_of(plan, component_id), label=label.strip())])


def set_stage(plan: Plan, ids: Iterable[str], stage: Stage | None) -> Plan:
    """Return the plan with components mounted in the shop or on site; none leaves it to their kind."""
    return with_changed(plan, [replace(each, stage=stage) for each in components_of(plan, ids)])


def set_locked(plan: Plan, ids: Iterable[str], locked: bool) -> Plan:  # noqa: FBT001 - the value that is set
    """Return the plan with components held in their place, or free again."""
    return with_changed(plan, [replace(each, locked=locked) for each in components_of(plan, ids)])


def replace_kind(
    plan: Plan, component_id: str, kind: ComponentKind, fasteners: Mapping[str, Fastener]
) -> tuple[Plan, tuple[str, ...]]:
    """Return the plan with another kind in a component's place, and the cables that found no terminal there.

    Cables whose terminal has the same name stay; the others are removed.
    """
    component = component_of(plan, component_id)
    stocked = with_kind(plan, kind, fasteners)
    new_kind = stocked.kinds[kind.id]
    lost = tuple(each.id for each in plan.cables.values() if _loses_end(each, component_id, new_kind))
    return with_changed(stocked.without(lost), [replace(component, kind=kind.id)]), lost


def renew_kind(plan: Plan, kind: ComponentKind, fasteners: Mapping[str, Fastener]) -> tuple[Plan, tuple[str, ...]]:
    """Return the plan with a kind of its own as it was measured anew, and the cables that found no terminal there.

    Those are removed; a plan without the kind stays as it is. Raises EditRefused where its fastener is nowhere.
    """
    if kind.id not in plan.kinds:
        return plan, ()
    members = [each for each in plan.components.values() if each.kind == kind.id]
    lost = tuple(
        each.id for each in plan.cables.values() if any(_loses_end(each, member.id, kind) for member in members)
    )
    bare = replace(plan, kinds={key: each for key, each in plan.kinds.items() if key != kind.id})
    return with_kind(bare, kind, fasteners).without(lost), lost


def _loses_end(cable: Cable, component_id: str, kind: ComponentKind) -> bool:
    return any(
        isinstance(end, TerminalEnd) and end.component == component_id and kind.terminal(end.terminal) is None
        for end in cable.ends
    )
