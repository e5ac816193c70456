"""Channel sharing by prices: the linear program over whole ways, and the bound that its prices prove.

Each piece has a price for a mm² in it; cables choose their least way at those prices, and the linear program over
all ways chosen so far sets new prices: column generation, Dantzig and Wolfe (1960), with the prices held near the
best ones as by Wentges (1997). What cables pay at any prices, less what the room is worth at them, is a bound:
Lagrange.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from boardplan.routing.sharing.network import NO_WAY, Network, Path, Wish
from boardplan.routing.sharing.sharing import ROOM_NOISE

if TYPE_CHECKING:
    from scipy.sparse import csc_array, csr_array

_HELD = 0.5
"""How much of the best prices so far stays in those tried next."""
_PARTS = (1, 2, 3, 4)
"""Into how many equal parts an area is cut for a step."""
_EXCEEDED = 1e-4
_ROUNDING = 1e-7
"""What a quotient of areas may be short of a whole number that it is."""
_Numbers = npt.NDArray[np.float64]
_Integers = npt.NDArray[np.int64]


@dataclass(frozen=True)
class Rows:
    """What cables may not exceed: the room of each piece, and the same in whole steps of some area.

    With a step a cable takes as many whole steps as go into its area, and a piece holds as many as go into its room:
    rounding down keeps every answer and bars parts of cables that only together fit (Gomory 1958, Chvátal 1973).
    A step of 0 stands for the area itself.
    """

    pieces: "_Integers"
    steps: "_Numbers"
    most: "_Numbers"

    def taken(self, area: float) -> "_Numbers":
        """Return what a cable of an area takes in each row."""
        whole = np.floor(area / np.where(self.steps > 0, self.steps, 1.0) + _ROUNDING)
        return np.where(self.steps > 0, whole, area)

    def more(self, found: Sequence[tuple[int, float, float]]) -> "Rows":
        """Return the rows with others: piece, step and most of each."""
        pieces, steps, most = zip(*found, strict=True)
        return Rows(
            np.concatenate([self.pieces, np.array(pieces, dtype=np.int64)]),
            np.concatenate([self.steps, np.array(steps)]),
            np.concatenate([self.most, np.array(most)]),
        )


class Prices:
    """Prices in each row, the ways chosen at them, the bound they prove, shares of the linear program."""

    def __init__(self, network: Network, wishes: Sequence[Wish]) -> None:
        """Begin with no prices and no ways."""
        self.network, self.wishes = network, wishes
        room = np.array([each.room for each in network.pieces])
        self.rows = Rows(np.arange(len(room)), np.zeros(len(room)), room)
        self.best: _Numbers = np.zeros(len(room))
        self.bound = -math.inf
        self.pool: list[dict[tuple[int, ...], Path]] = [{} for _ in wishes]
        self.shares: list[dict[tuple[int, ...], float]] = [{} for _ in wishes]
        self._pricing = Pricing(network, wishes)
        self._areas = sorted({each.area for each in wishes})
        self._begun = False

    def add(self, number: int, path: Path | None) -> bool:
        """Keep a way of a cable; say whether it is new and better than outside."""
        if path is None or path.cost >= self.wishes[number].outside:
            return False
        held = self.pool[number].get(path.pieces)
        if held is None or path.cost < held.cost - ROOM_NOISE:
            self.pool[number][path.pieces] = path
            return True
        return False

    def of_pieces(self) -> list[float]:
        """Return the best prices per mm² in each piece."""
        return [float(each) for each in self.best[: len(self.network.pieces)]]

    def improve(self) -> bool:
        """Do one round; say whether another may change anything."""
        if not self._begun:
            self._begun = True
            return self._price(self.best)
        prices = self._solve()
        mixed = _HELD * self.best + (1 - _HELD) * prices
        return self._price(mixed) or self._price(prices) or self._narrowed()

    def _price(self, prices: "_Numbers") -> bool:
        """Let every cable choose at prices; keep new ways and a better bound."""
        costs, paths = self._pricing.chosen(prices, self.rows)
        bound = math.fsum(costs) - float(self.rows.most @ prices)
        if bound > self.bound:
            self.bound, self.best = bound, prices
        return sum([self.add(number, path) for number, path in enumerate(paths)]) > 0

    def _solve(self) -> "_Numbers":
        """Solve the linear program over the ways known; return its prices."""
        from scipy.optimize import linprog  # noqa: PLC0415 - slow to load

        columns = [(number, path) for number, paths in enumerate(self.pool) for path in paths.values()]
        gains = np.array([path.cost - self.wishes[number].outside for number, path in columns])
        if not columns:
            return self.best
        most = np.concatenate([self.rows.most, np.ones(len(self.wishes))])
        uses = self._uses(columns)
        solved = linprog(gains, A_ub=uses, b_ub=most, method="highs")  # type: ignore[call-overload] # sparse is fine
        self.shares = [{} for _ in self.wishes]
        for (number, path), share in zip(columns, solved.x, strict=True):
            if share > ROOM_NOISE:
                self.shares[number][path.pieces] = float(share)
        return np.maximum(-np.asarray(solved.ineqlin.marginals[: len(self.rows.most)], dtype=np.float64), 0.0)

    def _uses(self, columns: Sequence[tuple[int, Path]]) -> "csc_array":
        """Return the matrix of the program: what each way takes in each row, then a row for each cable."""
        from scipy.sparse import csc_array  # noqa: PLC0415 - slow to load

        rows_on: list[list[int]] = [[] for _ in self.network.pieces]
        for row, piece in enumerate(self.rows.pieces.tolist()):
            rows_on[piece].append(row)
        taken = {area: self.rows.taken(area).tolist() for area in self._areas}
        count, rows, values, starts = len(self.rows.most), [], [], [0]
        for number, path in columns:
            takes = taken[self.wishes[number].area]
            own = [row for piece in path.pieces for row in rows_on[piece] if takes[row]]
            rows += [*own, count + number]
            values += [*(takes[row] for row in own), 1.0]
            starts.append(len(rows))
        return csc_array((values, rows, starts), shape=(count + len(self.wishes), len(columns)))

    def _narrowed(self) -> bool:
        """Add the rows in whole steps that the shares exceed most, one for each piece; say whether there were any."""
        held = np.zeros((len(self.network.pieces), len(self._areas)))
        for wish, shares in zip(self.wishes, self.shares, strict=True):
            for pieces, share in shares.items():
                held[list(pieces), self._areas.index(wish.area)] += share
        worst: dict[int, tuple[float, float, float]] = {}
        for step in sorted({area / parts for area in self._areas for parts in _PARTS}):
            whole = np.floor(np.array(self._areas) / step + _ROUNDING)
            most = np.floor((self.rows.most[: len(held)] + ROOM_NOISE) / step + _ROUNDING)
            over = (held @ whole - most) / np.maximum(most, 1.0)
            for piece in np.flatnonzero(over > _EXCEEDED).tolist():
                worst[piece] = max(worst.get(piece, (0.0, 0.0, 0.0)), (float(over[piece]), step, float(most[piece])))
        if not worst:
            return False
        self.rows = self.rows.more([(piece, step, most) for piece, (_, step, most) in sorted(worst.items())])
        self.best = np.concatenate([self.best, np.zeros(len(worst))])
        return True


class Pricing:
    """The least ways of all cables at prices, those of one area searched for together."""

    def __init__(self, network: Network, wishes: Sequence[Wish]) -> None:
        """Sort the cables by what is open to them."""
        self._network, self._wishes = network, wishes
        self._alike: dict[tuple[float, frozenset[int]], list[int]] = {}
        for number, wish in enumerate(wishes):
            self._alike.setdefault((wish.area, wish.closed), []).append(number)
        self._ends = np.array([(each.a, each.b) for each in network.pieces]).reshape(-1, 2)
        self._lengths = np.array([each.length for each in network.pieces])
        self._room = np.array([each.room for each in network.pieces])

    def chosen(self, prices: _Numbers, rows: Rows) -> tuple[list[float], list[Path | None]]:
        """Return by cable what it pays at least, and its least way, none where outside is no dearer."""
        costs = [wish.outside for wish in self._wishes]
        paths: list[Path | None] = [None] * len(self._wishes)
        for (area, closed), numbers in self._alike.items():
            paid = np.bincount(rows.pieces, weights=rows.taken(area) * prices, minlength=len(self._lengths))
            weights: _Numbers = (self._lengths + paid).astype(np.float64)
            weights[self._room < area - ROOM_NOISE] = NO_WAY
            weights[list(closed)] = NO_WAY
            self._search(weights, numbers, costs, paths)
        return costs, paths

    def _search(self, weights: _Numbers, numbers: Sequence[int], costs: list[float], paths: list[Path | None]) -> None:
        from scipy.sparse.csgraph import dijkstra  # noqa: PLC0415 - slow to load

        graph, by = self._graph(weights)
        starts = sorted({node for number in numbers for node, _ in self._wishes[number].starts})
        row = {node: index for index, node in enumerate(starts)}
        far, before = dijkstra(graph, directed=False, indices=starts, return_predecessors=True)
        for number in numbers:
            wish = self._wishes[number]
            cost, start, end = min(
                (first + far[row[start], end] + last, start, end)
                for start, first in wish.starts
                for end, last in wish.ends
            )
            if cost < costs[number]:
                costs[number] = float(cost)
                pieces = _traced(before[row[start]], by, start, end)
                paths[number] = Path(start, pieces, self._network.cost_of(wish, start, pieces, end))

    def _graph(self, weights: _Numbers) -> "tuple[csr_array, dict[tuple[int, int], int]]":
        """Return the open pieces as a graph, and which piece joins two nodes; of several the cheapest."""
        from scipy.sparse import csr_array  # noqa: PLC0415 - slow to load

        by: dict[tuple[int, int], int] = {}
        for piece in np.argsort(weights, kind="stable").tolist():
            a, b = self._ends[piece].tolist()
            if a != b and weights[piece] < NO_WAY:
                by.setdefault((min(a, b), max(a, b)), piece)
        rows, columns = [a for a, _ in by], [b for _, b in by]
        nodes = self._network.nodes
        return csr_array((weights[list(by.values())], (rows, columns)), shape=(nodes, nodes)), by


def _traced(before: npt.NDArray[np.int32], by: dict[tuple[int, int], int], start: int, end: int) -> tuple[int, ...]:
    pieces, node = [], end
    while node != start:
        last = int(before[node])
        pieces.append(by[min(node, last), max(node, last)])
        node = last
    return tuple(reversed(pieces))
