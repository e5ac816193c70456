"""Untangled search: the least costly square way that does not cross itself.

The least way of all may wind once round and over itself, where another one, longer, goes by on the other side. So
corners are kept apart by how far the way to them has turned in all, which the two ways differ in; and no leg goes on
over those before it.
"""

from itertools import pairwise

from boardplan.routing.square.open_lines import Span, Spot
from boardplan.routing.square.square_way import Corner, Found, LegLine, Search

_MOST_TURNED = 6
"""Quarter turns that a way may have turned in all: a spiral of one and a half rounds is no way to lay a cable."""
_MOST_LOOKED_AT = 20000
"""Corners after which it gives up: a hopeless cable must cost little."""


class UntangledSearch(Search):
    """A search whose ways don't cross themselves; it may miss one where all that turn as far are shorter and do."""

    _looked_at = 0
    _found: Found | None = None

    def _go_on(self, cost: int, corner: Corner) -> None:
        super()._go_on(cost, corner)
        self._looked_at += 1
        if self._looked_at >= _MOST_LOOKED_AT:
            self._heap.clear()

    def _corners(self, source: Corner, cost: int, leg: LegLine, stretch: Span, sign: int, apart: int = 0) -> None:
        _, _, on, before, turned = source
        if source[0] >= 0:
            apart += before * sign if on == 1 else -before * sign
        if abs(turned + apart) <= _MOST_TURNED:
            last = _clear_of(self._behind(source)[1], leg, stretch[1], sign)
            super()._corners(source, cost, leg, (stretch[0], last), sign, turned + apart)

    def _reach(self, cost: int, source: Corner, number: int) -> None:
        candidate = (cost, source, number)
        if cost > self._bound or (self._reached is not None and candidate >= self._reached):
            return
        index, spots = self._behind(source)
        goal = self._ends[number]
        axis, end = goal.axis, goal.spot
        sign = 1 if end[axis] > spots[-1][axis] else -1
        if _clear_of(spots, (axis, goal.line, spots[-1][axis]), end[axis], sign) == end[axis]:
            self._reached, self._bound = candidate, cost
            self._found = Found((*spots, end), cost, index, number)

    def _traced(self) -> Found:
        if self._found is None:
            raise RuntimeError("no end was reached")
        return self._found


def _clear_of(spots: list[Spot], leg: LegLine, last: int, sign: int) -> int:
    """Return how far a leg may go on, up to a last place, without coming to any leg before it but the one it leaves."""
    axis, line, at = leg
    for a, b in pairwise(spots[:-1]):
        (first, then), (low, high) = (sorted((a[each], b[each])) for each in (axis, 1 - axis))
        if low <= line <= high:
            near = first if sign > 0 else then
            if (near - at) * sign >= 0 and (near - last) * sign <= 0:
                last = near - sign
    return last
