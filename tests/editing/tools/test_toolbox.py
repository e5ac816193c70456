import string

import pytest
from boards import library_bus
from hypothesis import given
from hypothesis import strategies as st

from boardplan.editing.tools.gesture import Pointer, run
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.toolbox import TOOLS, tool
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.joins import broken_joins
from boardplan.routing.find_route import find_routes

SHELF = bundled_shelf()
PLAN = library_bus()
HAND = Hand(
    PLAN,
    ways=find_routes(PLAN),
    shelf=SHELF,
    kind=SHELF.kinds["shunt-500a"],
    conductor=SHELF.conductors["16"],
    diameter=9,
)
KEYS = ("r", "escape", "enter", "backspace", "left", "up", "q")


def test_the_table_is_complete():
    assert len({each.id for each in TOOLS}) == len(TOOLS)
    assert len({each.key for each in TOOLS}) == len(TOOLS)
    assert all(each.words and each.hint and each.key in string.ascii_uppercase for each in TOOLS)
    assert TOOLS[0].id == "select"
    assert all(tool(each.id) is each for each in TOOLS)
    assert "R" not in {each.key for each in TOOLS}


pointers = st.builds(
    Pointer,
    kind=st.sampled_from(("press", "move", "release", "double", "key")),
    at=st.builds(
        Point, st.sampled_from((58.0, 190, 706, 800, -40, 600)), st.sampled_from((84.0, 168, 230, 266, 900, 500.5))
    ),
    reach=st.sampled_from((0.1, 2.0, 30.0)),
    button=st.sampled_from(("left", "left", "right", "none")),
    shift=st.booleans(),
    control=st.booleans(),
    alt=st.booleans(),
    key=st.sampled_from(KEYS),
)


@pytest.mark.parametrize("name", [each.id for each in TOOLS])
@given(st.lists(pointers, max_size=12))
def test_whatever_is_done_with_a_tool_leaves_a_sound_plan(name, events):
    states, result = run(tool(name).factory(HAND), events)
    for state in states[-1:]:
        assert state.plan is None or not list(broken_joins(state.plan))
    if result is not None and result.plan is not None:
        assert not list(broken_joins(result.plan))
        assert result.words


@pytest.mark.parametrize("name", [each.id for each in TOOLS])
def test_closing_a_gesture_cancels_it(name):
    gesture = tool(name).factory(HAND)
    next(gesture)
    gesture.send(Pointer("move", Point(706, 84)))
    gesture.close()
