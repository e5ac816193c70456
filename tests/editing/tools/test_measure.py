from dataclasses import replace

import pytest
from pointing import click, done, drag, key, move, press, shown

from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.measure import distance_words, measure, telling_points
from boardplan.geometry.point import Point


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan)


@pytest.mark.parametrize(
    "events", [[*click(59, 85), move(200, 90), press(191, 83)], drag((59, 85), (120, 90), (191, 83))]
)
def test_from_terminal_to_terminal(hand, events):
    """FT1 LINE lies at (58, 84), LOAD at (190, 84)."""
    result = done(measure(hand), *events)
    assert result.said == "132 mm: 132 mm across, 0 mm up"
    assert (result.plan, result.again) == (None, True)


def test_with_alt_it_measures_from_where_the_pointer_is(hand):
    result = done(measure(hand), press(59, 85, alt=True), press(62, 89, alt=True))
    assert result.said == "5 mm: 3 mm across, 4 mm up"


def test_in_inches(bus_plan):
    plan = replace(bus_plan, job=replace(bus_plan.job, units="inch"))
    assert done(measure(Hand(plan)), *click(59, 85), press(191, 83)).said == "5-3/16 in: 5-3/16 in across, 0 in up"


def test_the_line_is_shown(hand):
    state = shown(measure(hand), *click(59, 85), move(300, 84, alt=True))
    assert state.guides == (((58, 84), (300, 84)),)
    assert state.hint.startswith("242 mm")


def test_escape_gives_up_the_line_and_then_the_tool(hand):
    assert done(measure(hand), *click(59, 85), key("escape", 300, 84)).again
    assert not done(measure(hand), key("escape")).again


def test_people_measure_from_corners_holes_and_terminals(bus_plan):
    points = set(telling_points(bus_plan))
    assert {(0, 0), (1300, 880), (730, 290), (58, 84), (784, 714), (30, 25), (0, 84)} <= points


def test_a_distance_in_words():
    assert distance_words(Point(10, 10), Point(7, 6)) == "5 mm: -3 mm across, -4 mm up"
