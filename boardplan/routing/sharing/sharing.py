"""Channel sharing: which cables lie in which pieces of channel, so that none holds more than it may.

An answer gives each cable one way through the network, or none: it stays outside at its own cost.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from boardplan.routing.sharing.network import NO_WAY, Cost, Network, Path, Wish, far_from, least_path

ROOM_NOISE = 1e-6
"""What sums of areas may be out by, in mm²."""
COST_NOISE = 1e-6
"""What sums of lengths may be out by, in mm."""
Chosen: TypeAlias = tuple[Path | None, ...]
"""By cable, in the order of the wishes: its way, none where it stays outside."""


@dataclass(frozen=True, slots=True)
class Sharing:
    """An answer: the ways chosen, what they cost together, and what any answer costs at least."""

    chosen: Chosen
    cost: float
    bound: float

    @property
    def gap(self) -> float:
        """How much of the cost is not proven to be needed, as a share of the bound."""
        return self.saving_left / self.bound if self.bound > 0 else 0.0

    @property
    def saving_left(self) -> float:
        """How much less another answer could cost at most."""
        return max(self.cost - self.bound, 0.0)

    @property
    def outside(self) -> tuple[int, ...]:
        """The cables left outside, by their number."""
        return tuple(number for number, path in enumerate(self.chosen) if path is None)


def cost_of(wishes: Sequence[Wish], chosen: Sequence[Path | None]) -> float:
    """Return what an answer costs."""
    return math.fsum(wish.outside if path is None else path.cost for wish, path in zip(wishes, chosen, strict=True))


class Loads:
    """An answer while it is worked at: what room is left in each piece, who lies in it."""

    def __init__(self, network: Network, wishes: Sequence[Wish], chosen: Sequence[Path | None]) -> None:
        """Begin with an answer."""
        self.network, self.wishes = network, wishes
        self.left = [piece.room for piece in network.pieces]
        self.inside: list[set[int]] = [set() for _ in network.pieces]
        self.chosen: list[Path | None] = [None] * len(wishes)
        self._far: dict[int, list[float]] = {}
        for number, path in enumerate(chosen):
            self.lay(number, path)

    def lay(self, number: int, path: Path | None) -> None:
        """Give a cable another way."""
        area, held = self.wishes[number].area, self.chosen[number]
        for piece in held.pieces if held else ():
            self.left[piece] += area
            self.inside[piece].discard(number)
        for piece in path.pieces if path else ():
            self.left[piece] -= area
            self.inside[piece].add(number)
        self.chosen[number] = path

    def cost(self, number: int) -> float:
        """Return what a cable costs now."""
        path = self.chosen[number]
        return self.wishes[number].outside if path is None else path.cost

    def least(self, number: int, prices: Sequence[float] | None = None) -> Path | None:
        """Return the least way of a cable, not laid now, in the room left; none where outside costs no more.

        `prices` per mm² make pieces dearer that others want.
        """
        wish = self.wishes[number]
        if number not in self._far:
            self._far[number] = far_from(self.network, wish, wish.ends)
        most = NO_WAY if prices else wish.outside
        path = least_path(self.network, wish, self._within(wish, prices), self._far[number], most)
        return path if path and path.cost < wish.outside else None

    def _within(self, wish: Wish, prices: Sequence[float] | None) -> Cost:
        pieces, left, area, closed = self.network.pieces, self.left, wish.area - ROOM_NOISE, wish.closed

        def cost(piece: int) -> float:
            if left[piece] < area or piece in closed:
                return NO_WAY
            return pieces[piece].length + (prices[piece] * area if prices else 0.0)

        return cost
