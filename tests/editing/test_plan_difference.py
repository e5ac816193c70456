from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from strategies import plans

from boardplan.editing.component_edits import move_components
from boardplan.editing.plan_difference import difference, with_difference
from boardplan.editing.thing_edits import remove_things
from boardplan.geometry.point import Point


def test_a_moved_component_is_all_that_is_carried(bus_plan):
    moved = move_components(bus_plan, ["INV1"], Point(7, 0))
    apart = difference(bus_plan, moved)
    assert not apart.whole
    assert {name: set(new) for name, (_, new) in apart.groups.items()} == {"components": {"INV1"}}


def test_a_plan_is_the_same_again_with_the_same_objects(bus_plan):
    moved = replace(move_components(bus_plan, ["INV1"], Point(7, 0)), job=replace(bus_plan.job, title="Another"))
    again = with_difference(bus_plan, difference(bus_plan, moved))
    assert again == moved
    assert again.components["EB1"] is bus_plan.components["EB1"]
    assert again.cables is bus_plan.cables


def test_no_difference_leaves_the_plan(bus_plan):
    assert with_difference(bus_plan, difference(bus_plan, bus_plan)) is bus_plan


@given(plans(), st.data())
def test_things_that_go_and_their_order_are_carried(plan, data):
    gone = data.draw(st.lists(st.sampled_from(sorted(plan.things)), max_size=3, unique=True))
    gone = [each for each in gone if each not in plan.boards]
    less = remove_things(plan, gone)
    for old, new in ((plan, less), (less, plan)):
        again = with_difference(old, difference(old, new))
        assert again == new
        assert list(again.things) == list(new.things)
