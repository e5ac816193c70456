"""Channel sharing, program: the linear program over whole ways, which may share rows and cables in parts."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from boardplan.routing.sharing.network import Path, Wish
from boardplan.routing.sharing.rows import Numbers, Rows

if TYPE_CHECKING:
    from scipy.sparse import csc_array


@dataclass(frozen=True)
class Solved:
    """What the program comes to: the cost, the share of each way, the price of each row, then of each cable."""

    cost: float
    shares: Numbers
    prices: Numbers


@dataclass(frozen=True)
class Program:
    """Ways of cables by number, what each gains against outside, what it uses of each row and of its cable."""

    ways: tuple[tuple[int, Path], ...]
    gains: Numbers
    uses: "csc_array"
    most: Numbers
    outside: float

    @staticmethod
    def of(wishes: Sequence[Wish], ways: Sequence[tuple[int, Path]], rows: Rows, pieces: int) -> "Program":
        """Return the program of some ways, in a number of pieces, and rows."""
        gains = np.array([path.cost - wishes[number].outside for number, path in ways])
        most = np.concatenate([rows.most, np.ones(len(wishes))])
        outside = float(np.sum([each.outside for each in wishes]))
        return Program(tuple(ways), gains, _uses(ways, rows, len(wishes), pieces), most, outside)

    def solved(self, least: Numbers | None = None, most: Numbers | None = None) -> Solved:
        """Solve it, shares of ways between 0 and 1 or the limits given; by HiGHS (Huangfu and Hall 2018)."""
        from scipy.optimize import linprog  # noqa: PLC0415 - slow to load

        count = len(self.ways)
        limits = np.column_stack(
            [np.zeros(count) if least is None else least, np.full(count, np.inf) if most is None else most]
        )
        solved = linprog(self.gains, A_ub=self.uses, b_ub=self.most, bounds=limits, method="highs")  # type: ignore[call-overload] # sparse is fine
        prices = np.maximum(-np.asarray(solved.ineqlin.marginals, dtype=np.float64), 0.0)
        return Solved(float(solved.fun) + self.outside, np.asarray(solved.x, dtype=np.float64), prices)


def _uses(ways: Sequence[tuple[int, Path]], rows: Rows, cables: int, pieces: int) -> "csc_array":
    """Return the matrix: what each way takes in each row, then a row for each cable."""
    from scipy.sparse import csc_array  # noqa: PLC0415 - slow to load

    rows_on: list[list[int]] = [[] for _ in range(pieces)]
    for row, piece in enumerate(rows.pieces.tolist()):
        rows_on[piece].append(row)
    taken = rows.takes.T.tolist()
    count, places, values, starts = len(rows.most), [], [], [0]
    for number, path in ways:
        takes = taken[number]
        own = [row for piece in path.pieces for row in rows_on[piece] if takes[row]]
        places += [*own, count + number]
        values += [*(takes[row] for row in own), 1.0]
        starts.append(len(places))
    return csc_array((values, places, starts), shape=(count + cables, len(ways)))
