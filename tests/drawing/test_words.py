"""Words on bodies: readable from below or from the right."""

import pytest

from boardplan.drawing.words import body_words, readable_turn
from boardplan.geometry.point import Point


@pytest.mark.parametrize(
    ("own", "turn", "on_wall"),
    [(0, 0, 0), (0, 90, 90), (0, 180, 0), (0, 270, 90), (90, 0, 90), (90, 90, 0), (180, 0, 0), (270, 0, 90)],
)
def test_words_read_from_below_or_from_the_right(own, turn, on_wall):
    assert (readable_turn(own, turn) + turn) % 360 == on_wall


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
def test_a_minus_stays_a_minus(turn):
    assert (body_words(Point(0, 0), "-", 5, "bone", turn).turn + turn) % 360 == 0
