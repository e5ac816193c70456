from dataclasses import replace

import pytest

from boardplan.editing.cable_edits import connect, end_words, move_pin, pin_way, reverse, set_cable, unpin
from boardplan.editing.refused import EditRefused
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.cable import ExitEnd, Leg, Lug, OffBoardEnd, TerminalEnd
from boardplan.model.joins import broken_joins

SHELF = bundled_shelf()
THIN = SHELF.conductors["2.5"]
START, END = TerminalEnd("NB1", "S3"), TerminalEnd("SH1", "SYS")


def test_a_new_cable(bus_plan):
    plan, reference = connect(bus_plan, START, END, THIN, " black ", "dc")
    assert reference == "W43"
    assert plan.cables["W43"].colour == "black"
    assert plan.cables["W43"].pins == ()
    assert not list(broken_joins(plan))


def test_the_first_cable_of_a_job_is_w01(bus_plan):
    plan, reference = connect(bus_plan.without(bus_plan.cables), START, END, THIN, "black", "dc")
    assert reference == "W01"
    assert list(plan.cables) == ["W01"]


def test_a_conductor_comes_along_and_the_jobs_own_is_kept(bus_plan):
    new = replace(THIN, id="mine")
    plan, reference = connect(bus_plan, START, END, new, "red", "dc")
    assert plan.conductors["mine"] is new
    other = replace(bus_plan.conductors["70"], outside_diameter=99.0)
    plan = set_cable(plan, reference, conductor=other)
    assert plan.conductors["70"] is bus_plan.conductors["70"]
    assert plan.cables[reference].conductor == "70"


REFUSED = {
    "same end": (lambda plan: connect(plan, START, START, THIN, "red", "dc"), "two ends; both are NB1 S3"),
    "same exit": (
        lambda plan: connect(plan, ExitEnd("X1"), OffBoardEnd("X1", "battery", ()), THIN, "red", "dc"),
        "both are X1",
    ),
    "no component": (lambda plan: connect(plan, TerminalEnd("Q1", "S3"), END, THIN, "red", "dc"), "no component Q1"),
    "no terminal": (
        lambda plan: connect(plan, TerminalEnd("NB1", "S9"), END, THIN, "red", "dc"),
        "NB1 has no terminal S9",
    ),
    "no exit": (lambda plan: connect(plan, ExitEnd("X99"), END, THIN, "red", "dc"), "no exit X99"),
    "no cable": (lambda plan: unpin(plan, "W99"), "no cable W99"),
    "none alike": (lambda plan: set_cable(plan, "W02", count=0), "1 to 1000 cables"),
    "end moved to the other": (
        lambda plan: set_cable(plan, "W02", end=plan.cables["W02"].start),
        "A cable needs two ends",
    ),
    "no pin": (lambda plan: move_pin(plan, "W02", 0, Point(1, 1)), "no pinned corner 1"),
    "too many pins": (lambda plan: pin_way(plan, "W02", [Point(1, i) for i in range(201)]), "more than 200"),
    "pin nowhere": (lambda plan: pin_way(plan, "W02", [Point(float("nan"), 1)]), "no measure"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_nonsense_is_refused_in_a_sentence(bus_plan, name):
    edit, words = REFUSED[name]
    with pytest.raises(EditRefused) as refused:
        edit(bus_plan)
    assert words in refused.value.sentence


def test_fields_of_a_cable(bus_plan):
    plan = set_cable(
        bus_plan, "W08", colour="blue", way="outside", count=2, slack="small", group="G", label="to the bus"
    )
    cable = plan.cables["W08"]
    assert (cable.colour, cable.way, cable.count, cable.slack, cable.group, cable.label) == (
        "blue",
        "outside",
        2,
        "small",
        "G",
        "to the bus",
    )
    assert set_cable(plan, "W08", colour="blue") is plan


def test_pins(bus_plan):
    plan = pin_way(bus_plan, "W07", [Point(800, 168), Point(800, 200)])
    plan = move_pin(plan, "W07", 1, Point(800, 220))
    assert plan.cables["W07"].pins == ((800, 168), (800, 220))
    assert unpin(plan, "W07").cables["W07"].pins == ()
    assert pin_way(plan, "W07", plan.cables["W07"].pins) is plan


def test_reversed_it_lies_as_before(bus_plan):
    lug = Lug("M10", "90", 45)
    cable = replace(bus_plan.cables["W02"], start=TerminalEnd("FT1", "LOAD", lug), pins=(Point(1, 2), Point(3, 4)))
    plan = bus_plan.with_things([cable])
    turned = reverse(plan, "W02").cables["W02"]
    assert turned.start == cable.end
    assert turned.end == TerminalEnd("FT1", "LOAD", Lug("M10", "90", -45))
    assert turned.pins == ((3, 4), (1, 2))
    assert reverse(reverse(plan, "W02"), "W02") == plan


@pytest.mark.parametrize(
    ("end", "words"),
    [
        (START, "NB1 S3"),
        (ExitEnd("X1"), "X1"),
        (OffBoardEnd("X2", "battery", (Leg(3, "measured"),)), "X2"),
    ],
)
def test_ends_in_words(end, words):
    assert end_words(end) == words
