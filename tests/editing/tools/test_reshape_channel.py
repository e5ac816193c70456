import pytest
from pointing import click, done, double, drag, key, move, shown

from boardplan.editing.channel_edits import SECTIONS, draw_channel
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.reshape_channel import reshape_channel
from boardplan.geometry.point import Point

START = ((940, 300), (940, 600), (700, 600))


@pytest.fixture
def hand(bus_plan):
    plan, _ = draw_channel(bus_plan, "A", [Point(*each) for each in START], SECTIONS[3])
    return Hand(plan)


RESHAPED = {
    "an end goes along its leg": (drag((940, 302), (960, 260), reach=0.1), ((940, 260), *START[1:])),
    "or anywhere with alt": (drag((940, 300), (950.5, 260), alt=True), ((950.5, 260), *START[1:])),
    "a corner": (drag((941, 601), (960, 640), reach=0.1), (START[0], (960, 640), START[2])),
    "an upright leg goes across": (
        drag((940, 450), (970, 480), reach=0.1),
        ((970, 300), (970, 600), (700, 600)),
    ),
    "a level leg goes up": (drag((800, 600), (820, 641), reach=0.1), ((940, 300), (940, 641), (700, 641))),
}


@pytest.mark.parametrize("name", RESHAPED)
def test_what_is_dragged(hand, name):
    events, expected = RESHAPED[name]
    result = done(reshape_channel(hand), *events)
    assert result.plan.channels["RW2"].line == tuple(pytest.approx(each) for each in expected)
    assert (result.words, result.selection.ids, result.again) == ("Reshape RW2", ("RW2",), True)


def test_double_clicks_add_and_remove_corners(hand):
    added = done(reshape_channel(hand), double(945, 450))
    assert added.plan.channels["RW2"].line == (START[0], (940, 450), *START[1:])
    removed = done(reshape_channel(hand), double(941, 602))
    assert removed.plan.channels["RW2"].line == (START[0], START[2])
    refused = done(reshape_channel(Hand(removed.plan)), double(*START[0]))
    assert "two different ends" in refused.said


def test_a_click_only_selects(hand):
    result = done(reshape_channel(hand), *click(940, 450))
    assert (result.plan, result.selection.ids) == (None, ("RW2",))


def test_hints_and_escape(hand):
    assert shown(reshape_channel(hand), move(940, 450)).hint == "RW2: drag a corner, an end or a leg"
    assert "double click" in shown(reshape_channel(hand), move(10, 870)).hint
    assert not done(reshape_channel(hand), key("escape")).again
    assert done(reshape_channel(hand), *drag((940, 450), (960, 450))[:-1], key("escape", 960, 450)).plan is None


def test_what_makes_no_sense_is_told_meanwhile(hand):
    state = shown(reshape_channel(hand), *drag(START[0], (940, 600), reach=0.1)[:-1])
    assert state.hint == "Two corners of a channel can't lie on the same place."
