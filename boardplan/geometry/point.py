"""Point: where something is, in millimetres; distance, direction, turning."""

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple, Self

_QUARTER = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}


class Point(NamedTuple):
    """A place in the plane, x to the right and y up, in millimetres."""

    x: float
    y: float

    def moved(self, dx: float, dy: float) -> Self:
        """Return the point that lies dx to the right and dy above."""
        return type(self)(self.x + dx, self.y + dy)

    def minus(self, other: tuple[float, float]) -> "Point":
        """Return the vector from another point to this one."""
        return Point(self.x - other[0], self.y - other[1])

    def turned(self, degrees: float) -> "Point":
        """Return the point turned counter-clockwise about the origin; quarter turns are exact."""
        cos, sin = direction(degrees)
        return Point(self.x * cos - self.y * sin, self.x * sin + self.y * cos)

    def distance_to(self, other: tuple[float, float]) -> float:
        """Return the straight distance to another point."""
        return math.hypot(other[0] - self.x, other[1] - self.y)

    def ahead(self, degrees: float, distance: float) -> "Point":
        """Return the point reached by going a distance in a direction."""
        cos, sin = direction(degrees)
        return Point(self.x + cos * distance, self.y + sin * distance)


def direction(degrees: float) -> tuple[float, float]:
    """Return the unit vector of a direction, 0 to the right, counter-clockwise; quarter turns are exact.

    >>> direction(270)
    (0.0, -1.0)
    """
    exact = _QUARTER.get(degrees % 360.0)
    if exact is not None:
        return exact
    radians = math.radians(degrees)
    return math.cos(radians), math.sin(radians)


def bearing(start: tuple[float, float], end: tuple[float, float]) -> float:
    """Return the direction from one point to another in degrees, 0 up to but not including 360."""
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])) % 360.0


class Box(NamedTuple):
    """An upright rectangle: its left, bottom, right and top."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """How wide it is."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """How high it is."""
        return self.top - self.bottom

    @property
    def centre(self) -> Point:
        """The middle of it."""
        return Point((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Return the corners counter-clockwise from the lower left."""
        return (
            Point(self.left, self.bottom),
            Point(self.right, self.bottom),
            Point(self.right, self.top),
            Point(self.left, self.top),
        )

    def grown(self, by: float) -> "Box":
        """Return the box with every side moved outwards."""
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def moved(self, dx: float, dy: float) -> "Box":
        """Return the box dx to the right and dy above."""
        return Box(self.left + dx, self.bottom + dy, self.right + dx, self.top + dy)

    def touches(self, other: "Box") -> bool:
        """Say whether the two share at least a point."""
        return (
            self.left <= other.right
            and other.left <= self.right
            and self.bottom <= other.top
            and other.bottom <= self.top
        )

    def holds(self, point: tuple[float, float]) -> bool:
        """Say whether a point lies in the box or on its edge."""
        return self.left <= point[0] <= self.right and self.bottom <= point[1] <= self.top


def box_around(points: Iterable[tuple[float, float]]) -> Box:
    """Return the smallest box that holds all points; there must be at least one."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def around_boxes(boxes: Iterable[Box]) -> Box:
    """Return the smallest box that holds some boxes; there must be at least one."""
    lefts, bottoms, rights, tops = zip(*boxes, strict=True)
    return Box(min(lefts), min(bottoms), max(rights), max(tops))


def signed_area(ring: Sequence[tuple[float, float]]) -> float:
    """Return the area inside a ring of points, positive when it runs counter-clockwise."""
    following = (*ring[1:], ring[0])
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, following, strict=True)) / 2
