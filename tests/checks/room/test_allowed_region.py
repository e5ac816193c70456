"""The allowed region: the places where the checks stop nothing, no more and no fewer; held against the checks."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, plan_of
from region_scan import Scan, scanned
from shapely import Point as Spike
from shapely import box

from boardplan.checks.all_checks import CHECKS
from boardplan.checks.check import CheckBetween, CheckOnOne
from boardplan.checks.room.allowed_region import ALONE, BESIDE, allowed_region, turns_with_room
from boardplan.checks.spots import CableSpot, ComponentSpot
from boardplan.files.rule_set_file import find_rule_set
from boardplan.geometry.point import Box, Point
from boardplan.model.board import NoGoBox, Sides
from boardplan.model.component import Component
from boardplan.model.component_kind import Terminal

ANYWHERE = {"turn", "keyholes", "front access", "screws", "own studs"}
"""Checks of a component whose answer is the same wherever it lies on its board."""
ADVISED = {
    "hot units": "above-hot-unit",
    "front and no-go": "front-access",
    "covered screws": "hole-covered",
    "holes apart": "hole-to-hole",
    "finger room": "channel-finger-room",
    "cover side": "channel-cover-side",
    "nuts and framing": "nut-clear-of-framing",
}
"""Checks of a place whose limit never stops the papers, and that limit."""
BARE = replace(UNIT, holes=(), terminals=())


def test_every_check_of_a_component_is_turned_round_or_known_not_to_bar_a_place():
    rows = [each for each in CHECKS if isinstance(each, CheckOnOne | CheckBetween)]
    asked = set()
    for row in rows:
        sorts = {*row.of, *getattr(row, "near", ())}
        if ComponentSpot in sorts and CableSpot not in sorts:
            asked.add(row.name)
    assert asked == {*ALONE, *BESIDE} | ANYWHERE | set(ADVISED)


@pytest.mark.parametrize("edition", ["2026.1", "2026.2"])
@pytest.mark.parametrize("limit", ADVISED.values())
def test_what_bars_no_place_stops_no_papers(edition, limit):
    rules = find_rule_set("trade-practice", edition)
    assert rules.limits[limit].severity != "stop"


@pytest.mark.parametrize("seed", [*range(14), 15])
def test_the_region_is_what_the_checks_find_on_a_board_with_everything_on_it(seed):
    """Place by place; tests/bench/allowed_region.py does so on a hundred boards, and more finely."""
    scan = scanned(Scan(), seed, step=75.0, near=25)
    assert scan.places > 50
    assert not scan.wrong, scan.wrong[:3]


def test_an_empty_board_allows_all_but_its_margins():
    plan = plan_of(kinds=(BARE,))
    assert region_equals(allowed_region(plan, BARE, 0.0, "A"), box(20, 20, 880, 680))


def test_holes_near_the_edge_bar_more_than_the_margin():
    """The holes of the unit are 20 mm from its lower edge; 18 mm are asked, and no margin."""
    board = replace(BOARD, edge_margins=Sides(0, 0, 0, 0))
    kind = replace(UNIT, holes=(replace(UNIT.holes[0], position=Point(5, 5)),), terminals=())
    plan = plan_of(kinds=(kind,), board=board)
    assert region_equals(allowed_region(plan, kind, 0.0, "A"), box(13, 13, 900, 700))


def test_a_neighbour_bars_its_box_grown_by_the_gap_with_round_corners():
    plan = plan_of(Component("U1", "unit", "A", Point(400, 300)), kinds=(BARE,))
    region = allowed_region(plan, BARE, 0.0, "A")
    barred = box(300, 200, 500, 400).buffer(5.0, quad_segs=400)
    assert region_equals(region, box(20, 20, 880, 680).difference(barred))
    assert region_equals(allowed_region(plan, BARE, 0.0, "A", without="U1"), box(20, 20, 880, 680))


def test_opposite_studs_bar_more_than_the_gap_of_their_bodies():
    """25 mm are asked between two bare M8 studs, from thread to thread: 33 from middle to middle."""
    plus = replace(BARE, terminals=(Terminal("P", Point(100, 50), 20, "stud", "M8", 0.0, "+"),))
    minus = replace(BARE, id="minus", terminals=(Terminal("N", Point(0, 50), 20, "stud", "M8", 180.0, "-"),))
    plan = plan_of(Component("U1", "minus", "A", Point(400, 300)), kinds=(plus, minus))
    region = allowed_region(plan, plus, 0.0, "A")
    level = [region.covers(Spike(x, 300)) for x in (266.9, 267.1, 294.9)]
    aside = [region.covers(Spike(x, 334)) for x in (294.9, 295.1)]
    assert (level, aside) == ([True, False, False], [True, False])


def test_a_piece_that_just_fits_between_two_things_has_a_place():
    things = [Component("U1", "unit", "A", Point(300, 20)), Component("U2", "unit", "A", Point(510, 20))]
    board = replace(BOARD, outline=Box(0, 0, 1000, 140).corners())
    plan = plan_of(*things, kinds=(BARE,), board=board)
    region = allowed_region(plan, BARE, 0.0, "A")
    assert region.distance(Spike(405, 20)) < 1e-9
    assert (
        allowed_region(plan, replace(BARE, outline=Box(0, 0, 100.1, 100).corners()), 0.0, "A").distance(Spike(405, 20))
        > 1
    )


def test_a_turn_that_fits_is_named_and_one_not_allowed_is_not():
    board = replace(BOARD, outline=Box(0, 0, 1000, 150).corners())
    tall = replace(BARE, outline=Box(0, 0, 80, 200).corners())
    plan = plan_of(kinds=(tall,), board=board)
    assert allowed_region(plan, tall, 0.0, "A").is_empty
    assert turns_with_room(plan, tall, "A") == (90.0, 270.0)
    assert turns_with_room(plan, replace(tall, allowed_turns=(0.0, 90.0)), "A") == (90.0,)
    assert turns_with_room(plan, replace(tall, allowed_turns=(0.0,)), "A") == ()


def test_a_no_go_box_bars_only_what_is_deep_enough_to_reach_it():
    plan = plan_of(NoGoBox("N1", "A", "pipe", 0, 0, 1000, 800, from_z=60), kinds=(BARE,))
    assert not allowed_region(plan, BARE, 0.0, "A").is_empty
    assert allowed_region(plan, replace(BARE, depth=70), 0.0, "A").is_empty


def region_equals(found, expected):
    return found.symmetric_difference(expected).buffer(-0.02).is_empty
