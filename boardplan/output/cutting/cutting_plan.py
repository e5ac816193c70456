"""Cutting plan: which pieces to cut from which reel or length, the fewest of them used, and how sure that is.

Lengths are in mm and counted in whole tenths, pieces rounded up, reels down. A cut takes its loss, so that pieces fit
where their lengths and the cuts between them do; a rest thinner than a cut is lost with it.
"""

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from boardplan.output.cutting.filling import topped_up
from boardplan.output.cutting.search import Found, cheapest
from boardplan.output.cutting.task import Filled, Task

_TENTHS = 10
_NOISE = 1e-6


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece to cut, by its name; its length in mm."""

    name: str
    length: float


@dataclass(frozen=True, slots=True)
class Bar:
    """What pieces are cut from: a reel, an offcut or a length of channel in mm, and how many; none for any number."""

    name: str
    length: float
    count: int | None = 1


@dataclass(frozen=True, slots=True)
class CutBar:
    """A bar with its pieces in the order to cut them; `number` tells bars of one name apart, from 1."""

    name: str
    number: int
    length: float
    pieces: tuple[Piece, ...]
    cut: float

    @property
    def words(self) -> str:
        """What it is called, with its number where there are others of its name before it."""
        return f"{self.name} no. {self.number}" if self.number > 1 else self.name

    @property
    def totals(self) -> tuple[float, ...]:
        """How much of the bar is gone after each piece and its cut, in mm."""
        gone, totals = 0.0, []
        for piece in self.pieces:
            gone = min(gone + piece.length + self.cut, self.length)
            totals.append(round(gone, 6))
        return tuple(totals)

    @property
    def left(self) -> float:
        """What is left of the bar, in mm."""
        return round(self.length - (self.totals or (0.0,))[-1], 6)


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """Bars as they are cut, pieces that found no room, and what is proven of both.

    `least` is the fewest bars that the pieces can come from; `could_find` how many mm less could be missing at most,
    nought where the least is proven to be missing.
    """

    bars: tuple[CutBar, ...]
    missing: tuple[Piece, ...]
    least: int
    could_find: float

    @property
    def could_save(self) -> int:
        """How many bars could be saved at most; nought where the plan is proven to use the fewest."""
        return len(self.bars) - self.least

    @property
    def missing_length(self) -> float:
        """The sum of the missing pieces in mm, without their cuts."""
        return round(math.fsum(each.length for each in self.missing), 6)


def cutting_plan(pieces: Iterable[Piece], stock: Iterable[Bar], cut: float = 0.0) -> CuttingPlan:
    """Return the plan that leaves out the least length, then uses the fewest bars, each pattern on a short one.

    The same pieces give the same plan, in whatever order they come. Raises ValueError where a length is not above
    nought, or a cut is below.

    >>> plan = cutting_plan([Piece("W1", 600), Piece("W2", 397)], [Bar("offcut", 1000)], cut=3)
    >>> [each.name for each in plan.bars[0].pieces], plan.bars[0].left
    (['W1', 'W2'], 0.0)
    """
    wanted = sorted(pieces, key=lambda each: (-each.length, each.name))
    bars = sorted(stock, key=lambda each: (-each.length, each.count is None, each.name))
    if cut < 0 or min([1.0, *(each.length for each in wanted), *(each.length for each in bars)]) <= 0:
        raise ValueError("expected lengths above nought and a cut no less than nought")
    task = _task(wanted, bars, cut)
    missing, short = _shortage(task, bars)
    cuttable = replace(
        task,
        wanted=tuple(count - less for count, less in zip(task.wanted, missing, strict=True)),
        per_bar=1,
        per_piece=(len(wanted) + 1,) * len(task.sizes),
    )
    found = cheapest(cuttable, topped_up(cuttable, short.bars, largest_first=True))
    by_size, lost = _dealt(task, wanted, missing)
    unproven = (short.cost - short.least) / _TENTHS
    return CuttingPlan(_named(cuttable, found.bars, bars, by_size, cut), tuple(lost), found.least, unproven)


def _task(wanted: Sequence[Piece], bars: Sequence[Bar], cut: float) -> Task:
    """Return all pieces and bars in whole steps; what is missing costs its length in tenths."""
    loss = _tenths_up(cut)
    lengths = sorted({_tenths_up(each.length) for each in wanted}, reverse=True)
    step = math.gcd(*(length + loss for length in lengths)) or 1
    rooms = sorted({_tenths_down(each.length) for each in bars}, reverse=True)
    counts = []
    for room in rooms:
        those = [each.count for each in bars if _tenths_down(each.length) == room]
        counts.append(len(wanted) if None in those else min(len(wanted), sum(each or 0 for each in those)))
    return Task(
        sizes=tuple((length + loss) // step for length in lengths),
        wanted=tuple(sum(_tenths_up(each.length) == length for each in wanted) for length in lengths),
        rooms=tuple((room + loss) // step for room in rooms),
        counts=tuple(counts),
        per_bar=0,
        per_piece=tuple(lengths),
    )


def _shortage(task: Task, bars: Sequence[Bar]) -> tuple[tuple[int, ...], Found]:
    """Return how many of each size are missing, and how the most length is cut.

    Pieces longer than every bar are missing, those no longer than one that there is any number of never are.
    """
    endless = max((_tenths_down(each.length) for each in bars if each.count is None), default=0)
    longest = max((_tenths_down(each.length) for each in bars), default=0)
    sizes = tuple(zip(task.per_piece, task.wanted, strict=True))
    open_ones = replace(task, wanted=tuple(count if endless < length <= longest else 0 for length, count in sizes))
    found = cheapest(open_ones)
    too_long = (count if length > longest else 0 for length, count in sizes)
    return tuple(map(sum, zip(open_ones.left_out(found.bars), too_long, strict=True))), found


def _tenths_up(length: float) -> int:
    return math.ceil(length * _TENTHS - _NOISE)


def _tenths_down(length: float) -> int:
    return math.floor(length * _TENTHS + _NOISE)


def _dealt(task: Task, wanted: Sequence[Piece], missing: Sequence[int]) -> tuple[list[list[Piece]], list[Piece]]:
    """Return the pieces of each size that are cut, and those that are missing: the last of their size."""
    by_size: list[list[Piece]] = []
    lost: list[Piece] = []
    start = 0
    for count, less in zip(task.wanted, missing, strict=True):
        by_size.append(list(wanted[start : start + count - less]))
        lost += wanted[start + count - less : start + count]
        start += count
    return by_size, lost


def _named(
    task: Task, filled: Sequence[Filled], bars: Sequence[Bar], by_size: list[list[Piece]], cut: float
) -> tuple[CutBar, ...]:
    """Return patterns on the shortest bars that hold them, those at hand before those without number."""
    fullest_first = sorted((each.pattern for each in filled), key=lambda each: (-task.size_of(each), each))
    used = [0] * len(bars)
    numbers: Counter[tuple[str, float]] = Counter()
    done: list[tuple[int, int, CutBar]] = []
    for pattern in fullest_first:
        pieces = tuple(by_size[index].pop(0) for index, count in enumerate(pattern) for _ in range(count))
        needed = sum(_tenths_up(each.length) for each in pieces) + (len(pieces) - 1) * _tenths_up(cut)
        fits = [
            index
            for index, bar in enumerate(bars)
            if _tenths_down(bar.length) >= needed and (bar.count is None or used[index] < bar.count)
        ]
        index = min(fits, key=lambda each: (bars[each].length, each))
        bar = bars[index]
        used[index] += 1
        numbers[bar.name, bar.length] += 1
        number = numbers[bar.name, bar.length]
        done.append((index, number, CutBar(bar.name, number, bar.length, pieces, cut)))
    return tuple(each[-1] for each in sorted(done, key=lambda each: each[:2]))
