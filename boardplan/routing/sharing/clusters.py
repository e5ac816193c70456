"""Channel sharing, clusters: cables that may come into each other's way, apart from all others.

A cable may come into a piece if a way by it costs no more than to stay outside. Pieces that all who may come would
overfill bind those together; what is bound to no overfull piece stays as it is. So a change elsewhere alters nothing.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardplan.routing.sharing.network import Network, Piece, Wish, far_from
from boardplan.routing.sharing.sharing import COST_NOISE, ROOM_NOISE


@dataclass(frozen=True)
class Cluster:
    """A question of its own, numbered afresh.

    `pieces` and `cables` say which pieces and wishes of the whole they are, in its order.
    """

    network: Network
    wishes: tuple[Wish, ...]
    pieces: tuple[int, ...]
    cables: tuple[int, ...]


def overfull_clusters(network: Network, wishes: Sequence[Wish], now: Sequence[frozenset[int]]) -> list[Cluster]:
    """Return the clusters that hold a piece overfull as cables lie now; `now` are the pieces each lies in."""
    within = [reached(network, wish) | own for wish, own in zip(wishes, now, strict=True)]
    held, may = [0.0] * len(network.pieces), [0.0] * len(network.pieces)
    for wish, own, all_of_it in zip(wishes, now, within, strict=True):
        for piece in own:
            held[piece] += wish.area
        for piece in all_of_it:
            may[piece] += wish.area
    over = {number for number, each in enumerate(network.pieces) if held[number] > each.room + ROOM_NOISE}
    binding = {number for number, each in enumerate(network.pieces) if may[number] > each.room + ROOM_NOISE}
    groups = bound_together([each & binding for each in within])
    return [
        _cluster(network, wishes, cables, now, within)
        for cables in groups
        if any(not over.isdisjoint(now[each]) for each in cables)
    ]


def reached(network: Network, wish: Wish) -> frozenset[int]:
    """Return the pieces by which a cable has a way that costs no more than to stay outside."""
    here, there = (far_from(network, wish, entries) for entries in (wish.starts, wish.ends))
    return frozenset(
        number
        for number, piece in enumerate(network.pieces)
        if number not in wish.closed
        and piece.room >= wish.area - ROOM_NOISE
        and min(here[piece.a] + there[piece.b], here[piece.b] + there[piece.a]) + piece.length
        <= wish.outside + COST_NOISE
    )


def bound_together(pieces: Sequence[frozenset[int]]) -> list[list[int]]:
    """Return cables in groups that share pieces, directly or through others, in their order."""
    group = list(range(len(pieces)))

    def root(number: int) -> int:
        while group[number] != number:
            group[number] = group[group[number]]
            number = group[number]
        return number

    first: dict[int, int] = {}
    for cable, some in enumerate(pieces):
        for piece in some:
            one, other = root(first.setdefault(piece, cable)), root(cable)
            group[max(one, other)] = min(one, other)
    found: dict[int, list[int]] = {}
    for cable in range(len(pieces)):
        found.setdefault(root(cable), []).append(cable)
    return list(found.values())


def _cluster(
    network: Network,
    wishes: Sequence[Wish],
    cables: Sequence[int],
    now: Sequence[frozenset[int]],
    within: Sequence[frozenset[int]],
) -> Cluster:
    """Return a cluster with its own numbers; who isn't in it keeps the room he takes."""
    pieces = sorted(frozenset().union(*(within[each] for each in cables)))
    inside, taken = set(cables), dict.fromkeys(pieces, 0.0)
    for number, own in enumerate(now):
        for piece in own if number not in inside else ():
            if piece in taken:
                taken[piece] += wishes[number].area
    ends = {node for each in pieces for node in (network.pieces[each].a, network.pieces[each].b)}
    ends |= {node for each in cables for node, _ in (*wishes[each].starts, *wishes[each].ends)}
    node_of = {node: number for number, node in enumerate(sorted(ends))}
    piece_of = {piece: number for number, piece in enumerate(pieces)}
    own_pieces = tuple(
        Piece(node_of[each.a], node_of[each.b], each.length, max(0.0, each.room - taken[number]))
        for number in pieces
        for each in (network.pieces[number],)
    )
    own_wishes = tuple(
        replace(
            each,
            starts=tuple((node_of[node], cost) for node, cost in each.starts),
            ends=tuple((node_of[node], cost) for node, cost in each.ends),
            closed=frozenset(piece_of[piece] for piece in each.closed if piece in piece_of),
        )
        for number in cables
        for each in (wishes[number],)
    )
    return Cluster(Network(len(ends), own_pieces), own_wishes, tuple(pieces), tuple(cables))
