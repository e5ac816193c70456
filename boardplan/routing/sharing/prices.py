"""Channel sharing by prices: the linear program over whole ways, and the bound that its prices prove.

Each piece has a price for a mm² in it; cables choose their least way at those prices, and the linear program over
all ways chosen so far sets new prices: column generation, Dantzig and Wolfe (1960), with the prices held near the
best ones as by Wentges (1997). What cables pay at any prices, less what the room is worth at them, is a bound:
Lagrange. When no price brings a new way, rows are added that only parts of cables break, and they get prices too.
"""

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from boardplan.routing.sharing.covers import SAFE, cover_row, may_have_cover
from boardplan.routing.sharing.network import Network, Path, Wish
from boardplan.routing.sharing.pricing import Pricing
from boardplan.routing.sharing.rows import ROUNDING, Numbers, Row, in_whole_steps, room_rows
from boardplan.routing.sharing.sharing import ROOM_NOISE

if TYPE_CHECKING:
    from scipy.sparse import csc_array

_HELD = 0.5
"""How much of the best prices so far stays in those tried next."""
_PARTS = (1, 2, 3, 4)
"""Into how many equal parts an area is cut for a step."""
_EXCEEDED = 1e-4
_LOOKED = 120
"""At how many shares in pieces is looked for covers in a round: that takes longer than the rest of the round."""
_NEAR = 1e-5
"""How near the bound is to the linear program's own value, as a share of it, when no more ways are looked for."""


class Prices:
    """Prices in each row, the ways chosen at them, the bound they prove, shares of the linear program.

    `plain` is the bound by the rooms of pieces alone, before other rows came; `covering` says whether what is quick to
    find is found, so that rounds take longer now.
    """

    def __init__(self, network: Network, wishes: Sequence[Wish]) -> None:
        """Begin with no prices and no ways."""
        self.network, self.wishes = network, wishes
        self._areas = np.array([each.area for each in wishes])
        self._room = np.array([each.room for each in network.pieces])
        self.rows = room_rows(self._room, self._areas)
        self.best: Numbers = np.zeros(len(self._room))
        self.covering = False
        self.bound = self.plain = -math.inf
        self.pool: list[dict[tuple[int, ...], Path]] = [{} for _ in wishes]
        self.shares: list[dict[tuple[int, ...], float]] = [{} for _ in wishes]
        self._pricing = Pricing(network, wishes)
        self._value = math.inf
        self._begun = False
        self._next, self._unlooked = 0, len(self._room)

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
        more = self._price(mixed) or self._price(prices)
        if more:
            self._unlooked = len(self._room)
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

    def _solve(self) -> Numbers:
        """Solve the linear program over the ways known; return its prices."""
        from scipy.optimize import linprog  # noqa: PLC0415 - slow to load

        columns = [(number, path) for number, paths in enumerate(self.pool) for path in paths.values()]
        gains = np.array([path.cost - self.wishes[number].outside for number, path in columns])
        if not columns:
            return self.best
        most = np.concatenate([self.rows.most, np.ones(len(self.wishes))])
        uses = self._uses(columns)
        solved = linprog(gains, A_ub=uses, b_ub=most, method="highs")  # type: ignore[call-overload] # sparse is fine
        self._value = solved.fun + math.fsum(each.outside for each in self.wishes)
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
        taken = self.rows.takes.T.tolist()
        count, rows, values, starts = len(self.rows.most), [], [], [0]
        for number, path in columns:
            takes = taken[number]
            own = [row for piece in path.pieces for row in rows_on[piece] if takes[row]]
            rows += [*own, count + number]
            values += [*(takes[row] for row in own), 1.0]
            starts.append(len(rows))
        return csc_array((values, rows, starts), shape=(count + len(self.wishes), len(columns)))

    def _narrowed(self) -> bool:
        """Add rows that the shares break, one for each piece; say whether there were any, or may be."""
        inside = np.zeros((len(self.network.pieces), len(self.wishes)))
        for number, shares in enumerate(self.shares):
            for pieces, share in shares.items():
                inside[list(pieces), number] += share
        found = self._stepped(inside)
        if not found:
            self.covering = True
            found = self._covered(inside)
        if found:
            self._unlooked = len(self._room)
            self.rows = self.rows.more(found)
            self.best = np.concatenate([self.best, np.zeros(len(found))])
        return bool(found) or self._unlooked > 0

    def _stepped(self, inside: Numbers) -> list[Row]:
        """Return the rows in whole steps that shares exceed most, one for each piece."""
        worst: dict[int, tuple[float, float]] = {}
        for step in sorted({area / parts for area in self._areas.tolist() for parts in _PARTS}):
            whole = np.floor(self._areas / step + ROUNDING)
            most = np.floor((self._room + ROOM_NOISE) / step + ROUNDING)
            over = (inside @ whole - most) / np.maximum(most, 1.0)
            for piece in np.flatnonzero(over > _EXCEEDED).tolist():
                worst[piece] = max(worst.get(piece, (0.0, 0.0)), (float(over[piece]), step))
        return [
            in_whole_steps(piece, self._areas, float(self._room[piece]) + ROOM_NOISE, step)
            for piece, (_, step) in sorted(worst.items())
        ]

    def _covered(self, inside: Numbers) -> list[Row]:
        """Return covers that shares break in the next few pieces that may have one."""
        found: list[Row] = []
        looked = 0
        while self._unlooked and looked < _LOOKED:
            piece, self._next = self._next, (self._next + 1) % len(self._room)
            self._unlooked -= 1
            if may_have_cover(inside[piece], self._areas, float(self._room[piece])):
                looked += int((inside[piece] > ROOM_NOISE).sum())
                takes = cover_row(inside[piece], self._areas, float(self._room[piece]))
                found += [] if takes is None else [Row(piece, takes, 1.0 + SAFE)]
        return found
