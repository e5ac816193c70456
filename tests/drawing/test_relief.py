"""Relief: raised and sunk differ in which edge is lit; shadows fall to the lower right and grow with height."""

import pytest

from boardplan.drawing.relief import cast_shadow, solid
from boardplan.drawing.rings import rectangle
from boardplan.geometry.point import box_around

BODY = rectangle(0, 0, 60, 40)


def lit_strip(relief):
    return next(mark for mark in solid([BODY], "stone", relief) if mark.fill == "stone-light").rings[0]


def test_raised_is_lit_above_left_and_sunk_below_right():
    assert (0, 40) in lit_strip("raised")
    assert (60, 0) in lit_strip("sunk")
    assert (60, 0) not in lit_strip("raised")
    assert (0, 40) not in lit_strip("sunk")


def test_flat_is_one_mark():
    assert len(solid([BODY, rectangle(100, 0, 5, 5)], "bone")) == 1


@pytest.mark.parametrize("height", [20, 90, 500])
def test_a_shadow_falls_to_the_lower_right_and_not_far(height):
    box = box_around(cast_shadow(BODY, height)[0].rings[0])
    assert 0 < box.left <= 9
    assert -9 <= box.bottom < 0


def test_a_high_body_throws_a_longer_shadow():
    low, high = (box_around(cast_shadow(BODY, height)[0].rings[0]).left for height in (20, 150))
    assert low < high
