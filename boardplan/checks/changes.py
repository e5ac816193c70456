"""Changes: what a new plan alters, as far as checks have to look again."""

from collections.abc import Mapping
from dataclasses import dataclass

from boardplan.checks.site import Site
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.plan import COLLECTIONS, Plan
from boardplan.routing.channel_fill import ChannelFill
from boardplan.routing.cut_length import CutLength
from boardplan.routing.route import Way


@dataclass(frozen=True, slots=True)
class Told:
    """What is known of the things of a plan beside the plan itself."""

    ways: Mapping[str, Way]
    lengths: Mapping[str, CutLength]
    fills: Mapping[str, ChannelFill]
    loads: Mapping[str, float | None]


_GROUND = ("job", "rules", "boards", "framing")


def ground_changed(old: Plan, new: Plan) -> bool:
    """Say whether a plan differs in what everything stands on: then nothing of an old review holds."""
    if any(getattr(old, name) is not getattr(new, name) for name in _GROUND):
        return True
    return any(new.fasteners.get(key) is not each for key, each in old.fasteners.items())


def moved_things(old: Plan, new: Plan, old_ways: Mapping[str, Way], ways: Mapping[str, Way]) -> set[str]:
    """Return the ids of things that came, went or changed themselves, with the cables on them."""
    moved = {
        key
        for name in COLLECTIONS.values()
        if getattr(old, name) is not getattr(new, name)
        for key in _differing(getattr(old, name), getattr(new, name))
    }
    if old.kinds is not new.kinds:
        moved |= {each.id for each in new.components.values() if _kind_differs(old, new, each)}
    for cable in new.cables.values():
        if cable.id in moved or ways.get(cable.id) is not old_ways.get(cable.id) or _end_moved(cable, moved):
            moved.add(cable.id)
    if old.conductors is not new.conductors:
        moved |= {
            each.id
            for each in new.cables.values()
            if old.conductors.get(each.conductor) is not new.conductors[each.conductor]
        }
    return moved


def _differing(old: Mapping[str, object], new: Mapping[str, object]) -> set[str]:
    changed = {key for key, thing in new.items() if old.get(key) is not thing}
    return changed | (old.keys() - new.keys())


def _kind_differs(old: Plan, new: Plan, component: Component) -> bool:
    return old.kinds.get(component.kind) is not new.kinds[component.kind]


def _end_moved(cable: Cable, moved: set[str]) -> bool:
    first, second = cable.start, cable.end
    return (first.component if isinstance(first, TerminalEnd) else first.exit) in moved or (
        second.component if isinstance(second, TerminalEnd) else second.exit
    ) in moved


def told_anew(site: Site, plan: Plan, told: Told, moved: set[str]) -> set[str]:
    """Return the ids of things that lie as before, but of which something else is known now."""
    anew = {key for key, fill in told.fills.items() if _fill_changed(site.fills.get(key), fill, moved)}
    if told.lengths is not site.lengths:
        anew |= {key for key, length in told.lengths.items() if key not in moved and site.lengths.get(key) != length}
    if told.loads != site.loads:
        loaded = {key for key, load in told.loads.items() if site.loads.get(key) != load}
        anew |= {each.id for each in plan.fixings.values() if each.board in loaded}
    return anew - moved


def _fill_changed(old: ChannelFill | None, new: ChannelFill, moved: set[str]) -> bool:
    return old != new or any(not moved.isdisjoint(section.cables) for section in new.sections)
