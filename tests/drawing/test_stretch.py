"""Stretches of a centre line: their lengths, their ends, the lines beside them."""

import math
from itertools import pairwise

import pytest

from boardplan.drawing.stretch import beside, length_of, longest_straight, stretch_of
from boardplan.geometry.bends import Bend, rounded
from boardplan.geometry.point import Point

LINE = rounded((Point(0, 0), Point(200, 0), Point(200, 100)), 40)
"""A straight of 160, a quarter of a circle of 40, a straight of 60."""


@pytest.mark.parametrize(("start", "end"), [(0, 50), (30, 190), (170, 180), (100, 270), (0, 282)])
def test_a_stretch_is_as_long_as_asked(start, end):
    assert length_of(stretch_of(LINE, start, end)) == pytest.approx(min(end, 220 + math.pi * 20) - start)


def test_a_stretch_is_in_one_piece():
    found = stretch_of(LINE, 30, 240)
    for before, after in pairwise(found):
        assert before.end == pytest.approx(after.start)


def test_nothing_lies_between_an_end_and_itself():
    assert stretch_of(LINE, 50, 50) == ()
    assert stretch_of(LINE, 60, 50) == ()


@pytest.mark.parametrize(("offset", "radius"), [(5, 35), (-5, 45)])
def test_a_line_beside_has_another_radius(offset, radius):
    found = beside(LINE, offset)
    bend = next(piece for piece in found if isinstance(piece, Bend))
    assert bend.radius == pytest.approx(radius)
    assert found[0].start == pytest.approx((0, offset))
    assert found[-1].end == pytest.approx((200 - offset, 100))


def test_the_longest_straight():
    middle, towards, length = longest_straight(LINE)
    assert (middle, towards, length) == (pytest.approx((80, 0)), 0, pytest.approx(160))
    assert longest_straight([piece for piece in LINE if isinstance(piece, Bend)]) is None
