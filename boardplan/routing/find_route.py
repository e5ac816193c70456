"""Find route: the way of every cable of a plan, pinned by a person or found, on the wall.

Functions: find_routes(plan) -> {cable id: Route | NoWay}; refreshed_routes(old_plan, old_ways, new_plan) -> the same
for a changed plan, with the same objects where nothing changed.
"""

from collections.abc import Mapping

from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.capacity import spread_over_channels
from boardplan.routing.changes import Changes
from boardplan.routing.one_way import found_way, pinned_way
from boardplan.routing.route import Way
from boardplan.routing.side_by_side import alone, laid_side_by_side
from boardplan.routing.surroundings import Surroundings, surroundings_of


def find_routes(plan: Plan) -> dict[str, Way]:
    """Return the way of every cable, in the plan's order."""
    around = surroundings_of(plan)
    return _settled(around, {cable.id: _way(around, cable) for cable in plan.cables.values()})


def refreshed_routes(old_plan: Plan, old_ways: Mapping[str, Way], new_plan: Plan) -> dict[str, Way]:
    """Return the ways of a changed plan: those of find_routes, as the same objects where nothing changed.

    A way is looked for again if its cable or an end changed, or if something changed so near it that a way
    of its cost could touch it; all others can neither be blocked nor become better.
    """
    around = surroundings_of(new_plan)
    changes = Changes(old_plan, new_plan, around.blockers)
    ways: dict[str, Way] = {}
    for cable in new_plan.cables.values():
        old = old_ways.get(cable.id)
        stands = old is not None and not changes.concern(cable, old)
        ways[cable.id] = alone(old) if stands and old is not None else _way(around, cable)
    settled = _settled(around, ways)
    return {name: old_ways[name] if old_ways.get(name) == way else way for name, way in settled.items()}


def _settled(around: Surroundings, ways: Mapping[str, Way]) -> dict[str, Way]:
    spread = spread_over_channels(around.plan, ways, lambda cable, full: found_way(around, cable, full))
    return laid_side_by_side(around, spread)


def _way(around: Surroundings, cable: Cable) -> Way:
    return pinned_way(around.plan, cable) if cable.pins else found_way(around, cable)
