"""Cutting, search: the cheapest way to cut a task, and a bound that says how far it can be from the least."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.output.cutting.columns import Relaxed, relaxed, solved
from boardplan.output.cutting.filling import filled
from boardplan.output.cutting.knapsack import MOST_CELLS, patterns_worth
from boardplan.output.cutting.refilling import refilled
from boardplan.output.cutting.task import Filled, Task, no_more_than_wanted

_MOST_PATTERNS = 4000
_MOST_WORK = 60_000
"""Patterns times programs solved over them: a limit that is the same on every machine."""
_MOST_DIVES = 30
_FEW_DIVES = 3
"""How often is dived at most, and where length is missing anyway, so that little is to be won."""
_WHOLE = 1e-6


@dataclass(frozen=True)
class Found:
    """Bars as they are cut, what they cost, and the least cost there can be."""

    bars: tuple[Filled, ...]
    cost: int
    least: int


def cheapest(task: Task, known: tuple[Filled, ...] = ()) -> Found:
    """Return the cheapest way that is found to cut a task, starting from one that is known; the same each time.

    Quick ways first; then the linear program over patterns, its shares made whole, and bars filled anew where length is
    missing; then, where the bound is not met, every pattern that a cheaper answer can be made of, by branch and bound.
    """
    best = min((each for each in (filled(task), known) if each or not known), key=task.cost)
    least = simple_bound(task)
    if not task.per_bar:
        best = refilled(task, best)
    if task.cost(best) > least:
        best, least = _by_columns(task, best, least)
    tidy = no_more_than_wanted(task, best)
    return Found(tidy, task.cost(tidy), min(least, task.cost(tidy)))


def simple_bound(task: Task) -> int:
    """Return what it costs at least: so much length from the largest bars, or one piece left out."""
    total = task.size_of(task.wanted)
    bars = 0
    for room, count in sorted(zip(task.rooms, task.counts, strict=True), reverse=True):
        taken = min(count, -(-max(0, total) // room)) if room else 0
        total -= taken * room
        bars += taken
    return min([bars * task.per_bar, *task.per_piece])


def _by_columns(task: Task, best: tuple[Filled, ...], least: int) -> tuple[tuple[Filled, ...], int]:
    loose = relaxed(task, best, task.cost(best))
    least = max(least, loose.prices.least(task))
    if task.cost(best) > least:
        best = _dived_often(task, loose, best, least)
    if task.cost(best) > least:
        best, least = _searched(task, loose, best, least)
    return best, least


def _dived_often(task: Task, loose: Relaxed, best: tuple[Filled, ...], least: int) -> tuple[Filled, ...]:
    """Return the best of several dives, each begun with another of the bars that shares are least unsure of."""
    begins = sorted(zip(loose.columns, loose.shares, strict=True), key=lambda each: -each[1])
    used = [column for column, share in begins if share > _WHOLE]
    for first in (None, *used[1 : _FEW_DIVES if least and not task.per_bar else _MOST_DIVES]):
        if task.cost(best) <= least:
            break
        kept = () if first is None else (first,)
        left = task.without(kept)
        start = loose if first is None else relaxed(left, _usable(left, loose.columns), task.cost(best) - task.per_bar)
        begun = task.per_bar * len(kept)
        dived = _dived(left, start, least - begun, task.cost(best) - begun)
        made = (*kept, *dived) if task.per_bar else refilled(task, (*kept, *dived))
        best = min((best, made), key=task.cost)
    return best


def _dived(task: Task, loose: Relaxed, enough: int, beat: int) -> tuple[Filled, ...]:
    """Return whole bars from shares: what they are sure of is kept, the rest solved again until nothing is left.

    It ends once the cost is no more than `enough`, or can't be less than `beat` any more.
    """
    kept: list[Filled] = []
    best: tuple[Filled, ...] = ()
    left = task
    while any(left.wanted):
        sure = _made_whole(left, loose)
        kept += sure
        left = left.without(sure)
        best = min((best, (*kept, *filled(left))), key=task.cost)
        usable = _usable(left, loose.columns)
        hopeless = min(task.cost(best), beat) - task.per_bar * len(kept)
        if task.cost(best) <= enough or not sure or not usable:
            break
        loose = relaxed(left, usable, hopeless)
        if loose.prices.least(left) >= hopeless:
            break
    return best


def _usable(task: Task, columns: Sequence[Filled]) -> tuple[Filled, ...]:
    """Return columns cut down to what is still wanted, those of bars that are left."""
    small = (
        Filled(each.sort, tuple(min(count, still) for count, still in zip(each.pattern, task.wanted, strict=True)))
        for each in columns
        if task.counts[each.sort]
    )
    return tuple(dict.fromkeys(each for each in small if any(each.pattern)))


def _made_whole(task: Task, loose: Relaxed) -> list[Filled]:
    """Return the bars that shares are sure of: each as often as it is used wholly, or else the one used most."""
    counts, left, sure = list(task.counts), list(task.wanted), list[Filled]()

    def take(column: Filled) -> None:
        if counts[column.sort] and any(min(a, b) for a, b in zip(column.pattern, left, strict=True)):
            counts[column.sort] -= 1
            left[:] = [max(0, still - count) for still, count in zip(left, column.pattern, strict=True)]
            sure.append(column)

    by_share = sorted(zip(loose.columns, loose.shares, strict=True), key=lambda each: -each[1])
    for column, share in by_share:
        for _ in range(int(share + _WHOLE)):
            take(column)
    for column, share in by_share:
        if not sure and share > _WHOLE:
            take(column)
    return sure


def _searched(task: Task, loose: Relaxed, best: tuple[Filled, ...], least: int) -> tuple[tuple[Filled, ...], int]:
    """Return the cheapest answer made of patterns that a cheaper one needs, and the bound that the search proves."""
    if (max(task.rooms) + 1) * (len(task.sizes) + 1) > MOST_CELLS:
        return best, least
    needed = loose.prices.needed(task, task.cost(best))
    patterns = patterns_worth(task, loose.prices.worths, needed, _MOST_PATTERNS)
    if len(patterns) > _MOST_PATTERNS:
        return best, least
    return _branched(task, tuple(Filled(*each) for each in patterns), best, least)


def _branched(
    task: Task, columns: tuple[Filled, ...], best: tuple[Filled, ...], least: int
) -> tuple[tuple[Filled, ...], int]:
    """Return the cheapest whole answer over columns by branch and bound, up first, and what is proven when it stops."""
    open_nodes = [tuple((0, task.counts[each.sort]) for each in columns)]
    nodes = 0
    while open_nodes and task.cost(best) > least:
        if nodes * len(columns) > _MOST_WORK:
            return best, least
        nodes += 1
        within = open_nodes.pop()
        answer = solved(task, columns, within)
        if answer is None and not _too_many(task, columns, within):
            return best, least
        if answer is None or _in_steps(answer.cost, task.step) >= task.cost(best):
            continue
        place = max(range(len(columns)), key=lambda each: _in_pieces(answer.columns[each]), default=-1)
        if place < 0 or not _in_pieces(answer.columns[place]):
            used = zip(columns, answer.columns, strict=True)
            best = tuple(column for column, share in used for _ in range(round(share)))
            continue
        down, (low, high) = int(answer.columns[place]), within[place]
        before, after = within[:place], within[place + 1 :]
        open_nodes += [(*before, (low, down), *after), (*before, (down + 1, high), *after)]
    return best, task.cost(best)


def _too_many(task: Task, columns: Sequence[Filled], within: Sequence[tuple[int, int]]) -> bool:
    """Return whether bounds ask for more bars than there are."""
    asked = [0] * len(task.rooms)
    for column, (low, _) in zip(columns, within, strict=True):
        asked[column.sort] += low
    return any(count > most for count, most in zip(asked, task.counts, strict=True))


def _in_steps(cost: float, step: int) -> int:
    """Return the least whole cost that is no less than one of a linear program."""
    return math.ceil(cost / step - _WHOLE) * step


def _in_pieces(share: float) -> float:
    """Return how far a share is from being whole, the larger part counting for more."""
    part = share - math.floor(share + _WHOLE)
    return part if part > _WHOLE else 0.0
