"""Ways on random boards, sampled from outside; every question the sampler asks can come out wrong."""

from dataclasses import replace
from functools import cache

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from checks.plans import UNIT, cable, plan_of, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from random_plans import random_plan
from routing.laid import unpinned
from slow_lattice import NEVER
from slow_square_ways import SlowBoard, shortest_square
from slow_untangled_ways import shortest_points
from way_sampler import bent, crosses_itself, length_of, roomy_ends, sampled_radius, stays_outside, violations

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, Exit, NoGoBox
from boardplan.model.cable import ExitEnd
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.route import Route

SEEDS = range(25)


@cache
def ways_of(seed):
    return find_routes(random_plan(seed))


@pytest.mark.parametrize("seed", SEEDS)
def test_no_way_on_a_random_board_breaks_a_rule(seed):
    plan, found = random_plan(seed), ways_of(seed)
    broken = {name: violations(plan, plan.cables[name], way) for name, way in found.items() if isinstance(way, Route)}
    assert {name: each for name, each in broken.items() if each} == {}


def test_random_boards_have_everything_on_them():
    plans = [random_plan(seed) for seed in SEEDS]
    assert sum(isinstance(way, Route) for seed in SEEDS for way in ways_of(seed).values()) > 80
    assert any(len(plan.boards["A"].outline) > 4 for plan in plans)
    assert any(plan.boards["A"].cutouts for plan in plans)
    assert any(plan.channels for plan in plans)
    assert any(plan.no_go_boxes for plan in plans)
    assert any(each.turn % 90 for plan in plans for each in plan.components.values())


def simple():
    """Two units beside each other, a cable from the right of one to the left of the other, well apart in height."""
    plan = plan_of(unit("U1", 100, 100), unit("U2", 600, 400))
    return plan.with_things([cable("W1", ("U1", "R"), ("U2", "L"), conductor="16", way="outside")])


START, END = Point(190, 150), Point(610, 450)
"""Clamps: they hold a cable straight for 6 mm. A conductor of 16 mm², 8.5 mm thick, bends to 25.5 mm."""
GOOD = (START, Point(400, 150), Point(400, 450), END)


def sorts(points, radius=34.0, plan=None):
    plan = plan or simple()
    return {each.partition(":")[0] for each in violations(plan, plan.cables["W1"], Route("W1", points, radius))}


def test_the_sampler_has_nothing_against_a_good_way():
    assert sorts(GOOD) == set()
    assert sorts(GOOD, 25.5) == set()


BROKEN = {
    "a bend too tight": (GOOD, 25.4, "bend"),
    "a leg too short for its bends": (
        (START, Point(260, 150), Point(260, 210), Point(400, 210), Point(400, 450), END),
        34.0,
        "kink",
    ),
    "a first leg askew": ((START, Point(400, 152), Point(400, 450), END), 34.0, "end"),
    "not on its terminal": ((START.moved(1, 0), *GOOD[1:]), 34.0, "end"),
    "no room for the straight": ((START, Point(229, 150), Point(229, 450), END), 34.0, "straight"),
    "by a body": ((START, Point(300, 150), Point(300, 205), Point(150, 205), Point(150, 450), END), 25.5, "body"),
    "off the board": (
        (START, Point(400, 150), Point(400, 796.5), Point(500, 796.5), Point(500, 450), END),
        34.0,
        "edge",
    ),
}


@pytest.mark.parametrize(("points", "radius", "sort"), BROKEN.values(), ids=BROKEN)
def test_each_question_of_the_sampler_can_come_out_wrong(points, radius, sort):
    assert sort in sorts(points, radius)


@pytest.mark.parametrize(("gap", "wrong"), [(7.2, True), (7.3, False)])
def test_a_body_beside_a_leg_is_kept_off_by_its_clearance(gap, wrong):
    # 3 mm from a jacket of 8.5 mm: common practice, no source
    plan = simple().with_things([unit("U3", 400 + gap, 250)])
    plan = replace(plan, cables=simple().cables)
    assert ("body" in sorts(GOOD, plan=plan)) is wrong


@pytest.mark.parametrize(("gap", "wrong"), [(4.2, True), (4.3, False)])
def test_a_no_go_box_is_kept_off_by_the_jacket(gap, wrong):
    plan = simple().with_things([NoGoBox("N1", "A", "pipe", 400 + gap, 250, 20, 20)])
    assert ("no-go" in sorts(GOOD, plan=plan)) is wrong


def test_a_channel_is_kept_off_by_cables_that_stay_outside():
    from checks.plans import channel  # noqa: PLC0415

    plan = simple().with_things([channel("RW1", (300, 300), (500, 300))])
    assert "channel" in sorts(GOOD, plan=plan)


@pytest.mark.parametrize(("left", "wrong"), [(420, True), (495, False)])
def test_where_a_cable_comes_in_over_the_edge_it_still_keeps_off_cut_outs(left, wrong):
    board = Board("A", "Cut", Box(0, 0, 1000, 800).corners(), (Box(left, 150, 600, 250).corners(),))
    plan = plan_of(unit("U1", 600, 400), board=board).with_things([Exit("X1", "A", "edge", Point(480, 0))])
    joined = replace(cable("W1", ("U1", "L"), ("U1", "L"), conductor="16", way="outside"), start=ExitEnd("X1"))
    points = (Point(480, 0), Point(480, 450), END)
    found = violations(plan, joined, Route("W1", points, 34.0))
    assert ({each.partition(":")[0] for each in found} == {"edge"}) is wrong
    board_there, plan = SlowBoard(plan, 8.5), plan.with_things([joined])
    assert (shortest_square(board_there, joined, 34.0)[1] == NEVER) is wrong


def test_a_circle_through_samples_has_the_radius_of_the_arc():
    arc = bent(GOOD, 34.0)[1]
    assert sampled_radius(arc.samples) == pytest.approx(34.0, abs=1e-6)


def test_a_way_that_crosses_itself_is_seen():
    looped = (START, Point(400, 150), Point(400, 50), Point(300, 50), Point(300, 450), END)
    assert crosses_itself(Route("W1", looped, 25.5))
    assert not crosses_itself(Route("W1", GOOD, 25.5))


def least_lengths(plan):
    conductor = plan.conductors["16"]
    return shortest_square(
        SlowBoard(plan, conductor.outside_diameter), plan.cables["W1"], 4 * conductor.outside_diameter
    )


def test_the_slow_search_agrees_on_the_plain_way():
    """One bend doesn't do; two bends of 34 mm, whose corners the lattice through both ends holds exactly."""
    least = least_lengths(simple())
    assert least[0] == least[1] == NEVER
    assert least[2] == pytest.approx(length_of(GOOD, 34.0), abs=1e-6)


def test_the_slow_search_finds_the_shortest_way_over_a_wall_known_by_hand():
    """Level ends with a wall between, 250 high; the jacket of 8.5 mm keeps 3 mm off; level lines lie 3.8 mm apart."""
    wall = replace(UNIT, id="wall", outline=Box(0, 0, 20, 250).corners(), terminals=(), holes=())
    plan = plan_of(unit("U1", 100, 100), unit("U2", 600, 100), unit("U3", 390, 0, kind="wall"), kinds=(UNIT, wall))
    plan = plan.with_things([cable("W1", ("U1", "R"), ("U2", "L"), conductor="16", way="outside")])
    over = 250 + 3 + 4.25
    hand = length_of(((190, 150), (300, 150), (300, over), (500, over), (500, 150), (610, 150)), 34.0)
    least = least_lengths(plan)
    assert least[3] == NEVER
    assert hand - 0.05 <= least[4] <= hand + 2 * 34 / 9


def test_the_slow_search_tells_the_corners_of_its_way():
    """As many bends as there is room for: each cuts a corner. 300 up hold four steps of 68, and 96 to begin with."""
    plan, conductor = simple(), simple().conductors["16"]
    points = shortest_points(SlowBoard(plan, conductor.outside_diameter), plan.cables["W1"], 34.0)
    assert (points[0], points[-1], len(points)) == (GOOD[0], GOOD[-1], 10)
    assert length_of(points, 34.0) == pytest.approx(min(least_lengths(plan)), abs=1e-5)


def test_where_the_least_way_winds_over_itself_the_slow_search_tells_one_that_does_not():
    """Ends 120 apart face each other, 40 aside: too near for an S, so that the least way is a loop round and over."""
    plan = plan_of(unit("U1", 300, 300), unit("U2", 500, 340))
    joined = cable("W1", ("U1", "R"), ("U2", "L"), conductor="16", way="outside")
    plan = plan.with_things([joined])
    board = SlowBoard(plan, plan.conductors["16"].outside_diameter)
    least, points = min(shortest_square(board, joined, 34.0)), shortest_points(board, joined, 34.0)
    assert not crosses_itself(Route("W1", tuple(points), 34.0))
    assert length_of(points, 34.0) > least + 1


MEASURED = (1, 6, 7, 9, 10, 34, 114, 183)


@pytest.mark.parametrize("seed", MEASURED)
def test_ways_are_about_as_short_as_the_slow_search_finds_with_as_many_bends(seed):
    plan, compared = random_plan(seed), 0
    for name, way in ways_of(seed).items():
        cable_there = plan.cables[name]
        if not stays_outside(plan, cable_there) or not isinstance(way, Route) or "slanting" in way.why:
            continue
        alone = way.alone or way
        board = SlowBoard(plan, plan.conductors[cable_there.conductor].outside_diameter)
        least = shortest_square(board, cable_there, alone.radius, roomy=roomy_ends(plan, cable_there, alone))
        bends = len(bent(alone.points, alone.radius)) // 2
        if least and least[min(bends, len(least) - 1)] < NEVER:
            compared += 1
            assert length_of(alone.points, alone.radius) <= 1.03 * least[min(bends, len(least) - 1)]
    assert compared


def test_a_slanted_end_keeps_its_direction_when_ways_are_laid_side_by_side():
    turned = replace(UNIT, id="turned")
    plan = plan_of(unit("U1", 100, 100, 25.0, "turned"), unit("U2", 600, 400), kinds=(UNIT, turned))
    both = [cable(name, ("U1", "R"), ("U2", "L"), conductor="16", way="outside") for name in ("W1", "W2")]
    plan = plan.with_things(both)
    for name, way in find_routes(plan).items():
        assert violations(plan, plan.cables[name], way) == []


MAPPINGS = (
    "kinds",
    "conductors",
    "fasteners",
    "boards",
    "framing",
    "back_parts",
    "no_go_boxes",
    "exits",
    "fixings",
    "components",
    "channels",
    "cables",
)


@settings(max_examples=8, deadline=None)
@given(st.sampled_from((*range(40), library_bus, honey_trailer, lookout_cabin)), st.randoms(use_true_random=False))
def test_the_order_of_no_mapping_changes_a_way_or_a_length(source, chance):
    plan = random_plan(source) if isinstance(source, int) else unpinned(source())

    def mixed(things):
        names = list(things)
        chance.shuffle(names)
        return {name: things[name] for name in names}

    other = replace(plan, **{each: mixed(getattr(plan, each)) for each in MAPPINGS})
    ways, others = find_routes(plan), find_routes(other)
    assert others == ways
    assert cut_lengths(other, others) == cut_lengths(plan, ways)
