from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import plans

from boardplan.editing.component_edits import (
    box_of,
    move_components,
    place_component,
    put_component,
    replace_kind,
    set_label,
    set_locked,
    set_stage,
    turn_components,
)
from boardplan.editing.refused import EditRefused
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.fuse import Fuse
from boardplan.model.joins import broken_joins
from boardplan.model.placed import placed

SHELF = bundled_shelf()


def test_a_placed_component_takes_the_next_number(bus_plan):
    kind = SHELF.kinds["shunt-500a"]
    plan, reference = place_component(bus_plan, kind, SHELF.fasteners, "A", Point(100, 200), turn=450)
    assert reference == "SH2"
    assert plan.components["SH2"].position == (100, 200)
    assert plan.components["SH2"].turn == 90
    assert placed(plan, plan.components["SH2"]).box[:2] == (100, 200)
    assert plan.kinds is bus_plan.kinds


def test_the_number_after_the_highest_not_the_first_gap(bus_plan):
    kind = SHELF.kinds["shunt-500a"]
    plan = bus_plan.with_things([replace(bus_plan.components["SH1"], id="SH7")])
    assert place_component(plan, kind, SHELF.fasteners, "A", Point(0, 0))[1] == "SH8"


def test_kind_and_fastener_come_along(bus_plan):
    kind = replace(SHELF.kinds["shunt-500a"], id="mine", prefix="MY", fastener="M8 mine")
    fastener = replace(SHELF.fasteners["#8x19"], id="M8 mine")
    plan, reference = place_component(bus_plan, kind, {"M8 mine": fastener}, "A", Point(0, 0))
    assert reference == "MY1"
    assert plan.kinds["mine"] is kind
    assert plan.fasteners["M8 mine"] is fastener
    assert not list(broken_joins(plan))


def test_the_jobs_own_kind_is_kept(bus_plan):
    other = replace(SHELF.kinds["shunt-500a"], depth=999)
    plan, _ = place_component(bus_plan, other, SHELF.fasteners, "A", Point(0, 0))
    assert plan.kinds["shunt-500a"] is bus_plan.kinds["shunt-500a"]


REFUSED = {
    "no such board": (
        lambda plan: place_component(plan, SHELF.kinds["shunt-500a"], {}, "Z", Point(0, 0)),
        "no board Z",
    ),
    "no such fastener": (
        lambda plan: place_component(
            plan, replace(SHELF.kinds["shunt-500a"], id="q", fastener="nail"), {}, "A", Point(0, 0)
        ),
        "wants the fastener nail",
    ),
    "nowhere": (lambda plan: put_component(plan, "INV1", Point(float("nan"), 0)), "no measure here can be nan"),
    "too far": (lambda plan: move_components(plan, ["INV1"], Point(1e9, 0)), "the largest is 50 m"),
    "no such component": (lambda plan: move_components(plan, ["INV9"], Point(1, 0)), "no component INV9"),
    "locked": (
        lambda plan: put_component(set_locked(plan, ["INV1"], locked=True), "INV1", Point(0, 0)),
        "INV1 is locked. Unlock it to move it.",
    ),
    "long label": (lambda plan: set_label(plan, "INV1", "x" * 3000), "longer than 2000"),
    "box of none": (lambda plan: box_of(plan, []), "No component is selected"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_nonsense_is_refused_in_a_sentence(bus_plan, name):
    edit, words = REFUSED[name]
    with pytest.raises(EditRefused) as refused:
        edit(bus_plan)
    assert words in refused.value.sentence
    assert refused.value.sentence.endswith(".")


SAME = {
    "moved by nothing": lambda plan: move_components(plan, ["INV1"], Point(0, 0)),
    "none moved": lambda plan: move_components(plan, [], Point(5, 0)),
    "put where it is": lambda plan: put_component(plan, "INV1", Point(730, 290)),
    "turned all round": lambda plan: turn_components(plan, ["INV1"], 360),
    "same label": lambda plan: set_label(plan, "INV1", plan.components["INV1"].label),
    "same stage": lambda plan: set_stage(plan, ["INV1"], plan.components["INV1"].stage),
    "not locked before": lambda plan: set_locked(plan, ["INV1", "PB1"], locked=False),
}


@pytest.mark.parametrize("name", SAME)
def test_nothing_changed_is_the_same_plan(bus_plan, name):
    assert SAME[name](bus_plan) is bus_plan


def test_moving_moves_each_once_and_leaves_the_pins(bus_plan):
    plan = move_components(bus_plan, ["INV1", "PB1", "INV1"], Point(10, -5))
    assert plan.components["INV1"].position == (740, 285)
    assert plan.components["PB1"].position == (530, 15)
    assert plan.cables is bus_plan.cables


def test_a_locked_component_stays(bus_plan):
    plan = set_locked(bus_plan, ["INV1"], locked=True)
    moved = move_components(plan, ["INV1", "PB1"], Point(10, 0))
    assert moved.components["INV1"].position == (730, 290)
    assert moved.components["PB1"].position == (530, 20)
    assert turn_components(plan, ["INV1"], 90) is plan


@pytest.mark.parametrize(
    ("degrees", "position", "turn"),
    [(90, (642, -102), 90), (180, (520, 20), 180), (270, (642, -102), 270), (-90, (642, -102), 270)],
)
def test_turned_about_its_middle(bus_plan, degrees, position, turn):
    """PB1 is 372 x 128 at (520, 20): its middle is (706, 84), turned it is 128 x 372."""
    plan = turn_components(bus_plan, ["PB1"], degrees)
    component = plan.components["PB1"]
    assert (component.position, component.turn) == (position, turn)
    assert placed(plan, component).centre == (706, 84)


def test_turned_as_a_group(bus_plan):
    """FT1 and SW1 stand side by side; turned by 90 about their common middle they stand one above the other."""
    before = [placed(bus_plan, bus_plan.components[each]).centre for each in ("FT1", "SW1")]
    plan = turn_components(bus_plan, ["FT1", "SW1"], 90, about="group")
    after = [placed(plan, plan.components[each]).centre for each in ("FT1", "SW1")]
    assert after[1].y - after[0].y == pytest.approx(before[1].x - before[0].x, abs=1)
    assert after[1].x - after[0].x == pytest.approx(before[0].y - before[1].y, abs=1)
    pivots = [box_of(each, ["FT1", "SW1"]).centre for each in (bus_plan, plan)]
    assert pivots[0] == pytest.approx(pivots[1], abs=1)


@given(plans(), st.integers(1, 3))
def test_turning_lands_on_half_millimetres_and_back_where_it_was(plan, quarters):
    ids = list(plan.components)
    there = turn_components(plan, ids, 90 * quarters)
    back = turn_components(there, ids, 90 * (4 - quarters))
    for before, between, after in zip(*(each.components.values() for each in (plan, there, back)), strict=True):
        assert (2 * between.position.x, 2 * between.position.y) == pytest.approx(
            (round(2 * between.position.x), round(2 * between.position.y))
        )
        assert after.turn == before.turn
        assert after.position.distance_to(before.position) <= 1


@given(plans(), st.integers(-300, 300), st.integers(-300, 300))
def test_moving_there_and_back(plan, dx, dy):
    ids = list(plan.components)
    assert move_components(move_components(plan, ids, Point(dx, dy)), ids, Point(-dx, -dy)) == plan


def test_another_kind_takes_other_fuses(bus_plan):
    unit = replace(bus_plan.components["PB1"], fuses=(Fuse("F5", "strip fuse", 60),))
    plan, _ = replace_kind(bus_plan.with_things([unit]), "PB1", SHELF.kinds["fused-busbar-3-way"], SHELF.fasteners)
    assert plan.components["PB1"].fuses == ()
    assert not list(broken_joins(plan))


def test_another_kind_keeps_the_cables_it_has_terminals_for(bus_plan):
    kind = SHELF.kinds["fused-busbar-4-way-double-fed"]
    plan, lost = replace_kind(bus_plan, "PB1", kind, SHELF.fasteners)
    assert lost == ("W04",)
    assert "W04" not in plan.cables
    assert plan.cables["W03"] is bus_plan.cables["W03"]
    assert plan.components["PB1"].kind == kind.id
    assert not list(broken_joins(plan))


def test_stage_and_label(bus_plan):
    plan = set_label(set_stage(bus_plan, ["PB1", "NB1"], "site"), "PB1", "  Main plus ")
    assert (plan.components["PB1"].stage, plan.components["NB1"].stage) == ("site", "site")
    assert plan.components["PB1"].label == "Main plus"
