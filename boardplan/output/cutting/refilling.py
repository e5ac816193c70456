"""Cutting, refilling: two bars at a time are filled anew with their pieces and those left out, as full as can be."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import permutations

from boardplan.output.cutting.knapsack import best_patterns
from boardplan.output.cutting.task import Filled, Pattern, Task

_SWEEPS = 2
_MOST_BARS = 40


def refilled(task: Task, bars: Sequence[Filled]) -> tuple[Filled, ...]:
    """Return bars that leave out no more than those given, and often less; unused bars take part."""
    filled = [*bars, *_empty_ones(task, bars)][:_MOST_BARS]
    kept = tuple(bars[_MOST_BARS:])
    for _ in range(_SWEEPS):
        before = task.cost((*filled, *kept))
        for first, second in permutations(range(len(filled)), 2):
            rest = task.left_out((*filled, *kept))
            if not any(rest):
                return (*filled, *kept)
            filled[first], filled[second] = _better(task, filled[first], filled[second], rest)
        if task.cost((*filled, *kept)) >= before:
            break
    return (*filled, *kept)


def _empty_ones(task: Task, bars: Sequence[Filled]) -> list[Filled]:
    unused = task.without(bars).counts
    return [Filled(sort, (0,) * len(task.sizes)) for sort, count in enumerate(unused) for _ in range(count)]


def _better(task: Task, one: Filled, other: Filled, rest: Pattern) -> tuple[Filled, Filled]:
    """Return two bars filled anew, the first of them first, if they then hold what costs more to leave out."""
    pool = tuple(map(sum, zip(rest, one.pattern, other.pattern, strict=True)))
    first = _fullest(task, one.sort, pool)
    left = tuple(count - less for count, less in zip(pool, first.pattern, strict=True))
    second = _fullest(task, other.sort, left)
    new, old = (_worth(task, first) + _worth(task, second), _worth(task, one) + _worth(task, other))
    return (first, second) if new > old else (one, other)


def _fullest(task: Task, sort: int, wanted: Pattern) -> Filled:
    alone = replace(task, wanted=wanted, rooms=(task.rooms[sort],), counts=(1,))
    return Filled(sort, best_patterns(alone, task.per_piece)[0][1])


def _worth(task: Task, bar: Filled) -> int:
    return sum(count * cost for count, cost in zip(bar.pattern, task.per_piece, strict=True))
