"""Clipping a line at a box, against shapely."""

import pytest
from hypothesis import given
from shapely import LineString
from shapely import box as polygon
from strategies import boxes, points

from boardplan.geometry.clipping import share_in_box
from boardplan.geometry.point import Box, Point


@given(points, points, boxes())
def test_as_much_lies_in_the_box_as_shapely_finds(a, b, around):
    if a.distance_to(b) > 1e-6:
        share = share_in_box(a, b, around)
        inside = 0.0 if share is None else (share[1] - share[0]) * a.distance_to(b)
        assert inside == pytest.approx(LineString([a, b]).intersection(polygon(*around)).length, abs=1e-6)


@pytest.mark.parametrize(
    ("a", "b", "share"),
    [
        (Point(-10, 5), Point(30, 5), (0.25, 0.5)),
        (Point(-10, 11), Point(30, 11), None),  # beside it
        (Point(20, -5), Point(20, 25), None),  # past its right side
        (Point(2, 2), Point(8, 8), (0.0, 1.0)),  # inside
    ],
)
def test_shares_of_a_square_of_ten(a, b, share):
    assert share_in_box(a, b, Box(0, 0, 10, 10)) == share
