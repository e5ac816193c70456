"""Cutting, knapsack: the pattern that is worth most in each room, exact in whole numbers, and all that are near it."""

from collections.abc import Iterator, Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from boardplan.output.cutting.task import Pattern, Task

Worths: TypeAlias = NDArray[np.int64]


def best_patterns(task: Task, worths: Sequence[int]) -> list[tuple[int, Pattern]]:
    """Return for each sort of bar what its best pattern is worth, and that pattern.

    Pieces of a size are halved into lots of 1, 2, 4, ..., so that each lot is taken or not: Dantzig (1957), Bellman.
    """
    largest = min(max(task.rooms, default=0), task.size_of(task.wanted))
    best: Worths = np.zeros(largest + 1, dtype=np.int64)
    lots: list[tuple[int, int, int, NDArray[np.bool_]]] = []
    for index, (size, wanted) in enumerate(zip(task.sizes, task.wanted, strict=True)):
        for lot in _lots(min(wanted, largest // size)) if worths[index] > 0 else ():
            trial = best[: largest + 1 - lot * size] + lot * worths[index]
            held = best[lot * size :]
            better = trial > held
            np.copyto(held, trial, where=better)
            lots.append((index, lot, lot * size, better))
    found = []
    for room in task.rooms:
        at = min(room, largest)
        found.append((int(best[at]), _traced(lots, at, len(task.sizes))))
    return found


def _lots(count: int) -> Iterator[int]:
    """Yield lots whose sums are all numbers up to a count."""
    lot = 1
    while count > 0:
        yield min(lot, count)
        count -= lot
        lot *= 2


def _traced(lots: Sequence[tuple[int, int, int, NDArray[np.bool_]]], room: int, sizes: int) -> Pattern:
    counts = [0] * sizes
    for index, lot, size, better in reversed(lots):
        if size <= room and better[room - size]:
            counts[index] += lot
            room -= size
    return tuple(counts)


MOST_CELLS = 4_000_000
"""Larger tables for `patterns_worth` would take too long and too much memory."""


def patterns_worth(task: Task, worths: Sequence[int], least: Sequence[int], most: int) -> list[tuple[int, Pattern]]:
    """Return all full patterns worth at least so much for their sort of bar, with that sort; no more than `most` + 1.

    A pattern is full when no piece that is wanted still fits beside it.
    """
    largest = max(task.rooms, default=0)
    rest: list[Worths] = [np.zeros(largest + 1, dtype=np.int64)]
    for size, wanted, worth in reversed(list(zip(task.sizes, task.wanted, worths, strict=True))):
        rest.append(_with_size(rest[-1], size, wanted, worth))
    rest.reverse()
    found: list[tuple[int, Pattern]] = []
    for sort, room in enumerate(task.rooms):
        for pattern in _near(task, worths, rest, room, least[sort]) if task.counts[sort] else ():
            found.append((sort, pattern))
            if len(found) > most:
                return found
    return found


def _with_size(rest: Worths, size: int, wanted: int, worth: int) -> Worths:
    best = rest.copy()
    for lot in _lots(min(wanted, (len(rest) - 1) // size)) if worth > 0 else ():
        np.maximum(best[lot * size :], best[: len(best) - lot * size] + lot * worth, out=best[lot * size :])
    return best


def _near(task: Task, worths: Sequence[int], rest: Sequence[Worths], room: int, least: int) -> Iterator[Pattern]:
    """Yield the full patterns of a room worth at least so much; what is still possible prunes the search."""
    sizes = len(task.sizes)
    open_ones: list[tuple[int, int, int, Pattern]] = [(0, room, 0, ())]
    while open_ones:
        index, left, worth, counts = open_ones.pop()
        if index == sizes:
            if not _fits_more(task, counts, left):
                yield counts
            continue
        for count in range(min(task.wanted[index], left // task.sizes[index]) + 1):
            after, gained = left - count * task.sizes[index], worth + count * worths[index]
            if gained + int(rest[index + 1][after]) >= least:
                open_ones.append((index + 1, after, gained, (*counts, count)))


def _fits_more(task: Task, counts: Pattern, left: int) -> bool:
    return any(
        count < wanted and size <= left for count, wanted, size in zip(counts, task.wanted, task.sizes, strict=True)
    )
