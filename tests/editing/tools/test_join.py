import pytest
from pointing import click, done, drag, key, move, press, release, shown

from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.join import join
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.cable import ExitEnd, TerminalEnd
from boardplan.routing.find_route import find_routes

SHELF = bundled_shelf()
F4, S3, X1 = (790, 124), (384, 168), (0, 84)


@pytest.fixture
def bare(bus_plan):
    """The library bus before any cable."""
    return bus_plan.without(bus_plan.cables)


@pytest.fixture
def hand(bare):
    return Hand(bare, shelf=SHELF, conductor=SHELF.conductors["16"])


@pytest.mark.parametrize(
    "events",
    [
        [*click(*F4), move(400, 100), press(*S3)],
        [*drag(F4, (600, 150), S3)],
        [*click(792, 126), move(400, 100), press(386, 170)],
    ],
    ids=["two clicks", "a drag", "nearly"],
)
def test_from_terminal_to_terminal(hand, events):
    result = done(join(hand), *events)
    cable = result.plan.cables["W01"]
    assert cable.ends == (TerminalEnd("PB1", "F4"), TerminalEnd("NB1", "S3"))
    assert (cable.conductor, cable.colour, cable.cable_class) == ("16", "red", "dc")
    assert (result.words, result.selection.ids, result.again) == ("Join PB1 F4 to NB1 S3", ("W01",), True)
    assert result.hand.conductor is SHELF.conductors["16"]


def test_to_an_exit(hand):
    result = done(join(hand), *click(*S3), press(*X1))
    assert result.plan.cables["W01"].ends == (TerminalEnd("NB1", "S3"), ExitEnd("X1"))


def test_the_cable_is_shown_on_its_way(hand):
    state = shown(join(hand), *click(*F4), move(*S3))
    assert "W01" in find_routes(state.plan)
    assert state.hint == "PB1 F4 to NB1 S3: 16 mm² (6 AWG) fine-strand, red (conductor as used last)"
    aside = shown(join(hand), *click(*F4), move(500, 500))
    assert aside.plan is None
    assert aside.guides == ((F4, (500, 500)),)


def test_without_a_conductor_a_person_is_asked(bare):
    hand = Hand(bare, shelf=SHELF)
    assert "which conductor?" in shown(join(hand), *click(*F4), move(*S3)).hint
    result = done(join(hand), *click(*F4), press(*S3))
    assert result.asks == (TerminalEnd("PB1", "F4"), TerminalEnd("NB1", "S3"))
    assert (result.plan, result.again) == (None, True)


def test_a_click_beside_all_terminals_is_waited_out(hand):
    state = shown(join(hand), *click(600, 600))
    assert state.hint == "Click a terminal or an exit"
    state = shown(join(hand), *click(*F4), press(600, 600), release(600, 600))
    assert state.hint == "From PB1 F4 to ..."


def test_the_same_terminal_is_not_the_other_end(hand):
    state = shown(join(hand), *click(*F4), press(*F4), release(*F4))
    assert state.plan is None


def test_escape_gives_up_the_cable_and_then_the_tool(hand):
    assert done(join(hand), *click(*F4), key("escape", *S3)).again
    assert not done(join(hand), key("escape", *S3)).again
