"""What would give a cable a way: moves known by arithmetic, just enough and just not."""

from dataclasses import replace

import pytest
from checks.plans import plan_of, unit

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component_kind import ComponentKind, Terminal
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import NoWay, Route
from boardplan.routing.what_frees import what_frees

TALL = ComponentKind("tall", "Tall", "Tests", "T", Box(0, 0, 100, 300).corners(), 50)


def cable(start, end, conductor="16", way="outside"):
    return Cable("W1", TerminalEnd(*start), TerminalEnd(*end), conductor, "red", "dc", way)


def facing(gap):
    """Two units whose studs look at each other over a gap, one above the other."""
    return plan_of(unit("U1", 300, 200), unit("U2", 300, 300 + gap), cable(("U1", "T"), ("U2", "B")))


def test_a_cable_with_a_way_needs_nothing():
    assert what_frees(facing(200), "W1") == ()


def test_two_lugs_too_near_are_freed_by_what_their_mouths_lack():
    """Studs 20 mm inside both units, mouths of 28 mm: 56 mm are needed, so 36 mm of gap."""
    mouth = 28.0
    plan = facing(20)
    assert isinstance(find_routes(plan)["W1"], NoWay)
    freed = [each for each in what_frees(plan, "W1") if each.component]
    needed = 2 * mouth - 20 - 20
    assert {each.component for each in freed} >= {"U1", "U2"}
    upwards = next(each for each in freed if each.component == "U2")
    assert upwards.by == Point(0, pytest.approx(needed, abs=1.0))
    assert upwards.words == f"Move U2 {needed:g} mm up."


def test_the_move_it_names_is_enough_and_less_is_not():
    plan = facing(20)
    for each in what_frees(plan, "W1"):
        if each.component:
            assert isinstance(moved_way(plan, each.component, each.by), Route)
            shorter = Point(each.by.x * 0.94, each.by.y * 0.94)
            assert isinstance(moved_way(plan, each.component, shorter), NoWay)


def moved_way(plan, name, by):
    component = plan.components[name]
    return find_routes(plan.with_things([replace(component, position=component.position.moved(*by))]))["W1"]


def test_pins_that_leave_no_way_are_named():
    plan = plan_of(unit("U1", 300, 200), unit("U2", 300, 500), cable(("U1", "T"), ("U2", "B")))
    pinned = plan.with_things([replace(plan.cables["W1"], pins=(Point(350, 340), Point(900, 340)))])
    assert [each.words for each in what_frees(pinned, "W1")] == ["Without its pins W1 has a way."]


def test_studs_a_hand_apart_are_for_a_link_bar():
    """Facing studs 50 mm apart, where two mouths take 56."""
    plan = facing(30)
    assert isinstance(find_routes(plan)["W1"], NoWay)
    assert what_frees(plan, "W1")[0].words == "The studs are 50 mm apart: a link bar joins them better than a cable."


def test_a_wall_of_units_is_opened_where_it_takes_least():
    """A narrow board cut by a unit from margin to margin: only moving that one, or nothing, helps."""
    board = Board("A", "Narrow", Box(0, 0, 140, 900).corners())
    plan = plan_of(
        unit("U1", 20, 100),
        unit("T1", 20, 320, kind="tall"),
        unit("U2", 20, 740),
        cable(("U1", "T"), ("U2", "B"), conductor="70"),
        kinds=(plan_of().kinds["unit"], TALL),
        board=board,
    )
    assert isinstance(find_routes(plan)["W1"], NoWay)
    for each in what_frees(plan, "W1"):
        assert isinstance(moved_way(plan, each.component, each.by), Route)


def test_terminals_are_as_the_arithmetic_says():
    kind = plan_of().kinds["unit"]
    assert kind.terminal("T") == Terminal("T", Point(50, 90), 20, "stud", "M8", 90.0)
    assert plan_of().conductors["16"].lug.mouth == 28.0
