import pytest
from pointing import click, done, drag, held, key, move, press, shown

from boardplan.editing.survey_edits import Sheet, new_plan
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.survey_tools import add_exit, add_fixing, add_no_go


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan, diameter=40)


def test_an_exit_over_the_edge(hand):
    state = shown(add_exit(hand), move(2, 500.3))
    assert state.hint == "X8 over the edge"
    result = done(add_exit(hand), press(2, 500.3))
    exit_ = result.plan.exits["X8"]
    assert (exit_.position, exit_.through, exit_.diameter) == ((0, 500), "edge", None)
    assert (result.words, result.again) == ("Add exit X8", True)


def test_an_exit_beside_the_board_goes_to_its_edge(hand):
    assert done(add_exit(hand), press(-100, 500)).plan.exits["X8"].position == (0, 500)


def test_an_exit_through_the_board(hand):
    exit_ = done(add_exit(hand), press(1011.2, 871.4, reach=0.1)).plan.exits["X8"]
    assert (exit_.position, exit_.through, exit_.diameter) == ((1011, 871), "hole", 40)


def test_a_fixing_catches_the_framing(hand):
    state = shown(add_fixing(hand), move(632, 701.3))
    assert "centre of post-A2" in state.hint
    result = done(add_fixing(hand), press(632, 701.3))
    fixing = result.plan.fixings["BF-10"]
    assert fixing.position.x == 630
    assert fixing.diameter == 40


def test_a_fixing_is_as_wide_as_the_one_before_or_a_question(bus_plan):
    assert done(add_fixing(Hand(bus_plan)), press(632, 700)).plan.fixings["BF-10"].diameter == 9
    empty = new_plan("x", Sheet(900, 600), bus_plan.rules)
    assert "How wide" in done(add_fixing(Hand(empty))).said


def test_a_no_go_box_is_drawn_up(hand):
    events = drag((1011, 831), (1000, 860), (1051, 871), alt=True)
    assert shown(add_no_go(hand), *events[:-1]).hint == "40 mm x 40 mm"
    result = done(add_no_go(hand), *events)
    assert result.plan.no_go_boxes["NG1"].box == (1011, 831, 1051, 871)
    two_presses = done(add_no_go(hand), press(1011, 831, alt=True), held(5, 5), press(1051, 871, alt=True))
    assert two_presses.plan == result.plan


def test_a_click_is_no_box(hand):
    result = done(add_no_go(hand), *click(1011, 831))
    assert result.plan is None
    assert "Drag from one corner" in result.said


@pytest.mark.parametrize("tool", [add_exit, add_fixing, add_no_go])
def test_escape_leaves_the_tool(hand, tool):
    result = done(tool(hand), move(5, 5), key("escape", 5, 5))
    assert (result.plan, result.again) == (None, False)


def test_escape_gives_up_a_box(hand):
    assert done(add_no_go(hand), press(5, 5), held(50, 50), key("escape", 50, 50)).again
