"""Hold the sheets of random boards against plain grids: python tests/bench/tiling.py [--boards N] [--drilled N].

First how many sheets are saved of what a grid of upright sheets takes, then, of boards with hole patterns on them, what
the seams do: drill points within 5 mm of a sheet's edge, patterns that no sheet shows whole. An even grid of as many
sheets, the better of upright and lying, stands beside.
"""

import argparse
import math
import random
import statistics
import time
from collections.abc import Iterable, Sequence

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.output.printing.pages import tiles_of
from boardplan.output.printing.paper import MARGIN, PAPERS, Paper
from boardplan.output.printing.seam_ground import NEAR
from boardplan.output.printing.sheet_layouts import BORDER, OVERLAP, fewest_layouts

Pattern = Sequence[Point]


def along(length: float, printable: float) -> int:
    """Return how many sheets in a row cover a length with its border."""
    return max(1, math.ceil((length + 2 * BORDER - OVERLAP) / (printable - OVERLAP) - 1e-9))


def turns(paper: Paper) -> list[tuple[float, float]]:
    """Return the printable part of a sheet as it stands and as it lies."""
    short, long = paper.width - 2 * MARGIN, (paper.height or 0) - 2 * MARGIN
    return [(short, long), (long, short)]


def grids(width: float, height: float, paper: Paper) -> list[int]:
    """Return the sheets of a grid of upright and of one of lying sheets."""
    return [along(width, across) * along(height, up) for across, up in turns(paper)]


def even_grid(width: float, height: float, paper: Paper) -> list[Box]:
    """Return the sheets of the better grid, put evenly about a board."""
    counts = grids(width, height, paper)
    across, up = turns(paper)[counts.index(min(counts))]

    def starts(length: float, printable: float) -> list[float]:
        count = along(length, printable)
        first = (length - count * (printable - OVERLAP) - OVERLAP) / 2
        return [first + index * (printable - OVERLAP) for index in range(count)]

    return [Box(x, y, x + across, y + up) for y in starts(height, up) for x in starts(width, across)]


def near(sheets: Sequence[Box], points: Iterable[Point]) -> int:
    """Return how many points a sheet shows within 5 mm of its edge."""
    return sum(any(each.holds(at) and not each.grown(-NEAR).holds(at) for each in sheets) for at in points)


def cut(sheets: Sequence[Box], patterns: Iterable[Pattern]) -> int:
    """Return how many patterns no sheet shows whole."""
    return sum(not any(all(each.grown(-NEAR).holds(at) for at in one) for each in sheets) for one in patterns)


def patterns_on(width: float, height: float, chance: random.Random) -> list[Pattern]:
    """Return patterns of four holes, about as many as an installer puts on a board of that size."""
    found = []
    for _ in range(int(width * height / 70_000)):
        wide, high = chance.uniform(20, 220), chance.uniform(20, 220)
        left, low = chance.uniform(12, width - 12), chance.uniform(12, height - 12)
        box = Box(left, low, min(left + wide, width - 12), min(low + high, height - 12))
        found.append(box.corners())
    return found


def sizes(count: int) -> list[tuple[float, float]]:
    """Return boards of 0.3 to 2.5 m by 0.25 to 1.5 m."""
    chance = random.Random(20)
    return [(chance.uniform(300, 2500), chance.uniform(250, 1500)) for _ in range(count)]


def savings(paper: Paper, boards: Sequence[tuple[float, float]]) -> None:
    """Print how many sheets are saved."""
    upright, best, ours = [], [], []
    for width, height in boards:
        counts = grids(width, height, paper)
        upright.append(counts[0])
        best.append(min(counts))
        ours.append(fewest_layouts(Box(0, 0, width, height), paper)[0].sheets)
    over_upright = [1 - mine / theirs for mine, theirs in zip(ours, upright, strict=True)]
    over_best = [1 - mine / theirs for mine, theirs in zip(ours, best, strict=True)]
    shares = (
        *(statistics.mean(over_upright), min(over_upright), max(over_upright)),
        *(statistics.mean(over_best), min(over_best)),
    )
    print(f"{paper.name:<10}{len(boards):>8}" + "".join(f"{100 * share:>11.1f} %" for share in shares))


def seams(paper: Paper, boards: Sequence[tuple[float, float]]) -> None:
    """Print what the seams do to holes."""
    chance = random.Random(21)
    totals, taken, holes, count = [0, 0, 0, 0], [], 0, 0
    clean = 0
    for width, height in boards:
        patterns = patterns_on(width, height, chance)
        points = [at for each in patterns for at in each]
        start = time.perf_counter()
        tiles = tiles_of(Board("A", "", Box(0, 0, width, height).corners()), paper, points, patterns)
        taken.append(time.perf_counter() - start)
        ours, even = [tile.rect for tile in tiles], even_grid(width, height, paper)
        found = near(even, points), near(ours, points), cut(even, patterns), cut(ours, patterns)
        totals = [a + b for a, b in zip(totals, found, strict=True)]
        clean += not found[1]
        holes, count = holes + len(points), count + len(patterns)
    print(
        f"{paper.name:<10}{len(boards):>8}{holes:>8}{totals[0]:>8}{totals[1]:>8}{clean:>10}{count:>10}{totals[2]:>8}"
        f"{totals[3]:>8}{1000 * statistics.mean(taken):>10.0f}{1000 * max(taken):>10.0f}"
    )


def main() -> None:
    """Print both tables."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--boards", type=int, default=2000)
    parser.add_argument("--drilled", type=int, default=60)
    wanted = parser.parse_args()
    papers = [PAPERS[each] for each in ("a4", "letter", "a3")]
    print("sheets saved of those of an upright grid, and of the better grid: mean, worst, best")
    heads = ("mean", "worst", "best", "of better", "worst")
    print(f"{'':<10}{'boards':>8}" + "".join(f"{each:>13}" for each in heads))
    for paper in papers:
        savings(paper, sizes(wanted.boards))
    print(
        "\npoints near an edge and patterns cut: an even grid, then ours; boards with none near; ms to lay the sheets"
    )
    columns = (("boards", 8), ("holes", 8), ("near", 8), ("ours", 8), ("none near", 10), ("patterns", 10), ("cut", 8))
    columns = (*columns, ("ours", 8), ("mean", 10), ("longest", 10))
    print(f"{'':<10}" + "".join(f"{head:>{wide}}" for head, wide in columns))
    for paper in papers:
        seams(paper, sizes(wanted.drilled))


if __name__ == "__main__":
    main()
