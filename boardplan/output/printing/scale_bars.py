"""Scale bars: what a person measures on the printed sheet before anything is drilled."""

from collections.abc import Iterator

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH
from boardplan.model.job import Units
from boardplan.output.printing.lettering import FINE

BAR_LENGTH, BAR_DEPTH = 4 * INCH + 7, 9.5
"""Room of a bar of 100 mm and 4 in, with its end strokes and words."""
LONG_DEPTH = 6.5
_ENDS = 4.0


def scale_bar(room: Box, axis: str) -> Picture:
    """Return a bar of 100 mm with one of 4 in beside it; level for axis X, upright for Y, in a room of its size."""
    own = tuple(_bar(axis))
    return placed_picture(own, _placement(room, axis))


def long_length(units: Units) -> float:
    """Return the room of the long bar, of 1000 mm or 30 in, with its ends."""
    return _ENDS + (30 * INCH if units == "inch" else 1000)


def long_bar(room: Box, axis: str, units: Units) -> Picture:
    """Return a bar of 1000 mm, ticked every 100, or of 30 in, ticked every 2."""
    own = tuple(_long(axis, units))
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


def _long(axis: str, units: Units) -> Iterator[Mark]:
    left, level = _ENDS / 2, 1.8
    step, count, number, name = (2 * INCH, 15, 2, "30 in") if units == "inch" else (100, 10, 100, "1000.0 mm")
    yield _ground(long_length(units), LONG_DEPTH)
    yield Line((Point(left, level), Point(left + step * count, level)), "ink", 0.15)
    for index in range(count + 1):
        high = 3.0 if index % count == 0 else 1.6
        x = left + step * index
        yield Line((Point(x, level), Point(x, level + high)), "ink", 0.15)
        if 0 < index < count:
            yield Words(Point(x, level + 2.9), str(number * index), FINE, "quiet")
    yield Words(Point(left + step / 2, level + 2.4), f"{axis}  {name}", FINE, "ink", bold=True)
