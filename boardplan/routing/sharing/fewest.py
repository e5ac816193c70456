"""Channel sharing, fewest: how many cables must stay outside at least, whatever answer is chosen.

The same question with every length next to nothing and outside at a price of 1 for each cable: a bound on what that
costs, rounded up, is a number of cables. A way dearer than outside is no answer; so each cable keeps to the pieces by
which it has one that is not.
"""

import math
from collections.abc import Sequence
from dataclasses import replace

from boardplan.routing.sharing.clusters import reached
from boardplan.routing.sharing.network import Network, Wish

_NOTHING = 1e-9
"""How long a piece is when only cables count: what a search for the least way still tells from 0."""
_NOISE = 1e-6


def counted(network: Network, wishes: Sequence[Wish]) -> tuple[Network, tuple[Wish, ...]]:
    """Return the question in which an answer costs as much as there are cables outside, and next to nothing more."""
    pieces = tuple(replace(each, length=_NOTHING) for each in network.pieces)
    every = frozenset(range(len(pieces)))
    return Network(network.nodes, pieces), tuple(
        replace(
            each,
            starts=tuple((node, 0.0) for node, _ in each.starts),
            ends=tuple((node, 0.0) for node, _ in each.ends),
            outside=1.0,
            closed=every - reached(network, each),
        )
        for each in wishes
    )


def fewest_outside(network: Network, wishes: Sequence[Wish], bound: float) -> int:
    """Return how many cables stay outside at least, from a bound on what answers to the counted question cost."""
    next_to_nothing = _NOTHING * len(network.pieces) * len(wishes)
    return max(0, math.ceil(bound - next_to_nothing - _NOISE))
