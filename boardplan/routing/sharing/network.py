"""Channel network: pieces of channel between joints, what cables ask of them, and the least way of one cable.

Knows nothing of boards: nodes are numbers, lengths are mm, areas mm². A piece can be passed both ways.
"""

import heapq
import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

Entry: TypeAlias = tuple[int, float]
"""A node where a cable may enter or leave, and what it costs to get there from its end."""
Cost: TypeAlias = Callable[[int], float]
"""What a piece costs a cable; infinite where it may not pass."""
NO_WAY = math.inf


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of channel between two nodes: how long it is, and what area of cables may lie in it."""

    a: int
    b: int
    length: float
    room: float


@dataclass(frozen=True, slots=True)
class Wish:
    """What a cable asks: its area, where it may enter and leave, what it costs outside of all channels.

    `closed` are pieces it may not use whatever their room.
    """

    cable: str
    area: float
    starts: tuple[Entry, ...]
    ends: tuple[Entry, ...]
    outside: float
    closed: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Path:
    """A way through the network from a node over pieces, and what it costs without regard to room."""

    start: int
    pieces: tuple[int, ...]
    cost: float


@dataclass(frozen=True)
class Network:
    """Pieces between nodes numbered from 0."""

    nodes: int
    pieces: tuple[Piece, ...]

    @cached_property
    def around(self) -> tuple[tuple[tuple[int, int], ...], ...]:
        """By node: the pieces that meet there, and the node at their other end."""
        found: list[list[tuple[int, int]]] = [[] for _ in range(self.nodes)]
        for number, piece in enumerate(self.pieces):
            found[piece.a].append((number, piece.b))
            found[piece.b].append((number, piece.a))
        return tuple(tuple(each) for each in found)

    def cost_of(self, wish: Wish, start: int, pieces: Sequence[int], end: int) -> float:
        """Return what a way costs: both entries and the lengths between."""
        entries = dict(wish.starts)[start] + dict(wish.ends)[end]
        return entries + math.fsum(self.pieces[each].length for each in pieces)


def far_from(network: Network, wish: Wish, entries: Iterable[Entry]) -> list[float]:
    """Return what it costs a cable from an end to each node, in empty channels; infinite past what outside costs."""
    far = [NO_WAY] * network.nodes
    heap = []
    for node, cost in entries:
        far[node] = min(far[node], cost)
        heap.append((cost, node))
    heapq.heapify(heap)
    while heap:
        cost, node = heapq.heappop(heap)
        if cost > far[node]:
            continue
        for piece, other in network.around[node]:
            new = cost + network.pieces[piece].length
            if new < min(far[other], wish.outside) and piece not in wish.closed:
                far[other] = new
                heapq.heappush(heap, (new, other))
    return far


def least_path(
    network: Network, wish: Wish, cost: Cost, far: Sequence[float] | None = None, most: float = NO_WAY
) -> Path | None:
    """Return the way of least cost for one cable, none where none that costs less than `most` leads there.

    `far` is what it costs at least from each node to where the cable leads, if that is known: those nodes are looked
    at first by which a way is least. Dijkstra (1959), Hart, Nilsson and Raphael (1968).
    """
    far = far or [0.0] * network.nodes
    came: dict[int, int] = {}
    heap = [(access + far[node], access, node, -1) for node, access in wish.starts]
    best = {node: min(access for other, access in wish.starts if other == node) for node, _ in wish.starts}
    heapq.heapify(heap)
    ends, done, bound, reached = dict(wish.ends), set[int](), most, -1
    around = network.around
    while heap and heap[0][0] < bound:
        _, so_far, node, by = heapq.heappop(heap)
        if node in done:
            continue
        done.add(node)
        came[node] = by
        if so_far + ends.get(node, NO_WAY) < bound:
            bound, reached = so_far + ends[node], node
        for piece, other in around[node]:
            if other in done or so_far + far[other] >= bound:
                continue
            new = so_far + cost(piece)
            if new < best.get(other, NO_WAY):
                best[other] = new
                heapq.heappush(heap, (new + far[other], new, other, piece))
    return _traced(network, wish, came, reached) if reached >= 0 else None


def _traced(network: Network, wish: Wish, came: dict[int, int], end: int) -> Path:
    pieces, node = [], end
    while came[node] >= 0:
        piece = network.pieces[came[node]]
        pieces.append(came[node])
        node = piece.a if piece.b == node else piece.b
    pieces.reverse()
    return Path(node, tuple(pieces), network.cost_of(wish, node, pieces, end))
