"""Free places: where words and bars fit on a drawing without covering what matters."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator

from boardplan.geometry.point import Box

_CELL = 60.0

MARK, WORDS, TERMINAL, LINE = 60.0, 40.0, 12.0, 1.5
"""How bad it is to cover a hole mark, other words, a terminal, a line; per mm²."""


class FreePlaces:
    """What is already drawn, as boxes with a weight; tells the best of some places and remembers what was put there."""

    def __init__(self) -> None:
        """Begin with an empty drawing."""
        self._cells: dict[tuple[int, int], list[tuple[Box, float]]] = defaultdict(list)

    def take(self, box: Box, weight: float) -> None:
        """Remember that something lies in a box."""
        for cell in _cells(box):
            self._cells[cell].append((box, weight))

    def cost(self, box: Box) -> float:
        """Return how bad it would be to draw over a box: overlaps by weight."""
        seen: set[int] = set()
        total = 0.0
        for cell in _cells(box):
            for taken, weight in self._cells.get(cell, ()):
                if id(taken) not in seen:
                    seen.add(id(taken))
                    total += weight * shared_area(box, taken)
        return total

    def best(self, candidates: Iterable[tuple[Box, float]]) -> tuple[Box, float] | None:
        """Return the candidate (box, its own cost) of the least cost, the first that is free at once."""
        best: tuple[Box, float] | None = None
        for box, own in candidates:
            if best is not None and own >= best[1]:
                continue
            cost = own + self.cost(box)
            if best is None or cost < best[1]:
                best = (box, cost)
        return best


def _cells(box: Box) -> Iterator[tuple[int, int]]:
    for column in range(math.floor(box.left / _CELL), math.floor(box.right / _CELL) + 1):
        for row in range(math.floor(box.bottom / _CELL), math.floor(box.top / _CELL) + 1):
            yield column, row


def shared_area(a: Box, b: Box) -> float:
    """Return the area two boxes share, in mm²."""
    width = min(a.right, b.right) - max(a.left, b.left)
    height = min(a.top, b.top) - max(a.bottom, b.bottom)
    return width * height if width > 0 and height > 0 else 0.0


def common_box(a: Box, b: Box) -> Box | None:
    """Return what two boxes share, none where they share no area."""
    box = Box(max(a.left, b.left), max(a.bottom, b.bottom), min(a.right, b.right), min(a.top, b.top))
    return box if box.width > 0 and box.height > 0 else None


def places_within(room: Box, width: float, height: float, step: float) -> Iterator[Box]:
    """Yield places of a size within a room, from its lower left, row by row."""
    rows = math.floor((room.height - height) / step) if room.height >= height else -1
    columns = math.floor((room.width - width) / step) if room.width >= width else -1
    for row in range(rows + 1):
        for column in range(columns + 1):
            left, bottom = room.left + column * step, room.bottom + row * step
            yield Box(left, bottom, left + width, bottom + height)
