"""Free places: where words and bars fit on a drawing without covering what matters."""

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from operator import itemgetter

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

    def cost(self, box: Box, own: float = 0.0, enough: float = math.inf) -> float:
        """Return how bad it would be to draw over a box: its own cost, and overlaps by weight.

        A sum that comes to `enough` is not taken to its end.
        """
        seen: set[int] = set()
        total = 0.0
        for cell in _cells(box):
            for taken, weight in self._cells.get(cell, ()):
                shared = shared_area(box, taken)
                if shared and id(taken) not in seen:
                    seen.add(id(taken))
                    total += weight * shared
                    if own + total >= enough:
                        return own + total
        return own + total

    def best(self, candidates: Iterable[tuple[Box, float]], *, rising: bool = False) -> tuple[Box, float] | None:
        """Return the candidate (box, its own cost) of the least cost, the first of several.

        Where their own cost is `rising` from one to the next, no more are asked for than can be the best.
        """
        best: tuple[Box, float] | None = None
        least = math.inf
        for box, own in candidates:
            if own >= least:
                if rising:
                    break
                continue
            cost = self.cost(box, own, least)
            if cost < least:
                best, least = (box, cost), cost
        return best


def _cells(box: Box) -> Iterator[tuple[int, int]]:
    for column in range(math.floor(box.left / _CELL), math.floor(box.right / _CELL) + 1):
        for row in range(math.floor(box.bottom / _CELL), math.floor(box.top / _CELL) + 1):
            yield column, row


def shared_area(a: Box, b: Box) -> float:
    """Return the area two boxes share, in mm²."""
    if a.left >= b.right or b.left >= a.right or a.bottom >= b.top or b.bottom >= a.top:
        return 0.0
    return (min(a.right, b.right) - max(a.left, b.left)) * (min(a.top, b.top) - max(a.bottom, b.bottom))


def common_box(a: Box, b: Box) -> Box | None:
    """Return what two boxes share, none where they share no area."""
    box = Box(max(a.left, b.left), max(a.bottom, b.bottom), min(a.right, b.right), min(a.top, b.top))
    return box if box.width > 0 and box.height > 0 else None


def places_within(room: Box, width: float, height: float, step: float) -> Iterator[Box]:
    """Yield places of a size within a room, from its lower left, row by row."""
    lefts, bottoms = _steps(room.left, room.width, width, step), _steps(room.bottom, room.height, height, step)
    return (Box(left, bottom, left + width, bottom + height) for bottom in bottoms for left in lefts)


def places_from_left(room: Box, width: float, height: float, step: float) -> Iterator[Box]:
    """Yield the places within a room, from its lower left, column by column."""
    lefts, bottoms = _steps(room.left, room.width, width, step), _steps(room.bottom, room.height, height, step)
    return (Box(left, bottom, left + width, bottom + height) for left in lefts for bottom in bottoms)


def places_from_middle(room: Box, width: float, height: float, step: float) -> Iterator[Box]:
    """Yield the places within a room, those about its middle first."""
    lefts, bottoms = _steps(room.left, room.width, width, step), _steps(room.bottom, room.height, height, step)
    x, y = room.centre
    across = [(left, x - (left + (left + width)) / 2) for left in lefts]
    up = [(bottom, y - (bottom + (bottom + height)) / 2) for bottom in bottoms]
    spots = [(math.hypot(dx, dy), left, bottom) for bottom, dy in up for left, dx in across]
    spots.sort(key=itemgetter(0))
    return (Box(left, bottom, left + width, bottom + height) for _, left, bottom in spots)


def places_from_corner(
    room: Box, width: float, height: float, step: float, away: Callable[[Box], float]
) -> Iterator[tuple[Box, float]]:
    """Yield the places within a room with how far they are `away` from one of its corners, the nearest first.

    That is the sum of what they are away across and upwards: places on the same slant are about as far off.
    """
    lefts, bottoms = _steps(room.left, room.width, width, step), _steps(room.bottom, room.height, height, step)
    corner = min(room.corners(), key=lambda at: away(Box(*at, *at)))
    columns = lefts if corner.x == room.left else lefts[::-1]
    rows = bottoms if corner.y == room.bottom else bottoms[::-1]
    for slant in range(len(rows) + len(columns) - 1):
        first, last = max(0, slant - len(columns) + 1), min(slant, len(rows) - 1)
        boxes = [
            Box(left, bottom, left + width, bottom + height)
            for left, bottom in ((columns[slant - row], rows[row]) for row in range(first, last + 1))
        ]
        yield from sorted(((box, away(box)) for box in boxes), key=lambda each: (each[1], each[0].bottom))


def _steps(start: float, room: float, size: float, step: float) -> list[float]:
    """Return where something of a size may begin in a room."""
    return [start + number * step for number in range(math.floor((room - size) / step) + 1)] if room >= size else []
