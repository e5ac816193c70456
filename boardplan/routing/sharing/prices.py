"""Channel sharing by prices: the linear program over whole ways, and the bound that its prices prove.

Each piece has a price for a mm² in it; cables choose their least way at those prices, and the linear program over
all ways chosen so far sets new prices: column generation, Dantzig and Wolfe (1960), with the prices held near the
best ones as by Wentges (1997). What cables pay at any prices, less what the room is worth at them, is a bound:
Lagrange. When no price brings a new way, rows are added that only parts of cables break, and they get prices too.
"""

import math
from collections.abc import Sequence

import numpy as np

from boardplan.routing.sharing.network import Network, Path, Wish
from boardplan.routing.sharing.pricing import Pricing
from boardplan.routing.sharing.program import Program
from boardplan.routing.sharing.rows import Integers, Numbers, room_rows
from boardplan.routing.sharing.sharing import ROOM_NOISE
from boardplan.routing.sharing.tightening import EXCEEDED, Tightening

_HELD = 0.5
"""How much of the best prices so far stays in those tried next."""
_IDLE, _AGAIN = 9, 6
"""After how many rounds a row that has room left is left out; how often those that shares break are taken back in."""
_NEAR = 1e-5
"""How near the bound is to the linear program's own value, as a share of it, when no more ways are looked for."""


class Prices:
    """Prices in each row, the ways chosen at them, the bound they prove, shares of the linear program.

    `plain` is the bound by the rooms of pieces alone, before other rows came.
    """

    def __init__(self, network: Network, wishes: Sequence[Wish]) -> None:
        """Begin with no prices and no ways."""
        self.network, self.wishes = network, wishes
        self._areas = np.array([each.area for each in wishes])
        self._room = np.array([each.room for each in network.pieces])
        self.rows = room_rows(self._room, self._areas)
        self.best: Numbers = np.zeros(len(self._room))
        self.bound = self.plain = -math.inf
        self.pool: list[dict[tuple[int, ...], Path]] = [{} for _ in wishes]
        self.shares: list[dict[tuple[int, ...], float]] = [{} for _ in wishes]
        self._pricing = Pricing(network, wishes)
        self._value = math.inf
        self._begun = False
        self._tightening = Tightening(self._room, self._areas)
        self._idle: Integers = np.zeros(len(self._room), dtype=np.int64)

    @property
    def slow(self) -> bool:
        """Say whether what is quick to find is found, so that rounds take longer now."""
        return self._tightening.slow

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
        prices = self._solved()
        mixed = _HELD * self.best + (1 - _HELD) * prices
        more = self._price(mixed) or self._price(prices)
        if more:
            self._tightening.begin_anew()
        near = self._value - self.bound <= _NEAR * abs(self._value)
        return (more and not near) or self._narrowed() or more

    def _price(self, prices: Numbers) -> bool:
        """Let every cable choose at prices; keep new ways and a better bound."""
        costs, paths = self._pricing.chosen(prices, self.rows)
        bound = math.fsum([*costs, *(-self.rows.most * prices).tolist()])
        if bound > self.bound:
            self.bound, self.best = bound, prices
        if len(self.rows.most) == len(self._room):
            self.plain = self.bound
        return sum([self.add(number, path) for number, path in enumerate(paths)]) > 0

    def program(self) -> Program:
        """Return the linear program over the ways known and the rows that matter now."""
        ways = [(number, path) for number, paths in enumerate(self.pool) for path in paths.values()]
        return Program.of(self.wishes, ways, self.rows.only(self._used()), len(self.network.pieces))

    def _used(self) -> Integers:
        """Return the rows that have mattered lately.

        Most never matter again, and a program with a quarter of the rows is solved in a tenth of the time.
        """
        return np.flatnonzero(self._idle < _IDLE)

    def _solved(self) -> Numbers:
        """Solve the linear program, rows left out that shares break taken back; return its prices."""
        prices = np.zeros(len(self._idle))
        if not any(self.pool):
            return prices
        for _ in range(_AGAIN):
            used, prices = self._used(), np.zeros(len(self._idle))
            prices[used] = self._shared_out()[: len(used)]
            spare = self._spare()
            broken = (spare < -EXCEEDED) & (self._idle >= _IDLE)
            self._idle[spare < EXCEEDED] = 0
            if not broken.any():
                break
        self._idle += 1
        return prices

    def _shared_out(self) -> Numbers:
        """Solve the linear program, note its value and shares; return the prices of the rows used, then of cables."""
        program = self.program()
        solved = program.solved()
        self._value, self.shares = solved.cost, [{} for _ in self.wishes]
        for (number, path), share in zip(program.ways, solved.shares.tolist(), strict=True):
            if share > ROOM_NOISE:
                self.shares[number][path.pieces] = share
        return solved.prices

    def _spare(self) -> Numbers:
        """Return by row how much is left of what cables may take in it, as a share of that."""
        taken = np.einsum("ij,ij->i", self.rows.takes, self._inside()[self.rows.pieces])
        spare: Numbers = 1 - taken / np.maximum(self.rows.most, 1.0)
        return spare

    def _narrowed(self) -> bool:
        """Add rows that the shares break; say whether there were any, or may be."""
        found = self._tightening.rows(self._inside())
        if found:
            self._tightening.begin_anew()
            self.rows = self.rows.more(found)
            self.best = np.concatenate([self.best, np.zeros(len(found))])
            self._idle = np.concatenate([self._idle, np.zeros(len(found), dtype=np.int64)])
        return bool(found) or self._tightening.unlooked

    def _inside(self) -> Numbers:
        """Return how much of each cable (a column) lies in each piece (a row)."""
        inside = np.zeros((len(self.network.pieces), len(self.wishes)))
        for number, shares in enumerate(self.shares):
            for pieces, share in shares.items():
                inside[list(pieces), number] += share
        return inside
