"""Boards apart: overlapping boards on one wall, touching ones, and one in the notch of another."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, named, plan_of

from boardplan.geometry.point import Point

NOTCHED = (Point(0, 0), Point(1000, 0), Point(1000, 500), Point(600, 500), Point(600, 800), Point(0, 800))


@pytest.mark.parametrize(
    ("outline", "x", "y", "overlaps"),
    [
        (BOARD.outline, 1000, 0, False),
        (BOARD.outline, 999.9999999, 0, False),  # float noise
        (BOARD.outline, 1018.5, 0, False),
        (BOARD.outline, 999, 0, True),
        (BOARD.outline, 0, 0, True),
        (NOTCHED, 600, 500, False),
        (NOTCHED, 599, 500, True),
    ],
)
def test_two_boards(outline, x, y, overlaps):
    second = replace(BOARD, id="B", position=Point(x, y))
    found = named(plan_of(second, board=replace(BOARD, outline=outline)), "boards-overlap")
    assert [(each.severity, each.things) for each in found] == ([("stop", ("A", "B"))] if overlaps else [])
