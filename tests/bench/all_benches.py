"""Measure what users wait for, each as a ratio to something of the same run; prints a table, asserts nothing.

python tests/bench/all_benches.py [JOB FILE]       (without a file: the crowded board)
"""

import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from crowded_board import crowded_plan

from boardplan.checks.review import refreshed, review_of
from boardplan.files.plan_file import load_plan, save_plan
from boardplan.geometry.point import Point
from boardplan.model.plan import Plan
from boardplan.routing.find_route import find_routes, refreshed_routes


def seconds(work: Callable[[], object], runs: int = 5) -> float:
    """Return the median time of some runs, after one that is not counted."""
    work()
    taken = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def moved_plans(plan: Plan, count: int = 20) -> list[Plan]:
    """Return plans with one component moved by 3 mm, another one each time."""
    chosen = list(plan.components.values())[:: max(1, len(plan.components) // count)][:count]
    return [plan.with_things([replace(each, position=Point(each.position.x + 3, each.position.y))]) for each in chosen]


def median_over(plans: list[Plan], work: Callable[[Plan], object]) -> float:
    """Return the median time of some work over plans."""
    return statistics.median(seconds(lambda plan=plan: work(plan), runs=3) for plan in plans)


def whole_process(*arguments: str) -> float:
    """Return the median time of a whole command."""
    return seconds(
        lambda: subprocess.run([sys.executable, "-m", "boardplan", *arguments], check=False, capture_output=True),
        runs=3,
    )


def main() -> None:
    """Measure and print."""
    plan = load_plan(Path(sys.argv[1])) if len(sys.argv) > 1 else crowded_plan()
    print(f"{plan.job.title}: {len(plan.components)} components, {len(plan.cables)} cables")
    review = review_of(plan)
    ways = review.ways
    plans = moved_plans(plan)
    routes, all_checks = seconds(lambda: find_routes(plan), 3), seconds(lambda: review_of(plan), 3)
    re_route = median_over(plans, lambda each: refreshed_routes(plan, ways, each))
    re_check = median_over(plans, lambda each: refreshed(review, each))
    rows = [
        ("find all ways", routes, routes),
        ("ways again after one component moved", re_route, routes),
        ("whole review: ways, lengths, fill, findings", all_checks, all_checks),
        ("review again after one component moved", re_check, all_checks),
        ("  of that without the ways", re_check - re_route, all_checks - routes),
    ]
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.json"
        save_plan(plan, path)
        empty = whole_process("--version")
        rows += [
            ("command: check", whole_process("check", str(path)), empty),
            ("command: cables --json", whole_process("cables", str(path), "--json"), empty),
            ("command: holes --json", whole_process("holes", str(path), "--json"), empty),
        ]
    for words, taken, against in rows:
        print(f"{words:<46} {taken * 1000:10.1f} ms   ratio {taken / against:8.3f}")


if __name__ == "__main__":
    main()
