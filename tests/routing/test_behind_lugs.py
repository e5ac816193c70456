"""The straight behind a lug before the first bend: kept where there is room, given up where there is no other way."""

from dataclasses import replace

import pytest
from checks.plans import WIRE, cable, named, plan_of, unit
from hypothesis import given
from hypothesis import strategies as st
from way_sampler import is_roomy, violations

from boardplan.files.rule_set_file import find_rule_set
from boardplan.routing.find_route import find_routes

ASKED = 20.0
"""mm behind the lug; common practice, no source."""
MOUTH = WIRE.lug.stop + WIRE.lug.barrel
LEAST, PREFERRED = 3 * WIRE.outside_diameter, 4 * WIRE.outside_diameter
ROOMY = 2 * (MOUTH + ASKED + LEAST)
"""How far one stud must be above another, aside of it, for a level leg between."""


def one_above_the_other(apart):
    joined = cable("W1", ("U1", "T"), ("U2", "B"), way="outside")
    return plan_of(unit("U1", 300, 100), unit("U2", 600, 180 + apart), joined)


@pytest.mark.parametrize(("apart", "has_room"), [(ROOMY, True), (ROOMY - 2, False)])
def test_a_bend_begins_so_far_behind_the_lug_that_a_hand_can_keep_the_straight(apart, has_room):
    plan = one_above_the_other(apart)
    way = find_routes(plan)["W1"]
    assert is_roomy(plan, plan.cables["W1"], way) is has_room
    assert bool(named(plan, "bend-at-lug")) is not has_room
    assert violations(plan, plan.cables["W1"], way) == []


def test_without_room_for_it_bends_stay_as_few_and_as_wide_as_preferred():
    way = find_routes(one_above_the_other(ROOMY - 2))["W1"]
    assert (way.radius, len(way.points)) == (PREFERRED, 4)


def test_an_edition_that_does_not_ask_for_it_leaves_the_lug_s_mouth_alone():
    plan = one_above_the_other(ROOMY)
    earlier = find_rule_set("trade-practice", "2026.1")
    first, second, *_ = find_routes(replace(plan, rules=earlier))["W1"].points
    assert first.distance_to(second) < MOUTH + ASKED + LEAST


@given(st.floats(0, 60), st.integers(-250, 250))
def test_with_room_both_ends_have_their_straight(more, aside):
    joined = cable("W1", ("U1", "T"), ("U2", "B"), way="outside")
    plan = plan_of(unit("U1", 400, 100), unit("U2", 400 + aside, 180 + ROOMY + more), joined)
    way = find_routes(plan)["W1"]
    if abs(aside) >= 2 * PREFERRED:
        assert is_roomy(plan, plan.cables["W1"], way)
    assert violations(plan, plan.cables["W1"], way) == []
