"""Label wrap: how long a label must be to go round a cable, and which of a stock's labels does."""

import math
from collections.abc import Sequence

from boardplan.model.label_stock import LabelGrid, LabelStock

_NOISE = 1e-9


def circumference(diameter: float) -> float:
    """Return the way once round a cable of an outside diameter, in mm."""
    return math.pi * diameter


def wrap_needed(diameter: float, overlap: float) -> float:
    """Return the least length in mm of a label that goes round and lies over its own beginning.

    >>> round(wrap_needed(16.0, 6.0), 2)
    56.27
    """
    return circumference(diameter) + overlap


def goes_round(diameter: float, grid: LabelGrid, overlap: float) -> bool:
    """Say whether a grid's labels go round a cable."""
    return grid.wrap >= wrap_needed(diameter, overlap) - _NOISE


def grid_for(diameter: float, stock: LabelStock) -> LabelGrid:
    """Return the shortest labels that go round a cable, the longest there are where none does."""
    by_length = sorted(stock.cables, key=lambda grid: grid.wrap)
    return next((each for each in by_length if goes_round(diameter, each, stock.overlap)), by_length[-1])


def largest_diameter(grids: Sequence[LabelGrid], overlap: float) -> float:
    """Return the outside diameter of the thickest cable that the labels of some grids go round, in mm; 0 for none."""
    return max(0.0, max(each.wrap for each in grids) - overlap) / math.pi
