import pytest
from pointing import click, done, double, key, move, press, shown

from boardplan.editing.tools.draw_channel import draw_channel
from boardplan.editing.tools.hand import Hand
from boardplan.files.shelf_file import bundled_shelf


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan)


def line(result):
    return result.plan.channels["RW2"].line


def far(x, y):
    """A click that catches nothing, for its reach is short."""
    return click(x, y, reach=0.01)


def test_corners_are_square_and_a_double_click_ends_it(hand):
    result = done(
        draw_channel(hand),
        *far(613, 431),
        *far(704, 437),
        *far(709, 555),
        double(709, 555, reach=0.01),
    )
    assert line(result) == ((613, 431), (704, 431), (704, 555))
    assert (result.words, result.selection.ids, result.again) == ("Draw channel RW2", ("RW2",), True)
    assert result.plan.channels["RW2"].screws.fastener == "#8x16 washer"


def test_enter_ends_it_and_alt_goes_anywhere(hand):
    result = done(draw_channel(hand), *far(613, 431), press(700.5, 500.5, alt=True), key("enter", 900, 900))
    assert line(result) == ((613, 431), (700.5, 500.5))


def test_backspace_takes_back_a_corner(hand):
    result = done(
        draw_channel(hand), *far(613, 431), *far(704, 431), key("backspace", 613, 500), *far(613, 555), key("enter")
    )
    assert line(result) == ((613, 431), (613, 555))


def test_the_leg_is_shown_with_its_length(hand):
    state = shown(draw_channel(hand), *far(613, 431), move(704, 435, reach=0.01))
    assert state.hint.startswith("RW2: 91 mm.")
    assert state.plan.channels["RW2"].line[-1] == (704, 431)


def test_its_edge_catches_that_of_a_component(hand):
    """PB1 ends at x = 892: a channel 60 wide beside it has its middle at 922."""
    state = shown(draw_channel(hand), *click(920.5, 500), move(920.5, 560))
    assert [corner.x for corner in state.plan.channels["RW2"].line] == [922, 922]


def test_escape_gives_up_the_line_and_then_the_tool(hand):
    assert done(draw_channel(hand), *far(613, 431), key("escape")).again
    assert not done(draw_channel(hand), key("escape")).again
    assert done(draw_channel(hand), *far(613, 431), key("escape")).plan is None


def test_one_corner_is_no_channel(hand):
    result = done(draw_channel(hand), *far(613, 431), key("enter", 613, 431))
    assert result.plan is None
    assert "two different ends" in result.said


def test_doubling_back_is_told_while_drawing(hand):
    state = shown(draw_channel(hand), *far(613, 431), *far(704, 431), move(650, 431, reach=0.01))
    assert "double back" in state.hint


def test_on_the_second_board_with_a_fastener_in_hand(cabin_plan):
    hand = Hand(cabin_plan, fastener=bundled_shelf().fasteners["#6x16"])
    result = done(draw_channel(hand), *far(1000, 300), *far(1100, 300), key("enter"))
    channel = result.plan.channels["RW2"]
    assert (channel.board, channel.line) == ("B", ((168, 300), (268, 300)))
    assert channel.screws.fastener == "#6x16"
