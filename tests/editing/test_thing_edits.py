from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import plans

from boardplan.editing.acceptance_edits import accept_finding
from boardplan.editing.component_edits import set_locked
from boardplan.editing.refused import EditRefused
from boardplan.editing.thing_edits import move_things, nudge, put_thing, remove_things, rename_thing
from boardplan.geometry.point import Point
from boardplan.model.cable import TerminalEnd
from boardplan.model.job import Acceptance
from boardplan.model.joins import broken_joins
from boardplan.model.plan import Plan

BY = Point(7, 3)
MOVED = {
    "INV1": ("position", (737, 293)),
    "RW1": ("line", ((47, 269), (587, 269))),
    "BF-1": ("position", (37, 28)),
    "X1": ("position", (0, 87)),
    "X4": ("position", (75, 880)),
    "locker lamp": ("x", 1277),
    "post-A2": ("centre", 637),
    "A": ("position", (7, 3)),
}


@pytest.mark.parametrize("thing", MOVED)
def test_things_move_in_their_own_way(bus_plan, thing):
    field, value = MOVED[thing]
    assert getattr(move_things(bus_plan, [thing], BY).things[thing], field) == value


def test_several_sorts_move_at_once(bus_plan):
    plan = move_things(bus_plan, list(MOVED)[:-1], BY)
    for thing, (field, value) in list(MOVED.items())[:-1]:
        assert getattr(plan.things[thing], field) == value


def test_cables_do_not_move_by_themselves(bus_plan):
    assert move_things(bus_plan, ["W01", "W07"], BY) is bus_plan


def test_a_board_takes_along_what_is_on_it(cabin_plan):
    pinned = replace(cabin_plan.cables["W03"], pins=(Point(100, 100),))
    plan = move_things(cabin_plan.with_things([pinned]), ["A", "PB1"], Point(50, 0))
    assert plan.boards["A"].position == (50, 0)
    assert plan.components["PB1"].position == cabin_plan.components["PB1"].position
    both_on_a = all(
        not isinstance(end, TerminalEnd) or cabin_plan.components[end.component].board == "A" for end in pinned.ends
    )
    assert plan.cables["W03"].pins == ((150 if both_on_a else 100, 100),)


@pytest.mark.parametrize(
    ("direction", "place"), [("left", (729, 290)), ("right", (731, 290)), ("up", (730, 291)), ("down", (730, 289))]
)
def test_nudging(bus_plan, direction, place):
    assert nudge(bus_plan, ["INV1"], direction).components["INV1"].position == place
    assert nudge(nudge(bus_plan, ["INV1"], direction, 10), ["INV1"], direction, -10) == bus_plan


@given(plans(), st.data())
def test_removing_breaks_no_join(plan, data):
    ids = data.draw(st.lists(st.sampled_from(sorted(plan.things)), max_size=4))
    if set(plan.boards) <= set(ids):
        with pytest.raises(EditRefused, match="at least one board"):
            remove_things(plan, ids)
        return
    left = remove_things(plan, ids)
    assert not list(broken_joins(left))
    assert not set(ids) & set(left.things)
    assert (left is plan) == (not ids)


def test_acceptances_about_removed_things_go_too(bus_plan):
    plan = accept_finding(bus_plan, Acceptance("edge-margin", ("SW1", "PB1"), "Lead", "seen on site"))
    plan = accept_finding(plan, Acceptance("edge-margin", ("NB1",), "Lead", "seen on site"))
    left = remove_things(plan, ["SW1"])
    assert [each.things for each in left.accepted if each.finding == "edge-margin"] == [("NB1",)]


def test_a_locked_component_is_not_removed(bus_plan):
    with pytest.raises(EditRefused, match="INV1 is locked"):
        remove_things(set_locked(bus_plan, ["INV1"], locked=True), ["INV1", "PB1"])


@pytest.mark.parametrize("old", ["INV1", "A", "X1", "RW1", "W01", "BF-1", "post-A1", "locker lamp"])
def test_a_new_name_keeps_every_join(bus_plan, old):
    plan = accept_finding(bus_plan, Acceptance("f", (old, "PB1"), "Lead", "seen"))
    renamed = rename_thing(plan, old, "Q 9")
    assert not list(broken_joins(renamed))
    assert old not in renamed.things
    assert type(renamed.things["Q 9"]) is type(bus_plan.things[old])
    assert renamed.accepted[-1].things == ("Q 9", "PB1")
    assert list(renamed.things).index("Q 9") == list(plan.things).index(old)
    assert rename_thing(renamed, "Q 9", old) == plan


@given(plans(), st.data())
def test_renaming_changes_nothing_but_the_name(plan, data):
    old = data.draw(st.sampled_from(sorted(plan.things)))
    renamed = rename_thing(plan, old, "new name")
    assert not list(broken_joins(renamed))
    assert rename_thing(renamed, "new name", old) == plan


@pytest.mark.parametrize(
    ("new", "words"),
    [
        ("PB1", "in use already"),
        ("", "can't be a reference"),
        ("a'b", "no quotes"),
        ('a"b', "no quotes"),
        ("a\nb", "can't be a reference"),
        ("x" * 61, "1 to 60"),
    ],
)
def test_names_that_can_not_be(bus_plan, new, words):
    with pytest.raises(EditRefused) as refused:
        rename_thing(bus_plan, "INV1", new)
    assert words in refused.value.sentence


def test_renaming_to_the_same_name_is_the_same_plan(bus_plan):
    assert rename_thing(bus_plan, "INV1", " INV1 ") is bus_plan


def test_a_thing_in_place_of_itself(bus_plan):
    exit_ = replace(bus_plan.exits["X1"], name="battery plus")
    assert put_thing(bus_plan, exit_).exits["X1"].name == "battery plus"
    assert put_thing(bus_plan, bus_plan.exits["X1"]) is bus_plan


WRONG = {
    "width of framing": lambda plan: replace(plan.framing["post-A1"], width=0.0),
    "diameter": lambda plan: replace(plan.fixings["BF-1"], diameter=-9.0),
    "endless": lambda plan: replace(plan.fixings["BF-1"], position=Point(float("inf"), 0)),
    "thickness": lambda plan: replace(plan.boards["A"], thickness=0.0),
    "margins": lambda plan: replace(plan.boards["A"], edge_margins=replace(plan.boards["A"].edge_margins, left=-1.0)),
    "weight": lambda plan: replace(plan.boards["A"], material=replace(plan.boards["A"].material, mass_per_area=0.0)),
    "outline": lambda plan: replace(plan.boards["A"], outline=(Point(0, 0), Point(9, 9), Point(9, 0), Point(0, 9))),
    "two corners": lambda plan: replace(plan.boards["A"], outline=(Point(0, 0), Point(9, 9))),
    "inside": lambda plan: replace(plan.channels["RW1"], inner_width=61.0),
    "another board": lambda plan: replace(plan.components["INV1"], board="Z"),
    "another id": lambda plan: replace(plan.components["INV1"], id="INV9"),
    "another sort": lambda plan: replace(plan.components["INV1"], id="X1"),
    "long text": lambda plan: replace(plan.exits["X1"], name="x" * 2001),
}


@pytest.mark.parametrize("name", WRONG)
def test_a_value_no_file_may_hold_is_refused(bus_plan, name):
    with pytest.raises(EditRefused) as refused:
        put_thing(bus_plan, WRONG[name](bus_plan))
    assert refused.value.sentence.endswith(".")


def test_all_collections_know_how_to_move():
    assert {"framing", "back_parts", "no_go_boxes", "exits", "fixings", "components", "channels", "boards"} < set(
        Plan.__dataclass_fields__
    )
