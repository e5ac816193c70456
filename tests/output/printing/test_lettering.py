"""Words that are too long wrap; none are cut off."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.output.printing.lettering import FINE, LARGE, PLAIN, TITLE, fitting_height, wrapped


def measure(text, height, *, bold=False):
    return len(text) * height * (1.1 if bold else 1.0)


def test_four_sizes_of_type():
    """7, 9, 12 and 18 points; a point is 1/72 in, a capital of our font 0.668 of it."""
    assert pytest.approx([7, 9, 12, 18]) == [size / 0.668 * 72 / 25.4 for size in (FINE, PLAIN, LARGE, TITLE)]


@given(st.text(st.sampled_from("ab cd\n"), max_size=60), st.floats(2, 40))
def test_lines_fit_and_nothing_is_lost(text, width):
    lines = wrapped(text, width, 1.0, measure)
    assert all(measure(line, 1.0) <= width + 0.001 for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


def test_words_shrink_only_where_they_must():
    assert fitting_height("abcd", 8, 2, measure) == 2
    assert fitting_height("abcd", 4, 2, measure) == 1
