"""Stiff jumpers: the least ones against a planning table, and U shapes by hand."""

from dataclasses import replace

import pytest
from checks.plans import cable, named, plan_of, unit

from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.cable import Lug
from boardplan.model.conductor import AngledLug
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.stiff_jumper import least_jumper, lug_mouths, turning_back


@pytest.mark.parametrize(
    ("size", "least"),
    # planning table of typical lugs, whole mm: common practice, no source
    [("16", 78), ("25", 89), ("35", 98), ("50", 111), ("70", 120), ("95", 135), ("120", 150)],
)
def test_the_least_jumper_of_each_size(size, least):
    conductor = bundled_shelf().conductors[size]
    mouths = conductor.lug.mouth, conductor.lug.mouth
    assert least_jumper(mouths, conductor.outside_diameter, 2.5) == pytest.approx(least, abs=1.0)


def u_shape(spacing, height, *, conductor="70"):
    """Two studs that look up, side by side, joined by a cable that goes up, across and down again."""
    left, right = unit("U1", 100, 100), unit("U2", 100 + spacing, 100)
    top = 190 + height
    pins = (150, top), (150 + spacing, top)
    joined = cable("W1", ("U1", "T"), ("U2", "T"), *pins, conductor=conductor, way="outside")
    return plan_of(left, right, joined)


def test_the_room_of_a_u_of_70_mm2():
    # 128 across and 112 out for 70 mm² at four diameters: common practice, no source
    plan = u_shape(128, 104)
    room = turning_back(plan, plan.cables["W1"], find_routes(plan)["W1"])
    assert (room.spacing, room.least_spacing) == (128, 128)
    assert (room.height, room.least_height) == (112, 112)


@pytest.mark.parametrize(("spacing", "height", "findings"), [(128, 60, 1), (127, 40, 2), (110, 60, 2), (100, 104, 1)])
def test_too_little_room_is_said_for_each_side(spacing, height, findings):
    found = named(u_shape(spacing, height), "jumper-turns-back-tightly")
    assert len(found) == findings
    assert {each.severity for each in found} == {"warn"}


def test_room_enough_is_no_finding():
    assert named(u_shape(128, 104, conductor="50"), "jumper-turns-back-tightly") == []


def test_only_a_cable_that_turns_back_is_a_u():
    straight = plan_of(
        unit("U1", 100, 100), unit("U2", 100, 400), cable("W1", ("U1", "T"), ("U2", "B"), conductor="70")
    )
    assert turning_back(straight, straight.cables["W1"], find_routes(straight)["W1"]) is None
    clamped = u_shape(128, 104)
    one = clamped.cables["W1"]
    clamped = clamped.with_things([replace(one, end=replace(one.end, terminal="R"))])
    assert turning_back(clamped, clamped.cables["W1"], find_routes(clamped)["W1"]) is None


def test_mouths_are_those_of_the_lugs_that_go_on():
    plan = u_shape(128, 104)
    one = plan.cables["W1"]
    assert lug_mouths(plan, one) == (40, 40)
    square = replace(one, end=replace(one.end, lug=Lug("M8", "90")))
    assert lug_mouths(plan, square) is None  # nobody measured it
    conductor = plan.conductors["70"]
    measured = replace(conductor, lug=replace(conductor.lug, angled=(AngledLug("90", 10, 22, 15),)))
    plan = replace(plan, conductors={**plan.conductors, "70": measured})
    assert lug_mouths(plan, square) == (40, 32)
