"""Lines that come back to themselves: by hand, and against shapely's simple lines."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely.geometry import LineString

from boardplan.geometry.bends import without_repeats
from boardplan.geometry.point import Point
from boardplan.geometry.self_crossing import crosses_itself

ROUND = (Point(0, 0), Point(9, 0), Point(9, 9), Point(5, 9))


@pytest.mark.parametrize(
    ("last", "crosses"),
    [(Point(5, -1), True), (Point(5, 1), False), (Point(5, 0), True), (Point(5, 12), False)],
)
def test_a_winding_line_crosses_where_it_comes_back(last, crosses):
    assert crosses_itself((*ROUND, last)) is crosses


def test_a_leg_on_another_one_shares_its_places():
    assert crosses_itself((*ROUND, Point(5, 0), Point(2, 0)))


def test_a_spiral_does_not_cross():
    assert not crosses_itself((Point(0, 0), Point(9, 0), Point(9, 9), Point(1, 9), Point(1, 2), Point(5, 2)))


@given(st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8)), min_size=2, max_size=7))
def test_it_agrees_with_simple_lines_where_no_leg_turns_straight_back(places):
    points = without_repeats([Point(*each) for each in places])
    corners = zip(points, points[1:], points[2:], strict=False)
    back = [(b.x - a.x) * (c.y - b.y) == (b.y - a.y) * (c.x - b.x) for a, b, c in corners]
    assume(len(points) > 2 and not any(back) and points[0] != points[-1])
    assert crosses_itself(points) is not LineString(points).is_simple
