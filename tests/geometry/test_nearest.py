import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LinearRing, LineString
from shapely.geometry import Point as ShapelyPoint
from strategies import boxes, points

from boardplan.geometry.nearest import distance_to_line, nearest_leg, nearest_on_leg, nearest_on_ring
from boardplan.geometry.point import Point

LINE = (Point(0, 0), Point(100, 0), Point(100, 50))


@pytest.mark.parametrize(
    ("at", "leg", "nearest"),
    [((30, 40), 0, (30, 0)), ((-9, 5), 0, (0, 0)), ((120, 30), 1, (100, 30)), ((90, 90), 1, (100, 50))],
)
def test_the_nearest_place_of_a_line(at, leg, nearest):
    assert nearest_leg(LINE, at) == (leg, nearest)


def test_a_leg_of_no_length():
    assert nearest_on_leg(Point(3, 3), Point(3, 3), (9, 9)) == (3, 3)


@given(st.lists(points, min_size=2, max_size=6, unique=True), points)
def test_the_geometry_library_finds_the_same_distance(line, at):
    assert distance_to_line(line, at) == pytest.approx(LineString(line).distance(ShapelyPoint(at)), abs=1e-6)


@given(boxes(), points)
def test_the_geometry_library_finds_the_same_place_on_a_ring(box, at):
    nearest = nearest_on_ring(box.corners(), at)
    ring = LinearRing(box.corners())
    assert nearest.distance_to(at) == pytest.approx(ring.distance(ShapelyPoint(at)), abs=1e-6)
    assert ring.distance(ShapelyPoint(nearest)) == pytest.approx(0, abs=1e-6)
