"""Bits by their nearest inch drill."""

import pytest

from boardplan.output.holes.hole_words import nearest_drill


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


@pytest.mark.parametrize(("width", "inch"), [(13, "33/64"), (16, "5/8"), (38, "1-1/2"), (40, "1-9/16"), (60, "2-3/8")])
def test_hole_saws_come_in_sixteenths(width, inch):
    """width / 25.4 in 1/16 from 14 mm on; 40 mm is 1.575 in, 1-9/16 is 1.5625."""
    assert nearest_drill(width) == inch
