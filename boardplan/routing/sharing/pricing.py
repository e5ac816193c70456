"""Channel sharing, pricing: the least ways of all cables at prices, those to whom all costs the same together."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from boardplan.routing.sharing.network import NO_WAY, Network, Path, Wish
from boardplan.routing.sharing.rows import Integers, Numbers, Rows
from boardplan.routing.sharing.sharing import ROOM_NOISE

if TYPE_CHECKING:
    from scipy.sparse import csr_array


class Pricing:
    """The least ways of all cables at prices."""

    def __init__(self, network: Network, wishes: Sequence[Wish]) -> None:
        """Note what is open to each cable."""
        self._network, self._wishes = network, wishes
        self._lengths = np.array([each.length for each in network.pieces])
        self._barred = np.array([[each.room] for each in network.pieces]) < np.array([w.area for w in wishes]) - (
            ROOM_NOISE
        )
        for number, wish in enumerate(wishes):
            self._barred[list(wish.closed), number] = True
        self._joints = _Joints(network)

    def chosen(self, prices: Numbers, rows: Rows) -> tuple[list[float], list[Path | None]]:
        """Return by cable what it pays at least, and its least way, none where outside is no dearer."""
        costs = [wish.outside for wish in self._wishes]
        paths: list[Path | None] = [None] * len(self._wishes)
        weights = self._lengths[:, None] + rows.paid(prices, len(self._lengths))
        weights[self._barred] = NO_WAY
        alike: dict[bytes, list[int]] = {}
        for number in range(len(self._wishes)):
            alike.setdefault(weights[:, number].tobytes(), []).append(number)
        for numbers in alike.values():
            self._search(weights[:, numbers[0]], numbers, costs, paths)
        return costs, paths

    def _search(self, weights: Numbers, numbers: Sequence[int], costs: list[float], paths: list[Path | None]) -> None:
        from scipy.sparse.csgraph import dijkstra  # noqa: PLC0415 - slow to load

        graph, pieces = self._joints.graph(weights)
        starts = sorted({node for number in numbers for node, _ in self._wishes[number].starts})
        row = {node: index for index, node in enumerate(starts)}
        far, before = dijkstra(graph, indices=starts, return_predecessors=True)
        for number in numbers:
            wish = self._wishes[number]
            cost, start, end = min(
                (first + far[row[start], end] + last, start, end)
                for start, first in wish.starts
                for end, last in wish.ends
            )
            if cost < costs[number]:
                costs[number] = float(cost)
                passed = self._joints.traced(before[row[start]], pieces, start, end)
                paths[number] = Path(start, passed, self._network.cost_of(wish, start, passed, end))


class _Joints:
    """The network as a graph with one arc from node to node, for the cheapest of the pieces between them."""

    def __init__(self, network: Network) -> None:
        self._nodes = network.nodes
        between = [(min(each.a, each.b), max(each.a, each.b)) for each in network.pieces]
        pairs = sorted({(a, b) for a, b in between if a != b})
        self._number = {pair: number for number, pair in enumerate(pairs)}
        self._pieces = np.array([n for n, (a, b) in enumerate(between) if a != b], dtype=np.int64)
        self._pair_of = np.array([self._number[a, b] for a, b in between if a != b], dtype=np.int64)
        self._first = np.searchsorted(np.sort(self._pair_of), np.arange(len(pairs)))
        arcs = sorted([(a, b, n) for n, (a, b) in enumerate(pairs)] + [(b, a, n) for n, (a, b) in enumerate(pairs)])
        self._arcs = np.array([n for _, _, n in arcs], dtype=np.int64)
        self._to = np.array([b for _, b, _ in arcs], dtype=np.int32)
        self._from = np.searchsorted([a for a, _, _ in arcs], np.arange(self._nodes + 1)).astype(np.int32)

    def graph(self, weights: Numbers) -> "tuple[csr_array, Integers]":
        """Return the graph at what pieces cost, and by pair of nodes the piece between them that costs least."""
        from scipy.sparse import csr_array  # noqa: PLC0415 - slow to load

        order = np.lexsort((weights[self._pieces], self._pair_of))
        cheapest = self._pieces[order[self._first]]
        data = weights[cheapest[self._arcs]]
        return csr_array((data, self._to, self._from), shape=(self._nodes, self._nodes)), cheapest

    def traced(self, before: npt.NDArray[np.int32], pieces: Integers, start: int, end: int) -> tuple[int, ...]:
        """Return the pieces of the way to an end, from the nodes before each node."""
        found, node = [], end
        while node != start:
            last = int(before[node])
            found.append(int(pieces[self._number[min(node, last), max(node, last)]]))
            node = last
        return tuple(reversed(found))
