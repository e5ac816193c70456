"""Look at every way on random boards from outside: python tests/bench/random_boards.py [COUNT] [FIRST SEED] [MEASURED].

Each way that the program finds is sampled every half millimetre (tests/way_sampler.py). For the first MEASURED
boards, all of them unless told, the ways outside of channels are held against a slow search of a fine lattice
(tests/slow_square_ways.py), as straight behind each of its lugs as they are: the least length with no more bends than
the way has, and the least of length and bends together, a bend at what the program counts one for, and so with what it
counts for leaving over the own unit where an end may leave any way. Where the way is longer, it is held against a least
one that does not cross itself (tests/slow_untangled_ways.py). Cables with an end that doesn't leave squarely can't be
held against it. And nowhere may the program say "no way" where the lattice has one that does not cross itself.
"""

import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from random_plans import random_plan
from slow_lattice import NEVER
from slow_square_ways import MOST_BENDS, NEITHER, SlowBoard, SlowEnd, ends_of_cable, shortest_square
from slow_untangled_ways import shortest_points
from way_sampler import crosses_itself, length_of, roomy_ends, stays_outside, violations

from boardplan.geometry.bends import corner_saving
from boardplan.geometry.point import Point, bearing
from boardplan.model.cable import Cable
from boardplan.routing.find_route import find_routes
from boardplan.routing.reach import CORNER
from boardplan.routing.route import NoWay, Route

_LOOP = 4
"""A square way with fewer bends can't cross itself."""
_LONGER = 1.005
"""From how many times the length of the slow search's way on it is asked for one that does not cross itself."""


@dataclass
class Tally:
    """What was seen."""

    counts: Counter[str] = field(default_factory=Counter)
    lengths: list[tuple[float, str]] = field(default_factory=list)
    prices: list[tuple[float, str]] = field(default_factory=list)
    missed: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    program: float = 0.0
    slow: float = 0.0


def looked_at(tally: Tally, seed: int) -> None:
    """Sample every way of a board."""
    plan = random_plan(seed)
    started = time.perf_counter()
    ways = find_routes(plan)
    tally.program += time.perf_counter() - started
    tally.counts["boards"] += 1
    for name, way in ways.items():
        if isinstance(way, NoWay):
            tally.counts["no way"] += 1
            continue
        tally.counts["ways"] += 1
        tally.counts["cross themselves"] += crosses_itself(way)
        found = violations(plan, plan.cables[name], way)
        tally.counts["violations"] += len(found)
        tally.wrong += [f"{seed} {name}: {each}" for each in found]


def measured(tally: Tally, seed: int) -> None:
    """Hold the ways of cables that stay outside of channels against the slow search."""
    plan = random_plan(seed)
    boards: dict[float, SlowBoard] = {}
    for name, way in find_routes(plan).items():
        cable = plan.cables[name]
        conductor = plan.conductors[cable.conductor]
        diameter = conductor.outside_diameter
        if not stays_outside(plan, cable):
            continue
        started = time.perf_counter()
        board = boards.setdefault(diameter, SlowBoard(plan, diameter))
        if isinstance(way, Route):
            _held_against(tally, f"{seed} {name}", way, Slow.for_way(board, cable, way.alone or way))
        else:
            tightest = diameter * plan.rules.bends[conductor.construction].least
            _without(tally, f"{seed} {name}", Slow(board, cable, tightest, NEITHER))
        tally.slow += time.perf_counter() - started


@dataclass(frozen=True)
class Slow:
    """The slow search for one cable, with bends of a radius, as straight behind its lugs as another way is."""

    board: SlowBoard
    cable: Cable
    radius: float
    roomy: tuple[bool, bool]

    @classmethod
    def for_way(cls, board: SlowBoard, cable: Cable, way: Route) -> "Slow":
        """Return the search for ways as straight behind their lugs as one is."""
        return cls(board, cable, way.radius, roomy_ends(board.plan, cable, way))

    @cached_property
    def least(self) -> list[float]:
        """The least length with no bend, up to one, up to two and so on; none where nothing can be said."""
        return shortest_square(self.board, self.cable, self.radius, roomy=self.roomy)

    def counted(self, points: Sequence[Point]) -> float:
        """Return the length of a way, and what its first and last leg count for on top."""
        pairs = zip(self._ends, ((points[0], points[1]), (points[-1], points[-2])), strict=True)
        leaving = sum(end.prices[round(bearing(*leg) / 90) % 4] for end, leg in pairs if end is not None)
        return leaving + length_of(points, self.radius)

    @cached_property
    def _ends(self) -> list[SlowEnd | None]:
        return ends_of_cable(self.board, self.cable, self.radius, self.roomy)

    def untangled(self, bends: int) -> tuple[float, int]:
        """Return the length of a least way with no more bends that does not cross itself, and how many bends it has."""
        if bends < _LOOP:
            return self.least[bends], bends
        points = self.points(bends)
        return (self.counted(points), len(points) - 2) if points else (NEVER, bends)

    def points(self, bends: int = MOST_BENDS) -> list[Point]:
        """Return the corners of a least way with no more bends that does not cross itself, none without one."""
        return shortest_points(self.board, self.cable, self.radius, roomy=self.roomy, most=bends)


def _without(tally: Tally, name: str, slow: Slow) -> None:
    """Look at what the slow search has for a cable that the program has no way for."""
    if not slow.least:
        return
    tally.counts["measured"] += 1
    tally.counts["no way measured"] += 1
    if min(slow.least) < NEVER / 2:
        if min(slow.least[:_LOOP]) < NEVER / 2 or slow.points():
            tally.missed.append(name)
        else:
            tally.counts["only crossing itself"] += 1


def _held_against(tally: Tally, name: str, way: Route, slow: Slow) -> None:
    least = slow.least
    if not least:
        return
    tally.counts["measured"] += 1
    if min(least) >= NEVER / 2:
        tally.counts["only the program has a way"] += 1
        return
    if "slanting" in way.why:
        tally.counts["slanting"] += 1
        return
    points = (way.alone or way).points
    length, bends = slow.counted(points), len(points) - 2
    least_here = least[min(bends, len(least) - 1)]
    if length > _LONGER * least_here:
        least_here, _ = slow.untangled(bends)
    if least_here < NEVER / 2:
        tally.lengths.append((length / least_here, name))
    bend = corner_saving(slow.radius, 90) + CORNER
    tally.prices.append(((length + bend * bends) / _least_price(slow, bend, length + bend * bends), name))


def _least_price(slow: Slow, bend: float, price: float) -> float:
    """Return the least of length and bends together, of ways that do not cross themselves where they would be less."""
    prices = sorted((each + bend * count, count) for count, each in enumerate(slow.least) if each < NEVER / 2)
    if price <= _LONGER * prices[0][0]:
        return prices[0][0]
    best = NEVER
    for at_least, count in prices:
        if at_least < best:
            length, bends = slow.untangled(count)
            best = min(best, length + bend * bends)
    return best if best < NEVER / 2 else price


def rows(tally: Tally) -> Iterator[str]:
    """Yield the table."""
    counts = tally.counts
    yield f"{counts['boards']} boards, {counts['ways']} ways, {counts['no way']} cables without one"
    yield f"violations seen every 0.5 mm    {counts['violations']}"
    yield f"ways that cross themselves      {counts['cross themselves']}"
    yield f"held against the slow search    {counts['measured']}"
    yield f"no way, the slow search has one {len(tally.missed)} of {counts['no way measured']}"
    yield f"no way, its own crosses itself  {counts['only crossing itself']} of {counts['no way measured']}"
    yield f"a way, the slow search has none {counts['only the program has a way']}"
    for words, values in (("length, no more bends", tally.lengths), ("length and bends", tally.prices)):
        ordered = sorted(values)
        if ordered:
            at = [ordered[min(len(ordered) - 1, int(len(ordered) * share))] for share in (0.5, 0.9, 0.99, 1.0)]
            shares = ", ".join(f"{each[0]:.4f}" for each in at)
            yield f"{words:<31} median, 90 %, 99 %, worst: {shares} ({at[3][1]}); least {ordered[0][0]:.4f}"
    if tally.slow:
        yield f"the slow search takes {tally.slow / max(1e-9, tally.program):.0f} times as long"
    for each in (*tally.wrong[:10], *(f"missed: {each}" for each in tally.missed[:10])):
        yield f"  {each}"


def main() -> None:
    """Print the table."""
    count, first = (int(each) for each in [*sys.argv[1:3], *("300", "0")[len(sys.argv[1:3]) :]])
    most = int(sys.argv[3]) if len(sys.argv) > 3 else count
    tally = Tally()
    for seed in range(first, first + count):
        looked_at(tally, seed)
        if seed < first + most:
            measured(tally, seed)
    print("\n".join(rows(tally)))


if __name__ == "__main__":
    main()
