"""How long a whole check takes, and one after a component has moved: python tests/bench/recheck.py job.json.

Times are the best of several runs in ms of the processor, with the finding of ways and without; of the moves
the median counts. Without a job file the crowded board is taken.
"""

import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from statistics import median
from time import process_time
from timeit import repeat

from crowded_board import crowded_plan

from boardplan.checks.review import refreshed, refreshed_with_ways, review_of, review_with_ways
from boardplan.files.plan_file import load_plan
from boardplan.model.plan import Plan
from boardplan.routing.find_route import refreshed_routes

RUNS = 5
MOVED = 16


def milliseconds(work: Callable[[], object], runs: int = RUNS) -> float:
    """Return how long work takes, the best of a few runs."""
    return min(repeat(work, number=1, repeat=runs, timer=process_time)) * 1000


def moved_plans(plan: Plan) -> list[Plan]:
    """Return plans with one component 5 mm further right, each time another one."""
    chosen = list(plan.components.values())[:: max(1, len(plan.components) // MOVED)]
    return [plan.with_things([replace(held, position=held.position.moved(5, 0))]) for held in chosen]


def main() -> None:
    """Print the times of one job file."""
    plan = load_plan(Path(sys.argv[1])) if len(sys.argv) > 1 else crowded_plan()
    review = review_of(plan)
    whole = milliseconds(lambda: review_with_ways(plan, review.ways))
    with_routes = milliseconds(lambda: review_of(plan), runs=1)
    after, after_with_routes, rerouted = [], [], []
    for moved in moved_plans(plan):
        ways = refreshed_routes(plan, review.ways, moved)
        after.append(milliseconds(lambda moved=moved, ways=ways: refreshed_with_ways(review, moved, ways)))
        rerouted.append(sum(way is not review.ways.get(key) for key, way in ways.items()))
        after_with_routes.append(milliseconds(lambda moved=moved: refreshed(review, moved), runs=1))
    rows = (
        ("without finding ways", whole, median(after)),
        ("with finding ways", with_routes, median(after_with_routes)),
    )
    sys.stdout.write(f"{len(plan.components)} components, {len(plan.cables)} cables, {len(review.findings)} findings\n")
    for words, first, second in rows:
        sys.stdout.write(f"{words}: whole {first:.2f} ms, after one move {second:.2f} ms, 1/{first / second:.0f}\n")
    sys.stdout.write(f"cables with another way after one move: {median(rerouted):g}, at most {max(rerouted)}\n")
    sys.stdout.write(f"without finding ways, longest after one move {max(after):.2f} ms\n")


if __name__ == "__main__":
    main()
