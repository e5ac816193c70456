"""Look at every way on random boards from outside: python tests/bench/random_boards.py [COUNT] [FIRST SEED] [MEASURED].

Each way that the program finds is sampled every half millimetre (tests/way_sampler.py). For the first MEASURED
boards, all of them unless told, the ways outside of channels are held against a slow search of a fine lattice
(tests/slow_square_ways.py), as straight behind its lugs as they are: the least length with no more bends than the way
has, and the least of length and bends together, a bend at what the program counts one for, and so with what it counts
for leaving over the own unit where an end may leave any way. Cables with an end that doesn't leave squarely can't be
held against it. And nowhere may the program say "no way" where the lattice has one that does not cross itself.
"""

import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from random_plans import random_plan
from slow_square_ways import NEVER, SlowBoard, SlowEnd, shortest_points, shortest_square
from way_sampler import crosses_itself, end_there, is_roomy, stays_outside, violations

from boardplan.geometry.bends import Bend, corner_saving
from boardplan.geometry.point import Point, bearing
from boardplan.routing.find_route import find_routes
from boardplan.routing.reach import CORNER
from boardplan.routing.route import NoWay, Route


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
        board = boards.setdefault(diameter, SlowBoard(plan, diameter))
        started = time.perf_counter()
        tightest = diameter * plan.rules.bends[conductor.construction].least
        roomy = isinstance(way, Route) and is_roomy(plan, cable, _alone(way))
        least = shortest_square(board, cable, _alone(way).radius if isinstance(way, Route) else tightest, roomy=roomy)
        tally.slow += time.perf_counter() - started
        if least:
            ends = [board.end(end_there(plan, cable, each)) for each in cable.ends]
            if isinstance(way, Route):
                _held_against(tally, f"{seed} {name}", way, least, _leaving(way, ends))
            else:
                _without(tally, f"{seed} {name}", shortest_points(board, cable, tightest), tightest)


def _leaving(way: Route, ends: Sequence[SlowEnd | None]) -> float:
    """Return what the first and the last leg of a way count for on top."""
    points = _alone(way).points
    pairs = ((ends[0], points[0], points[1]), (ends[1], points[-1], points[-2]))
    return sum(end.prices[round(bearing(a, b) / 90) % 4] for end, a, b in pairs if end is not None)


def _alone(way: Route) -> Route:
    return way.alone or way


def _without(tally: Tally, name: str, points: Sequence[Point], radius: float) -> None:
    """Look at what the slow search has for a cable that the program has no way for."""
    tally.counts["measured"] += 1
    tally.counts["no way measured"] += 1
    if points and crosses_itself(Route(name, tuple(points), radius)):
        tally.counts["only crossing itself"] += 1
    elif points:
        tally.missed.append(name)


def _held_against(tally: Tally, name: str, way: Route, least: list[float], leaving: float) -> None:
    tally.counts["measured"] += 1
    reached = [each for each in least if each < NEVER / 2]
    if not reached:
        tally.counts["only the program has a way"] += 1
        return
    alone = _alone(way)
    if "slanting" in way.why:
        tally.counts["slanting"] += 1
        return
    bends = [piece for piece in alone.pieces if isinstance(piece, Bend)]
    length = leaving + sum(piece.length for piece in alone.pieces)
    bend = corner_saving(alone.radius, 90) + CORNER
    if least[min(len(bends), len(least) - 1)] < NEVER / 2:
        tally.lengths.append((length / least[min(len(bends), len(least) - 1)], name))
    best = min(each + bend * count for count, each in enumerate(least) if each < NEVER / 2)
    tally.prices.append(((length + bend * len(bends)) / best, name))


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
