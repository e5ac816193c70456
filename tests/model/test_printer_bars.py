"""Bars of a printer: each limit with a case that is just within it and one that is just not.

Limits 0.97 to 1.03, 0.3 mm and factor = length / measured: common practice, no source.
"""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from boardplan.model.printer_bars import Factors, PrintedBar, PrinterBars


def bars(short=100.0, long=200.0, drawn=(1.0, 1.0), *, finer=False):
    return PrinterBars("P", "a4", PrintedBar(100, short, drawn[0]), PrintedBar(200, long, drawn[1]), finer)


@pytest.mark.parametrize(("measured", "true"), [(100.3, True), (99.7, True), (100.31, False), (99.69, False)])
def test_true_within_three_tenths(measured, true):
    assert PrintedBar(100, measured).true is true
    assert bars(short=measured).ready is true
    assert bars(long=measured + 100).ready is true


@pytest.mark.parametrize(
    ("length", "measured", "drawn", "plausible"),
    [
        (97, 100, 1.0, True),  # just 0.97
        (96.99, 100, 1.0, False),
        (103, 100, 1.0, True),  # just 1.03
        (103.01, 100, 1.0, False),
        (102, 100, 1.0098, True),  # together 1.029996
        (102, 100, 1.0099, False),  # together 1.030098
        (96, 100, 1.02, False),  # together 0.9792, but this print alone is out by 4 %
    ],
)
def test_what_a_printer_can_be_out(length, measured, drawn, plausible):
    assert PrintedBar(length, measured, drawn).plausible is plausible


def test_each_side_has_its_own_factor_and_a_true_bar_keeps_its():
    assert bars(99.5, 200.2).factors == Factors(1.005, 1.0)
    assert bars(100.1, 199, (1.002, 0.999)).factors == Factors(1.002, 1.004)  # 0.999 x 200 / 199 = 1.00402


def test_a_second_print_multiplies():
    first = bars(99.0, 201.0)
    assert first.factors == pytest.approx((100 / 99, 200 / 201), abs=5e-5)
    assert not first.ready
    second = bars(99.4, 200.0, first.factors)
    assert second.factors == pytest.approx((100 / 99 * 100 / 99.4, 200 / 201), abs=1e-4)
    third = bars(100.0, 200.0, second.factors)
    assert third.ready
    assert third.factors == second.factors


def test_what_is_refused_changes_no_factor_and_is_not_ready():
    refused = bars(90, 199, (1.01, 1.0))
    assert not refused.plausible
    assert not refused.ready
    assert refused.factors == (1.01, 1.0)


def test_finer_corrects_what_is_true_and_asks_for_a_print():
    fine = bars(99.8, 200.2, finer=True)
    assert fine.factors == Factors(1.002, 0.999)
    assert not fine.ready


def test_the_error_over_a_length_is_that_of_the_worse_bar():
    """0.2 of 100 and 0.3 of 200 over 1300: 2.6 and 1.95 mm."""
    assert bars(100.2, 199.7).error_over(1300) == pytest.approx(2.6)
    assert bars(100.1, 199.7).error_over(1300) == pytest.approx(1.95)
    assert bars(100.4, 200.0).error_over(1300) is None


@given(st.floats(0.9715, 1.0285), st.floats(0.9715, 1.0285))
def test_a_printer_that_is_out_by_a_share_is_ready_after_one_correction(short, long):
    first = bars(100 * short, 200 * long)
    assume(not first.scaled)  # a setting did that: nothing is corrected
    again = bars(100 * short * first.factors.short, 200 * long * first.factors.long, first.factors)
    assert again.ready
    assert again.factors == first.factors
