from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from strategies import plans

from boardplan.editing.arrange import align_components, space_evenly
from boardplan.editing.component_edits import set_locked
from boardplan.editing.refused import EditRefused
from boardplan.model.placed import placed

# FT1 is 168 x 76 at (40, 46), SW1 96 x 96 at (312, 36), PB1 372 x 128 at (520, 20).
ROW = ("FT1", "SW1", "PB1")
ALIGNED = {
    "left": [(40, 46), (40, 36), (40, 20)],
    "right": [(724, 46), (796, 36), (520, 20)],
    "bottom": [(40, 20), (312, 20), (520, 20)],
    "top": [(40, 72), (312, 52), (520, 20)],
    "centre-x": [(382, 46), (418, 36), (280, 20)],
    "centre-y": [(40, 46), (312, 36), (520, 20)],
}


def positions(plan, ids=ROW):
    return [plan.components[each].position for each in ids]


@pytest.mark.parametrize("edge", ALIGNED)
def test_in_line(bus_plan, edge):
    assert positions(align_components(bus_plan, ROW, edge)) == ALIGNED[edge]


def test_a_locked_one_stays_and_the_others_come_to_it(bus_plan):
    plan = set_locked(bus_plan, ["SW1"], locked=True)
    assert positions(align_components(plan, ROW, "bottom")) == [(40, 36), (312, 36), (520, 36)]


def test_equal_gaps(bus_plan):
    """From 40 to 892 there are 852; 168 + 96 + 372 = 636 leave two gaps of 108."""
    assert positions(space_evenly(bus_plan, ROW, "x")) == [(40, 46), (316, 36), (520, 20)]
    assert space_evenly(space_evenly(bus_plan, ROW, "x"), reversed(ROW), "x") == space_evenly(bus_plan, ROW, "x")


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (lambda plan: space_evenly(plan, ROW[:2], "x"), "three or more"),
        (lambda plan: space_evenly(plan, ROW, "y"), "no room for gaps"),
        (lambda plan: align_components(plan, [], "left"), "No component is selected"),
        (lambda plan: align_components(plan, ["Q1"], "left"), "no component Q1"),
    ],
)
def test_nonsense_is_refused_in_a_sentence(bus_plan, edit, words):
    with pytest.raises(EditRefused) as refused:
        edit(bus_plan)
    assert words in refused.value.sentence


def test_components_of_two_boards_are_not_in_one_line(cabin_plan):
    with pytest.raises(EditRefused, match="different boards"):
        align_components(cabin_plan, ["PB1", "INV1"], "left")


@given(plans(), st.sampled_from(list(ALIGNED)))
def test_once_in_line_they_stay(plan, edge):
    ids = [each.id for each in plan.components.values() if each.board == "A"]
    assume(ids)
    once = align_components(plan, ids, edge)
    again = align_components(once, ids, edge)
    for before, after in zip(positions(once, ids), positions(again, ids), strict=True):
        assert after == pytest.approx(before, abs=1e-6)


@given(plans())
def test_gaps_are_equal(plan):
    ids = [each.id for each in plan.components.values() if each.board == "A"]
    assume(len(ids) > 2)
    try:
        even = space_evenly(plan, ids, "x")
    except EditRefused:
        return
    boxes = sorted(placed(even, even.components[each]).box for each in ids)
    gaps = [after.left - before.right for before, after in pairwise(boxes)]
    assert gaps == pytest.approx([gaps[0]] * len(gaps), abs=1e-6)
