"""Hold cutting plans against published optima and proven bounds: python tests/bench/cutting.py [FOLDER].

FOLDER: public instances of one-dimensional cutting with known optima, a JSON list a class, plain or gzip: `name`,
`capacity`, `items` ([length, how many], longest first), `opt`. Without it only our own random jobs are planned:
channels from lengths on sale, cables from reels and offcuts, cables from hardly enough offcuts.
"""

import argparse
import gzip
import json
import random
import statistics
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from boardplan.output.cutting.cutting_plan import Bar, CuttingPlan, Piece, cutting_plan
from boardplan.output.cutting.filling import topped_up
from boardplan.output.cutting.task import Task

_HEAD = f"{'':<32}{'jobs':>6}{'quick':>8}{'optimum':>9}{'proven':>8}{'most over':>11}{'mean ms':>9}{'longest':>9}"


@dataclass
class Tally:
    """What a class of jobs comes to: how many are at the optimum, and proven; bars over the bound; seconds."""

    jobs: int = 0
    quick: int = 0
    optimum: int = 0
    proven: int = 0
    over: int = 0
    seconds: list[float] = field(default_factory=list)

    def add(self, plan: CuttingPlan, quick: int, optimum: int, took: float) -> None:
        self.jobs += 1
        self.quick += quick <= optimum
        self.optimum += len(plan.bars) <= optimum
        self.proven += plan.could_save <= 0 and plan.could_find <= 0
        self.over = max(self.over, len(plan.bars) - plan.least)
        self.seconds.append(took)

    def show(self, name: str) -> None:
        counts = f"{self.jobs:>6}{self.quick:>8}{self.optimum:>9}{self.proven:>8}{self.over:>11}"
        print(
            f"{name:<32}{counts}{1000 * statistics.mean(self.seconds):>9.0f}{1000 * max(self.seconds):>9.0f}",
            flush=True,
        )


def longest_first(pieces: list[Piece], bar: float, cut: float) -> int:
    """Return how many bars the usual quick way takes: the longest piece first, each where the least is left."""
    sizes = sorted({round(10 * (each.length + cut)) for each in pieces}, reverse=True)
    wanted = tuple(sum(round(10 * (each.length + cut)) == size for each in pieces) for size in sizes)
    count = len(pieces)
    task = Task(tuple(sizes), wanted, (round(10 * (bar + cut)),), (count,), 1, (count + 1,) * len(sizes))
    return len(topped_up(task, (), largest_first=True))


def published(folder: Path) -> None:
    """Print a row for each class of published instances."""
    for path in sorted((*folder.glob("*.json"), *folder.glob("*.json.gz"))):
        text = gzip.decompress(path.read_bytes()) if path.suffix == ".gz" else path.read_bytes()
        tally = Tally()
        for each in json.loads(text):
            pieces = [Piece("W", float(length)) for length, count in each["items"] for _ in range(count)]
            start = time.perf_counter()
            plan = cutting_plan(pieces, [Bar("bar", float(each["capacity"]), None)])
            took = time.perf_counter() - start
            if not plan.least <= each["opt"] <= len(plan.bars):
                print(f"  {each['name']}: {plan.least} to {len(plan.bars)} is not about the published {each['opt']}")
            tally.add(plan, longest_first(pieces, each["capacity"], 0), each["opt"], took)
        tally.show(path.name.split(".")[0])


def channels(chance: random.Random) -> tuple[list[Piece], list[Bar]]:
    """Return bases of 8 to 150 channels, to be cut from lengths of 2 m."""
    count = chance.randint(8, 150)
    return [Piece(f"RW{i}", chance.randint(150, 1900)) for i in range(count)], [Bar("length", 2000, None)]


def cables(chance: random.Random) -> tuple[list[Piece], list[Bar]]:
    """Return 10 to 300 cables, cut to 5 mm, with offcuts, two part reels and full ones of 100 m at hand."""
    pieces = [Piece(f"W{i}", 5 * chance.randint(16, 600)) for i in range(chance.randint(10, 300))]
    offcuts = [Bar(f"offcut {i}", chance.randint(300, 8000)) for i in range(chance.randint(0, 8))]
    reels = [Bar(f"part reel {i}", chance.randint(10_000, 60_000)) for i in range(2)]
    return pieces, [*offcuts, *reels, Bar("reel", 100_000, None)]


def ends(chance: random.Random) -> tuple[list[Piece], list[Bar]]:
    """Return 5 to 60 cables and just about enough offcuts of many lengths."""
    pieces = [Piece(f"W{i}", 5 * chance.randint(16, 400)) for i in range(chance.randint(5, 60))]
    total, bars = sum(each.length for each in pieces) * chance.uniform(0.95, 1.1), list[Bar]()
    while total > 0:
        bars.append(Bar(f"offcut {len(bars)}", chance.randint(800, 6000)))
        total -= bars[-1].length
    return pieces, bars


@dataclass(frozen=True)
class Jobs:
    """A class of random jobs."""

    name: str
    make: Callable[[random.Random], tuple[list[Piece], list[Bar]]]


JOBS = (
    Jobs("channels from lengths of 2 m", channels),
    Jobs("cables from reels and offcuts", cables),
    Jobs("cables from offcuts, near none", ends),
)


def own_jobs(count: int) -> Iterator[tuple[str, Tally, int]]:
    """Yield for each class of random jobs what it comes to, and how many have too little at hand."""
    for jobs in JOBS:
        chance, tally, short = random.Random(jobs.name), Tally(), 0
        for _ in range(count):
            pieces, stock = jobs.make(chance)
            start = time.perf_counter()
            plan = cutting_plan(pieces, stock, 3)
            took = time.perf_counter() - start
            short += bool(plan.missing)
            quick = longest_first(pieces, 2000, 3) if jobs.make is channels else sys.maxsize
            tally.add(plan, quick, plan.least, took)
        yield jobs.name, tally, short


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", nargs="?", type=Path, help="published instances")
    parser.add_argument("--jobs", type=int, default=100, help="how many random jobs of each class")
    wanted = parser.parse_args()
    print("quick: longest piece first is at the optimum; most over: bars over the proven bound, at most\n")
    print(_HEAD)
    if wanted.folder:
        published(wanted.folder)
    for name, tally, short in own_jobs(wanted.jobs):
        tally.show(name)
        if short:
            print(f"{'':<32}{short:>6} of them with too little at hand")


if __name__ == "__main__":
    main()
