import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import boxes, points, turns

from boardplan.geometry.placement import Placement, placed_by_lower_left
from boardplan.geometry.point import Point, box_around

UNIT = ((0, 0), (30, 0), (30, 10), (0, 10))


@pytest.mark.parametrize(
    ("turn", "origin", "direction"),
    [
        (0, (100, 50), 0),
        (90, (110, 50), 90),
        (180, (130, 60), 180),
        (270, (100, 80), 270),
        (-90, (100, 80), 270),
        (450, (110, 50), 90),
    ],
)
def test_the_lower_left_of_a_turned_unit_lies_where_it_is_put(turn, origin, direction):
    placement = placed_by_lower_left(UNIT, Point(100, 50), turn)
    assert placement.point((0, 0)) == origin
    assert placement.direction(0) == direction
    box = box_around(placement.points(UNIT))
    assert (box.left, box.bottom) == (100, 50)
    assert sorted((box.width, box.height)) == [10, 30]


@given(boxes(), points, turns)
def test_the_box_always_begins_at_the_position(box, position, turn):
    placement = placed_by_lower_left(box.corners(), position, turn)
    around = box_around(placement.points(box.corners()))
    assert (around.left, around.bottom) == pytest.approx(position, abs=1e-6)


@given(points, points, points, st.floats(0, 360))
def test_placing_keeps_distances(first, second, shift, turn):
    placement = Placement(turn, shift)
    assert placement.point(first).distance_to(placement.point(second)) == pytest.approx(
        first.distance_to(second), abs=1e-6
    )
