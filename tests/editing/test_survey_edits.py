from dataclasses import replace

import pytest
from boards import library_bus
from hypothesis import given
from strategies import sheets

from boardplan.editing.refused import EditRefused
from boardplan.editing.survey_edits import (
    Sheet,
    add_back_part,
    add_board,
    add_exit,
    add_fixing,
    add_framing,
    add_no_go_box,
    new_plan,
    set_board_outline,
    set_board_size,
    set_compartment,
    set_job,
    set_margins,
    set_rules,
)
from boardplan.files.plan_file import plan_of_text, plan_text
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Compartment, Fabric, Material, Sides
from boardplan.model.joins import broken_joins

SHEET = Sheet(1200, 800, 18, Material("birch plywood", 12), Fabric(2))


@pytest.fixture
def plan(bus_plan):
    return new_plan("Boat shed", SHEET, bus_plan.rules, units="inch")


def test_a_new_job(plan, bus_plan):
    assert (plan.job.title, plan.job.units, plan.job.revision) == ("Boat shed", "inch", "A")
    assert list(plan.things) == ["A"]
    board = plan.boards["A"]
    assert board.box == (0, 0, 1200, 800)
    assert (board.thickness, board.material.mass_per_area, board.fabric.thickness) == (18, 12, 2)
    assert board.edge_margins == Sides(20, 20, 20, 20)
    assert board.compartment is None
    assert plan.rules is bus_plan.rules
    assert plan_of_text(plan_text(plan)) == plan


@given(sheets())
def test_any_sheet_makes_a_job_that_can_be_saved(sheet):
    plan = new_plan("x", sheet, library_bus().rules)
    assert plan_of_text(plan_text(plan)) == plan


def test_another_board_hangs_to_the_right(plan):
    plan, reference = add_board(plan, Sheet(600, 400), "Right")
    assert reference == "B"
    assert plan.boards["B"].position == (1200, 0)
    assert plan.boards["B"].name == "Right"
    assert add_board(plan, Sheet(600, 400))[1] == "C"


def test_surveyed_things_get_the_next_number(plan):
    for expected in ("X1", "X2"):
        plan, reference = add_exit(plan, "A", Point(5, 100), "battery")
        assert reference == expected
    for expected in ("BF-1", "BF-2"):
        plan, reference = add_fixing(plan, "A", Point(100, 100), 9)
        assert reference == expected
    plan, post = add_framing(plan, "A", "upright", 300, 40)
    plan, rail = add_framing(plan, "A", "level", 300, 40)
    plan, box = add_no_go_box(plan, "A", Box(10, 20, 110, 220), "lamp", (30, 40))
    plan, part = add_back_part(plan, "A", Box(0, 0, 50, 800).corners(), "batten")
    assert (post, rail, box, part) == ("post-A1", "rail-A1", "NG1", "BP1")
    assert plan.no_go_boxes["NG1"].box == (10, 20, 110, 220)
    assert (plan.no_go_boxes["NG1"].from_z, plan.no_go_boxes["NG1"].to_z) == (30, 40)
    assert not list(broken_joins(plan))
    assert plan_of_text(plan_text(plan)) == plan


def test_an_exit_over_an_edge_lands_on_it_and_a_hole_does_not(plan):
    plan, edge = add_exit(plan, "A", Point(30, 300))
    plan, hole = add_exit(plan, "A", Point(30, 300), through="hole", diameter=40)
    assert plan.exits[edge].position == (0, 300)
    assert plan.exits[hole].position == (30, 300)


def test_a_fixing_brings_its_fastener(plan):
    fastener = bundled_shelf().fasteners["#10x19"]
    plan, reference = add_fixing(plan, "A", Point(100, 100), 9, fastener)
    assert plan.fixings[reference].fastener == "#10x19"
    assert plan.fasteners["#10x19"] is fastener


def test_exits_follow_the_edge_of_another_size(plan):
    plan, reference = add_exit(plan, "A", Point(1200, 300))
    plan = set_board_size(plan, "A", 1000, 700)
    assert plan.boards["A"].box == (0, 0, 1000, 700)
    assert plan.exits[reference].position == (1000, 300)


def test_a_board_of_another_shape(plan):
    ell = tuple(Point(*each) for each in ((0, 0), (900, 0), (900, 300), (300, 300), (300, 600), (0, 600)))
    hole = (Box(20, 20, 60, 60).corners(),)
    board = set_board_outline(plan, "A", ell, hole).boards["A"]
    assert (board.outline, board.cutouts) == (ell, hole)


SAME = {
    "size": lambda plan: set_board_size(plan, "A", 1200, 800),
    "margins": lambda plan: set_margins(plan, "A", plan.boards["A"].edge_margins),
    "compartment": lambda plan: set_compartment(plan, "A", None),
    "job": lambda plan: set_job(plan, plan.job),
    "rules": lambda plan: set_rules(plan, plan.rules),
}


@pytest.mark.parametrize("name", SAME)
def test_nothing_changed_is_the_same_plan(plan, name):
    assert SAME[name](plan) is plan


REFUSED = {
    "no width": (lambda plan: add_board(plan, Sheet(0, 400)), "a width and a height"),
    "not a number": (lambda plan: set_board_size(plan, "A", float("nan"), 400), "a width and a height"),
    "too wide": (lambda plan: set_board_size(plan, "A", 60_000, 400), "the largest is 50 m"),
    "no thickness": (lambda plan: add_board(plan, Sheet(600, 400, 0)), "thickness can't be nought"),
    "no such board": (lambda plan: add_exit(plan, "Z", Point(0, 0)), "no board Z"),
    "no diameter": (lambda plan: add_fixing(plan, "A", Point(0, 0), 0), "diameter can't be nought"),
    "flat box": (lambda plan: add_no_go_box(plan, "A", Box(0, 0, 0, 10)), "width can't be nought"),
    "box inside out": (lambda plan: add_no_go_box(plan, "A", Box(0, 0, 9, 9), "", (5, 5)), "end further out"),
    "part without area": (
        lambda plan: add_back_part(plan, "A", (Point(0, 0), Point(1, 0), Point(2, 0)), ""),
        "can't be cut",
    ),
    "gap": (lambda plan: set_compartment(plan, "A", Compartment(-1, 0, 0, 0)), "less than nought"),
    "depth": (lambda plan: set_compartment(plan, "A", Compartment(1, 0, 0, 0, 0)), "Leave it empty"),
    "margin": (lambda plan: set_margins(plan, "A", Sides(20, 20, -1, 20)), "less than nought"),
    "title": (lambda plan: set_job(plan, replace(plan.job, title="  ")), "needs a title"),
    "revision": (lambda plan: set_job(plan, replace(plan.job, revision="a")), "not a revision"),
    "date": (lambda plan: set_job(plan, replace(plan.job, date="2.11.2026")), "not a date"),
    "customer": (lambda plan: set_job(plan, replace(plan.job, customer="x" * 3000)), "longer than 2000"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_nonsense_is_refused_in_a_sentence(plan, name):
    edit, words = REFUSED[name]
    with pytest.raises(EditRefused) as refused:
        edit(plan)
    assert words in refused.value.sentence
