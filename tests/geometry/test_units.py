from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.units import (
    INCH,
    LengthError,
    inches_text,
    length_text,
    mm_from_points,
    points_from_mm,
    read_length,
    tidy_number,
)

# An inch is 25.4 mm and a foot 304.8 mm exactly (international agreement of 1959; NIST SP 811, B.6).
READ = {
    "44.5": 44.5,
    "44,5 mm": 44.5,
    " 44.5mm ": 44.5,
    "4.45 cm": 44.5,
    "0.0445 m": 44.5,
    "1 in": 25.4,
    '1"': 25.4,
    "1''": 25.4,
    "1″": 25.4,
    "1”": 25.4,
    "1 3/4 in": 44.45,
    "1-3/4 in": 44.45,
    "1¾ in": 44.45,
    "1 ¾ in": 44.45,
    "¾ in": 19.05,
    "3/4 in": 19.05,
    ".5 in": 12.7,
    "1 ft": 304.8,
    "1'": 304.8,
    "2'-6 1/2\"": 774.7,
    "2' 6 1/2": 774.7,
    "2 ft 6 in": 762.0,
    "2\N{PRIME} 6″": 762.0,
    "1 m 20": 1200.0,
    "1 m 20 cm 5 mm": 1205.0,
    "-3 mm": -3.0,
    "-1/2 in": -12.7,
    "\N{MINUS SIGN}3": -3.0,
    "5 MM": 5.0,
    "0": 0.0,
}
REFUSED = [
    "",
    " ",
    "mm",
    "abc",
    "1 2 3 x",
    "5 miles",
    "1/0 in",
    "--",
    "5 mmm",
    "1e5",
    "nan",
    "inf",
    "4 in x",
    "12 %",
    "1/",
    "/2",
]


@pytest.mark.parametrize("text", READ)
def test_lengths_as_people_write_them(text):
    assert read_length(text) == pytest.approx(READ[text], abs=1e-9)


@pytest.mark.parametrize(("text", "mm"), [("1", 25.4), ("1 3/4", 44.45), ("10 mm", 10), ("2'6", 762.0)])
def test_a_bare_number_counts_in_the_unit_of_the_job(text, mm):
    assert read_length(text, "in") == pytest.approx(mm)


@pytest.mark.parametrize("text", REFUSED)
def test_what_is_no_length_is_refused_in_words(text):
    with pytest.raises(LengthError) as refused:
        read_length(text)
    assert len(str(refused.value)) > 10


@given(st.text(max_size=12))
def test_any_text_is_a_length_or_is_refused(text):
    try:
        value = read_length(text)
    except LengthError:
        return
    assert isinstance(value, float)


@given(st.integers(-200_000, 200_000))
def test_millimetres_come_back(tenths):
    assert read_length(length_text(tenths / 10)) == pytest.approx(tenths / 10, abs=1e-9)


@given(st.integers(-64 * 400, 64 * 400), st.sampled_from((2, 4, 8, 16, 32, 64)))
def test_inches_come_back(parts, denominator):
    length = float(Fraction(parts, denominator) * Fraction(254, 10))
    assert read_length(f"{inches_text(length, denominator)} in") == pytest.approx(length, abs=1e-9)


@given(st.floats(-5000, 5000))
def test_an_inch_text_is_no_further_off_than_half_its_step(length):
    assert abs(read_length(f"{inches_text(length)} in") - length) <= INCH / 64 + 1e-9


@pytest.mark.parametrize(
    ("length", "text"),
    [(25.4, "1"), (46.0, "1-13/16"), (0, "0"), (12.7, "1/2"), (-12.7, "-1/2"), (0.2, "0"), (-0.2, "0"), (25.3, "1")],
)
def test_inches_as_a_tape_shows_them(length, text):
    assert inches_text(length) == text


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        (120.0, 1, "120"),
        (26.25, 1, "26.3"),
        (-26.25, 1, "-26.3"),
        (0.04, 1, "0"),
        (-0.04, 1, "0"),
        (99.96, 1, "100"),
        (1234.5, 0, "1235"),
        (100, 0, "100"),
        (0.125, 2, "0.13"),
    ],
)
def test_tidy_numbers(value, places, text):
    assert tidy_number(value, places) == text


def test_points_of_paper():
    """A PDF unit is 1/72 inch (ISO 32000-1, 8.3.2.3): A4 is 595.28 x 841.89 of them."""
    assert points_from_mm(INCH) == 72
    assert (round(points_from_mm(210), 2), round(points_from_mm(297), 2)) == (595.28, 841.89)
    assert mm_from_points(72) == pytest.approx(25.4)


def test_lengths_in_the_units_of_the_job():
    assert length_text(44.45) == "44.5 mm"
    assert length_text(44.45, "inch") == "1-3/4 in"
