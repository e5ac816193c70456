"""Reach: how far off a way may lie what matters to it, in mm."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING, TypeAlias

from boardplan.geometry.point import Box, Point

if TYPE_CHECKING:
    import numpy as np

CORNER = 30.0
"""How much longer a way may be for one corner less, in mm. Common practice, no source."""
BENT_SOON = 45.0
"""How much longer a way may be, in mm, for a bend not to begin sooner behind a lug than asked: less than two corners.
Common practice, no source."""
OVER_OWN = 2.0
"""How much longer a way counts for each mm of its first or last line over its own unit, where it may choose: so it
leaves a busbar by the near side. Common practice, no source."""
LaneLines: TypeAlias = tuple[Sequence[float], Sequence[float]]
"""The y of level lanes along channels, and the x of upright ones."""
Head: TypeAlias = tuple[int, int]
"""An axis, 0 along x and 1 along y, and a sign along it."""
Boxes: TypeAlias = "np.typing.NDArray[np.float64]"
"""Boxes, one a row: left, bottom, right and top."""
_Numbers: TypeAlias = "np.typing.NDArray[np.float64]"
_DIRECTIONS: tuple[tuple[Head, Head], ...] = tuple(((axis, sign), (axis, -sign)) for axis in (0, 1) for sign in (1, -1))


@dataclass(frozen=True, slots=True)
class Reach:
    """How far off a way may lie what matters to it, in mm.

    A box, with `margin` round it, matters where a way by the square from `start` over it to `end` comes to no
    more than `limit`, or where it touches one of the first and last legs, given as boxes. Lengths in channels
    count for `in_lane` of themselves; who uses upright ones goes at least `by_x` along x, level ones `by_y` along
    y. A way has at least so many `corners`, each for CORNER; it leaves both ends as `heads` say, if they do.
    `excess` is how much more than the least it counts for.
    """

    start: Point
    end: Point
    limit: float
    margin: float = 0.0
    in_lane: float = 1.0
    by_x: float = 0.0
    by_y: float = 0.0
    legs: tuple[Box, ...] = ()
    corners: int = 0
    heads: tuple[Head, Head] | None = None
    excess: float = 0.0

    def touches(self, box: Box) -> bool:
        """Say whether a change in a box can matter to the way."""
        left, bottom, right, top = box
        margin = self.margin
        x = _over(self.start.x, self.end.x, left - margin, right + margin)
        y = _over(self.start.y, self.end.y, bottom - margin, top + margin)
        spare = self.limit - self.corners * CORNER
        if self.in_lane * (x + y) <= spare and self._least(x, y) <= spare:
            return True
        grown = box.grown(margin)
        return any(leg.touches(grown) for leg in self.legs)

    def touched(self, boxes: Boxes, also: Box | None = None) -> list[int]:
        """Return the numbers of the boxes that `touches` says yes to; with `also` of a way by that box as well."""
        import numpy as np  # noqa: PLC0415 - slow to load

        margin, spare = self.margin, self.limit - self.corners * CORNER
        left, bottom, right, top = (
            boxes[:, 0] - margin,
            boxes[:, 1] - margin,
            boxes[:, 2] + margin,
            boxes[:, 3] + margin,
        )
        x = _spanned(self.start.x, self.end.x, left, right, also and (also.left, also.right))
        y = _spanned(self.start.y, self.end.y, bottom, top, also and (also.bottom, also.top))
        least = x + y
        if self.in_lane != 1.0:
            lane, by_x, by_y = self.in_lane, np.maximum(x, self.by_x), np.maximum(y, self.by_y)
            least = np.minimum(least, np.minimum(lane * x + by_y, by_x + lane * y))
            least = np.maximum(np.minimum(least, lane * (by_x + by_y)), lane * (x + y))
        found = least <= spare
        for leg in self.legs:
            found |= (leg.left <= right) & (left <= leg.right) & (leg.bottom <= top) & (bottom <= leg.top)
        numbers: list[int] = np.flatnonzero(found).tolist()
        return numbers

    def comes_by(self, box: Box, lanes: LaneLines = ((), ())) -> bool:
        """Say whether a change in a box can matter, looking closer: how often a way by it must turn counts too.

        `lanes` are the y of all level lanes and the x of all upright ones: who saves by a lane first gets onto it.
        """
        if not self.touches(box):
            return False
        grown = box.grown(self.margin)
        if self.heads is None or any(leg.touches(grown) for leg in self.legs):
            return True
        levels, uprights = lanes
        xs = _places(self.start.x, self.end.x, grown.left, grown.right, uprights)
        ys = _places(self.start.y, self.end.y, grown.bottom, grown.top, levels)
        return any(self._passes(Point(x, y), self.heads, lanes) for x, y in product(xs, ys))

    def _passes(self, at: Point, heads: tuple[Head, Head], lanes: LaneLines) -> bool:
        """Say whether a way through a place can count for so little."""
        x = abs(self.start.x - at.x) + abs(at.x - self.end.x)
        y = abs(self.start.y - at.y) + abs(at.y - self.end.y)
        length = self._least(x, y)
        if self.in_lane != 1.0 and length + self.corners * CORNER <= self.limit:
            length = max(length, self._by_lanes(self.start, at, lanes) + self._by_lanes(at, self.end, lanes))
        return length + self.corners * CORNER <= self.limit and any(
            length + CORNER * (_turns(at, back, self.start, heads[0]) + _turns(at, on, self.end, heads[1]))
            <= self.limit
            for on, back in _DIRECTIONS
        )

    def _by_lanes(self, a: Point, b: Point, lanes: LaneLines) -> float:
        """Return what the length between two places counts for at least."""
        x, y, lane = abs(a.x - b.x), abs(a.y - b.y), self.in_lane
        by_y = min((abs(a.y - line) + abs(line - b.y) for line in lanes[0]), default=y)
        by_x = min((abs(a.x - line) + abs(line - b.x) for line in lanes[1]), default=x)
        return min(x + y, lane * x + by_y, by_x + lane * y, lane * (by_x + by_y))

    def _least(self, x: float, y: float) -> float:
        """Return what lengths along x and y count for at least."""
        if self.in_lane == 1.0:
            return x + y
        lane, by_x, by_y = self.in_lane, max(x, self.by_x), max(y, self.by_y)
        return min(x + y, lane * x + by_y, by_x + lane * y, lane * (by_x + by_y))


def _over(a: float, b: float, low: float, high: float) -> float:
    """Return how far it is from a to b by way of the nearest place between low and high."""
    if a > b:
        a, b = b, a
    if low > b:
        return low - a + low - b
    return b - high + a - high if high < a else b - a


def _spanned(a: float, b: float, low: _Numbers, high: _Numbers, also: tuple[float, float] | None) -> _Numbers:
    """Return how far it is from a to b by way of places between low and high, and between two more."""
    import numpy as np  # noqa: PLC0415 - slow to load

    first, last = min(a, b), max(a, b)
    if also is not None:
        first, last = min(first, also[1]), max(last, also[0])
    return 2 * (np.maximum(low, last) - np.minimum(high, first)) - abs(a - b)


def _places(a: float, b: float, low: float, high: float, lanes: Iterable[float]) -> set[float]:
    """Return the places between low and high where a way can be shortest or turn least often."""
    within = (line for line in lanes if low < line < high)
    return {low, high, min(max(a, low), high), min(max(b, low), high), *within}


def _turns(at: Point, going: Head, end: Point, head: Head) -> int:
    """Return how often a way that goes in a direction turns at least up to an end; `head` leads out of the end."""
    axis, sign = going
    ahead = (end[axis] - at[axis]) * sign >= 0
    if axis != head[0]:
        before = (at[head[0]] - end[head[0]]) * head[1] >= 0
        return 1 if ahead and before else 3
    if sign == head[1]:
        return 2
    if not ahead:
        return 4
    return 0 if at[1 - axis] == end[1 - axis] else 2
