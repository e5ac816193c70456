"""Bits by their nearest inch drill."""

import pytest

from boardplan.output.hole_words import nearest_drill


@pytest.mark.parametrize(
    ("bit", "inch"),
    [
        (2.4, "3/32"),
        (2.8, "7/64"),
        (3.2, "1/8"),
        (6.5, "1/4"),
        (7, "9/32"),
        (8, "5/16"),
        (9, "23/64"),
        (10, "25/64"),
        (25.4, "1"),
        (38.1, "1-1/2"),
    ],
)
def test_nearest_drill(bit, inch):
    """Wood-screw charts name the first three beside these bits; the rest is bit / 25.4 in 1/64."""
    assert nearest_drill(bit) == inch
