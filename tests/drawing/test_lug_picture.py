"""Ends of cables: lugs to their measures, tubes over the barrel, and something that holds each sort of end."""

import pytest

from boardplan.drawing.lug_picture import DressedEnd, holds_picture, lugs_picture, tube_strand
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Point, box_around
from boardplan.model.component_kind import Terminal
from boardplan.model.conductor import Conductor, LugMeasures

LUG = LugMeasures(stop=18, barrel=22, strip=24, palm_width=25, palm_thickness=3.6)
LARGE = Conductor("70", "70 mm²", 70, 16, lug=LUG)
SMALL = Conductor("2.5", "2.5 mm²", 2.5, 3.6)


def end(sort, conductor=LARGE, size="M10"):
    line = (Straight(Point(100, 100), Point(300, 100)),)
    return DressedEnd(Terminal("T", Point(0, 0), 20, sort, size), line, conductor, "#7d221f")


def test_a_lug_reaches_from_its_palm_to_its_mouth():
    box = box_around(lugs_picture([end("stud")])[0].rings[0])
    assert box.height == pytest.approx(LUG.palm_width)
    assert box.right == pytest.approx(100 + LUG.mouth)
    assert 100 - LUG.palm_width < box.left < 100 - LUG.palm_width / 2


def test_tube_covers_the_mouth_and_some_jacket():
    """20 to 25 mm over the jacket: common practice, no source."""
    (tube,) = tube_strand(end("stud"))
    assert tube.pieces[0].start.x < 100 + LUG.mouth
    assert 20 <= tube.pieces[-1].end.x - 100 - LUG.mouth <= 25
    assert tube.width > LARGE.outside_diameter


@pytest.mark.parametrize(
    ("sort", "ink"),
    [("stud", "steel"), ("clamp", "bone"), ("blade", "amber"), ("plug", "graphite"), ("gland", "graphite")],
)
def test_every_sort_of_end_is_held(sort, ink):
    assert holds_picture([end(sort, SMALL)])[0].fill == ink


def test_without_measures_no_lug_is_made_up():
    assert lugs_picture([end("stud", SMALL)]) == ()
    assert tube_strand(end("stud", SMALL)) == ()


def test_the_jacket_begins_under_the_tube():
    assert LUG.stop < end("stud").bare < LUG.mouth
    assert end("blade").bare == 0
