"""A label that goes round is at least as long as the way round the cable and the overlap."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.model.label_stock import LabelGrid, LabelStock, hand_cut_stock
from boardplan.output.labels.label_wrap import goes_round, grid_for, largest_diameter, wrap_needed

# Archimedes, Measurement of a Circle, proposition 3: the ratio lies between these two
LEAST_PI, MOST_PI = Fraction(223, 71), Fraction(22, 7)


def grid(width, height, side="height"):
    return LabelGrid(210, 297, 1, 1, width, height, 0, 0, width, height, side)


@pytest.mark.parametrize(
    ("diameter", "overlap", "length"),
    [(16, 6, 56.265), (3.6, 6, 17.310), (8.5, 6, 32.704), (18, 10, 66.549), (10, 0, 31.416)],
)
def test_lengths_reckoned_by_hand(diameter, overlap, length):
    """3.14159 x diameter + overlap, on paper."""
    assert wrap_needed(diameter, overlap) == pytest.approx(length, abs=0.0006)


@given(st.floats(1, 60), st.floats(0, 20))
def test_lengths_lie_between_the_bounds_of_archimedes(diameter, overlap):
    assert float(LEAST_PI) * diameter + overlap < wrap_needed(diameter, overlap)
    assert wrap_needed(diameter, overlap) < float(MOST_PI) * diameter + overlap


@pytest.mark.parametrize(("side", "fits"), [(56.3, True), (56.2, False)])
def test_just_long_enough_and_just_not(side, fits):
    """A cable of 16 mm needs 56.265 mm."""
    assert goes_round(16, grid(30, side), 6) is fits
    assert goes_round(16, grid(side, 30, "width"), 6) is fits
    assert not goes_round(16, grid(side, 30), 6)


def test_the_shortest_label_that_goes_round_is_taken_else_the_longest():
    stock = LabelStock("s", "s", (grid(40, 60), grid(40, 30)), grid(60, 25))
    assert [grid_for(each, stock).height for each in (3, 7.6, 7.7, 17.1, 30)] == [30, 30, 60, 60, 60]


@given(st.floats(7, 100), st.floats(0, 6))
def test_the_largest_diameter_just_goes_round(side, overlap):
    largest = largest_diameter([grid(30, side)], overlap)
    assert goes_round(largest, grid(30, side), overlap)
    assert not goes_round(largest + 0.01, grid(30, side), overlap)


def test_how_thick_a_cable_paper_cut_by_hand_goes_round():
    stock = hand_cut_stock("A4", 210, 297)
    assert largest_diameter(stock.cables, stock.overlap) == pytest.approx((63 - 6) / 3.14159, abs=1e-4)
