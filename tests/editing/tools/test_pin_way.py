from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from pointing import click, done, double, drag, key, move, shown
from strategies import square_lines

from boardplan.editing.tools.corners import shifted_leg
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.pin_way import pin_way
from boardplan.geometry.bends import turns
from boardplan.geometry.point import Point
from boardplan.routing.find_route import find_routes


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan, ways=find_routes(bus_plan))


def line(*pairs):
    return tuple(Point(*pair) for pair in pairs)


WAY = line((0, 0), (100, 0), (100, 200), (300, 200))
SHIFTED = {
    "inner leg": ((100, 90), (130, 95), line((0, 0), (130, 0), (130, 200), (300, 200))),
    "on the grid": ((100, 90), (130.4, 95), line((0, 0), (130, 0), (130, 200), (300, 200))),
    "first leg": ((60, 0), (60, 25), line((0, 0), (30, 0), (30, 25), (100, 25), (100, 200), (300, 200))),
    "last leg": ((250, 200), (250, 170), line((0, 0), (100, 0), (100, 170), (270, 170), (270, 200), (300, 200))),
    "not at all": ((100, 90), (100, 190), WAY),
    "until two legs are one": ((100, 90), (0, 90), line((0, 0), (0, 200), (300, 200))),
}


@pytest.mark.parametrize("name", SHIFTED)
def test_a_leg_moves_square_to_itself(name):
    start, at, expected = SHIFTED[name]
    assert shifted_leg(WAY, Point(*start), Point(*at), stub=30, grid=1) == expected


def test_a_straight_cable_gets_a_step_at_either_end():
    straight = line((0, 0), (90, 0))
    assert shifted_leg(straight, Point(45, 0), Point(45, 20), stub=40) == line(
        (0, 0), (30, 0), (30, 20), (60, 20), (60, 0), (90, 0)
    )


@given(square_lines(), st.floats(0, 1), st.integers(-80, 80), st.integers(-80, 80))
def test_the_ends_stay_and_all_corners_are_square(points, share, dx, dy):
    leg = min(int(share * (len(points) - 1)), len(points) - 2)
    start = Point((points[leg].x + points[leg + 1].x) / 2, (points[leg].y + points[leg + 1].y) / 2)
    result = shifted_leg(points, start, start.moved(dx, dy), stub=20, grid=1)
    assume(len(result) > 1)
    assert (result[0], result[-1]) == (points[0], points[-1])
    assert all(abs(turn) in {90, 180} for turn in turns(result))


def test_a_dragged_leg_pins_the_way(hand):
    """W08 lies in the channel at y = 260 or so; its drop at x = 280 is dragged 15 to the left."""
    way = hand.ways["W08"]
    at = next(
        Point(a.x, (a.y + b.y) / 2) for a, b in zip(way.points, way.points[1:], strict=False) if abs(a.x - b.x) < 1e-9
    )
    result = done(pin_way(hand), *drag(at, (at.x - 5, at.y), (at.x - 15, at.y)))
    cable = result.plan.cables["W08"]
    assert len(cable.pins) >= 2
    assert any(pin.x == at.x - 15 for pin in cable.pins)
    assert (result.words, result.selection.ids, result.again) == ("Pin the way of W08", ("W08",), True)
    route = find_routes(result.plan)["W08"]
    assert route.source == "pinned"


def test_a_click_only_selects(hand):
    result = done(pin_way(hand), *click(800, 230))
    assert (result.plan, result.selection.ids) == (None, ("W07",))


def test_a_double_click_unpins(hand, bus_plan):
    cable = replace(bus_plan.cables["W07"], pins=(Point(800, 168),))
    plan = bus_plan.with_things([cable])
    hand = Hand(plan, ways=find_routes(plan))
    assert "double click" in shown(pin_way(hand), move(800, 230)).hint
    result = done(pin_way(hand), double(800, 230))
    assert result.plan.cables["W07"].pins == ()
    assert result.words == "Unpin W07"


def test_escape_leaves_the_way_as_it_was(hand):
    events = drag((800, 230), (820, 230))[:-1]
    assert shown(pin_way(hand), *events).plan.cables["W07"].pins
    assert done(pin_way(hand), *events, key("escape", 820, 230)).plan is None
    assert not done(pin_way(hand), key("escape")).again
