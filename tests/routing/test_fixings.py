"""Cables keep off the heads of board fixings, and lie over one only where there is no other way."""

from dataclasses import replace

import pytest
from checks.plans import cable, fixing, named, plan_of, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from way_sampler import violations

from boardplan.model.board import NoGoBox
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.route import Route

PAIR = (unit("U1", 100, 300), unit("U2", 700, 300))
JOINED = cable("W1", ("U1", "R"), ("U2", "L"), way="outside")


@pytest.mark.parametrize(("y", "straight"), [(350, False), (350 + 10 + 2.9, False), (350 + 10 + 3, True)])
def test_a_cable_of_6_mm_keeps_its_jacket_off_the_square_of_20_mm(y, straight):
    plan = plan_of(*PAIR, JOINED, fixing("BF1", 500, y))
    way = find_routes(plan)["W1"]
    assert (len(way.points) == 2) is straight
    assert violations(plan, JOINED, way) == []
    assert named(plan, "fixing-under-cable") == []


def walled():
    """A passage 40 high between two no-go boxes, a fixing in the middle of it: 10 beside its square on each side."""
    boxes = [NoGoBox("N1", "A", "duct", 400, 370, 100, 430), NoGoBox("N2", "A", "duct", 400, 0, 100, 330)]
    return plan_of(
        *PAIR, cable("W1", ("U1", "R"), ("U2", "L"), conductor="35", way="outside"), *boxes, fixing("BF1", 450, 350)
    )


def test_where_there_is_no_other_way_it_lies_over_one_and_says_so():
    plan = walled()
    way = find_routes(plan)["W1"]
    assert isinstance(way, Route)
    assert way.why.endswith("over a board fixing as it finds no other way")
    assert [each.things for each in named(plan, "fixing-under-cable")] == [("BF1", "W1")]


def test_it_goes_back_beside_the_fixing_once_there_is_room():
    plan = walled()
    after = plan.with_things([fixing("BF1", 450, 500)])
    ways = refreshed_routes(plan, find_routes(plan), after)
    assert ways == find_routes(after)
    assert "fixing" not in ways["W1"].why


@settings(max_examples=40)
@given(st.lists(st.tuples(st.integers(220, 680), st.integers(200, 500)), min_size=1, max_size=6), st.integers(-40, 40))
def test_ways_among_fixings_keep_off_them_and_are_found_again_after_a_change(places, by):
    fixings = [fixing(f"BF{number}", *place) for number, place in enumerate(places)]
    plan = plan_of(*PAIR, JOINED, cable("W2", ("U1", "T"), ("U2", "B"), way="outside"), *fixings)
    ways = find_routes(plan)
    for name, way in ways.items():
        assert isinstance(way, Route)
        assert violations(plan, plan.cables[name], way) == []
    moved = replace(fixings[0], position=fixings[0].position.moved(by, by))
    after = plan.with_things([moved])
    assert refreshed_routes(plan, ways, after) == find_routes(after)
