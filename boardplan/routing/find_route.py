"""Find route: the way of every cable of a plan, pinned by a person or found, on the wall.

Functions: find_routes(plan) -> {cable id: Route | NoWay}; refreshed_routes(old_plan, old_ways, new_plan) -> the same
for a changed plan, with the same objects where nothing changed.
"""

from collections.abc import Mapping

from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.changes import Changes
from boardplan.routing.one_way import found_again, found_way, pinned_way
from boardplan.routing.route import Way
from boardplan.routing.sharing.capacity import spread_over_channels
from boardplan.routing.square.surroundings import Surroundings, changed_surroundings, remembered, surroundings_of
from boardplan.routing.together.side_by_side import laid_side_by_side
from boardplan.routing.together.stirred import Stirred, alone


def find_routes(plan: Plan) -> dict[str, Way]:
    """Return the way of every cable, in the plan's order."""
    around = remembered(surroundings_of(plan))
    return laid_side_by_side(around, _spread(around, {cable.id: _way(around, cable) for cable in plan.cables.values()}))


def refreshed_routes(old_plan: Plan, old_ways: Mapping[str, Way], new_plan: Plan) -> dict[str, Way]:
    """Return the ways of a changed plan: those of find_routes, as the same objects where nothing changed.

    A way is looked for again if its cable or an end changed, or if something changed so near it that a way
    of its cost could touch it; all others can neither be blocked nor become better.
    """
    around = changed_surroundings(new_plan)
    changes = Changes(old_plan, around)
    ways = {cable.id: _refreshed(around, cable, old_ways.get(cable.id), changes) for cable in new_plan.cables.values()}
    spread = _spread(around, ways)
    everything = changes.everywhere or changes.channels
    settled = laid_side_by_side(around, spread, None if everything else Stirred(around, old_ways, spread, changes))
    return {name: old_ways[name] if old_ways.get(name) == way else way for name, way in settled.items()}


def _refreshed(around: Surroundings, cable: Cable, old: Way | None, changes: Changes) -> Way:
    """Return the way a cable takes alone, as the same object where that is no other one."""
    if old is None:
        return _way(around, cable)
    was = alone(old)
    if not changes.concern(cable, old):
        near = changes.near(cable, old)
        if not near or found_again(around, cable, was, near):
            return was
    way = _way(around, cable, was)
    return was if was == way else way


def _spread(around: Surroundings, ways: Mapping[str, Way]) -> dict[str, Way]:
    return spread_over_channels(around.plan, ways, lambda cable, full: found_way(around, cable, full))


def _way(around: Surroundings, cable: Cable, before: Way | None = None) -> Way:
    return pinned_way(around.plan, cable) if cable.pins else found_way(around, cable, before=before)
