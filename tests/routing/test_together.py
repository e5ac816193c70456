"""Cables laid together: crossings counted by shapely, distances by hand, ways against those a person made."""

from dataclasses import replace
from functools import cache

import pytest
from boards import library_bus, lookout_cabin
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.laid import bodies, owners, sampled, unpinned
from shapely.geometry import LineString, Polygon

from boardplan.geometry.bends import straight_length
from boardplan.model.cable import TerminalEnd
from boardplan.model.placed import placed
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.route import Route
from boardplan.routing.together.crossings import crossings_of
from boardplan.routing.together.laid_legs import LaidLegs, Leg, Lies
from boardplan.routing.together.lane_price import CROSSING, LanePrice, Neighbour
from boardplan.routing.together.lying_order import Apart, Who, apart_of, lying_order

BOARDS = (library_bus, lookout_cabin)
MM = 1000
EARLIER, SELF, LATER = (Who(name, rank, "", frozenset(), frozenset()) for rank, name in enumerate(("W1", "W2", "W3")))
NOT_APART = Apart(0, 0, 0)


@cache
def ways_of(board, *, pinned):
    return find_routes(board() if pinned else unpinned(board()))


@pytest.mark.parametrize(("board", "name"), [(board, name) for board in BOARDS for name in board().cables])
def test_a_found_way_is_at_most_a_hundredth_longer_than_a_person_made_it(board, name):
    """No cable of the two boards needs an exception; lengths as the cable lies, with its bends."""
    found, made = (ways_of(board, pinned=pinned)[name] for pinned in (False, True))
    assert isinstance(found, Route)
    lengths = [sum(piece.length for piece in way.pieces) for way in (found, made)]
    assert lengths[0] <= lengths[1] * 1.01


@pytest.mark.parametrize("by", [(60, 0), (-60, 0), (0, 60), (0, -60)])
def test_moving_a_fuse_block_changes_only_cables_that_end_on_it_or_that_it_blocks(by):
    plan = unpinned(library_bus())
    held = plan.components["FT1"]
    after = plan.with_things([replace(held, position=held.position.moved(*by))])
    ways = find_routes(plan)
    outline = Polygon([after.on_wall(held.board, at) for at in placed(after, after.components["FT1"]).outline])
    clearance = plan.rules.value("cable-to-body")
    touched = set()
    for name, cable in plan.cables.items():
        if isinstance(ways[name], Route):
            line = LineString([at for run in sampled(ways[name]) for at in run])
            half = plan.conductors[cable.conductor].outside_diameter / 2
            if "FT1" in owners(cable) or outline.distance(line) < half + clearance:
                touched.add(name)
    now = refreshed_routes(plan, ways, after)
    assert {
        name for name, way in now.items() if getattr(way, "points", way) != getattr(ways[name], "points", 0)
    } <= touched


def leg(axis, line, start, end, half=5):
    return Leg(axis, line * MM, start * MM, end * MM, half * MM)


def lies(each, who=EARLIER):
    return Lies(each, who, fixed=False, before=True, after=True)


legs = st.builds(
    lambda axis, line, start, length: leg(axis, line, start, start + length),
    st.integers(0, 1),
    st.integers(-150, 250).map(lambda at: 2 * at + 1),
    st.integers(-60, 60).map(lambda at: 5 * at),
    st.integers(1, 60).map(lambda at: 5 * at),
)


@settings(max_examples=60)
@given(st.lists(legs, max_size=8), st.sampled_from(range(-80, 81, 5)))
def test_a_place_costs_a_crossing_for_each_line_that_shapely_finds_crossed(others, by):
    """The corners are (0, -100), (0, by), (200, by), (200, 300): all crossings but those farther than is looked."""
    price = LanePrice(
        leg(0, 0, 0, 200), SELF, [Neighbour(0, -100 * MM), Neighbour(200 * MM, 300 * MM)], 3 * MM, NOT_APART
    )
    others = [each for each in others if each.axis == 1 or abs(each.line) < 40 * MM]
    price.take(lies(each) for each in others)
    crossed = 0
    for each in others:
        ends = [(at, each.line) if each.axis == 0 else (each.line, at) for at in (each.start, each.end)]
        line = LineString(ends)
        parts = [((0, -100), (0, by)), ((0, by), (200, by)), ((200, by), (200, 300))]
        for a, b in parts:
            part = LineString([(a[0] * MM, a[1] * MM), (b[0] * MM, b[1] * MM)])
            along = (0 if a[1] == b[1] else 1) == each.axis
            crossed += not along and line.crosses(part)
    under = [each for each in others if each.axis == 1 and min(abs(each.line), abs(each.line - 200 * MM)) < 13 * MM]
    if not under:
        assert price.at(by * MM) == crossed * CROSSING


def test_a_crossing_in_a_bend_costs_more_than_one_beside_it():
    bent = Leg(1, 50 * MM, -100 * MM, 40 * MM, 5 * MM, (0, 30 * MM))
    price = LanePrice(leg(0, 0, 0, 200), SELF, [], 3 * MM, NOT_APART)
    price.take([lies(bent)])
    assert price.at(0) == CROSSING
    assert price.at(20 * MM) > CROSSING
    assert price.at(45 * MM) == 0


@pytest.mark.parametrize(("sorts", "gap"), [(("ac", ""), 50), (("signal", "thick"), 40), (("signal", ""), 0)])
def test_what_is_to_be_kept_apart_costs_until_it_is_so_far_apart(sorts, gap):
    """Jackets: two halves of 5 mm, so centre lines lie 10 mm farther apart than the gap."""
    own, other = (replace(who, sort=sort) for who, sort in zip((SELF, EARLIER), sorts, strict=True))
    price = LanePrice(leg(0, 0, 0, 200), own, [], 3 * MM, Apart(50 * MM, 40 * MM, 100 * MM))
    price.take([lies(leg(0, -20, 0, 200), other)])
    free = [by for by in range(0, 81, 5) if price.at(by * MM) == 0]
    assert free == list(range(max(0, gap + 10 - 20), 81, 5))


def test_short_stretches_and_cables_of_one_unit_need_not_be_apart():
    one, other = replace(SELF, sort="ac", units=frozenset({"INV1"})), replace(EARLIER, units=frozenset({"INV1"}))
    for own, beside, length in ((one, other, 200), (one, EARLIER, 100)):
        price = LanePrice(leg(0, 0, 0, 200), own, [], 3 * MM, Apart(50 * MM, 40 * MM, 100 * MM))
        price.take([lies(leg(0, -20, 0, length), beside)])
        assert price.at(0) == 0


def test_cables_that_belong_together_cost_what_lies_between_them():
    own = replace(SELF, with_others=frozenset({"W1"}))
    price = LanePrice(leg(0, 0, 0, 200), own, [], 3 * MM, NOT_APART)
    price.take([lies(leg(0, 30, 0, 200))])
    assert [price.at(by * MM) // MM for by in (0, 10, 15)] == [40, 20, 10]
    assert price.taken(20 * MM)
    assert not price.taken(15 * MM)


def test_no_leg_lies_on_or_nearer_to_one_laid_than_cables_lie():
    price = LanePrice(leg(0, 0, 0, 200), SELF, [], 3 * MM, NOT_APART)
    price.take([lies(leg(0, 0, 100, 300)), lies(leg(0, 40, 100, 300), LATER)])
    assert [by for by in range(-20, 60) if price.taken(by * MM)] == list(range(-12, 13))


def test_a_cable_sees_those_laid_before_as_they_lie_and_others_as_they_are_expected():
    wall = LaidLegs()
    shown = [
        Lies(leg(0, line, 0, 500), who, fixed=False, before=before, after=not before)
        for line, who, before in ((0, EARLIER, True), (20, EARLIER, False), (40, LATER, True), (60, LATER, False))
    ]
    wall.add(shown)
    found = list(wall.near((100 * MM, -100 * MM, 450 * MM, 100 * MM), SELF.rank))
    assert [each.leg.line // MM for each in found] == [20, 40]


def test_plus_and_minus_between_two_units_are_laid_one_after_the_other():
    plan = unpinned(library_bus())
    order = [each.id for each in lying_order(plan)]
    pairs = [(each.id, other) for each in lying_order(plan) for other in each.with_others]
    assert pairs
    poles = {"+", "-"}
    for one, other in pairs:
        cables = plan.cables[one], plan.cables[other]
        same_group = cables[0].group and cables[0].group == cables[1].group
        ends = [sorted(owners(each)) for each in cables]
        assert same_group or ends[0] == ends[1]
        assert same_group or [_poles(plan, each) & poles for each in cables] in ([{"+"}, {"-"}], [{"-"}, {"+"}])
    thickness = [plan.conductors[plan.cables[name].conductor].outside_diameter for name in order]
    assert thickness == sorted(thickness, reverse=True)
    shuffled = replace(plan, cables=dict(reversed(plan.cables.items())))
    assert [each.id for each in lying_order(shuffled)] == order


def _poles(plan, cable):
    kinds = [
        (plan.kind_of(plan.components[end.component]), end.terminal)
        for end in cable.ends
        if isinstance(end, TerminalEnd)
    ]
    return {each.pole for kind, terminal in kinds for each in kind.terminals if each.id == terminal}


def test_cables_that_part_to_the_same_side_lie_so_that_they_do_not_cross():
    """W21 and W22 leave PB1 upwards and both go right on one level: who goes less far lies above."""
    plan, ways = unpinned(lookout_cabin()), ways_of(lookout_cabin, pinned=False)
    assert ways["W21"].alone.points[1].y == ways["W22"].alone.points[1].y
    assert not [each for each in crossings_of(plan, ways) if each.cables == ("W21", "W22")]


@pytest.mark.parametrize("board", BOARDS)
def test_moving_apart_leaves_bodies_and_lengths_alone(board):
    plan = unpinned(board())
    for way in ways_of(board, pinned=False).values():
        if way.alone is not None and way.alone.points != way.points:
            assert straight_length(way.points) <= straight_length(way.alone.points) + 2 * 80
            assert way.points[0] == way.alone.points[0]
            assert way.points[-1] == way.alone.points[-1]
            line = LineString([at for run in sampled(way)[2:-2] for at in run])
            assert all(body.distance(line) > 0 for body in bodies(plan).values())


def test_the_rule_set_says_how_far_apart():
    """50 mm: Hong Kong code of practice for AC, NEC 725.136(I) (2 in) for signal leads, as the rule set names them."""
    assert apart_of(library_bus()) == Apart(50 * MM, 50 * MM, 100 * MM)
