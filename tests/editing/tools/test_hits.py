from dataclasses import replace

import pytest
from hypothesis import given
from strategies import places, plans

from boardplan.editing.tools.hits import (
    board_at,
    cable_at,
    end_place,
    nearest_board,
    nearest_end,
    nearest_terminal,
    terminal_place,
    thing_at,
    things_in,
)
from boardplan.geometry.point import Box, Point
from boardplan.model.cable import ExitEnd, TerminalEnd
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import NoWay


@pytest.mark.parametrize(
    ("at", "reach", "terminal"),
    [
        ((850, 124), 1, ("PB1", "F5")),
        ((852, 126), 5, ("PB1", "F5")),
        ((852, 126), 1, None),
        ((825, 124), 40, ("PB1", "F5")),
        ((600, 600), 5, None),
        ((50, 84), 9, ("FT1", "LINE")),
    ],
)
def test_the_nearest_terminal(bus_plan, at, reach, terminal):
    assert nearest_terminal(bus_plan, Point(*at), reach) == terminal


def test_terminals_of_the_second_board_are_on_the_wall(cabin_plan):
    at = terminal_place(cabin_plan, "EB1", "E1")
    assert at == (832 + 250 + 25, 60 + 20)
    assert nearest_terminal(cabin_plan, at, 1) == ("EB1", "E1")


@pytest.mark.parametrize(
    ("at", "end"),
    [((2, 84), ExitEnd("X1")), ((58, 86), TerminalEnd("FT1", "LINE")), ((0, 880), None), ((1300, 250), ExitEnd("X6"))],
)
def test_the_nearest_end(bus_plan, at, end):
    assert nearest_end(bus_plan, Point(*at), 8) == end
    if end:
        assert end_place(bus_plan, end).distance_to(at) <= 8


# The middle of something, and what is found there; W07 goes straight up from (800, 168).
THINGS = {
    "cable": ((800, 230), "W07"),
    "component": ((706, 84), "PB1"),
    "terminal beside a body": ((20, 600), "A"),
    "channel": ((60, 266), "RW1"),
    "exit": ((2, 258), "X3"),
    "fixing": ((30, 600), "BF-3"),
    "no-go box": ((1330, 930), "locker lamp"),
    "board": ((1000, 870), "A"),
    "wall": ((-50, -50), None),
}


@pytest.mark.parametrize("name", THINGS)
def test_what_lies_under_the_pointer(bus_plan, name):
    at, thing = THINGS[name]
    assert thing_at(bus_plan, find_routes(bus_plan), Point(*at), 1) == thing


def test_of_two_components_the_one_placed_last(bus_plan):
    above = replace(bus_plan.components["PB1"], id="PB2")
    plan = bus_plan.with_things([above])
    assert thing_at(plan, {}, Point(706, 84)) == "PB2"


def test_a_cable_without_a_way_is_not_there(bus_plan):
    ways = {"W07": NoWay("W07", "no room", Point(800, 230))}
    assert cable_at(bus_plan, ways, Point(800, 230), 5) is None
    assert cable_at(bus_plan, find_routes(bus_plan), Point(800, 230), 5) == "W07"


def test_boards_on_the_wall(cabin_plan):
    assert board_at(cabin_plan, Point(10, 10)) == "A"
    assert board_at(cabin_plan, Point(840, 10)) == "B"
    assert board_at(cabin_plan, Point(-1, 10)) is None
    assert nearest_board(cabin_plan, Point(-100, 10)) == "A"
    assert nearest_board(cabin_plan, Point(5000, 10)) == "B"


def test_a_band_holds_what_is_whole_inside(bus_plan):
    ways = find_routes(bus_plan)
    assert set(things_in(bus_plan, ways, Box(0, 0, 420, 134))) == {"FT1", "SW1", "X1", "BF-1", "W01", "W02"}
    assert things_in(bus_plan, {}, Box(50, 50, 400, 134)) == ()
    assert len(things_in(bus_plan, {}, Box(-10, -10, 2000, 2000))) == 13 + 1 + 7 + 9


@given(plans(), places)
def test_anything_found_is_in_the_plan(plan, at):
    ways = find_routes(plan)
    found = thing_at(plan, ways, at, 5)
    assert found is None or found in plan.things
    assert nearest_board(plan, at) in plan.boards
    if board_at(plan, at):
        assert found is not None
