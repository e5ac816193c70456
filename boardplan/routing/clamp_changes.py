"""Clamp changes: what holds the cables of a changed plan, with little looked at anew."""

from collections.abc import Iterator, Mapping
from typing import Any, TypeAlias

from boardplan.geometry.point import Box, box_around
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.clamp_room import cable_boxes, exit_box, head_box
from boardplan.routing.clamps import Holding, Setter, holding_of, holding_with
from boardplan.routing.route import Way

Ways: TypeAlias = Mapping[str, Way]


def refreshed_holding(old_plan: Plan, old_ways: Ways, old: Holding, plan: Plan, ways: Ways) -> Holding:
    """Return what `holding_of(plan, ways)` would; cables far from every change keep their clamps."""
    if plan.rules is not old_plan.rules or plan.boards is not old_plan.boards:
        return holding_of(plan, ways)
    changed = _changed_things(old_plan, plan) | _changed_cables(old_plan, old_ways, plan, ways)
    if not changed:
        return old
    clear = plan.rules.value("gap-between-components")
    boxes = [box.grown(clear) for box in (*_boxes(old_plan, old_ways, changed), *_boxes(plan, ways, changed))]
    kept = {
        key: lying
        for key, lying in old.lying.items()
        if key in plan.cables and not _touched(plan, plan.cables[key], ways, changed, boxes)
    }
    anew = [
        key
        for key in plan.cables
        if key not in kept and (key in old.lying or key in changed or _ends_in(plan.cables[key], changed))
    ]
    return holding_with(plan, ways, kept, anew)


def _changed_things(old: Plan, new: Plan) -> set[str]:
    """Return the ids of what came, went or changed and could stand in a clamp's way."""
    found: set[str] = set()
    for name in ("components", "channels", "exits", "fixings", "no_go_boxes"):
        before: Mapping[str, Any] = getattr(old, name)
        after: Mapping[str, Any] = getattr(new, name)
        if before is not after:
            found |= {key for key in before.keys() | after.keys() if before.get(key) is not after.get(key)}
    if old.kinds is not new.kinds:
        found |= {key for key, each in new.components.items() if old.kinds.get(each.kind) is not new.kind_of(each)}
    return found


def _changed_cables(old: Plan, old_ways: Ways, new: Plan, ways: Ways) -> set[str]:
    found = {key for key in old.cables.keys() | new.cables.keys() if old.cables.get(key) is not new.cables.get(key)}
    found |= {key for key in new.cables if old_ways.get(key) is not ways.get(key)}
    if old.conductors is not new.conductors:
        found |= {
            key
            for key, each in new.cables.items()
            if old.conductors.get(each.conductor) is not new.conductors[each.conductor]
        }
    return found


def _boxes(plan: Plan, ways: Ways, ids: set[str]) -> Iterator[Box]:
    """Yield where things of a plan are on the wall."""
    for key in ids:
        if key in plan.components:
            component = plan.components[key]
            yield placed(plan, component).box.moved(*plan.boards[component.board].position)
        elif key in plan.channels:
            channel = plan.channels[key]
            line = [plan.on_wall(channel.board, point) for point in channel.line]
            yield box_around(line).grown(channel.width)
        elif key in plan.exits:
            yield exit_box(plan, plan.exits[key])
        elif key in plan.fixings:
            yield head_box(plan, plan.fixings[key])
        elif key in plan.no_go_boxes:
            no_go = plan.no_go_boxes[key]
            yield no_go.box.moved(*plan.boards[no_go.board].position)
        elif key in plan.cables:
            yield from cable_boxes(plan, plan.cables[key], ways.get(key))


def _touched(plan: Plan, cable: Cable, ways: Ways, changed: set[str], boxes: list[Box]) -> bool:
    """Say whether a cable, an end of it or something near it changed."""
    if cable.id in changed or _ends_in(cable, changed):
        return True
    own, by = cable_boxes(plan, cable, ways.get(cable.id)), Setter(plan).reach_of(cable)
    around = box_around(corner for box in own for corner in (box[:2], box[2:])).grown(by)
    near = [box for box in boxes if box.touches(around)]
    return any(a.grown(by).touches(b) for a in own for b in near)


def _ends_in(cable: Cable, changed: set[str]) -> bool:
    return any((end.component if isinstance(end, TerminalEnd) else end.exit) in changed for end in cable.ends)
