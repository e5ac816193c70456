"""How finding all ways grows with the number of cables, on boards as crowded as each other.

Run it so: python tests/bench/many_cables.py [MOST CABLES].
For each board: how long all ways together take against one independent shortest way each (nothing shared between
cables but the board), against the board before with half as many cables, and what a small change costs against all
of it: a component moved once, and dragged 3 mm further ten times. Times are of the processor, as ratios.
"""

import sys
from collections.abc import Callable
from dataclasses import replace
from statistics import median
from time import process_time

from crowded_board import crowded_plan

from boardplan.bundled import data_dir
from boardplan.files.plan_file import load_plan
from boardplan.model.plan import Plan
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.one_way import found_way
from boardplan.routing.route import Route, Way
from boardplan.routing.square.surroundings import surroundings_of
from boardplan.routing.together.crossings import crossings_of

SIZES = {75: (5, 6), 150: (6, 10), 300: (8, 15), 600: (12, 20), 1200: (16, 30)}
"""Rows and columns that make so many cables."""
MOVED, DRAGGED = 12, 10


def seconds(work: Callable[[], object]) -> float:
    """Return how long work takes, once."""
    start = process_time()
    work()
    return process_time() - start


def each_alone(plan: Plan) -> dict[str, Way]:
    """Return the way each cable takes with no other cable on the board, what blocks looked up afresh for each."""
    return {each.id: found_way(surroundings_of(plan), each) for each in plan.cables.values()}


def moved(plan: Plan, name: str, by: float) -> Plan:
    """Return a plan with a component further right."""
    held = plan.components[name]
    return plan.with_things([replace(held, position=held.position.moved(by, 0))])


def dragged(plan: Plan, ways: dict[str, Way], name: str) -> float:
    """Return how long the ways after one step of a drag take, in the middle."""
    taken = []
    for step in range(1, DRAGGED + 1):
        after = moved(plan, name, 3) if step % 2 else moved(plan, name, 2)
        start = process_time()
        ways = refreshed_routes(plan, ways, after)
        taken.append(process_time() - start)
        plan = after
    return median(taken)


def crossed(plan: Plan, ways: dict[str, Way]) -> str:
    """Return how often cables cross, as expected alone and as laid side by side."""
    expected = {name: (way.alone or way) if isinstance(way, Route) else way for name, way in ways.items()}
    counts = [crossings_of(plan, some) for some in (expected, ways)]
    before, after = (f"{len(some)} ({sum(not each.square for each in some)} not square)" for some in counts)
    return f"crossings on top of each other {before}, side by side {after}"


def measured(size: int) -> tuple[float, float, float, float]:
    """Return how long all ways, all alone, one move and one step of a drag take; print how many cross."""
    plan = crowded_plan(rows=SIZES[size][0], columns=SIZES[size][1])
    find_routes(plan)
    ways = find_routes(plan)
    whole = min(seconds(lambda: find_routes(plan)) for _ in range(2))
    alone = seconds(lambda: each_alone(plan))
    chosen = list(plan.components)[:: max(1, len(plan.components) // MOVED)][:MOVED]
    once = median(seconds(lambda name=name: refreshed_routes(plan, ways, moved(plan, name, 3))) for name in chosen)
    step = median(dragged(plan, ways, name) for name in chosen[::3])
    sys.stdout.write(f"{len(plan.cables)} cables: {crossed(plan, ways)}\n")
    return whole, alone, once, step


def main() -> None:
    """Print the table."""
    for path in sorted(data_dir("sample_boards").glob("*.json")):
        pinned = load_plan(path)
        plan = replace(pinned, cables={name: replace(each, pins=()) for name, each in pinned.cables.items()})
        sys.stdout.write(f"{path.stem}, pins taken away: {crossed(plan, find_routes(plan))}\n")
    most = int(sys.argv[1]) if len(sys.argv) > 1 else max(SIZES)
    sizes = [each for each in SIZES if each <= most]
    taken = {size: measured(size) for size in sizes}
    sys.stdout.write(f"{'cables':>6} {'all ways':>10} {'of half':>8} {'of alone':>9} {'one move':>9} {'a drag':>7}\n")
    for size, (whole, alone, once, step) in taken.items():
        half = f"{whole / taken[size // 2][0]:8.2f}" if size // 2 in taken else " " * 8
        row = (
            f"{size:>6} {whole * 1000:7.0f} ms {half} {whole / alone:9.3f}  1:{whole / once:<6.1f} 1:{whole / step:.1f}"
        )
        sys.stdout.write(f"{row}\n")


if __name__ == "__main__":
    main()
