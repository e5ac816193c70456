"""Scale: the standard scales of drawings, the largest that fits, and a bar that shows it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.drawing.picture import Area, Mark, Picture, Words
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH
from boardplan.model.job import Units
from boardplan.output.printing.lettering import FINE, PLAIN

SCALES = (1.0, 2.0, 2.5, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0)
"""How many times smaller than life a drawing may be: ISO 5455, and 1:2.5 (common practice, no source)."""
_BAR = 42.0
_BLOCKS = 5


@dataclass(frozen=True, slots=True)
class Scaled:
    """A drawing of things in mm on a page: `origin` of the things lies at `at`, everything `by` times smaller."""

    by: float
    at: Point
    origin: Point = Point(0, 0)

    def point(self, point: tuple[float, float]) -> Point:
        """Return where a point comes to lie on the page."""
        return Point(self.at.x + (point[0] - self.origin.x) / self.by, self.at.y + (point[1] - self.origin.y) / self.by)

    def box(self, box: Box) -> Box:
        """Return where a box comes to lie on the page."""
        return Box(*self.point((box.left, box.bottom)), *self.point((box.right, box.top)))

    @property
    def shift(self) -> Placement:
        """How to shift a picture, so that scaling it about `at` puts it in its place."""
        return Placement(0, self.at.moved(-self.origin.x, -self.origin.y))


def fitting_scale(width: float, height: float, room: tuple[float, float], least: float = 2.0) -> float:
    """Return the largest scale at which something fits a room, as how many times smaller; the last if none does.

    >>> fitting_scale(1300, 880, (150, 100))
    10.0
    """
    fits = (each for each in SCALES if each >= least and width / each <= room[0] and height / each <= room[1])
    return next(fits, SCALES[-1])


def scale_words(by: float) -> str:
    """Return a scale as drawings state it.

    >>> scale_words(2.5)
    '1 : 2.5'
    """
    return f"1 : {by:g}"


def bar_length(by: float, units: Units) -> float:
    """Return how much the bar of a scale shows: a round length in mm or inches that is near 42 mm on paper."""
    unit = INCH if units == "inch" else 1.0
    wanted = _BAR * by / unit
    ten = 10.0 ** math.floor(math.log10(wanted))
    return unit * max(step * ten for step in (1, 2, 5) if step * ten <= wanted)


def scale_bar(at: Point, by: float, units: Units) -> Picture:
    """Return the bar of a scale with its words, its lower left at a point; about 60 mm long and 5 high."""
    return tuple(_bar(at, by, units))


def _bar(at: Point, by: float, units: Units) -> Iterator[Mark]:
    length = bar_length(by, units)
    block = length / by / _BLOCKS
    for step in range(_BLOCKS):
        box = Box(at.x + step * block, at.y, at.x + (step + 1) * block, at.y + 1.2)
        yield Area((box.corners(),), "paper" if step % 2 else "ink", "ink", 0.13)
    unit = INCH if units == "inch" else 1.0
    for share in (0.0, 0.2, 1.0):
        last = f" {'in' if units == 'inch' else 'mm'}" if share == 1 else ""
        x = at.x + share * length / by
        yield Words(Point(x, at.y + 2.1), f"{length * share / unit:g}{last}", FINE, "ink", centred=False)
    yield Words(Point(at.x + length / by + 12, at.y), scale_words(by), PLAIN, "ink", "start", bold=True, centred=False)
