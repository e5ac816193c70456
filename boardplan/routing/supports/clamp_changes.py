"""Clamp changes: what holds the cables of a changed plan, with little looked at anew."""

from collections.abc import Mapping
from typing import Any, TypeAlias

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.currents.battery_cables import battery_cables, same_wiring
from boardplan.routing.route import Route, Way
from boardplan.routing.supports.clamp_obstacles import Obstacle, obstacles_of
from boardplan.routing.supports.clamp_room import Room
from boardplan.routing.supports.clamp_setter import Lying
from boardplan.routing.supports.clamps import Differing, Holding, Surroundings, holding_of, holding_with

Ways: TypeAlias = Mapping[str, Way]

_GROUPS = ("components", "channels", "exits", "fixings", "no_go_boxes", "back_parts")


def refreshed_holding(old_plan: Plan, old_ways: Ways, old: Holding, plan: Plan, ways: Ways) -> Holding:
    """Return what `holding_of(plan, ways)` would; cables far from every change keep their clamps."""
    if any(getattr(old_plan, name) is not getattr(plan, name) for name in ("rules", "boards", "fasteners")):
        return holding_of(plan, ways)
    changed = _changed_things(old_plan, plan) | _changed_cables(old_plan, old_ways, plan, ways)
    if not changed:
        return old
    around, differing = _moved_on(old_plan, old.around, plan, ways, changed)
    anew = changed | (old.around.battery ^ around.battery)
    anew |= {key for key, each in plan.cables.items() if key not in anew and _hangs_on(each, ways.get(key), changed)}
    anew |= {key for key, each in old.lying.items() if key not in anew and _near(each, differing)}
    return holding_with(plan, ways, around, old, Differing(anew, differing))


def _moved_on(
    old_plan: Plan, old: Surroundings, plan: Plan, ways: Ways, changed: set[str]
) -> tuple[Surroundings, Room]:
    """Return what stands in the way now, and all of it that is not as it was; what stays is the very same."""
    obstacles, gone, come = dict(old.obstacles), list[Obstacle](), list[Obstacle]()
    for key in changed:
        left = {each: each for each in obstacles.pop(key, ())}
        before = dict(left)
        now = [left.pop(each, each) for each in obstacles_of(plan, ways, key)]
        gone += left.values()
        come += (each for each in now if before.get(each) is not each)
        if now:
            obstacles[key] = tuple(now)
    battery = old.battery if same_wiring(old_plan, plan) else battery_cables(plan)
    return Surroundings(obstacles, old.room.with_changes(gone, come), battery), Room([*gone, *come])


def _changed_things(old: Plan, new: Plan) -> set[str]:
    """Return the ids of what came, went or changed and could stand in a clamp's way."""
    found: set[str] = set()
    for name in _GROUPS:
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


def _hangs_on(cable: Cable, way: Way | None, changed: set[str]) -> bool:
    """Say whether an end of a cable changed, or a channel that holds it."""
    if any((end.component if isinstance(end, TerminalEnd) else end.exit) in changed for end in cable.ends):
        return True
    return isinstance(way, Route) and any(part.channel in changed for part in way.in_channels)


def _near(lying: Lying, differing: Room) -> bool:
    """Say whether anything that differs could be in the way of a cable's clamps."""
    return any(differing.reaches(seat.bench.around) for seat in lying.seats)
