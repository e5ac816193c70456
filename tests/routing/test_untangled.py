"""Ways that would wind round and cross themselves: a slanting one in their stead, found again after any change."""

from dataclasses import replace
from functools import cache

import pytest
from checks.plans import cable, plan_of, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from random_plans import random_plan
from way_sampler import crosses_itself, length_of, violations

from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.route import NoWay, Route


def shifted(aside):
    """Two units one above the other, studs facing over 300 mm, aside of each other; 70 mm² bends to 64 mm."""
    joined = cable("W1", ("U1", "T"), ("U2", "B"), conductor="70", way="outside")
    return plan_of(unit("U1", 300, 100), unit("U2", 300 + aside, 480), joined)


def test_two_square_bends_need_two_radii_aside():
    way = find_routes(shifted(128))["W1"]
    assert "slanting" not in way.why
    assert len(way.points) == 4


@pytest.mark.parametrize("aside", [70, 100, 127])
def test_a_little_less_aside_it_slants_straight_there(aside):
    plan = shifted(aside)
    way = find_routes(plan)["W1"]
    assert not crosses_itself(way)
    assert violations(plan, plan.cables["W1"], way) == []


WOUND = {0: "W1", 15: "W4", 25: "W6", 34: "W5", 70: "W2", 77: "W3", 106: "W2", 146: "W4", 154: "W4", 257: "W7"}
"""Random boards with a cable that wound round itself as long as ways were square wherever they could be."""


@cache
def ways_of(seed):
    return find_routes(random_plan(seed))


@pytest.mark.parametrize(("seed", "name"), WOUND.items())
def test_cables_that_wound_round_themselves_do_so_no_more(seed, name):
    plan, way = random_plan(seed), ways_of(seed)[name]
    assert isinstance(way, Route)
    assert not crosses_itself(way)
    assert violations(plan, plan.cables[name], way) == []


GOES_ROUND = {206: "W2", 291: "W3"}
"""Boards with a cable whose least square way would cross itself, without room for a slanting one."""


@pytest.mark.parametrize(("seed", "name"), GOES_ROUND.items())
def test_without_room_to_slant_it_takes_a_longer_square_way_that_goes_by(seed, name):
    plan, way = random_plan(seed), ways_of(seed)[name]
    assert isinstance(way, Route)
    assert "slanting" not in way.why
    assert not crosses_itself(way)
    assert violations(plan, plan.cables[name], way) == []


def test_where_no_way_has_room_without_crossing_itself_there_is_none():
    way = ways_of(21)["W6"]
    assert isinstance(way, NoWay)
    assert "crossing itself" in way.reason


def test_it_says_why_it_slants():
    why = ways_of(106)["W2"].why
    assert why.endswith("slanting, as square it would cross itself")


def test_that_saves_most_of_the_cable():
    """703 mm of loop, square, against the straight distance of the ends and what the bends take."""
    way = ways_of(106)["W2"]
    assert length_of(way.points, way.radius) < 250


@settings(max_examples=20)
@given(st.sampled_from(sorted(WOUND | GOES_ROUND)), st.data())
def test_ways_after_a_change_are_those_of_a_fresh_look(seed, data):
    plan, ways = random_plan(seed), ways_of(seed)
    held = plan.components[data.draw(st.sampled_from(sorted(plan.components)))]
    by = st.integers(-40, 40)
    after = plan.with_things([replace(held, position=held.position.moved(data.draw(by), data.draw(by)))])
    refreshed = refreshed_routes(plan, ways, after)
    assert refreshed == find_routes(after)
    assert all(way is ways[name] for name, way in refreshed.items() if ways[name] == way)
