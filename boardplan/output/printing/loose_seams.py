"""Loose seams: a row of tiles whose seams move each by itself, for where no even spacing spares every drill point."""

from collections.abc import Sequence
from typing import NamedTuple

from boardplan.output.printing.seam_ground import Axis, Held

_MOST_SHIFTS = 30


class _Way(NamedTuple):
    """The best way to lay the tiles so far: points lost, patterns cut, how far it is from even, its shifts."""

    lost: int
    cut: int
    uneven: float
    shifts: tuple[float, ...]


def loosened(axis: Axis, sizes: Sequence[float], border: float, held: Held, finest: float) -> tuple[float, ...]:
    """Return where each tile of a row starts so that as little as can be of what is held lies near an edge.

    A tile may be shifted down by as much as the one before it or more: then they share the overlap or more. So the
    best is found tile by tile, one way kept for each shift of the last.
    """
    offsets, spare = axis.spare(sizes, border)
    count = max(1, min(_MOST_SHIFTS, int(spare / finest)))
    shifts = [spare * share / count for share in range(count + 1)]

    def start(index: int, shift: float) -> float:
        return axis.low - border + offsets[index] - shift

    def cut(index: int, shift: float) -> int:
        (own,) = axis.held([start(index, shift)], [sizes[index]])
        return -(own.patterns & held.patterns).bit_count()

    ways = [_Way(0, cut(0, shift), abs(shift - spare / 2), (shift,)) for shift in shifts]
    for index in range(1, len(sizes)):
        longer: list[_Way] = []
        for number, shift in enumerate(shifts):
            low, own = start(index, shift), cut(index, shift)
            below = axis.points.below(low)
            best: _Way | None = None
            for way in ways[: number + 1]:
                end = start(index - 1, way.shifts[-1]) + sizes[index - 1]
                lost = held.clear & ~(below | axis.points.above(end))
                uneven = way.uneven + abs(shift - spare / 2)
                this = _Way(way.lost + lost.bit_count(), way.cut + own, uneven, (*way.shifts, shift))
                best = this if best is None else min(best, this)
            if best:
                longer.append(best)
        ways = longer
    return tuple(start(index, shift) for index, shift in enumerate(min(ways).shifts))
