"""Neighbours: the grid says at least what boxes that touch say, and stays so when things move."""

from hypothesis import given
from hypothesis import strategies as st

from boardplan.checks.neighbours import Neighbours, touching
from boardplan.geometry.point import Box

PLACES = st.integers(-700, 900)
BOXES = st.builds(lambda x, y, w, h: Box(x, y, x + w, y + h), PLACES, PLACES, st.integers(0, 500), st.integers(0, 500))
THINGS = st.dictionaries(st.sampled_from("abcdefgh"), st.tuples(BOXES), max_size=8)


@given(THINGS, THINGS, BOXES)
def test_finds_all_that_touch(first, second, box):
    moved = Neighbours().with_changes({}, first).with_changes(first, second)
    touched = {key for key, boxes in second.items() if touching((box,), boxes)}
    assert touched <= moved.around((box,)) <= set(second)


def test_the_old_grid_is_not_changed():
    first = Neighbours().with_changes({}, {"a": (Box(0, 0, 10, 10),)})
    first.with_changes({"a": (Box(0, 0, 10, 10),)}, {"a": (Box(900, 900, 910, 910),)})
    assert first.around((Box(0, 0, 1, 1),)) == {"a"}
