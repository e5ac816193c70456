"""Free way left: how far it is to go at least from anywhere on the wall, past what blocks but without bends. In mm."""

import math
from typing import TYPE_CHECKING

from boardplan.geometry.point import Box, Point, box_around

if TYPE_CHECKING:
    from collections.abc import Sequence

    import numpy as np
    from scipy.sparse import csr_matrix

_STEP = 12.0
_ROUND = 300.0  # mm: how far round all bodies a way may go
_EIGHT_WAYS = math.cos(math.radians(22.5))
"""A way in eight directions is up to 1 / cos 22.5° as long as the straight one."""


class Left:
    """The least lengths to an end, on a grid finer than the gaps between bodies count for."""

    def __init__(self, goal: Point, start: Point, boxes: "Sequence[Box]", around: "Sequence[Box]") -> None:
        """Take what blocks in every part of the way, and the boxes that bound where a way may go."""
        import numpy as np  # noqa: PLC0415 - slow to load
        from scipy.sparse.csgraph import dijkstra  # noqa: PLC0415 - slow to load

        corners = [corner for box in around for corner in box.corners()]
        within = box_around((goal, start, *corners)).grown(_ROUND)
        self._left, self._bottom = within.left, within.bottom
        self._size = int(within.width / _STEP) + 1, int(within.height / _STEP) + 1
        open_cells = np.ones(self._size, dtype=bool)
        for box in boxes:  # a little less than each box blocks, so that no gap is lost
            low_x, low_y = (
                math.ceil(max(0.0, each) / _STEP) for each in (box.left - within.left, box.bottom - within.bottom)
            )
            high_x, high_y = (math.floor(each / _STEP) for each in (box.right - within.left, box.top - within.bottom))
            open_cells[low_x + 1 : max(0, high_x), low_y + 1 : max(0, high_y)] = False
        found = dijkstra(_steps(open_cells), indices=[self._cell(goal)])[0]
        self._lengths: list[float] = (found * _STEP * _EIGHT_WAYS).tolist()

    def at(self, point: Point) -> float:
        """Return how far it is to go at least, endless off the grid and where nothing leads to the goal."""
        x, y = round((point.x - self._left) / _STEP), round((point.y - self._bottom) / _STEP)
        if not (0 <= x < self._size[0] and 0 <= y < self._size[1]):
            return math.inf
        return self._lengths[x * self._size[1] + y]

    def _cell(self, point: Point) -> int:
        return round((point.x - self._left) / _STEP) * self._size[1] + round((point.y - self._bottom) / _STEP)


def _steps(open_cells: "np.typing.NDArray[np.bool_]") -> "csr_matrix":
    """Return the lengths between cells next to each other, level, upright and across, as a sparse table."""
    import numpy as np  # noqa: PLC0415 - slow to load
    from scipy.sparse import csr_matrix  # noqa: PLC0415 - slow to load

    wide, high = open_cells.shape
    numbers = np.arange(wide * high).reshape(wide, high)
    rows, columns, lengths = [], [], []
    for dx, dy in ((1, 0), (0, 1), (1, 1), (1, -1)):
        here = np.s_[: wide - dx, max(0, -dy) : high - max(0, dy)]
        there = np.s_[dx:, max(0, dy) : high + min(0, dy)]
        both = open_cells[here] & open_cells[there]
        some, others = numbers[here][both], numbers[there][both]
        rows += [some, others]
        columns += [others, some]
        lengths.append(np.full(2 * len(some), math.hypot(dx, dy)))
    table = np.concatenate(lengths), (np.concatenate(rows), np.concatenate(columns))
    return csr_matrix(table, shape=(wide * high, wide * high))
