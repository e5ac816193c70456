"""Scale bars: what a person measures on the printed sheet before anything is drilled."""

from collections.abc import Iterator

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH
from boardplan.output.printing.lettering import FINE

BAR_LENGTH, BAR_DEPTH = 4 * INCH + 7, 9.5
"""Room of a bar of 100 mm and 4 in, with its end strokes and words."""
LONG_LENGTH, LONG_DEPTH = 1004.0, 6.5
"""Room of the long bar of 1000 mm."""


def scale_bar(room: Box, axis: str) -> Picture:
    """Return a bar of 100 mm with one of 4 in beside it; level for axis X, upright for Y, in a room of its size."""
    own = tuple(_bar(axis))
    return placed_picture(own, _placement(room, axis))


def long_bar(room: Box, axis: str) -> Picture:
    """Return a bar of 1000 mm, ticked every 100."""
    own = tuple(_long(axis))
    return placed_picture(own, _placement(room, axis))


def _placement(room: Box, axis: str) -> Placement:
    if axis == "X":
        return Placement(0, Point(room.left, room.bottom))
    return Placement(90, Point(room.right, room.bottom))


def _ground(length: float, depth: float) -> Area:
    return Area((Box(0, 0, length, depth).corners(),), "paper", opacity=0.75)


def _bar(axis: str) -> Iterator[Mark]:
    left, level = 3.0, BAR_DEPTH / 2
    yield _ground(BAR_LENGTH, BAR_DEPTH)
    yield Line((Point(left, level + 0.4), Point(left + 100, level + 0.4)), "ink", 0.15)
    for step in range(11):
        high = 2.4 if step % 10 == 0 else 1.7 if step == 5 else 1.1  # noqa: PLR2004
        x = left + 10 * step
        yield Line((Point(x, level + 0.4), Point(x, level + 0.4 + high)), "ink", 0.15)
    yield Words(Point(left + 27, level + 2.9), f"{axis}  100.0 mm", FINE, "ink", centred=True, bold=True)
    yield Line((Point(left, level - 0.4), Point(left + 4 * INCH, level - 0.4)), "ink", 0.15)
    for step in range(17):
        deep = 2.4 if step % 16 == 0 else 1.7 if step % 4 == 0 else 1.0
        x = left + INCH / 4 * step
        yield Line((Point(x, level - 0.4), Point(x, level - 0.4 - deep)), "ink", 0.15)
    yield Words(Point(left + INCH / 2, level - 2.9), "4 in", FINE, "ink", bold=True)


def _long(axis: str) -> Iterator[Mark]:
    left, level = 2.0, 1.8
    yield _ground(LONG_LENGTH, LONG_DEPTH)
    yield Line((Point(left, level), Point(left + 1000, level)), "ink", 0.15)
    for step in range(11):
        high = 3.0 if step % 10 == 0 else 1.6
        x = left + 100 * step
        yield Line((Point(x, level), Point(x, level + high)), "ink", 0.15)
        if 0 < step < 10:  # noqa: PLR2004
            yield Words(Point(x, level + 2.9), str(100 * step), FINE, "quiet")
    yield Words(Point(left + 50, level + 2.4), f"{axis}  1000.0 mm", FINE, "ink", bold=True)
