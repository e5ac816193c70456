"""Least left: what a way costs at least from a corner on into an end, for every corner there can be, as a table.

A length costs WEIGHT a unit, less along a channel; but who goes along a channel must first get onto its line.
So a way by the square costs at least the least of four: without channels, with level ones, with upright ones,
with both. No way costs less, and no leg lessens it by more than the leg costs, as A* asks for.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from boardplan.routing import reach
from boardplan.routing.square.open_lines import FAR, WEIGHT, OpenLines, Spot, units

if TYPE_CHECKING:
    import numpy as np

CORNER = units(reach.CORNER) * WEIGHT
"""What a corner costs."""
BENT_SOON = units(reach.BENT_SOON) * WEIGHT
"""What a first leg costs on top whose bend begins sooner behind a lug than asked."""
Table: TypeAlias = list[list[int]]
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


def least_left(places: tuple[list[int], list[int]], goals: Sequence[Goal], lines: OpenLines) -> tuple[Table, Table]:
    """Return for legs along x and y, for each line they can lie on, what is left at least after each corner."""
    import numpy as np  # noqa: PLC0415 - slow to load

    held = [np.array(each, dtype=np.int64) for each in places]
    tables: list[Table] = []
    for axis in (0, 1):
        left = _left_to(goals[0], axis, held, lines)
        for goal in goals[1:]:
            left = np.minimum(left, _left_to(goal, axis, held, lines))
        tables.append(left.tolist())
    return tables[0], tables[1]


def _left_to(goal: Goal, axis: int, places: Sequence[_Numbers], lines: OpenLines) -> _Numbers:
    """Return the table of one goal: a row for each line, in it each place along an axis."""
    import numpy as np  # noqa: PLC0415 - slow to load

    along, line = places[axis] - goal.spot[axis], (places[1 - axis] - goal.spot[1 - axis])[:, None]
    left = WEIGHT * (abs(along) + abs(line))
    if lines.lanes:
        by = _by(places[axis], goal.spot[axis], lines.lane_lines[1 - axis])
        by_line = _by(places[1 - axis], goal.spot[1 - axis], lines.lane_lines[axis])[:, None]
        cheap = lines.lane_weight
        left = np.minimum(left, cheap * abs(along) + WEIGHT * by_line)
        left = np.minimum(left, WEIGHT * by + cheap * abs(line))
        left = np.minimum(left, cheap * (by + by_line))
    corners = 3 - 2 * (along * goal.sign >= 0) if goal.axis == axis else 2 * ((line * goal.sign < 0) | (along != 0))
    return left + (corners * CORNER + goal.cost)


def _by(places: _Numbers, to: int, lane_lines: Sequence[int]) -> _Numbers:
    """Return by_lane for many places at once."""
    import numpy as np  # noqa: PLC0415 - slow to load

    if not lane_lines:
        return np.full(len(places), FAR, dtype=np.int64)
    lanes = np.array(lane_lines, dtype=np.int64)
    by: _Numbers = (abs(places[:, None] - lanes) + abs(lanes - to)).min(axis=1)
    return by
