"""Channels shared by many cables, against a proven bound: seeded grids of channel, from roomy to far too tight.

python tests/bench/shared_channels.py [--seconds N] [--prove N] [--cables N ...] [--tight SHARE ...] [--seed N]

A grid's channels all have the same room. `tight` is the mean area in a piece when each cable goes its own least way,
over the room. A cable goes outside at three times its own least way. First-come-first-served lays the
cables in the order of their numbers, each the least way in the room left. Areas are added up here from the answers
alone. Times are of the processor, as ratios to the search for all cables' own least ways, one after the other.

Each gap is how much dearer an answer is than a bound. `plain` is against the linear program over whole ways, `closest`
against the closest bound: that program with rows that bar parts of cables, given as long as `--prove` says, apart from
the search for answers. `least` is how many cables must stay outside in any answer, proven in the same way.
"""

import argparse
import math
import random
import time
from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.routing.sharing.fewest import counted, fewest_outside
from boardplan.routing.sharing.laid import costs_alone
from boardplan.routing.sharing.network import Network, Path, Piece, Wish, least_path
from boardplan.routing.sharing.prices import Prices
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


def first_come(found: Case) -> tuple[Path | None, ...]:
    """Return the answer of laying cables in the order of their numbers, each the least way in the room left."""
    left = [piece.room for piece in found.network.pieces]
    chosen: list[Path | None] = []
    for each in found.wishes:
        costs = [
            p.length if room >= each.area else math.inf for p, room in zip(found.network.pieces, left, strict=True)
        ]
        path = least_path(found.network, each, costs.__getitem__)
        chosen.append(path if path and path.cost < each.outside else None)
        for piece in path.pieces if path and chosen[-1] else ():
            left[piece] -= each.area
    return tuple(chosen)


def priced(network: Network, wishes: tuple[Wish, ...], seconds: float) -> Prices:
    """Return the prices after so long, or when no others change anything."""
    prices, start = Prices(network, wishes), time.process_time()
    while prices.improve() and time.process_time() - start < seconds:
        pass
    return prices


def row(found: Case, seconds: float, prove: float) -> str:
    """Return what is measured of a case in a line."""
    start = time.process_time()
    costs_alone(found.network, found.wishes)
    unit = time.process_time() - start
    answers = list(timed(sharings(found.network, found.wishes, Work(tries=10**6)), seconds))
    (first_at, first), (_, last) = answers[0], answers[-1]
    served = first_come(found)
    worst = max(overfilled(found, each) for _, each in answers)
    proof = priced(found.network, found.wishes, prove)
    closest = max(proof.bound, last.bound)
    network, wishes = counted(found.network, found.wishes)
    least = fewest_outside(network, wishes, priced(network, wishes, prove).bound) if last.outside else 0
    gaps = (
        first.cost / closest - 1,
        cost_of(found.wishes, served) / closest - 1,
        last.cost / proof.plain - 1,
        last.cost / last.bound - 1,
        last.cost / closest - 1,
    )
    return (
        f"{first_at / unit:5.1f} {1000 * first_at:6.0f} {' '.join(f'{100 * max(each, 0.0):7.2f} %' for each in gaps)}"
        f" {len(last.outside):4d} {served.count(None):6d} {least:5d} {worst:6d}"
    )


def main() -> None:
    """Measure and print."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=float, default=5.0, help="how long to better each answer")
    parser.add_argument("--prove", type=float, default=20.0, help="how long to look for closer bounds, each")
    parser.add_argument("--cables", nargs="+", type=int, default=[60, 150, 300])
    parser.add_argument("--tight", nargs="+", type=float, default=[0.35, 0.5, 0.65, 0.8])
    parser.add_argument("--grids", nargs="+", type=int, default=[0, 1, 2], help="which of the three sizes")
    parser.add_argument("--seed", type=int, default=1, help="of the random networks")
    wanted = parser.parse_args()
    print("                                      gap to closest      gaps of ours               outside    over-")
    print(
        "grid    cables tight first     ms     first    served     plain       own   closest ours served least filled"
    )
    for columns, rows in [SIZES[each] for each in wanted.grids]:
        for cables in wanted.cables:
            for tight in wanted.tight:
                found = case(columns, rows, cables, tight, wanted.seed)
                print(
                    f"{columns:2d} x {rows:2d} {cables:5d} {tight:5.2f}",
                    row(found, wanted.seconds, wanted.prove),
                    flush=True,
                )


if __name__ == "__main__":
    main()
