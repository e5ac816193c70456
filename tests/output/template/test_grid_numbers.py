"""The grid and its numbers count from the datum, as the ruler and the schedule do."""

from dataclasses import replace

import pytest

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, Datum, Fabric
from boardplan.output.holes.datum import running
from boardplan.output.template.free_places import FreePlaces
from boardplan.output.template.grid_numbers import grid_levels, grid_numbers, grid_uprights

BOARD = Board("A", "", Box(0, 0, 830, 600).corners(), fabric=Fabric(4))


@pytest.mark.parametrize(
    ("datum", "uprights", "levels"),
    [
        (Datum(), (100, 800), (100, 600)),
        (Datum("lower-right"), (730, 30), (100, 600)),
        (Datum("upper-left"), (100, 800), (500, 0)),
        (Datum("upper-right", "covered"), (734, 34), (504, 4)),
        (Datum("lower-left", "covered"), (96, 796), (96, 596)),
    ],
)
def test_first_and_last_line(datum, uprights, levels):
    board = replace(BOARD, datum=datum)
    assert [at for _, at in grid_uprights(board)][::7] == list(uprights)
    assert [at for _, at in grid_levels(board)][::5] == list(levels)


@pytest.mark.parametrize("corner", ["lower-left", "lower-right", "upper-left", "upper-right"])
@pytest.mark.parametrize("edge", ["bare", "covered"])
def test_each_line_is_as_far_from_the_datum_as_it_says(corner, edge):
    board = replace(BOARD, datum=Datum(corner, edge))
    for distance, x in grid_uprights(board):
        assert running(board, Point(x, 300)).x == distance
    for distance, y in grid_levels(board):
        assert running(board, Point(300, y)).y == distance


@pytest.mark.parametrize(("units", "words"), [("mm", "X 100"), ("inch", "X 100 mm")])
def test_numbers_beside_a_ruler_in_inches_name_their_unit(units, words):
    found = grid_numbers(BOARD, units, BOARD.box, FreePlaces(), lambda text, size, **_: len(text) * size / 2)
    assert words in [each.text for each in found]
