"""Channels shared by many cables, against a proven bound: seeded grids of channel, from roomy to far too tight.

python tests/bench/shared_channels.py [--seconds N] [--cables N ...] [--tight SHARE ...]

A grid's channels all have the same room. `tight` is the mean area in a piece when each cable goes its own least way,
over the room. A cable goes outside at three times its own least way. First-come-first-served lays the
cables in the order of their numbers, each the least way in the room left. Areas are added up here from the answers
alone. Times are of the processor, as ratios to the search for all cables' own least ways, one after the other.
"""

import argparse
import math
import random
import time
from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.routing.sharing.laid import costs_alone, laid_one_by_one
from boardplan.routing.sharing.network import Network, Piece, Wish, least_path
from boardplan.routing.sharing.search import Work, sharings
from boardplan.routing.sharing.sharing import Sharing, cost_of

DIAMETERS = (2.0, 2.9, 3.6, 4.6, 6.0, 8.5)
"""Outside diameters of cables that lie in channels, signal to 16 mm²."""
SIZES = ((5, 4), (8, 6), (12, 10))
OUTSIDE = 3.0


@dataclass(frozen=True)
class Case:
    """A network, what its cables ask, and how tight it was made."""

    network: Network
    wishes: tuple[Wish, ...]


def grid(chance: random.Random, columns: int, rows: int, room: float = math.inf) -> Network:
    """Return a grid of channels, 150 to 450 mm between joints; one piece of twenty left out."""
    wide = [chance.randint(15, 45) * 10.0 for _ in range(columns - 1)]
    high = [chance.randint(15, 45) * 10.0 for _ in range(rows - 1)]
    level = [(y * columns + x, y * columns + x + 1, wide[x]) for y in range(rows) for x in range(columns - 1)]
    upright = [(y * columns + x, (y + 1) * columns + x, high[y]) for y in range(rows - 1) for x in range(columns)]
    pieces = [Piece(a, b, length, room) for a, b, length in level + upright if chance.random() > 0.05]
    return Network(columns * rows, tuple(pieces))


def wish(chance: random.Random, number: int, network: Network) -> Wish:
    """Return a cable between two ends, each of which reaches a channel at both ends of a piece."""
    ends = []
    for _ in range(2):
        piece = chance.choice(network.pieces)
        along = chance.uniform(0.1, 0.9) * piece.length
        ends.append(((piece.a, 60 + along), (piece.b, 60 + piece.length - along)))
    area = math.pi / 4 * chance.choice(DIAMETERS) ** 2
    return Wish(f"W{number:03d}", area, ends[0], ends[1], math.inf)


def case(columns: int, rows: int, cables: int, tight: float, seed: int = 1) -> Case:
    """Return the case of a seed."""
    chance = random.Random(f"{columns} {rows} {cables} {seed}")
    network = grid(chance, columns, rows)
    wishes = [wish(chance, number, network) for number in range(cables)]
    wishes = [
        Wish(w.cable, w.area, w.starts, w.ends, OUTSIDE * c)
        for w, c in zip(wishes, costs_alone(network, wishes), strict=True)
    ]
    load = [0.0] * len(network.pieces)
    for each in wishes:
        path = least_path(network, each, lambda piece: network.pieces[piece].length)
        for piece in path.pieces if path else ():
            load[piece] += each.area
    room = sum(load) / len(load) / tight
    return Case(Network(network.nodes, tuple(Piece(p.a, p.b, p.length, room) for p in network.pieces)), tuple(wishes))


def overfilled(found: Case, answer: Sharing) -> int:
    """Return in how many pieces the areas add up to more than the room."""
    held = [0.0] * len(found.network.pieces)
    for each, path in zip(found.wishes, answer.chosen, strict=True):
        for piece in path.pieces if path else ():
            held[piece] += each.area
    return sum(area > piece.room + 1e-6 for area, piece in zip(held, found.network.pieces, strict=True))


def timed(answers: Iterator[Sharing], seconds: float) -> Iterator[tuple[float, Sharing]]:
    """Yield answers with the time when they came, until time is up."""
    start = time.process_time()
    for each in answers:
        yield time.process_time() - start, each
        if time.process_time() - start > seconds:
            return


def row(found: Case, seconds: float) -> str:
    """Return what is measured of a case in a line."""
    start = time.process_time()
    costs_alone(found.network, found.wishes)
    unit = time.process_time() - start
    answers = list(timed(sharings(found.network, found.wishes, Work(tries=10**6)), seconds))
    (first_at, first), (_, last) = answers[0], answers[-1]
    bound_at = next(at for at, each in answers if each.bound == last.bound)
    served = laid_one_by_one(found.network, found.wishes, range(len(found.wishes)))
    first_gap, served_gap = (each / last.bound - 1 for each in (first.cost, cost_of(found.wishes, served)))
    worst = max(overfilled(found, each) for _, each in answers)
    return (
        f"{first_at / unit:6.1f} {100 * first_gap:8.2f} % {100 * last.gap:8.2f} % {bound_at / unit:8.1f}"
        f" {len(last.outside):8d} {served.count(None):8d} {100 * served_gap:8.2f} % {worst:9d}"
    )


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=float, default=5.0, help="how long to better each answer")
    parser.add_argument("--cables", nargs="+", type=int, default=[60, 150, 300])
    parser.add_argument("--tight", nargs="+", type=float, default=[0.35, 0.5, 0.65, 0.8])
    parser.add_argument("--grids", nargs="+", type=int, default=[0, 1, 2], help="which of the three sizes")
    wanted = parser.parse_args()
    print("grid    cables tight  first     its gap   gap after bound at  outside   served    its gap overfilled")
    for columns, rows in [SIZES[each] for each in wanted.grids]:
        for cables in wanted.cables:
            for tight in wanted.tight:
                found = case(columns, rows, cables, tight)
                print(f"{columns:2d} x {rows:2d} {cables:5d} {tight:5.2f}", row(found, wanted.seconds), flush=True)


if __name__ == "__main__":
    main()
