"""Inch drills against published sizes and arithmetic."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.output.holes.drills import NUMBER_DRILLS, nearest_fraction, nearest_inch_drill
from boardplan.output.holes.hole_words import bit_text

# inches; the tap drills of UNC and UNF threads at about 75 % of thread, as charts by ASME B94.11M give them
TAP_DRILLS = {
    7: 0.201,  # 1/4-20
    3: 0.213,  # 1/4-28
    21: 0.159,  # 10-32
    25: 0.1495,  # 10-24
    29: 0.136,  # 8-32
    36: 0.1065,  # 6-32
    38: 0.1015,  # 5-40
    43: 0.089,  # 4-40
    50: 0.070,  # 2-56
    53: 0.0595,  # 1-64
}


def test_there_are_sixty_number_drills_each_finer_than_the_one_before():
    assert len(NUMBER_DRILLS) == 60
    assert list(NUMBER_DRILLS) == sorted(set(NUMBER_DRILLS), reverse=True)
    assert (NUMBER_DRILLS[0], NUMBER_DRILLS[59]) == (0.228, 0.040)  # the ends of the gauge in every published chart


@pytest.mark.parametrize(("number", "inches"), TAP_DRILLS.items())
def test_number_drills_of_common_threads(number, inches):
    assert NUMBER_DRILLS[number - 1] == inches


@pytest.mark.parametrize(("number", "mm"), [(41, 2.438), (30, 3.264), (1, 5.791), (60, 1.016)])
def test_number_drills_in_millimetres(number, mm):
    """As published drill charts give them in mm."""
    assert NUMBER_DRILLS[number - 1] * 25.4 == pytest.approx(mm, abs=5e-4)


@pytest.mark.parametrize(
    ("bit", "words"),
    [
        (2.4, "3/32 2.38"),
        (2.8, "7/64 2.78"),
        (3.2, "1/8 3.18"),
        (5.0, "#9 4.98"),  # 13/64 is 5.16
        (3.4, "#29 3.45"),  # 9/64 is 3.57
        (6.5, "1/4 6.35"),
        (9.0, "23/64 9.13"),
        (40.0, "1-9/16 39.69"),
        (16.0, "5/8 15.88"),
    ],
)
def test_the_nearest_is_named_with_its_own_width(bit, words):
    assert nearest_inch_drill(bit).words == words


def test_a_bit_says_how_wide_the_inch_drill_is():
    assert bit_text(5.0) == "5.0 mm  #9 = 4.98 mm"
    assert bit_text(8.0) == "8.0 mm  5/16 in = 7.94 mm"


@given(st.floats(1.0, 100.0))
def test_no_drill_is_further_off_than_half_a_step(bit):
    step = 25.4 / (64 if bit < 14 else 16)
    fraction, nearest = nearest_fraction(bit), nearest_inch_drill(bit)
    assert abs(fraction.width - bit) <= step / 2 + 1e-9
    assert abs(nearest.width - bit) <= abs(fraction.width - bit)
    if nearest != fraction:
        assert nearest.name == f"#{NUMBER_DRILLS.index(pytest.approx(nearest.width / 25.4)) + 1}"
