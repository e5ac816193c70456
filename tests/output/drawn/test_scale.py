"""Scale: the largest standard scale that fits, and a bar as long as it says."""

import pytest

from boardplan.drawing.picture import Area, Words
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH
from boardplan.output.drawn.scale import SCALES, Scaled, bar_length, fitting_scale, scale_bar, scale_words


def test_the_scales_are_those_of_iso_5455_and_one_more():
    """Reductions 1:2, 1:5, 1:10 ... 1:1000: ISO 5455:1979, clause 4."""
    reductions = {2, 5, 10, 20, 50, 100, 200, 500, 1000}
    assert set(SCALES) - {1, 2.5} == reductions


@pytest.mark.parametrize(
    ("size", "room", "by"),
    [
        ((400, 100), (200, 60), 2),
        ((400.1, 100), (200, 60), 2.5),
        ((1300, 880), (150, 100), 10),
        ((1e7, 1), (10, 10), 1000),
    ],
)
def test_the_largest_that_fits(size, room, by):
    assert fitting_scale(*size, room) == by


@pytest.mark.parametrize("by", [2, 2.5, 5, 10, 20, 50])
@pytest.mark.parametrize(("units", "unit", "name"), [("mm", 1, "mm"), ("inch", INCH, "in")])
def test_a_bar_is_as_long_as_it_says(by, units, unit, name):
    picture = scale_bar(Point(7, 3), by, units)
    xs = [point.x for mark in picture if isinstance(mark, Area) for point in mark.rings[0]]
    said = max((mark.text for mark in picture if isinstance(mark, Words) and name in mark.text), key=len)
    length = float(said.removesuffix(f" {name}")) * unit
    assert max(xs) - min(xs) == pytest.approx(length / by)
    assert bar_length(by, units) == pytest.approx(length)
    assert 15 < length / by <= 42
    assert scale_words(by) in [mark.text for mark in picture if isinstance(mark, Words)]


def test_things_come_to_lie_where_the_scale_says():
    drawing = Scaled(10, Point(20, 30), Point(100, 0))
    assert drawing.point((600, 50)) == Point(70, 35)
    assert drawing.box(Box(100, 0, 200, 400)) == Box(20, 30, 30, 70)
    assert drawing.shift.point(Point(100, 0)) == Point(20, 30)
