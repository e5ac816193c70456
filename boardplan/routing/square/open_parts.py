"""Open parts: which parts of the wall hang together for a cable's centre, so that there may be a way between them.

The wall is cut along all sides of what blocks, into lines and the stripes between them; what is open along a line or
stripe in one piece is a run, and runs that touch are one part. Bends are left out: a way may still be none.
"""

from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, TypeAlias
from weakref import WeakKeyDictionary

from boardplan.routing.square.lines_over import LinesOver
from boardplan.routing.square.open_lines import Barrier, Lane, OpenLines, Spot

if TYPE_CHECKING:
    import numpy as np

_Run: TypeAlias = tuple[int, int, int]
_Grid: TypeAlias = "np.typing.NDArray[np.bool_]"


class OpenParts:
    """The parts of the wall that are open to one thickness of cable."""

    def __init__(self, barriers: Sequence[Barrier], lanes: Sequence[Lane]) -> None:
        """Cut the wall and join what touches; a lane is open through what blocks."""
        cuts: tuple[set[int], set[int]] = set(), set()
        for each in barriers:
            for axis in (0, 1):
                cuts[axis].update(each.sides[axis])
        for lane in lanes:
            cuts[lane.axis].update((lane.start, lane.end))
            cuts[1 - lane.axis].add(lane.line)
        self._cuts = sorted(cuts[0]), sorted(cuts[1])
        self._rows = _runs(self._open(barriers, lanes))
        self._parts = _joined(self._rows)

    def along(self, start: Spot, end: Spot) -> set[int]:
        """Return the parts that a level or upright leg runs through or along."""
        (left, right), (low, high) = (
            sorted((self._number(axis, start[axis]), self._number(axis, end[axis]))) for axis in (0, 1)
        )
        return {
            self._parts[number]
            for row in self._rows[low : high + 1]
            for first, last, number in row
            if first <= right and left <= last
        }

    def _number(self, axis: int, at: int) -> int:
        """Return the number of the line at a place, odd, or of the stripe it lies in, even."""
        number = bisect_left(self._cuts[axis], at)
        on_line = number < len(self._cuts[axis]) and self._cuts[axis][number] == at
        return 2 * number + on_line

    def _open(self, barriers: Sequence[Barrier], lanes: Sequence[Lane]) -> _Grid:
        """Return for each upright line and stripe across each level one whether it is open."""
        import numpy as np  # noqa: PLC0415 - slow to load

        found = np.ones((2 * len(self._cuts[1]) + 1, 2 * len(self._cuts[0]) + 1), dtype=bool)
        for each in barriers:
            (left, right), (low, high) = ([self._number(axis, at) for at in each.sides[axis]] for axis in (0, 1))
            found[low + 1 : high, left + 1 : right] = False
        for lane in lanes:
            line = self._number(1 - lane.axis, lane.line)
            along = slice(self._number(lane.axis, lane.start), self._number(lane.axis, lane.end) + 1)
            found[(line, along) if lane.axis == 0 else (along, line)] = True
        return found


_held: WeakKeyDictionary[OpenLines, OpenParts] = WeakKeyDictionary()


def open_parts_of(lines: OpenLines) -> OpenParts:
    """Return the open parts of some lines, cut once for all cables that share them."""
    if lines not in _held:
        solid = lines.solid if isinstance(lines, LinesOver) else lines.barriers
        _held[lines] = OpenParts(solid, lines.lanes)
    return _held[lines]


def _runs(rows: _Grid) -> list[list[_Run]]:
    """Return the runs of each row: first and last place, and a number that no other run has."""
    found, number = [], 0
    for row in rows:
        edges = _changes(row)
        found.append([(first, after - 1, number + index) for index, (first, after) in enumerate(edges)])
        number += len(edges)
    return found


def _changes(row: _Grid) -> list[tuple[int, int]]:
    """Return where open runs of a row begin and where they are over."""
    import numpy as np  # noqa: PLC0415 - slow to load

    places = np.flatnonzero(np.diff(row, prepend=False, append=False)).tolist()
    return list(zip(places[::2], places[1::2], strict=True))


def _joined(rows: Sequence[Sequence[_Run]]) -> list[int]:
    """Return for each run the number of its part."""
    parts = list(range(sum(map(len, rows))))

    def part_of(number: int) -> int:
        while parts[number] != number:
            parts[number] = number = parts[parts[number]]
        return number

    for row, after in pairwise(rows):
        for first, last, number in row:
            for other_first, other_last, other in after:
                if first <= other_last and other_first <= last:
                    parts[part_of(other)] = part_of(number)
    return [part_of(number) for number in range(len(parts))]
