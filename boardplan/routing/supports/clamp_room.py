"""Clamp room: what stands near a straight, and which places along it are free for a clamp."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Self, TypeAlias

from boardplan.geometry.point import Box, direction
from boardplan.routing.supports.clamp_obstacles import Foot, Obstacle
from boardplan.routing.supports.clamp_spacing import NOISE, Span
from boardplan.routing.supports.laid_way import Sides, Stretch

_SQUARE = 200.0
_LARGE = 20 * _SQUARE

_Square: TypeAlias = tuple[int, int]


class Room:
    """All obstacles of a plan, found again by where they are; never changed in place."""

    def __init__(self, obstacles: Iterable[Obstacle]) -> None:
        """Note where the obstacles are."""
        squares: dict[_Square, list[Obstacle]] = defaultdict(list)
        large: list[Obstacle] = []
        for each in obstacles:
            if _is_large(each):
                large.append(each)
            else:
                for square in _squares(each.box):
                    squares[square].append(each)
        self._squares = {square: tuple(those) for square, those in squares.items()}
        self._large = tuple(large)

    def with_changes(self, gone: Iterable[Obstacle], come: Iterable[Obstacle]) -> Self:
        """Return the room without some of its obstacles, the very same ones, and with others."""
        new = type(self)(())
        new._squares, new._large = dict(self._squares), self._large  # noqa: SLF001 - its own kind
        new._take_out(gone)  # noqa: SLF001
        new._put_in(come)  # noqa: SLF001
        return new

    def _take_out(self, gone: Iterable[Obstacle]) -> None:
        lost = {id(each) for each in gone if _is_large(each)}
        self._large = tuple(each for each in self._large if id(each) not in lost)
        for obstacle in gone:
            for square in () if _is_large(obstacle) else _squares(obstacle.box):
                self._squares[square] = tuple(each for each in self._squares[square] if each is not obstacle)

    def _put_in(self, come: Iterable[Obstacle]) -> None:
        self._large = (*self._large, *(each for each in come if _is_large(each)))
        for obstacle in come:
            for square in () if _is_large(obstacle) else _squares(obstacle.box):
                self._squares[square] = (*self._squares.get(square, ()), obstacle)

    def within(self, box: Box) -> list[Obstacle]:
        """Return the obstacles that touch a box, each once, in no order that matters."""
        left, bottom, right, top = box
        touching = {
            id(each): each
            for square in _squares(box)
            for each in self._squares.get(square, ())
            if (own := each.box)[0] <= right and own[2] >= left and own[1] <= top and own[3] >= bottom
        }
        return [*touching.values(), *(each for each in self._large if each.box.touches(box))]

    def reaches(self, box: Box) -> bool:
        """Say whether any obstacle touches a box."""
        found = (each for square in _squares(box) for each in self._squares.get(square, ()))
        return any(each.box.touches(box) for each in found) or any(each.box.touches(box) for each in self._large)


def _is_large(obstacle: Obstacle) -> bool:
    left, bottom, right, top = obstacle.box
    return right - left > _LARGE or top - bottom > _LARGE


def _squares(box: Box) -> Iterator[_Square]:
    left, bottom, right, top = (int(side // _SQUARE) for side in box)
    for column in range(left, right + 1):
        for row in range(bottom, top + 1):
            yield column, row


Near: TypeAlias = tuple[Sides, str, float]
"""An obstacle seen from the start of a stretch, its cable or "", and how far clamps of that may reach beside it."""


@dataclass(frozen=True, slots=True)
class Bench:
    """A stretch with the obstacles near it: the box round its centre line, and that within which they were sought."""

    stretch: Stretch
    foot: Foot
    box: Box
    around: Box
    near: tuple[Near, ...]

    def free(self, body: Span, feet: Iterable[Span], own: Iterable[str]) -> list[Span]:
        """Return where the middle of a clamp of some cables may be, along the centre line.

        Its body and each of its feet reach from here to there to the left of the centre line.
        """
        blocked = list(self._blocked(body, 0.0, (0.0, 0.0), own))
        for low, high in feet:
            blocked += self._foot_blocked(low, high, own)
        return self._between(sorted(blocked))

    def free_beside(self, half: float, out: float, cable: str) -> tuple[tuple[Span, ...], tuple[Span, ...]]:
        """Return where one cable's clamp with a foot to the left may be, and one with a foot to the right.

        The jacket reaches to `half` on either side, the foot from there to `out`.
        """
        own = (cable,)
        body = list(self._blocked((-half, half), 0.0, (0.0, 0.0), own))
        left = self._between(sorted([*body, *self._foot_blocked(half, out, own)]))
        right = self._between(sorted([*body, *self._foot_blocked(-out, -half, own)]))
        return tuple(left), tuple(right)

    def _foot_blocked(self, low: float, high: float, own: Iterable[str]) -> Iterator[Span]:
        side = 1 if high > -low else -1
        across = (0.0, 0.0) if self.leads(side) else (1.0, 0.0) if side > 0 else (0.0, 1.0)
        return self._blocked((low, high), 1.0, across, own)

    def leads(self, side: int) -> bool:
        """Say whether a foot to the left (1) or right (-1) lies above its cable, or to the left of an upright one.

        The room between two cables is for such feet first: so no two feet meet, whichever cable is looked at
        first, and screws line up.
        """
        x, y = direction(self.stretch.towards + 90.0 * side)
        return y > NOISE or (abs(y) <= NOISE and x < 0)

    def _blocked(self, part: Span, along: float, across: tuple[float, float], own: Iterable[str]) -> Iterator[Span]:
        """Yield where a part of the clamp would meet an obstacle, or the foot of another cable's clamp.

        Shares of such a foot are added along the cable, and across it below and above.
        """
        low, high = part[0] + NOISE, part[1] - NOISE
        start, half = self.stretch.along, self.foot.half
        for (left, bottom, right, top), cable, feet in self.near:
            if bottom - across[0] * feet < high and low < top + across[1] * feet and cable not in own:
                reach = half + along * feet
                yield start + left - reach, start + right + reach

    def _between(self, blocked: list[Span]) -> list[Span]:
        half, stretch = self.foot.half, self.stretch
        at, end = stretch.along + half, stretch.along + stretch.length - half
        found = []
        for start, stop in blocked:
            if at <= min(start, end):
                found.append((at, min(start, end)))
            at = max(at, stop)
        if at <= end:
            found.append((at, end))
        return found


def bench_of(room: Room, stretch: Stretch, foot: Foot, reach: float) -> Bench:
    """Return a stretch with the obstacles that a clamp reaching so far to its sides could meet."""
    box = stretch.box
    around = box.grown(reach)
    near = room.within(around)
    seen = stretch.seen_boxes(each.box for each in near)
    feet = (foot.beside if each.clamped else 0.0 for each in near)
    return Bench(stretch, foot, box, around, tuple(zip(seen, (each.cable for each in near), feet, strict=True)))


def joined(spans: Iterable[Span]) -> list[Span]:
    """Return spans without overlaps, in order."""
    found: list[Span] = []
    for low, high in sorted(spans):
        if found and low <= found[-1][1]:
            found[-1] = found[-1][0], max(found[-1][1], high)
        else:
            found.append((low, high))
    return found


def includes(spans: Iterable[Span], at: float) -> bool:
    """Say whether a place lies in one of the spans."""
    return any(low - NOISE <= at <= high + NOISE for low, high in spans)
