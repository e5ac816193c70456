"""What would give a cable a way: moves and sections known by arithmetic, just enough and just not."""

from dataclasses import replace

import pytest
from checks.plans import channel, plan_of, unit

from boardplan.files.shelf_file import bundled_shelf
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


def test_a_jumper_with_a_way_that_can_not_be_made_is_for_a_link_bar():
    """Two mouths of 28 mm and 2.5 times 8.5 mm of jacket take 77.25 mm: studs 77 mm apart have a way, but no jumper."""
    assert isinstance(find_routes(facing(57))["W1"], Route)
    words = "The studs are 77 mm apart: a link bar joins them better than a cable."
    assert [each.words for each in what_frees(facing(57), "W1")] == [words]
    assert what_frees(facing(58), "W1") == ()


SECTIONS = tuple(bundled_shelf().channel_sections.values())


def through(size, *things, height=40.0, inner=None, conductor="6", **fields):
    """A cable straight through a channel from one unit to another."""
    duct = channel("RW1", (210, 150), (790, 150), size=size, height=height)
    duct = replace(duct, inner_width=inner[0], inner_height=inner[1]) if inner else duct
    joined = replace(cable(("U1", "R"), ("U2", "L"), conductor, "channel"), **fields)
    return plan_of(unit("U1", 100, 100), unit("U2", 800, 100), duct, joined, *things)


def wider(plan):
    return [(each.channel, each.section.id) for each in what_frees(plan, "W1", SECTIONS) if each.channel]


@pytest.mark.parametrize(
    ("count", "section"),
    [(17, None), (18, "40x40"), (30, "40x40"), (31, "40x60")],
)
def test_a_channel_too_full_for_a_cable_gets_the_next_section_that_holds_it(count, section):
    """Cables of 5 mm take 19.63 mm² each. 45 % of 21 x 37 are 349.6, of 36 x 37 599.4, of 36 x 57 923.4 mm².

    45 %: UK trunking space factor, as taught with BS 7671.
    """
    plan = through(25, inner=(21, 37), count=count)
    assert wider(plan) == ([("RW1", section)] if section else [])


def test_its_words_name_both_sections():
    found = what_frees(through(25, inner=(21, 37), count=18), "W1", SECTIONS)
    assert [each.words for each in found] == ["Take a channel of 40 x 40 mm for RW1, not 25 x 40: it has room for W1."]


@pytest.mark.parametrize(("depth", "offered"), [(20.9, [("RW1", "25x40")]), (21.0, [])])
def test_a_channel_too_shallow_for_a_cable_gets_the_next_one_deep_enough(depth, offered):
    """7 mm of cable, and 33.4 % of the depth at most: 20.96 mm. Common practice, no source."""
    assert wider(through(25, height=25, inner=(21, depth), conductor="2x1.5")) == offered


def test_where_a_wider_channel_has_no_room_a_deeper_one_is_taken():
    """56 cables fill 60 x 40 or 40 x 60 alike; a unit 5 mm beside the channel leaves room for the deeper alone."""
    free = through(40, inner=(30, 37), count=40)
    assert wider(free) == [("RW1", "40x60")]
    tight = through(25, unit("U3", 400, 167.5), inner=(21, 37), count=18)
    assert wider(tight) == []
    assert wider(through(40, unit("U3", 400, 175), inner=(36, 37), count=31)) == [("RW1", "40x60")]


@pytest.mark.parametrize(
    ("size", "aside", "section"),
    [(25, 8, "40x40"), (25, 14.9, "40x40"), (40, 15.1, "60x40"), (40, 22.4, "60x40"), (60, 25.1, "80x60")],
)
def test_an_end_that_looks_into_a_channel_beside_its_middle_is_freed_by_a_wider_one(size, aside, section):
    """A gland stays straight for 20 mm, and the channel begins 15 mm before it: the cable must go straight in.

    5 mm of cable has room beside the middle of a channel 40 mm wide up to 20 - 5 mm, of 60 mm up to 30 - 5 mm.
    """
    kind = plan_of().kinds["unit"]
    glands = replace(kind, id="glands", terminals=tuple(replace(each, sort="gland") for each in kind.terminals))
    duct = channel("RW1", (205, 150 - aside), (790, 150 - aside), size=size, height=40)
    plan = plan_of(
        unit("U1", 100, 100, kind="glands"),
        unit("U2", 600, 400),
        duct,
        cable(("U1", "R"), ("U2", "B"), "6", "channel"),
        kinds=(kind, glands),
    )
    assert isinstance(find_routes(plan)["W1"], NoWay)
    assert wider(plan) == [("RW1", section)]
    assert isinstance(find_routes(plan.with_things([sized(plan, section)]))["W1"], Route)


def sized(plan, name):
    found = bundled_shelf().channel_sections[name]
    sizes = {each: getattr(found, each) for each in ("width", "height", "inner_width", "inner_height")}
    return replace(plan.channels["RW1"], **sizes)


def test_without_sections_within_reach_none_is_offered():
    assert what_frees(through(25, inner=(21, 37), count=18), "W1") == ()


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
