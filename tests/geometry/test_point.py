import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import boxes, points

from boardplan.geometry.point import Box, Point, bearing, box_around, direction, signed_area


@pytest.mark.parametrize(
    ("degrees", "expected"), [(0, (1, 0)), (90, (0, 1)), (180, (-1, 0)), (270, (0, -1)), (360, (1, 0)), (-90, (0, -1))]
)
def test_quarter_directions_are_exact(degrees, expected):
    assert direction(degrees) == expected
    assert Point(3, 0).turned(degrees) == (3 * expected[0], 3 * expected[1])


@given(st.floats(-720, 720), st.floats(1, 1000))
def test_bearing_undoes_ahead(degrees, distance):
    reached = Point(7, -3).ahead(degrees, distance)
    off = (bearing((7, -3), reached) - degrees) % 360
    assert min(off, 360 - off) == pytest.approx(0, abs=1e-6)
    assert reached.distance_to((7, -3)) == pytest.approx(distance)


@given(points, st.floats(-720, 720))
def test_turning_keeps_distance_and_agrees_with_complex_numbers(point, degrees):
    """Multiplying complex numbers is the independent computation."""
    turned = point.turned(degrees)
    expected = complex(*point) * complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    assert complex(*turned) == pytest.approx(expected, abs=1e-6)


@given(points)
def test_four_quarters_lead_home(point):
    assert point.turned(90).turned(90).turned(90).turned(90) == point
    assert point.turned(90).turned(270) == point


@given(boxes())
def test_a_box_and_its_corners(box):
    assert box_around(box.corners()) == box
    assert signed_area(box.corners()) == pytest.approx(box.width * box.height)
    assert box.holds(box.centre)
    assert box.touches(box)
    assert not box.touches(box.moved(2 * box.width + 1, 0))


def test_areas_of_known_shapes():
    """A right triangle of legs 3 and 4 has 6; run the other way round it counts negative."""
    assert signed_area([(0, 0), (3, 0), (3, 4)]) == 6
    assert signed_area([(3, 4), (3, 0), (0, 0)]) == -6


def test_moving_and_growing():
    box = Box(1, 2, 5, 9)
    assert (box.width, box.height, box.centre) == (4, 7, (3, 5.5))
    assert box.grown(1) == (0, 1, 6, 10)
    assert box.moved(10, -2) == (11, 0, 15, 7)
    assert Point(1, 2).moved(3, 4).minus((1, 1)) == (3, 5)
