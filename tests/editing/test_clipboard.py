import pytest
from boards import honey_trailer
from hypothesis import given
from hypothesis import strategies as st
from strategies import plans

from boardplan.editing.clipboard import Clipping, clipping_of_text, clipping_text, copied, duplicate_things, pasted
from boardplan.editing.component_edits import set_locked
from boardplan.editing.refused import EditRefused
from boardplan.editing.survey_edits import Sheet, new_plan
from boardplan.files.plan_file import plan_text
from boardplan.geometry.point import Point
from boardplan.model.cable import TerminalEnd
from boardplan.model.joins import broken_joins
from boardplan.model.placed import placed

CHAIN = ("FT1", "SW1", "PB1")


def test_cables_between_copied_components_come_along(bus_plan):
    plan, new = pasted(bus_plan, copied(bus_plan, CHAIN), "A", Point(0, 500))
    assert new == ("FT2", "SW2", "PB2")
    assert [plan.components[each].position for each in new] == [(40, 546), (312, 536), (520, 520)]
    joined = [each for each in plan.cables.values() if each.id not in bus_plan.cables]
    assert [(each.id, each.start.component, each.end.component) for each in joined] == [
        ("W43", "FT2", "SW2"),
        ("W44", "SW2", "PB2"),
    ]
    assert not list(broken_joins(plan))


def test_what_is_not_selected_is_not_joined(bus_plan):
    plan, _ = pasted(bus_plan, copied(bus_plan, ["SW1"]), "A")
    assert set(plan.cables) == set(bus_plan.cables)


def test_everything_on_a_board_can_be_copied(bus_plan):
    ids = ["INV1", "RW1", "X1", "BF-1", "post-A1", "locker lamp", "W01", "A"]
    plan, new = pasted(bus_plan, copied(bus_plan, ids), "A", Point(5, 5))
    assert sorted(new) == ["BF-10", "INV2", "NG1", "RW2", "X8", "post-1"]
    assert not list(broken_joins(plan))


def test_copies_are_free_again(bus_plan):
    plan, new = duplicate_things(set_locked(bus_plan, ["INV1"], locked=True), ["INV1"])
    assert not plan.components[new[0]].locked
    assert plan.components[new[0]].position == (750, 270)


def test_what_is_known_of_one_place_is_not_copied_to_another():
    """A fuse is rated for one circuit, and nobody measured where the copy of a rib is."""
    plan = honey_trailer()
    assert plan.components["FT1"].fuses
    assert plan.framing["rib-1"].trust == "measured"
    pasted_plan, (unit, rib) = pasted(plan, copied(plan, ["FT1", "rib-1"]), "A", Point(0, 300))
    ids = {unit, rib}
    assert [each.fuses for key, each in pasted_plan.components.items() if key in ids] == [()]
    assert [each.trust for key, each in pasted_plan.framing.items() if key in ids] == [None]


def test_pins_move_with_what_is_copied(bus_plan):
    cable = next(
        each for each in bus_plan.cables.values() if each.pins and all(isinstance(e, TerminalEnd) for e in each.ends)
    )
    ids = [end.component for end in cable.ends]
    plan, _ = pasted(bus_plan, copied(bus_plan, ids), "A", Point(11, 13))
    copy = next(each for each in plan.cables.values() if each.id not in bus_plan.cables and each.pins)
    assert copy.pins == tuple(pin.moved(11, 13) for pin in cable.pins)


def test_pasted_at_a_place_and_on_another_board(cabin_plan):
    plan, (new,) = pasted(cabin_plan, copied(cabin_plan, ["PB1"]), "B", at=Point(300, 40))
    assert plan.components[new].board == "B"
    assert placed(plan, plan.components[new]).box[:2] == (300, 40)


def test_things_of_two_boards_keep_their_distance(cabin_plan):
    plan, new = pasted(cabin_plan, copied(cabin_plan, ["PB1", "EB1"]), "A", Point(0, 0))
    places = [plan.components[each].position for each in new]
    assert places == [(422, 20), (250 + 832, 60)]


def test_nothing_to_copy(bus_plan):
    assert copied(bus_plan, []) is None
    assert copied(bus_plan, ["W01", "A"]) is None
    with pytest.raises(EditRefused, match="to duplicate them"):
        duplicate_things(bus_plan, ["W01"])


def test_from_one_job_to_another_as_text(bus_plan):
    text = clipping_text(copied(bus_plan, CHAIN))
    clipping = clipping_of_text(text)
    assert isinstance(clipping, Clipping)
    other = new_plan("Other", Sheet(900, 600), bus_plan.rules)
    plan, new = pasted(other, clipping, "A", at=Point(30, 30))
    assert new == ("FT1", "SW1", "PB1")
    assert set(plan.cables) == {"W01", "W02"}
    assert plan.conductors["70"] == bus_plan.conductors["70"]
    assert set(plan.kinds) == {bus_plan.components[each].kind for each in CHAIN}
    assert not list(broken_joins(plan))


@pytest.mark.parametrize("text", ["", "hello", "{}", "[1, 2]", '{"format": "boardplan-job"}'])
def test_any_other_text_is_no_clipping(text):
    assert clipping_of_text(text) is None


def test_a_job_without_things_is_no_clipping(bus_plan):
    assert clipping_of_text(plan_text(new_plan("Empty", Sheet(900, 600), bus_plan.rules))) is None


@given(plans(), st.data())
def test_pasting_breaks_no_join_and_takes_new_names(plan, data):
    ids = data.draw(st.lists(st.sampled_from(sorted(plan.things)), min_size=1, max_size=5))
    clipping = copied(plan, ids)
    if clipping is None:
        return
    assert not list(broken_joins(clipping.plan))
    again = clipping_of_text(clipping_text(clipping))
    assert again == clipping
    result, new = pasted(plan, again, data.draw(st.sampled_from(sorted(plan.boards))))
    assert not list(broken_joins(result))
    assert not set(new) & set(plan.things)
    assert len(result.things) == len(plan.things) + len(clipping.plan.things) - len(clipping.plan.boards)
