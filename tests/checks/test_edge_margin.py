"""Edge margin: units moved up to a side's margin, past it, and over the edge."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, channel, named, plan_of, unit

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Sides


@pytest.mark.parametrize(
    ("x", "y", "side", "gap"),
    [
        (20, 300, None, None),
        (19.9, 300, "left", 19.9),
        (880, 300, None, None),
        (880.1, 300, "right", 19.9),
        (300, 30, None, None),
        (300, 29.9, "bottom", 29.9),
        (300, 680, None, None),
        (300, 680.1, "top", 19.9),
        (0, 300, "left", 0),
    ],
)
def test_keeps_the_margin_of_each_side(x, y, side, gap):
    board = replace(BOARD, edge_margins=Sides(20, 30, 20, 20))
    found = named(plan_of(unit("U1", x, y), board=board), "too-near-edge")
    assert [(each.measured, each.things) for each in found] == ([(pytest.approx(gap), ("U1",))] if side else [])
    if side:
        assert f"the {side} edge" in found[0].sentence


def test_names_value_limit_and_source():
    (found,) = named(plan_of(unit("U1", 12.5, 300)), "too-near-edge")
    assert "12.5 mm" in found.sentence
    assert "20 mm" in found.sentence
    assert found.source in found.sentence
    assert (found.severity, found.limit, found.unit) == ("stop", 20, "mm")


@pytest.mark.parametrize(("x", "beyond"), [(0, None), (-0.1, 0.1), (-40, 40), (950, 50)])
def test_off_the_board(x, beyond):
    found = named(plan_of(unit("U1", x, 300)), "off-the-board")
    assert [each.measured for each in found] == ([pytest.approx(-beyond)] if beyond else [])


def test_channel_may_run_up_to_the_edge_but_not_over_it():
    assert named(plan_of(channel("RW", (0, 300), (500, 300))), "off-the-board") == []
    assert len(named(plan_of(channel("RW", (-1, 300), (500, 300))), "off-the-board")) == 1


@pytest.mark.parametrize(("y", "near"), [(579.5, False), (579.7, True)])
def test_slanted_edge_counts_to_the_side_it_faces(y, near):
    # At the unit's upper right corner, x = 500, the top is at 700; 20 square to it are 20.396 straight up.
    outline = (Point(0, 0), Point(1000, 0), Point(1000, 600), Point(0, 800))
    board = replace(BOARD, outline=outline)
    found = named(plan_of(unit("U1", 400, y), board=board), "too-near-edge")
    assert [each.limit for each in found] == ([20] if near else [])


def test_on_another_place_of_the_wall_it_is_shown_in_board_coordinates():
    board = replace(BOARD, position=Point(5000, 700))
    (found,) = named(plan_of(unit("U1", 10, 300), board=board), "too-near-edge")
    assert found.area == Box(10, 300, 110, 400)
    assert found.place == Point(60, 350)


@pytest.mark.parametrize(
    ("x", "y", "beyond"),
    [
        (300, 500, None),  # below the notch
        (350, 550, 50),  # over the whole width of the notch, 50 of its height: all corners lie on the outline
        (410, 505, 5),  # in the middle of its lower edge
    ],
)
def test_a_body_that_bridges_a_notch_is_off_the_board(x, y, beyond):
    """The notch is 60 wide: from 390 to 450; no place in it is farther than 30 from its sides, nor from its floor."""
    corners = ((0, 0), (1000, 0), (1000, 800), (450, 800), (450, 600), (390, 600), (390, 800), (0, 800))
    outline = tuple(Point(*each) for each in corners)
    board = replace(BOARD, outline=outline, edge_margins=Sides(0, 0, 0, 0))
    found = named(plan_of(unit("U1", x, y), board=board), "off-the-board")
    assert [each.measured for each in found] == ([pytest.approx(-min(beyond, 30), abs=0.5)] if beyond else [])


def test_a_turned_body_over_the_corner_of_a_notch_is_off_the_board():
    """What is beyond is a triangle with legs of 10 along the notch: the middle of its long side is 5 from either."""
    corners = ((0, 0), (1000, 0), (1000, 800), (500, 800), (500, 500), (0, 500))
    outline = tuple(Point(*each) for each in corners)
    board = replace(BOARD, outline=outline, edge_margins=Sides(0, 0, 0, 0))
    quarter = 100 * 2**0.5 / 4  # its upper left side has its middle one quarter to the right and three up
    turned = replace(unit("U1", 495 - quarter, 505 - 3 * quarter), turn=45.0)
    (found,) = named(plan_of(turned, board=board), "off-the-board")
    assert found.measured == pytest.approx(-5, abs=0.5)
