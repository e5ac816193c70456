"""Pictures turned and shifted: every mark goes along, and a turn undone gives the same picture."""

import pytest

from boardplan.drawing.picture import Area, Disc, Line, Strand, Words, placed_picture
from boardplan.geometry.bends import rounded
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Point

PICTURE = (
    Line((Point(0, 0), Point(10, 0)), "ink"),
    Area(((Point(0, 0), Point(10, 0), Point(10, 5)),), "stone"),
    Disc(Point(3, 4), 2, "steel"),
    Strand(rounded((Point(0, 0), Point(100, 0), Point(100, 100)), 20), "red", 8),
    Words(Point(10, 0), "W1", 3, "ink", turn=30),
)


@pytest.mark.parametrize("turn", [90, 180, 270])
def test_a_turn_undone_gives_the_same_picture(turn):
    there = placed_picture(PICTURE, Placement(turn, Point(0, 0)))
    assert there != PICTURE
    assert placed_picture(there, Placement(360 - turn, Point(0, 0))) == PICTURE


def test_everything_is_turned_then_shifted():
    line, _, disc, strand, words = placed_picture(PICTURE, Placement(90, Point(100, 0)))
    assert line.points == (Point(100, 0), Point(100, 10))
    assert disc.centre == Point(96, 3)
    assert strand.pieces[-1].end == pytest.approx((0, 100))
    assert (words.at, words.turn) == (Point(100, 10), 120)


def test_what_stays_in_place_is_the_same():
    assert placed_picture(iter(PICTURE), Placement(0, Point(0, 0))) == PICTURE
