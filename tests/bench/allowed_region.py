"""Scan allowed regions place by place: python tests/bench/allowed_region.py [BOARDS] [FIRST SEED] [STEP].

On each of so many furnished random boards (tests/random_furnishing.py) one component is taken up and turned; on a grid
of STEP mm, and beside the boundary of its region, the checks of the review are asked whether they stop it there. Then
how long a region takes on the crowded board, held against a review after a move, without and with finding ways.
"""

import sys
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parent.parent))

from crowded_board import crowded_plan
from recheck import milliseconds, moved_plans
from region_scan import TOLERANCE, Scan, scanned

from boardplan.checks.review import refreshed, refreshed_with_ways, review_of
from boardplan.checks.room.allowed_region import allowed_region
from boardplan.routing.find_route import refreshed_routes


def main() -> None:
    """Print what disagrees, and the ratios."""
    count, first = (int(sys.argv[at]) if len(sys.argv) > at else default for at, default in ((1, 100), (2, 0)))
    step = float(sys.argv[3]) if len(sys.argv) > 3 else 20.0
    scan = Scan()
    for seed in range(first, first + count):
        scanned(scan, seed, step=step, near=200)
    for each in scan.wrong:
        sys.stdout.write(f"{each}\n")
    sys.stdout.write(
        f"{count} boards, {scan.places} places farther than {TOLERANCE:g} mm from a boundary, {scan.allowed} allowed: "
        f"{len(scan.wrong)} where region and checks disagree\n"
    )
    for name, times in scan.barred.most_common():
        sys.stdout.write(f"  {name}: {times} places\n")
    _ratios()


def _ratios() -> None:
    plan = crowded_plan()
    review = review_of(plan)
    chosen = list(plan.components.values())[::8]
    regions = [
        milliseconds(lambda held=held: allowed_region(plan, plan.kind_of(held), held.turn, "A", held.id), runs=3)
        for held in chosen
    ]
    bare, whole = [], []
    for moved in moved_plans(plan):
        ways = refreshed_routes(plan, review.ways, moved)
        bare.append(milliseconds(lambda moved=moved, ways=ways: refreshed_with_ways(review, moved, ways), runs=3))
        whole.append(milliseconds(lambda moved=moved: refreshed(review, moved), runs=1))
    sys.stdout.write(
        f"crowded board: a region {median(regions):.0f} ms, at most {max(regions):.0f} ms; "
        f"{median(regions) / median(whole):.2f} of a review after a move, "
        f"{median(regions) / median(bare):.1f} of one without finding ways\n"
    )


if __name__ == "__main__":
    main()
