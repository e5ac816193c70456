from dataclasses import replace

import pytest
from pointing import done, key, move, press, shown

from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.place import next_turn, place
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.placed import placed

SHELF = bundled_shelf()
SHUNT = SHELF.kinds["shunt-500a"]


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan, shelf=SHELF, kind=SHUNT)


def test_nothing_in_hand_says_so(bus_plan):
    assert "from the shelf" in done(place(Hand(bus_plan))).said


def test_it_follows_the_pointer(hand):
    state = shown(place(hand), move(800, 600), move(1000, 200, alt=True))
    held = placed(state.plan, state.plan.components["SH2"])
    assert held.centre == (1000, 200)
    assert state.selection.ids == ("SH2",)
    assert state.hint == "SH2 Shunt 500 A"


def test_a_click_drops_it(hand, bus_plan):
    result = done(place(hand), move(600, 600), press(1000.3, 240.2, alt=True))
    assert placed(result.plan, result.plan.components["SH2"]).centre == pytest.approx((1000.3, 240.2))
    assert (result.words, result.selection.ids, result.again) == ("Place SH2", ("SH2",), False)
    assert "SH2" not in bus_plan.things


def test_with_shift_another_stays_in_hand_as_it_was_turned(hand):
    result = done(place(hand), move(600, 600), key("r", 600, 600), press(1000, 240, shift=True))
    assert result.again
    assert (result.hand.kind, result.hand.turn) == (SHUNT, 90)
    assert result.plan.components["SH2"].turn == 90


def test_it_catches_its_neighbours(hand):
    """NB1 begins at x = 254: put a shunt, 122 wide, nearly above it."""
    state = shown(place(hand), move(254 + 61 + 2, 600))
    assert state.plan.components["SH2"].position.x == 254
    assert "left edges in line with NB1" in state.hint
    assert state.guides


def test_on_the_second_board(cabin_plan):
    hand = Hand(cabin_plan, shelf=SHELF, kind=SHUNT)
    result = done(place(hand), press(832 + 300, 200, alt=True))
    component = result.plan.components["SH2"]
    assert component.board == "B"
    assert placed(result.plan, component).centre == (300, 200)


def test_turning_goes_round_what_is_allowed(hand):
    turns = []
    for count in range(1, 5):
        state = shown(place(hand), *(key("r", 600, 600) for _ in range(count)))
        turns.append(state.plan.components["SH2"].turn)
    assert turns == [90, 180, 270, 0]


def test_what_hangs_only_one_way_is_not_turned(bus_plan):
    kind = SHELF.kinds["alternator-charger-50a"]
    state = shown(place(Hand(bus_plan, shelf=SHELF, kind=kind)), key("r", 600, 600))
    assert state.plan.components["DC2"].turn == 0
    assert state.hint == "Alternator charger 50 A hangs only this way"


@pytest.mark.parametrize(
    ("allowed", "turn", "after"),
    [(None, 0, 90), (None, 270, 0), ((0.0,), 0, 0), ((0.0, 180.0), 0, 180), ((0.0, 180.0), 180, 0), ((90.0,), 0, 90)],
)
def test_the_next_turn(allowed, turn, after):
    assert next_turn(replace(SHUNT, allowed_turns=allowed), turn) == after


def test_escape_leaves_nothing(hand):
    result = done(place(hand), move(600, 600), key("escape"))
    assert (result.plan, result.again) == (None, False)


def test_what_can_not_be_placed_says_why(bus_plan):
    kind = replace(SHUNT, id="mine", fastener="nail")
    state = shown(place(Hand(bus_plan, shelf=SHELF, kind=kind)), move(600, 600))
    assert "wants the fastener nail" in state.hint
