from dataclasses import replace

import pytest
from boards import library_bus
from hypothesis import given
from hypothesis import strategies as st
from pointing import click, done, double, drag, held, key, move, press, release, shown

from boardplan.editing.component_edits import set_locked
from boardplan.editing.selection import Selection
from boardplan.editing.thing_edits import move_things
from boardplan.editing.tools.gesture import run
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.select import select
from boardplan.geometry.point import Point
from boardplan.routing.find_route import find_routes

PB1 = (706, 84)
EMPTY = (1000, 870)


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan, ways=find_routes(bus_plan))


def with_selection(hand, *ids):
    return replace(hand, selection=Selection(ids))


@pytest.mark.parametrize(
    ("events", "before", "after"),
    [
        (click(*PB1), (), ("PB1",)),
        (click(*PB1), ("INV1", "PB1"), ("PB1",)),
        (click(60, 266), (), ("RW1",)),
        (click(800, 230), (), ("W07",)),
        (click(*EMPTY), ("PB1",), ("A",)),
        (click(-50, -50), ("PB1",), ()),
        (click(*EMPTY, shift=True), ("PB1",), ("PB1",)),
        (click(*PB1, button="right"), ("INV1", "PB1"), ("INV1", "PB1")),
        (click(*PB1, button="right"), ("INV1",), ("PB1",)),
        ([press(*PB1, shift=True)], ("INV1",), ("INV1", "PB1")),
        ([press(*PB1, control=True)], ("PB1", "INV1"), ("INV1",)),
        ([key("escape")], ("PB1",), ()),
        ([double(*PB1), release(*PB1)], (), ("PB1",)),
        ([move(*PB1), *click(*PB1)], (), ("PB1",)),
        (click(10, 10, over="INV1"), (), ("INV1",)),
        ([press(*PB1), held(707, 85), release(707, 85)], (), ("PB1",)),
    ],
)
def test_picking(hand, events, before, after):
    result = done(select(with_selection(hand, *before)), *events)
    assert result.selection.ids == after
    assert result.plan is None


def test_a_hint_for_what_is_under_the_pointer(hand):
    assert shown(select(hand), move(*PB1)).hint == "PB1, Fused positive busbar, 5-way: click to select, drag to move"
    assert shown(select(hand), move(*EMPTY)).hint == ""


def test_a_band_picks_what_it_holds(hand):
    events = drag((1, 1), (200, 60), (420, 134))
    state = shown(select(hand), *events[:-1])
    assert state.band == ((1, 1), (420, 134))
    assert set(state.selection.ids) == {"FT1", "SW1", "BF-1", "W02"}
    assert state.hint == "4 things"
    assert set(done(select(hand), *events).selection.ids) == {"FT1", "SW1", "BF-1", "W02"}
    added = done(select(with_selection(hand, "INV1")), *drag((1, 1), (420, 134), shift=True))
    assert added.selection.ids[0] == "INV1"
    assert len(added.selection.ids) == 5


def test_dragging_one_moves_it(hand, bus_plan):
    result = done(select(hand), *drag(PB1, (710, 300), (726, 404), alt=True))
    assert result.plan == move_things(bus_plan, ["PB1"], Point(20, 320))
    assert result.words == "Move PB1"
    assert result.selection.ids == ("PB1",)


def test_dragging_one_of_the_selected_moves_all(hand, bus_plan):
    result = done(select(with_selection(hand, "PB1", "RW1", "BF-1")), *drag(PB1, (716, 94), alt=True))
    assert result.plan == move_things(bus_plan, ["PB1", "RW1", "BF-1"], Point(10, 10))
    assert result.words == "Move 3 things"


def test_it_catches_and_says_why(hand):
    state = shown(select(hand), *drag(PB1, (710, 88), (723, 87))[:-1])
    assert "bottom edge at the bottom margin" in state.hint
    assert state.plan.components["PB1"].position.y == 20
    assert state.guides
    free = shown(select(hand), *drag(PB1, (710, 88), (723, 87), alt=True)[:-1])
    assert free.plan.components["PB1"].position == (537, 23)
    assert free.hint == "+17 mm across, +3 mm up"


def test_out_of_reach_of_all_it_lands_on_whole_millimetres(hand):
    result = done(select(hand), *drag(PB1, (710, 88), (717.3, 414.8), reach=0.01))
    assert result.plan.components["PB1"].position == (531, 351)


def test_shift_keeps_to_one_axis(hand):
    events = [press(*PB1), held(716, 90), held(756, 90, shift=True), release(756, 90, shift=True)]
    assert done(select(hand), *events).plan.components["PB1"].position == (570, 20)


def test_escape_puts_everything_back(hand):
    result = done(select(hand), press(*PB1), held(716, 94), held(750, 100), key("escape"))
    assert result.plan is None
    assert result.selection.ids == ("PB1",)


def test_a_locked_component_says_so(bus_plan):
    hand = Hand(set_locked(bus_plan, ["PB1"], locked=True))
    result = done(select(hand), press(*PB1), held(716, 94))
    assert result.said == "PB1 is locked. Unlock it to move it."
    assert result.plan is None


def test_a_cable_is_not_carried_off_but_pushed_aside(hand):
    result = done(select(hand), *drag((800, 230), (812, 230), (820, 240)))
    assert result.selection.ids == ("W07",)
    assert result.plan.components is hand.plan.components
    assert result.plan.cables["W07"].pins
    assert result.words == "Pin the way of W07"


def test_dragged_onto_another_board_it_hangs_there(cabin_plan):
    at = Point(422 + 186, 20 + 64)
    result = done(select(Hand(cabin_plan)), *drag(at, (900, 300), (1300, 300), alt=True))
    component = result.plan.components["PB1"]
    assert component.board == "B"
    assert component.position == (422 + 692 - 832, 20 + 216)


@pytest.mark.parametrize(
    ("event", "by"),
    [
        (key("left"), (-1, 0)),
        (key("right"), (1, 0)),
        (key("up", shift=True), (0, 10)),
        (key("down", alt=True), (0, -0.5)),
    ],
)
def test_arrow_keys_nudge(hand, bus_plan, event, by):
    result = done(select(with_selection(hand, "PB1", "W01")), event)
    assert result.plan == move_things(bus_plan, ["PB1"], Point(*by))
    assert result.words == "Nudge PB1"


def test_arrow_keys_with_nothing_selected_do_nothing(hand):
    assert shown(select(hand), key("left")).plan is None


@given(st.lists(st.tuples(st.integers(-100, 1400), st.integers(-100, 1000)), min_size=1, max_size=6))
def test_a_preview_is_what_is_committed(path):
    plan = library_bus()
    events = drag(PB1, (720, 100), *path)
    states, result = run(select(Hand(plan)), events)
    assert result.plan == states[-1].plan
    assert set(result.plan.things) == set(plan.things)
