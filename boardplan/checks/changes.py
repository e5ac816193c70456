"""Changes: what a new plan alters, as far as checks have to look again, and the sums that come out anew."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from boardplan.checks.site import Site
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.plan import COLLECTIONS, Plan
from boardplan.routing.channels.channel_fill import ChannelFill, channel_fills
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.rises import passing_moved
from boardplan.routing.route import Route, Way
from boardplan.routing.supports.clamp_changes import refreshed_holding
from boardplan.routing.supports.clamps import Holding

Ways = Mapping[str, Way]
_GROUND = ("job", "rules", "boards", "framing")


def ground_changed(old: Plan, new: Plan) -> bool:
    """Say whether a plan differs in what everything stands on: then nothing of an old review holds."""
    if any(getattr(old, name) is not getattr(new, name) for name in _GROUND):
        return True
    return any(new.fasteners.get(key) is not each for key, each in old.fasteners.items())


def moved_things(old: Plan, new: Plan, old_ways: Ways, ways: Ways) -> set[str]:
    """Return the ids of things that came, went or changed themselves, with the cables on them."""
    moved = {
        key
        for name in COLLECTIONS.values()
        if getattr(old, name) is not getattr(new, name)
        for key in _differing(getattr(old, name), getattr(new, name))
    }
    if old.kinds is not new.kinds:
        moved |= {each.id for each in new.components.values() if _kind_differs(old, new, each)}
    moved |= {key for key, way in ways.items() if old_ways.get(key) is not way}
    moved |= {cable.id for cable in new.cables.values() if not moved.isdisjoint(_ends(cable))}
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


def _ends(cable: Cable) -> tuple[str, str]:
    """Return the ids of the components or exits that a cable ends on."""
    first, second = cable.start, cable.end
    return (
        first.component if isinstance(first, TerminalEnd) else first.exit,
        second.component if isinstance(second, TerminalEnd) else second.exit,
    )


def lengths_anew(site: Site, plan: Plan, ways: Ways, moved: set[str]) -> tuple[Mapping[str, CutLength], set[str]]:
    """Return the cut lengths of a changed plan, and which were summed up anew: of moved cables and their groups.

    A cable that lies over or in something that moved may get higher or lower, so it counts as moved.
    """
    old, new = site.plan.cables, plan.cables
    moved = moved | passing_moved((site.plan, plan), ways, moved)
    if old is new and moved.isdisjoint(new):
        return site.lengths, set()
    touched = {key for key in moved if key in old or key in new}
    groups = {cables[key].group for cables in (old, new) for key in touched if key in cables} - {""}
    summed = {key: cable for key, cable in new.items() if key in touched or cable.group in groups}
    fresh = cut_lengths(replace(plan, cables=summed), ways)
    return {key: fresh.get(key) or site.lengths[key] for key in new}, set(summed)


def fills_anew(site: Site, plan: Plan, ways: Ways, moved: set[str]) -> tuple[Mapping[str, ChannelFill], set[str]]:
    """Return the fills of a changed plan's channels, and which were reckoned anew: of those a moved cable is in."""
    touched = {key for key in moved if key in plan.channels}
    for key in moved:
        touched.update(_channels_of(site.ways.get(key)), _channels_of(ways.get(key)))
    reckoned = {key: channel for key, channel in plan.channels.items() if key in touched}
    if not reckoned and site.plan.channels is plan.channels:
        return site.fills, set()
    fresh = channel_fills(replace(plan, channels=reckoned), ways)
    return {key: fresh.get(key) or site.fills[key] for key in plan.channels}, set(reckoned)


def _channels_of(way: Way | None) -> Iterator[str]:
    return (part.channel for part in way.in_channels) if isinstance(way, Route) else iter(())


def holding_anew(site: Site, plan: Plan, ways: Ways) -> tuple[Holding, set[str]]:
    """Return what holds the cables of a changed plan, and the cables that are held otherwise than before."""
    old = site.holding.held
    new = refreshed_holding(site.plan, site.ways, site.holding, plan, ways)
    return new, {key for key, held in new.held.items() if old.get(key) != held}


def loaded_anew(site: Site, plan: Plan, loads: Mapping[str, float | None]) -> set[str]:
    """Return the board fixings that carry something else than before."""
    if loads == site.loads:
        return set()
    boards = {key for key, load in loads.items() if site.loads.get(key) != load}
    return {each.id for each in plan.fixings.values() if each.board in boards}
