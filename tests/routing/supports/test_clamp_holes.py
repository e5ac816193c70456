"""Holes for clamp screws: names that stay, depth inside the board, and distances by plane geometry."""

from dataclasses import replace
from itertools import combinations
from math import dist

import pytest
from boards import library_bus, lookout_cabin
from checks.plans import BOARD, UNIT, cable, plan_of, rules, unit
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point as Spike
from shapely.geometry import Polygon

from boardplan.checks.review import refreshed, review_of
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box
from boardplan.model.board import BackPart
from boardplan.model.holes import holes_of
from boardplan.routing.find_route import find_routes
from boardplan.routing.supports.clamp_holes import clamp_holes
from boardplan.routing.supports.clamps import clamps_of

WIDE = replace(BOARD, outline=Box(0, 0, 2000, 800).corners())
SCREW = bundled_shelf().fasteners["#8x16 washer"]
NUTTED = replace(UNIT, id="nutted", fastener="nut")
ENDS = unit("U1", 100, 300), unit("U2", 1180, 300)
W1 = cable("W1", ("U1", "R"), ("U2", "L"), (190, 350), (1190, 350))
W2 = cable("W2", ("U1", "R"), ("U2", "L"), (190, 450), (1190, 450))


def with_screw(plan):
    return replace(plan, rules=rules(), fasteners={**plan.fasteners, SCREW.id: SCREW})


def drilled(plan):
    return clamp_holes(plan, review_of(plan).clamps)


def test_each_screw_has_the_name_of_its_cable_and_its_number_along_it():
    found = drilled(with_screw(plan_of(*ENDS, W1, board=WIDE)))
    assert [each.id for each in found] == [f"W1-C{n}" for n in range(1, len(found) + 1)]
    assert [each.position.x for each in found] == sorted(each.position.x for each in found)
    # 18 mm board, 3 left under a pilot hole: common practice, no source; the bit is the shelf's for #8
    assert {(each.bit, each.depth, each.sort, each.fastener, each.owner) for each in found} == {
        (2.8, 15, "pilot", "#8x16 washer", "W1")
    }


def test_a_change_of_another_cable_renames_none():
    plan = with_screw(plan_of(*ENDS, W1, W2, board=WIDE))
    names = {each.id: each.position for each in drilled(plan) if each.owner == "W2"}
    assert names
    again = drilled(plan.without(["W1"]))
    assert {each.id: each.position for each in again} == names


def test_two_screws_of_a_shared_clamp():
    beside = replace(W2, pins=tuple(pin.moved(0, -88) for pin in W2.pins))
    names = [each.id for each in drilled(with_screw(plan_of(*ENDS, W1, beside, board=WIDE)))]
    assert names[:2] == ["W1-C1a", "W1-C1b"]


@pytest.mark.parametrize(
    ("thickness", "known"),
    [(18, True), (17.9, False)],  # 16 mm long, 2 in front of the point: common practice, no source
)
def test_no_hole_for_a_screw_that_would_come_through(thickness, known):
    assert bool(drilled(with_screw(plan_of(*ENDS, W1, board=replace(WIDE, thickness=thickness))))) is known


def test_no_hole_where_the_job_lists_no_such_screw_or_the_edition_names_none():
    assert drilled(plan_of(*ENDS, W1, board=WIDE)) == ()
    assert drilled(library_bus()) == ()


def assert_apart(plan, holes):
    """Check by plane geometry what the rules ask of holes: 3 times the larger, 5 mm to nuts and parts behind."""
    nuts = [
        (each.position, (plan.fasteners[each.fastener].flange_diameter or 0) / 2)
        for each in holes_of(plan)
        if each.sort == "t-nut"
    ]
    for hole in holes:
        for other in holes_of(plan):
            if other.board == hole.board:
                apart = dist(hole.position, other.position)
                assert apart >= 3 * max(hole.bit, other.bit or 0) - 1e-6, (hole.id, other.id)
        assert all(dist(hole.position, at) >= flange + 5 + hole.bit / 2 - 1e-6 for at, flange in nuts)
        for part in plan.back_parts.values():
            if part.board == hole.board:
                assert Polygon(part.outline).distance(Spike(hole.position)) >= 5 + hole.bit / 2 - 1e-6
        board = plan.boards[hole.board]
        assert Polygon(board.outline).exterior.distance(Spike(hole.position)) >= 18 - 1e-6
    for a, b in combinations(holes, 2):
        assert a.board != b.board or dist(a.position, b.position) >= 3 * a.bit - 1e-6


@pytest.mark.parametrize("sample", [library_bus, lookout_cabin])
def test_distances_on_the_samples_under_the_later_edition(sample):
    plan = with_screw(sample())
    holes = clamp_holes(plan, clamps_of(plan, find_routes(plan)))
    assert holes
    assert_apart(plan, holes)


PLACES = st.lists(st.tuples(st.integers(200, 1080), st.sampled_from((190, 225, 240, 300, 360, 380))), max_size=5)


@given(PLACES, st.integers(200, 1000), st.integers(300, 400))
def test_distances_whatever_stands_beside(corners, left, bottom):
    bodies = [unit(f"B{n}", *at, kind="nutted") for n, at in enumerate(corners)]
    behind = BackPart("P", "A", "cleat", Box(left, bottom, left + 60, bottom + 30).corners())
    plan = with_screw(plan_of(*ENDS, W1, behind, *bodies, kinds=(UNIT, NUTTED), board=WIDE))
    assert_apart(plan, drilled(plan))


def test_a_screw_that_comes_into_the_job_asks_again():
    plan = plan_of(*ENDS, W1, board=WIDE)
    later = with_screw(plan)
    again = refreshed(review_of(plan), later)
    assert clamp_holes(later, again.clamps) == drilled(later) != ()
