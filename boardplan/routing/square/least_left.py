"""Least left: what a way costs at least from a corner on into an end, for every corner there can be, as a table.

A length costs WEIGHT a unit, less along a channel; but who goes along a channel must first get onto its line.
So a way by the square costs at least the least of four: without channels, with level ones, with upright ones,
with both. No way costs less, and no leg lessens it by more than the leg costs, as A* asks for.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from boardplan.routing import reach
from boardplan.routing.square.open_lines import FAR, WEIGHT, OpenLines, Span, Spot, units

if TYPE_CHECKING:
    import numpy as np

CORNER = units(reach.CORNER) * WEIGHT
"""What a corner costs."""
BENT_SOON = units(reach.BENT_SOON) * WEIGHT
"""What a first leg costs on top whose bend begins sooner behind a lug than asked."""
Table: TypeAlias = Mapping[int, Sequence[int]]
"""By the number of each line that legs can lie on, what is left at each place along it."""
Sides: TypeAlias = tuple[Span, Span]
"""A box in units: from where to where along x, and along y."""
_Numbers: TypeAlias = "np.typing.NDArray[np.int64]"


@dataclass(frozen=True, slots=True)
class Goal:
    """Where the last leg must have begun at the latest, its axis, its sign out of the end, and what it costs."""

    spot: Spot
    axis: int
    sign: int
    cost: int


def least_length(a: Spot, b: Spot, lines: OpenLines) -> int:
    """Return what the length between two spots costs at least, corners left out."""
    x, y = abs(a[0] - b[0]), abs(a[1] - b[1])
    if not lines.lanes:
        return WEIGHT * (x + y)
    by_x, by_y = (by_lane(a[axis], b[axis], lines.lane_lines[1 - axis]) for axis in (0, 1))
    cheap = lines.lane_weight
    return min(WEIGHT * (x + y), cheap * x + WEIGHT * by_y, WEIGHT * by_x + cheap * y, cheap * (by_x + by_y))


def by_lane(a: int, b: int, lane_lines: Sequence[int]) -> int:
    """Return how far it is from a to b by way of the nearest lane across, FAR where there is none."""
    return min((abs(a - line) + abs(line - b) for line in lane_lines), default=FAR)


class _Rows(dict[int, Sequence[int]]):
    """The rows of a table of numbers as lists, made when asked for: few lines are ever gone along."""

    def __init__(self, numbers: "_Numbers") -> None:
        """Keep the numbers."""
        super().__init__()
        self._numbers = numbers

    def __missing__(self, row: int) -> Sequence[int]:
        found: list[int] = self._numbers[row].tolist()
        self[row] = found
        return found


def least_left(
    places: tuple[list[int], list[int]], goals: Sequence[Goal], lines: OpenLines, past: Sides | None = None
) -> tuple[Table, Table]:
    """Return for legs along x and y, for each line they can lie on, what is left at least after each corner.

    Where there is a box to go `past`, that is what it takes to touch it on the way.
    """
    import numpy as np  # noqa: PLC0415 - slow to load

    x, y = (np.array(each, dtype=np.int64) for each in places)
    found = [_left_to(goal, x, y, lines, past) for goal in goals]
    level, upright = (each[0] if len(each) == 1 else np.minimum.reduce(each) for each in zip(*found, strict=True))
    return _Rows(level), _Rows(upright)


def _left_to(goal: Goal, x: _Numbers, y: _Numbers, lines: OpenLines, past: Sides | None) -> tuple[_Numbers, _Numbers]:
    """Return the tables of one goal: a row for each level line, and one for each upright line."""
    length = _length_to(goal, x, y[:, None], lines, past)
    (along_x, along_y), (row_x, row_y) = (x - goal.spot[0], y - goal.spot[1]), (x[:, None], y[:, None])
    level = length + _corners_to(goal, 0, along_x, row_y - goal.spot[1])
    return level, length.T + _corners_to(goal, 1, along_y, row_x - goal.spot[0])


def _corners_to(goal: Goal, axis: int, along: _Numbers, line: _Numbers) -> _Numbers:
    """Return what the corners cost after legs along an axis, and the goal itself."""
    corners = 3 - 2 * (along * goal.sign >= 0) if goal.axis == axis else 2 * ((line * goal.sign < 0) | (along != 0))
    cost: _Numbers = corners * CORNER + goal.cost
    return cost


def _length_to(goal: Goal, x: _Numbers, y: _Numbers, lines: OpenLines, past: Sides | None) -> _Numbers:
    """Return what the length costs at least from all places, given as a row and as a column."""
    import numpy as np  # noqa: PLC0415 - slow to load

    if past is None:
        far_x, far_y = abs(x - goal.spot[0]), abs(y - goal.spot[1])
    else:
        far_x, far_y = (_past(each, to, side) for each, to, side in zip((x, y), goal.spot, past, strict=True))
    length: _Numbers = WEIGHT * (far_x + far_y)
    if lines.lanes:
        by_x = np.maximum(far_x, _by(x, goal.spot[0], lines.lane_lines[1]))
        by_y = np.maximum(far_y, _by(y, goal.spot[1], lines.lane_lines[0]))
        cheap = lines.lane_weight
        length = np.minimum(length, cheap * far_x + WEIGHT * by_y)
        length = np.minimum(length, WEIGHT * by_x + cheap * far_y)
        length = np.minimum(length, cheap * (by_x + by_y))
    return length


def _past(places: _Numbers, to: int, side: Span) -> _Numbers:
    """Return how far it is from places to another one by way of a stretch."""
    import numpy as np  # noqa: PLC0415 - slow to load

    low, high = np.minimum(places, min(to, side[1])), np.maximum(places, max(to, side[0]))
    found: _Numbers = 2 * (high - low) - abs(places - to)
    return found


def _by(places: _Numbers, to: int, lane_lines: Sequence[int]) -> _Numbers:
    """Return by_lane for many places at once."""
    import numpy as np  # noqa: PLC0415 - slow to load

    if not lane_lines:
        return np.full(places.shape, FAR, dtype=np.int64)
    lanes = np.array(lane_lines, dtype=np.int64)
    by: _Numbers = (abs(places[..., None] - lanes) + abs(lanes - to)).min(axis=-1)
    return by
