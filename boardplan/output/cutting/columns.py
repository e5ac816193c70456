"""Cutting by columns: the linear program over patterns, and a bound that holds whatever its solver rounds.

Column generation, Gilmore and Gomory (1961). What the pieces are worth at any prices, less what the bars at hand earn
over their cost with their best patterns, is a bound: Farley (1990). Prices are made whole numbers first and the best
patterns are exact, so that the bound is too.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

import numpy as np

from boardplan.output.cutting.knapsack import best_patterns
from boardplan.output.cutting.task import Filled, Pattern, Task

_SCALE = 1 << 30
"""How many parts a cost of one is cut into for whole prices."""
_EARNS = 1e-7
_AT_ONCE = 16


@dataclass(frozen=True)
class Prices:
    """Whole prices of the sizes with the bound they prove: `bound` over `scale` is a lower bound of the cost.

    `earns` is what the best pattern of each sort of bar is worth over its cost.
    """

    worths: tuple[int, ...]
    bound: int
    scale: int
    earns: tuple[int, ...]

    @property
    def proven(self) -> Fraction:
        """The lower bound itself."""
        return Fraction(self.bound, self.scale)

    def least(self, task: Task) -> int:
        """Return the least cost there can be: no less than the bound, in whole steps."""
        steps = -(-self.bound // (self.scale * task.step))
        return steps * task.step

    def needed(self, task: Task, below: int) -> tuple[int, ...]:
        """Return what a pattern of each sort is worth at least if it is part of an answer that costs below so much."""
        spare = (below - task.step) * self.scale - self.bound
        return tuple(task.per_bar * self.scale + each - spare for each in self.earns)


@dataclass(frozen=True)
class Relaxed:
    """The linear program's answer: how often each column is used, and the best prices."""

    columns: tuple[Filled, ...]
    shares: tuple[float, ...]
    prices: Prices


def relaxed(task: Task, known: Sequence[Filled], enough: int) -> Relaxed:
    """Return the linear program's answer over all patterns; it stops once that proves a cost of no less than enough.

    Where the solver fails, shares are nought and the bound is what was proven until then.
    """
    columns = dict.fromkeys(known)
    best = Prices((0,) * len(task.sizes), 0, _SCALE, (0,) * len(task.rooms))
    while True:
        tried = tuple(columns)
        answer = solved(task, tried)
        if answer is None:
            return Relaxed(tried, (0.0,) * len(tried), best)
        whole = tuple(
            min(int(each * _SCALE), cost * _SCALE) for each, cost in zip(answer.sizes, task.per_piece, strict=True)
        )
        patterns = best_patterns(task, whole)
        best = max(best, _prices(task, whole, [worth for worth, _ in patterns]), key=lambda each: each.proven)
        new = [each for each in _earning(task, whole, answer.sorts, patterns) if each not in columns]
        if not new or best.least(task) >= enough:
            return Relaxed(tried, answer.columns, best)
        columns.update(dict.fromkeys(new))


def _earning(
    task: Task, whole: Sequence[int], sorts: Sequence[float], patterns: Sequence[tuple[int, Pattern]]
) -> Iterator[Filled]:
    """Yield the patterns that earn something, then the best of what those leave, and so on: fewer programs to solve."""
    left = task
    for _ in range(_AT_ONCE):
        earning = [
            Filled(sort, pattern)
            for sort, (worth, pattern) in enumerate(patterns)
            if task.counts[sort] and worth / _SCALE > task.per_bar + sorts[sort] + _EARNS
        ]
        if not earning:
            return
        yield from earning
        left = replace(left, wanted=left.left_out(earning[:1]))
        patterns = best_patterns(left, whole)


def _prices(task: Task, whole: tuple[int, ...], best: Sequence[int]) -> Prices:
    """Return prices with what they prove; where there are bars enough for all, no pattern may earn anything."""
    pieces = sum(task.wanted)
    cost = task.per_bar * _SCALE
    free = [worth for worth, count in zip(best, task.counts, strict=True) if count >= pieces]
    scale = max([_SCALE, *(-(-worth // task.per_bar) for worth in free if task.per_bar and worth > cost)])
    earns = tuple(max(0, worth - task.per_bar * scale) for worth in best)
    bound = sum(worth * count for worth, count in zip(whole, task.wanted, strict=True))
    bound -= sum(each * count for each, count in zip(earns, task.counts, strict=True))
    return Prices(whole, bound, scale, earns)


@dataclass(frozen=True)
class Shares:
    """An answer of the linear program: its cost, how often each column is used, prices of sizes and sorts of bars."""

    cost: float
    columns: tuple[float, ...]
    sizes: tuple[float, ...]
    sorts: tuple[float, ...]


def solved(task: Task, columns: Sequence[Filled], within: Sequence[tuple[int, int]] = ()) -> Shares | None:
    """Return the linear program's answer over columns, each used `within` bounds; none where its solver finds none.

    Pieces may always be left out, at their cost: without bounds, or where they leave bars enough, there is an answer.
    """
    from scipy.optimize import linprog  # noqa: PLC0415 - slow to load
    from scipy.sparse import coo_array  # noqa: PLC0415 - slow to load

    sizes, number = len(task.sizes), len(columns)
    rows, places, values = list(range(sizes)), [number + index for index in range(sizes)], [-1.0] * sizes
    for place, (sort, pattern) in enumerate(columns):
        cut = [(index, -float(count)) for index, count in enumerate(pattern) if count] + [(sizes + sort, 1.0)]
        rows += [row for row, _ in cut]
        places += [place] * len(cut)
        values += [value for _, value in cut]
    uses = coo_array((values, (rows, places)), shape=(sizes + len(task.rooms), number + sizes)).tocsc()
    most = np.array([*(-each for each in task.wanted), *task.counts], dtype=np.float64)
    costs = np.array([task.per_bar] * number + list(task.per_piece), dtype=np.float64)
    low = [low for low, _ in within] or [0] * number
    high = [float(high) for _, high in within] or [math.inf] * number
    bounds = np.array([[*low, *([0] * sizes)], [*high, *([math.inf] * sizes)]]).T
    found = linprog(costs, A_ub=uses, b_ub=most, bounds=bounds, method="highs-ds")  # type: ignore[call-overload]
    if found.x is None:
        return None
    prices = tuple(max(0.0, -float(each)) for each in found.ineqlin.marginals)
    shares = tuple(float(each) for each in found.x[:number])
    return Shares(float(found.fun), shares, prices[:sizes], prices[sizes:])
