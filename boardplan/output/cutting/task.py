"""Cutting task: sizes wanted, bars to cut them from and what to keep small, all in whole steps of a length."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple, TypeAlias

Pattern: TypeAlias = tuple[int, ...]
"""How many pieces of each size come from one bar."""


class Filled(NamedTuple):
    """One bar in use: its sort, and the pattern cut from it."""

    sort: int
    pattern: Pattern


@dataclass(frozen=True)
class Task:
    """Pieces and bars, each with one cut added, so that pieces fit where the sum of sizes is no more than the room.

    `wanted` says how many of each size, `counts` how many bars there are of each room. To be kept small are `per_bar`
    for each bar in use and `per_piece` for each piece left out, by its size; both are whole multiples of `step`.
    """

    sizes: tuple[int, ...]
    wanted: tuple[int, ...]
    rooms: tuple[int, ...]
    counts: tuple[int, ...]
    per_bar: int
    per_piece: tuple[int, ...]

    @cached_property
    def step(self) -> int:
        """By how much costs differ at least."""
        return max(1, math.gcd(self.per_bar, *self.per_piece))

    def cost(self, bars: Sequence[Filled]) -> int:
        """Return what bars in use and pieces left out cost together."""
        return self.per_bar * len(bars) + sum(
            each * cost for each, cost in zip(self.left_out(bars), self.per_piece, strict=True)
        )

    def left_out(self, bars: Sequence[Filled]) -> tuple[int, ...]:
        """Return how many pieces of each size come from none of the bars."""
        cut = [sum(each) for each in zip(*(bar.pattern for bar in bars), strict=True)] or [0] * len(self.sizes)
        return tuple(max(0, wanted - done) for wanted, done in zip(self.wanted, cut, strict=True))

    def without(self, bars: Sequence[Filled]) -> "Task":
        """Return what remains to be cut, and to be cut from, after bars."""
        counts = list(self.counts)
        for bar in bars:
            counts[bar.sort] -= 1
        return replace(self, wanted=self.left_out(bars), counts=tuple(counts))

    def size_of(self, pattern: Pattern) -> int:
        """Return the room that a pattern takes."""
        return sum(size * count for size, count in zip(self.sizes, pattern, strict=True))


def no_more_than_wanted(task: Task, bars: Sequence[Filled]) -> tuple[Filled, ...]:
    """Return bars without the pieces that are cut more often than wanted, and without bars that are then empty."""
    left = list(task.wanted)
    kept = []
    for bar in bars:
        pattern = tuple(min(count, still) for count, still in zip(bar.pattern, left, strict=True))
        left = [still - count for still, count in zip(left, pattern, strict=True)]
        if any(pattern):
            kept.append(Filled(bar.sort, pattern))
    return tuple(kept)
