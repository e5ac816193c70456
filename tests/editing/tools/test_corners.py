import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from strategies import square_lines

from boardplan.editing.tools.corners import moved_corner, without_corner
from boardplan.geometry.bends import turns, without_repeats
from boardplan.geometry.point import Point, bearing


def line(*pairs):
    return tuple(Point(*pair) for pair in pairs)


STEP = line((0, 0), (0, 100), (80, 100), (80, 240), (300, 240), (300, 400))


def test_a_corner_takes_both_its_legs_along():
    assert moved_corner(STEP, 2, Point(120, 130), stub=20) == line(
        (0, 0), (0, 130), (120, 130), (120, 240), (300, 240), (300, 400)
    )


def test_what_is_no_corner_can_not_be_moved():
    assert moved_corner(STEP, 0, Point(9, 9), stub=20) == STEP
    assert moved_corner(STEP, 5, Point(9, 9), stub=20) == STEP


@given(square_lines(), st.integers(1, 3), st.integers(-90, 90), st.integers(-90, 90))
def test_ends_stay_and_legs_stay_square_when_a_corner_goes(points, corner, dx, dy):
    points = without_repeats(points)
    assume(0 < corner < len(points) - 1)
    result = moved_corner(points, corner, points[corner].moved(dx, dy), stub=10, grid=1)
    assume(len(result) > 1)
    assert (result[0], result[-1]) == (points[0], points[-1])
    assert all(abs(turn) in {90, 180} for turn in map(round, turns(result)))


def test_a_step_goes_with_its_corner():
    assert without_corner(STEP, 2) == line((0, 0), (0, 240), (300, 240), (300, 400))


def test_the_corner_the_ends_need_stays():
    assert without_corner(line((0, 0), (0, 100), (80, 100)), 1) is None


@given(square_lines(), st.integers(1, 3))
def test_with_a_corner_less_both_ends_are_left_as_before(points, corner):
    points = without_repeats(points)
    assume(0 < corner < len(points) - 1)
    result = without_corner(points, corner)
    assume(result is not None)
    assert len(result) < len(points)
    assert (result[0], result[-1]) == (points[0], points[-1])
    assert bearing(*result[:2]) == bearing(*points[:2])
    assert bearing(*result[-2:]) == bearing(*points[-2:])
    assert all(abs(turn) == pytest.approx(90) for turn in turns(result))
