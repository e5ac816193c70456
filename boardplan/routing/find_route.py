"""Find route: the way of every cable of a plan, pinned by a person or found, on the wall.

Functions: find_routes(plan) -> {cable id: Route | NoWay}; refreshed_routes(old_plan, old_ways, new_plan) -> the same
for a changed plan, with the same objects where nothing changed.
"""

from collections.abc import Mapping

from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.one_way import Surroundings, found_way, pinned_way, surroundings_of
from boardplan.routing.route import Way


def find_routes(plan: Plan) -> dict[str, Way]:
    """Return the way of every cable, in the plan's order."""
    around = surroundings_of(plan)
    return {cable.id: _way(around, cable) for cable in plan.cables.values()}


def refreshed_routes(old_plan: Plan, old_ways: Mapping[str, Way], new_plan: Plan) -> dict[str, Way]:
    """Return the ways of a changed plan: those of find_routes, as the same objects where nothing changed."""
    found = find_routes(new_plan)
    if new_plan is old_plan:
        return dict(old_ways)
    return {key: old_ways[key] if old_ways.get(key) == way else way for key, way in found.items()}


def _way(around: Surroundings, cable: Cable) -> Way:
    return pinned_way(around.plan, cable) if cable.pins else found_way(around, cable)
