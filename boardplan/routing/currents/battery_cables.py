"""Battery cables: which cables lead from a battery to its shut-off, so that supports come closer along them.

A battery is a component of the batteries' family, or an end off the board, or an exit, that is called one. From there
the walk goes on through units in line, fuses and shunts with two thick terminals, and ends at a shut-off, at a bus,
at a load, at anything else: what is beyond hangs behind the shut-off or belongs to several circuits.
"""

import re
from collections.abc import Mapping

from boardplan.model.cable import Cable, CableEnd, ExitEnd, OffBoardEnd
from boardplan.model.component_kind import ComponentKind
from boardplan.model.plan import Plan
from boardplan.routing.currents.current_flow import role_of

_BATTERY = re.compile(r"\bbatter(y|ies)\b", re.IGNORECASE)
_IN_LINE = 2
"""A unit in line has as many thick terminals."""


def battery_cables(plan: Plan) -> frozenset[str]:
    """Return the ids of the direct-current cables between batteries and their shut-offs."""
    cables = {key: each for key, each in plan.cables.items() if each.cable_class == "dc"}
    on: dict[str, list[str]] = {}
    for key, cable in cables.items():
        for end in cable.ends:
            on.setdefault(_unit(end), []).append(key)
    found = {key for key, each in cables.items() if any(_is_battery(plan, end) for end in each.ends)}
    waiting = list(found)
    while waiting:
        for end in cables[waiting.pop()].ends:
            if _unit(end) and _passes(plan, _unit(end)):
                beyond = set(on[_unit(end)]) - found
                found |= beyond
                waiting += beyond
    return frozenset(found)


def battery_end(plan: Plan, cable: Cable) -> OffBoardEnd | None:
    """Return the end of a cable on a battery that stands off the board; none where it has no such end."""
    ends = (end for end in cable.ends if isinstance(end, OffBoardEnd))
    return next((end for end in ends if _is_battery(plan, end)), None)


def _unit(end: CableEnd) -> str:
    return "" if isinstance(end, ExitEnd | OffBoardEnd) else end.component


def _is_battery(plan: Plan, end: CableEnd) -> bool:
    if isinstance(end, OffBoardEnd):
        return bool(_BATTERY.search(end.name))
    if isinstance(end, ExitEnd):
        return bool(_BATTERY.search(plan.exits[end.exit].name))
    return role_of(plan.kind_of(plan.components[end.component])) == "battery"


def _passes(plan: Plan, unit: str) -> bool:
    """Say whether a battery cable goes on at the other side of a unit."""
    kind = plan.kind_of(plan.components[unit])
    return role_of(kind) in {"fuse", "shunt"} and _thick_terminals(kind) == _IN_LINE


def _thick_terminals(kind: ComponentKind) -> int:
    return sum(each.sort in {"stud", "clamp"} and each.pole != "signal" for each in kind.terminals)


def same_wiring(old: Plan, new: Plan) -> bool:
    """Say whether nothing changed that battery cables hang on."""
    names = ("cables", "exits", "kinds")
    if any(getattr(old, name) is not getattr(new, name) for name in names):
        return False
    return old.components is new.components or _same_kinds(old.components, new.components)


def _same_kinds(old: Mapping[str, object], new: Mapping[str, object]) -> bool:
    """Say whether two plans have the same components, each of its kind, wherever they are."""
    return old.keys() == new.keys() and all(
        each is new[key] or getattr(each, "kind", "") == getattr(new[key], "kind", "") for key, each in old.items()
    )
