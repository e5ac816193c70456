"""Seam ground: what lies well on the sheets of a board, told as bits of whole numbers, one axis at a time."""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate
from operator import or_
from typing import NamedTuple

from boardplan.geometry.point import Box, Point
from boardplan.output.printing.sheet_layouts import OVERLAP, Layout, Strip

NEAR = 5.0
"""A drill point nearer than this to the edge of a sheet that shows it may be lost there, in mm: common practice."""
_MARK_REACH = 9.6
"""Half of the largest usual hole mark, in mm."""


class Spared(NamedTuple):
    """What lies well on the sheets: points clear of every edge, whole patterns, whole marks; the more the better."""

    clear: int = 0
    patterns: int = 0
    marks: int = 0

    def plus(self, other: "Spared") -> "Spared":
        """Return both together."""
        return Spared(self.clear + other.clear, self.patterns + other.patterns, self.marks + other.marks)


@dataclass(frozen=True)
class Sorted:
    """Values in order, to tell as bits of a number which of them lie below one."""

    values: tuple[float, ...]

    @cached_property
    def _order(self) -> list[int]:
        return sorted(range(len(self.values)), key=self.values.__getitem__)

    @cached_property
    def _ordered(self) -> list[float]:
        return [self.values[index] for index in self._order]

    @cached_property
    def _bits(self) -> list[int]:
        return [0, *accumulate((1 << index for index in self._order), or_)]

    def below(self, value: float) -> int:
        """Return which lie below a value."""
        return self._bits[bisect_left(self._ordered, value)]

    def above(self, value: float) -> int:
        """Return which lie above a value."""
        return self._bits[-1] ^ self._bits[bisect_right(self._ordered, value)]


class Held(NamedTuple):
    """What a tile, or a row of tiles, holds along one axis: a bit for each point, pattern and mark."""

    clear: int
    patterns: int
    marks: int

    def shares(self, other: "Held") -> Spared:
        """Return how much of it another holds along the other axis."""
        return Spared(*((mine & its).bit_count() for mine, its in zip(self, other, strict=True)))


class Row(NamedTuple):
    """The tiles of a strip in one place: where each starts, and what they hold together."""

    starts: tuple[float, ...]
    held: Held


@dataclass(frozen=True)
class Axis:
    """A board along one axis: its ends, its points, and the low and high ends of its patterns."""

    low: float
    high: float
    points: Sorted
    lows: Sorted
    highs: Sorted

    def spare(self, sizes: Sequence[float], border: float) -> tuple[list[float], float]:
        """Return where tiles start after the first, each sharing the overlap with the next, and what is left over."""
        offsets = [0.0, *accumulate(size - OVERLAP for size in sizes[:-1])]
        return offsets, max(0.0, offsets[-1] + sizes[-1] - (self.high - self.low) - 2 * border)

    def held(self, starts: Sequence[float], sizes: Sequence[float]) -> Iterator[Held]:
        """Yield what each tile of a row holds; a point is clear where only one of them shows it."""
        ends = [start + size for start, size in zip(starts, sizes, strict=True)]
        for start, end, before, after in zip(starts, ends, (starts[0], *ends), (*starts[1:], ends[-1]), strict=False):
            yield Held(
                self.points.above(max(start, before)) & self.points.below(min(end, after)),
                self.lows.above(start + NEAR) & self.highs.below(end - NEAR),
                self.points.above(start + _MARK_REACH) & self.points.below(end - _MARK_REACH),
            )


def _axis(low: float, high: float, points: Iterable[float], spans: Sequence[tuple[float, float]]) -> Axis:
    lows, highs = Sorted(tuple(each[0] for each in spans)), Sorted(tuple(each[1] for each in spans))
    return Axis(low, high, Sorted(tuple(points)), lows, highs)


class SeamGround:
    """A board along both axes, and the places of strips along each, found once for all layouts."""

    def __init__(self, box: Box, points: Sequence[Point], patterns: Sequence[Box], finest: float) -> None:
        """Begin with what is drilled; `patterns` are boxes about holes that belong together, `finest` a step in mm."""
        level = _axis(box.left, box.right, (at.x for at in points), [(each.left, each.right) for each in patterns])
        upright = _axis(box.bottom, box.top, (at.y for at in points), [(each.bottom, each.top) for each in patterns])
        self.axes = level, upright
        self.finest = finest
        self._choices: dict[tuple[bool, Strip, float], list[Row]] = {}

    def along(self, layout: Layout, strip: Strip) -> list[Row]:
        """Return the places of a strip's tiles along it, the most even first."""
        key = layout.level, strip, layout.border
        if key not in self._choices:
            rows = self._rows(self.axes[not layout.level], (strip.length,) * strip.count, layout.border)
            self._choices[key] = [Row(starts, together(held)) for starts, held in rows]
        return self._choices[key]

    def row(self, layout: Layout, starts: tuple[float, ...], sizes: Sequence[float]) -> Row:
        """Return the tiles of a strip that start at some places along it, and what they hold."""
        return Row(starts, together(self.axes[not layout.level].held(starts, sizes)))

    @property
    def everything(self) -> Held:
        """All points, patterns and marks."""
        points, patterns = (each.below(math.inf) for each in (self.axes[0].points, self.axes[0].lows))
        return Held(points, patterns, points)

    def across(self, layout: Layout) -> Iterator[tuple[tuple[float, ...], list[Held]]]:
        """Yield the places of a layout's strips across, and what each strip holds."""
        yield from self._rows(self.axes[layout.level], [strip.depth for strip in layout.strips], layout.border)

    def _rows(
        self, axis: Axis, sizes: Sequence[float], border: float
    ) -> Iterator[tuple[tuple[float, ...], list[Held]]]:
        """Yield the places of a row of tiles, the most even first: where each tile starts and what it holds."""
        offsets, spare = axis.spare(sizes, border)
        count = max(1, math.ceil(spare / self.finest - 1e-9))
        shifts = [spare * share / count for share in range(count + 1)] if len(sizes) > 1 else [spare / 2]
        for shift in sorted(shifts, key=lambda each: abs(each - spare / 2)):
            starts = tuple(axis.low - border - shift + offset for offset in offsets)
            yield starts, list(axis.held(starts, sizes))


def together(held: Iterable[Held]) -> Held:
    """Return what several tiles of a row hold."""
    clear = patterns = marks = 0
    for each in held:
        clear, patterns, marks = clear | each.clear, patterns | each.patterns, marks | each.marks
    return Held(clear, patterns, marks)


def total_of(parts: Iterable[Spared]) -> Spared:
    """Return all parts together."""
    total = Spared()
    for each in parts:
        total = total.plus(each)
    return total
