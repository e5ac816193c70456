"""Cutting, filling: good patterns at once, the longest piece first, or the fullest bar first; nothing is proven."""

from collections.abc import Iterator

from boardplan.output.cutting.knapsack import best_patterns
from boardplan.output.cutting.task import Filled, Task


def filled(task: Task) -> tuple[Filled, ...]:
    """Return the cheapest of several quick ways to cut a task."""
    return min(_ways(task), key=task.cost)


def _ways(task: Task) -> Iterator[tuple[Filled, ...]]:
    yield topped_up(task, (), largest_first=True)
    yield topped_up(task, (), largest_first=False)
    yield _fullest_first(task)


def topped_up(task: Task, begun: tuple[Filled, ...], *, largest_first: bool) -> tuple[Filled, ...]:
    """Return bars with the rest of the pieces, the longest first, each put where the least is left over.

    A further bar is the largest there is, or the smallest that holds the piece.
    """
    bars = [(task.rooms[bar.sort] - task.size_of(bar.pattern), bar.sort, list(bar.pattern)) for bar in begun]
    left, counts = list(task.left_out(begun)), list(task.counts)
    for bar in begun:
        counts[bar.sort] -= 1
    for index in sorted(range(len(left)), key=lambda each: -task.sizes[each]):
        for _ in range(left[index]):
            fits = [number for number, (room, _, _) in enumerate(bars) if room >= task.sizes[index]]
            if not fits:
                sort = _opened(task, counts, task.sizes[index], largest_first=largest_first)
                if sort is None:
                    break
                counts[sort] -= 1
                bars.append((task.rooms[sort], sort, [0] * len(task.sizes)))
                fits = [len(bars) - 1]
            number = min(fits, key=lambda each: (bars[each][0], each))
            room, sort, pattern = bars[number]
            pattern[index] += 1
            bars[number] = room - task.sizes[index], sort, pattern
    return tuple(Filled(sort, tuple(pattern)) for _, sort, pattern in bars)


def _opened(task: Task, counts: list[int], size: int, *, largest_first: bool) -> int | None:
    fits = [sort for sort, count in enumerate(counts) if count and task.rooms[sort] >= size]
    if not fits:
        return None
    return max(fits, key=lambda sort: task.rooms[sort]) if largest_first else min(fits, key=lambda s: task.rooms[s])


def _fullest_first(task: Task) -> tuple[Filled, ...]:
    """Return the largest bars one after the other, each as full as what is left can make it."""
    bars: list[Filled] = []
    left = task
    while any(left.wanted):
        sorts = [sort for sort, count in enumerate(left.counts) if count]
        if not sorts:
            break
        patterns = best_patterns(left, left.sizes)
        sort = max(sorts, key=lambda each: (patterns[each][0], -left.rooms[each]))
        if not patterns[sort][0]:
            break
        bars.append(Filled(sort, patterns[sort][1]))
        left = left.without(bars[-1:])
    return tuple(bars)
