"""Exits and fixings: to scale, and an edge exit points outwards."""

import pytest

from boardplan.drawing.opening_picture import exit_picture, fixing_picture
from boardplan.drawing.rings import rectangle
from boardplan.geometry.point import Point, box_around
from boardplan.model.board import Board, BoardFixing, Exit

BOARD = Board("A", "Board", rectangle(0, 0, 1300, 880))


@pytest.mark.parametrize(
    ("at", "tip"),
    [
        (Point(0, 84), Point(-15, 84)),
        (Point(1300, 250), Point(1315, 250)),
        (Point(68, 880), Point(68, 895)),
        (Point(500, 0), Point(500, -15)),
    ],
)
def test_an_edge_exit_points_outwards(at, tip):
    arrow = exit_picture(Exit("X1", "A", "out", at), BOARD)[-1]
    assert arrow.rings[0][0] == pytest.approx(tip)


def test_a_hole_is_as_wide_as_it_is_drilled():
    hole = exit_picture(Exit("X1", "A", "out", Point(100, 100), "hole", 40), BOARD)[0]
    assert box_around(hole.rings[0]).width == pytest.approx(40)


def test_a_bolt_covers_its_hole():
    washer = fixing_picture(BoardFixing("BF-1", "A", Point(30, 25), 9))[1]
    assert box_around(washer.rings[0]).width > 9
