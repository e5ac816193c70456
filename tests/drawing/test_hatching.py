"""Hatching: lines stay inside, out of cut-outs, and cover what area over spacing says."""

import pytest

from boardplan.drawing.hatching import hatch, inside, lines_at
from boardplan.drawing.rings import rectangle
from boardplan.geometry.point import Point

BOARD = (rectangle(0, 0, 400, 300), rectangle(100, 100, 80, 60))


@pytest.mark.parametrize("towards", [0, 30, 45, 58, 90, 135])
def test_length_of_all_lines_is_area_over_spacing(towards):
    total = sum(a.distance_to(b) for a, b in hatch(BOARD, towards, 2))
    assert total * 2 == pytest.approx(400 * 300 - 80 * 60, rel=0.01)


@pytest.mark.parametrize("towards", [0, 45, 90])
def test_lines_stay_out_of_the_cutout(towards):
    for a, b in hatch(BOARD, towards, 7):
        assert inside(BOARD, Point((a.x + b.x) / 2, (a.y + b.y) / 2))


def test_inside():
    assert inside(BOARD, Point(20, 20))
    assert not inside(BOARD, Point(140, 130))
    assert not inside(BOARD, Point(-1, 20))


def test_lines_at_given_levels():
    assert list(lines_at(BOARD, 0, [10, 130])) == [
        (Point(0, 10), Point(400, 10)),
        (Point(0, 130), Point(100, 130)),
        (Point(180, 130), Point(400, 130)),
    ]
