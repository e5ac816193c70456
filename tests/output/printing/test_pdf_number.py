"""Numbers in a PDF are those that the PDF library writes, letter for letter."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from reportlab.lib.rl_accel import fp_str

from boardplan.output.printing.pdf_number import pdf_number


@given(st.floats(-1e9, 1e9))
@example(1e-7)
@example(-4e-7)
@example(999.9999999999999)
@example(99999.99999)
def test_as_the_library_writes_it(value):
    assert pdf_number(value) == fp_str(value)


@pytest.mark.parametrize("power", range(-7, 9))
@pytest.mark.parametrize("by", [0.9999999, 1.0, 1.0000001, 9.5])
def test_as_the_library_writes_it_about_each_power_of_ten(power, by):
    for value in (by * 10**power, -by * 10**power):
        assert pdf_number(value) == fp_str(value)
