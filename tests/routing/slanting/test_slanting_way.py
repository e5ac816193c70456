"""Cables that slant: where no square way has room, and stiff jumpers that are clearly shorter so."""

import math
from dataclasses import replace

import pytest
from checks.plans import cable, plan_of, unit
from routing.laid import askew_at_ends, short_legs, too_near

from boardplan.files.rule_set_file import find_rule_set
from boardplan.geometry.point import Box
from boardplan.model.board import Board
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.route import NoWay, Route
from boardplan.routing.slanting.free_way import way_length


def offset_pair(aside, gap, conductor="25"):
    """Two studs that face each other over a gap, one aside of the other; studs lie 10 mm inside their units."""
    joined = cable("W1", ("U1", "T"), ("U2", "B"), conductor=conductor, way="outside")
    return plan_of(unit("U1", 300, 100), unit("U2", 300 + aside, 200 + gap), joined)


def narrow_pair():
    """Two studs 40 mm aside of each other on a board too narrow to go round a unit."""
    board = Board("A", "Narrow", Box(0, 0, 160, 640).corners())
    joined = cable("W1", ("U1", "T"), ("U2", "B"), conductor="70", way="outside")
    return plan_of(unit("U1", 10, 100), unit("U2", 50, 390), joined, board=board)


def under(plan, edition):
    return replace(plan, rules=find_rule_set("trade-practice", edition))


def well_laid(plan):
    one, way = plan.cables["W1"], find_routes(plan)["W1"]
    assert isinstance(way, Route), way
    assert too_near(plan, one, way) == set()
    assert short_legs(plan, one, way) == []
    assert max(askew_at_ends(plan, one, way)) < 1e-6
    return way


def test_where_two_square_bends_lack_room_the_cable_slants():
    """An S of two bends of R = 64 takes 2 R = 128 aside when square; 40 mm aside only a slant has room for."""
    plan = narrow_pair()
    way = well_laid(plan)
    assert "slanting, as no square way has room" in way.why
    radius, mouth = way.radius, plan.conductors["70"].lug.mouth
    along = 190 + 20 - 2 * mouth
    # the cross tangent of two circles, closed form after Dubins (1957)
    far = math.hypot(along, 40 - 2 * radius)
    phi = math.atan2(40 - 2 * radius, along) + math.asin(2 * radius / far)
    expected = 2 * mouth + math.sqrt(far**2 - 4 * radius**2) + 2 * radius * phi
    assert way_length(way.points, radius) == pytest.approx(expected, abs=1e-6)


def test_any_change_can_matter_to_a_slanting_way():
    plan = narrow_pair()
    ways = find_routes(plan)
    after = plan.with_things([unit("U9", 40, 250)])
    assert refreshed_routes(plan, ways, after) == find_routes(after)
    assert refreshed_routes(after, find_routes(after), plan) == ways


def test_a_stiff_jumper_slants_where_that_saves_a_tenth():
    plan = offset_pair(105, 160, "16")
    square = find_routes(under(plan, "2026.1"))["W1"]
    assert "slanting" not in square.why
    slanting = well_laid(plan)
    assert "slanting, as that is" in slanting.why
    shorter = way_length(slanting.points, slanting.radius)
    assert shorter <= 0.9 * way_length(square.points, square.radius)


def test_a_slant_that_saves_less_than_the_limit_is_not_taken():
    plan = offset_pair(105, 160, "16")
    square, slanting = find_routes(under(plan, "2026.1"))["W1"], find_routes(plan)["W1"]
    saved = 100 * (1 - way_length(slanting.points, slanting.radius) / way_length(square.points, square.radius))
    for limit, slants in ((saved - 0.1, True), (saved + 0.1, False)):
        way = find_routes(with_limit(plan, limit))["W1"]
        assert ("slanting" in way.why) == slants


def with_limit(plan, value):
    limits = dict(plan.rules.limits)
    limits["jumper-slant-saves"] = replace(limits["jumper-slant-saves"], value=value)
    return replace(plan, rules=replace(plan.rules, limits=limits))


@pytest.mark.parametrize("conductor", ["wire"])
def test_a_thin_cable_stays_square(conductor):
    assert "slanting, as that is" not in find_routes(offset_pair(105, 160, conductor))["W1"].why


def test_lugs_that_take_more_than_there_is_have_no_way_at_any_angle():
    assert isinstance(find_routes(offset_pair(0, 20, "16"))["W1"], NoWay)
