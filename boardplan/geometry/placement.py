"""Placement: a turn and a shift that carry a kind's own coordinates onto the board."""

from collections.abc import Iterable
from dataclasses import dataclass

from boardplan.geometry.point import Point, box_around, direction


@dataclass(frozen=True, slots=True)
class Placement:
    """Turn counter-clockwise about the kind's origin, then shift."""

    turn: float
    shift: Point

    def point(self, own: tuple[float, float]) -> Point:
        """Return where a point of the kind comes to lie."""
        (cos, sin), (x, y), (right, up) = direction(self.turn), own, self.shift
        return Point(x * cos - y * sin + right, x * sin + y * cos + up)

    def points(self, own: Iterable[tuple[float, float]]) -> tuple[Point, ...]:
        """Return where a row of points comes to lie; the turn is reckoned once for all."""
        right, up = self.shift
        if self.turn == 0:  # which most are
            return tuple([Point(x + right, y + up) for x, y in own])
        cos, sin = direction(self.turn)
        return tuple([Point(x * cos - y * sin + right, x * sin + y * cos + up) for x, y in own])

    def direction(self, own: float) -> float:
        """Return a direction of the kind as it points once turned."""
        return (own + self.turn) % 360.0


IN_PLACE = Placement(0.0, Point(0.0, 0.0))
"""Turns and shifts nothing."""


def placed_by_lower_left(outline: Iterable[tuple[float, float]], position: Point, turn: float) -> Placement:
    """Return the placement that puts the lower left of the turned outline's box at a position."""
    box = box_around(Point(*each).turned(turn) for each in outline)
    return Placement(turn % 360.0, Point(position.x - box.left, position.y - box.bottom))
