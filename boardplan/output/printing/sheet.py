"""Sheet: one page of paper and the pictures on it, in millimetres from its lower left."""

from dataclasses import dataclass

from boardplan.drawing.picture import Picture
from boardplan.geometry.point import Box, Point


@dataclass(frozen=True, slots=True)
class Part:
    """A picture on a page, cut off at a box where there is one.

    Picture and box are drawn `scale` times as large along x and y, about a point of the page; letters keep their size
    and only their places move.
    """

    picture: Picture
    clip: Box | None = None
    scale: tuple[float, float] = (1.0, 1.0)
    about: Point = Point(0, 0)


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page: its name in the table of contents, its size in mm, its parts in drawing order."""

    name: str
    width: float
    height: float
    parts: tuple[Part, ...]
