"""Heights along a cable and what they add: by hand, against a curve stepped in space, and for any plan."""

import math
from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from checks.plans import UNIT, cable, channel, plan_of, rules, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.profile import length_in_space, profile_points
from strategies import plans

from boardplan.checks.review import refreshed, review_of
from boardplan.editing.component_edits import move_components
from boardplan.geometry.point import Point
from boardplan.model.board import Exit, Fabric
from boardplan.model.cable import ExitEnd, Lug, OffBoardEnd
from boardplan.model.conductor import AngledLug
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.heights import climbs_of, height_profile
from boardplan.routing.lengths.length_sum import explain
from boardplan.routing.lengths.passed import passables

SEVENTY = 16.0  # mm: the diameter of 70 mm² on the shelf; mouth 40, radius 64


def true(plan):
    return replace(plan, rules=rules())


def kind_of_height(z, name="unit", depth=50):
    terminals = tuple(replace(each, z=z) for each in UNIT.terminals)
    return replace(UNIT, id=name, terminals=terminals, depth=depth)


def two_units(low, high, apart, *things, pins=(), **fields):
    """A 70 mm² cable straight up from U1.T to U2.B, from stud to stud."""
    fields.setdefault("conductor", "70")
    joined = cable("W1", ("U1", "T"), ("U2", "B"), *pins, way="outside", **fields)
    kinds = (kind_of_height(low), kind_of_height(high, "other"), kind_of_height(20, "body", 45))
    upper = unit("U2", 300, 100 + 90 + apart - 10, kind="other")
    return plan_of(unit("U1", 300, 100), upper, *things, joined, kinds=kinds)


def length_of(plan, name="W1"):
    return cut_lengths(plan, find_routes(plan))[name]


def levels_of(plan, name="W1"):
    way = find_routes(plan)[name]
    found = height_profile(plan, plan.cables[name], way, passables(plan))
    return [(round(each.start, 3), round(each.end, 3), round(each.height, 3)) for each in found]


def test_a_jumper_between_studs_of_different_height_is_as_long_as_it_hangs():
    """40 up over 120 between the mouths: slant sqrt(120² + 40² - 256 x 40) = 75.895, turns of 2 atan(40 / 195.895)."""
    length = length_of(two_units(20, 60, 200))
    turn = 2 * math.atan(40 / 195.895)
    assert length.rise == pytest.approx(128 * turn + 75.895 - 120, abs=0.001)
    assert length.path == pytest.approx(200 + length.rise)
    assert [words for words, _ in length.rises] == ["up 40 from U1.T to U2.B, 120 along"]
    assert length.slack_class == "jumper"


def test_of_a_stiff_jumper_a_gentle_slope_counts_too():
    """4 up over 120 is 1 in 30: slant sqrt(120² + 16 - 1024) = 115.724, turns of 2 atan(4 / 235.724)."""
    length = length_of(two_units(20, 24, 200))
    assert length.rise == pytest.approx(128 * 2 * math.atan(4 / 235.724) + 115.724 - 120, abs=0.001)
    assert length.left_out == ""


def test_studs_of_one_height_add_nothing():
    length = length_of(two_units(30, 30, 200))
    assert (length.rise, length.rises, length.path) == (0, (), 200)


def test_a_long_cable_lies_on_its_jacket_between_its_first_clamps():
    # mouths end 40 after the studs, 125 to each first clamp; half of 16 over the board
    assert levels_of(two_units(58, 26, 500)) == [(0, 40, 58), (165, 335, 8), (460, 500, 26)]


def test_of_a_long_cable_only_the_steep_slope_counts():
    """50 over 125 is 1 in 2.5 and counts, 18 over 125 is 1 in 6.9 and doesn't."""
    length = length_of(two_units(58, 26, 500))
    slant = math.sqrt(125**2 + 50**2 - 256 * 50)
    assert length.rise == pytest.approx(128 * 2 * math.atan(50 / (125 + slant)) + slant - 125, abs=0.001)
    assert length.rise == pytest.approx(11.30, abs=0.01)
    assert len(length.rises) == 1
    assert "1 in 3" in length.left_out


@pytest.mark.parametrize(("height", "counts"), [(8 + 125 / 3 - 0.01, False), (8 + 125 / 3 + 0.01, True)])
def test_a_slope_counts_from_one_in_three(height, counts):
    # common practice, no source
    assert bool(length_of(two_units(height, 8, 500)).rises) is counts


def test_a_cable_over_a_covered_channel_lies_on_its_cover():
    over = channel("RW1", (100, 500), (900, 500))
    plan = two_units(8, 8, 600, over, pins=((350, 300), (350, 400)))
    # the channel reaches from 470 to 530, U1.T is at y = 190: 280 to 340 along; 60 high and half of 16
    # from the mouth to the channel, and from there to U2's mouth, is less than twice 125: one clamp in the middle
    assert levels_of(plan) == [(0, 40, 8), (160, 160, 8), (280, 340, 68), (450, 450, 8), (560, 600, 8)]
    # 60 up over 120 and down over 110: slants sqrt(14400 + 3600 - 15360) = 51.381, sqrt(12100 + 3600 - 15360) = 18.439
    up, down = 2 * math.atan(60 / (120 + 51.381)), 2 * math.atan(60 / (110 + 18.439))
    assert length_of(plan).rise == pytest.approx(128 * (up + down) + 51.381 + 18.439 - 230, abs=0.01)


def test_through_a_channel_without_a_cover_it_goes_through_the_slots():
    over = channel("RW1", (100, 500), (900, 500), cover=False)
    plan = two_units(8, 8, 600, over, pins=((350, 300), (350, 400)))
    assert levels_of(plan)[2] == (280, 340, 30)  # half of 60: common practice, no source
    assert length_of(plan).rises == ()  # 22 over 120 and over 110 is gentle


def test_a_pinned_way_over_a_low_body_lies_on_it():
    plan = two_units(8, 8, 600, unit("B1", 300, 440, kind="body"), pins=((350, 300), (350, 700)))
    # the body reaches from 440 to 540 and is 45 deep
    assert levels_of(plan)[2] == (250, 350, 53)


def test_two_bodies_near_each_other_are_joined_by_one_climb():
    bodies = unit("B1", 300, 340, kind="body"), unit("B2", 300, 560, kind="body")
    plan = two_units(8, 8, 600, *bodies, pins=((350, 300), (350, 700)))
    # 150 to 250 and 370 to 470: in the 120 between them there is no clamp
    assert [each[2] for each in levels_of(plan)] == [8, 53, 53, 8]


def test_in_a_channel_a_cable_lies_at_half_its_height():
    plan = plan_of(
        unit("U1", 300, 100), unit("U2", 600, 100), channel("RW1", (100, 300), (900, 300)),
        cable("W1", ("U1", "T"), ("U2", "T"), (350, 300), (650, 300), way="channel"),
    )  # fmt: skip
    levels = levels_of(plan)
    assert [each[2] for each in levels] == [20, 30, 20]
    assert levels[1][0] == 80  # from the stud at y = 190 to the wall at 270


def test_down_a_hole_a_cable_goes_to_the_boards_back():
    """Half of 16, 2 of fabric, 18 of board: 28, less what a square bend of 28 saves (0.429204 R)."""
    plan = two_units(8, 8, 500)
    board = replace(plan.boards["A"], fabric=Fabric(2.0))
    hole = Exit("X1", "A", "hole", Point(350, 400), "hole", 30.0)
    plan = plan.with_things([board, hole, replace(plan.cables["W1"], end=ExitEnd("X1"), pins=(Point(350, 300),))])
    length = length_of(plan)
    assert length.rises == (
        ("down hole hole to the back, towards hole", pytest.approx(28 * (1 - 0.429204), abs=0.001)),
    )
    over_edge = plan.with_things([replace(hole, through="edge")])
    assert length_of(over_edge).rises == ()


def test_over_an_edge_it_leaves_as_it_lies():
    plan = two_units(8, 8, 500)
    edge = Exit("X1", "A", "top edge", Point(350, 800))
    end = OffBoardEnd("X1", "far", ())
    plan = plan.with_things([edge, replace(plan.cables["W1"], end=end, pins=(Point(350, 300),))])
    assert levels_of(plan)[-1][2] == 8


ANGLED = AngledLug("90", stop=10, barrel=22, rise=15), AngledLug("45", stop=12, barrel=22, rise=9)


def with_angled(plan, form, *, measured=True):
    conductor = plan.conductors["70"]
    lug = replace(conductor.lug, angled=ANGLED if measured else ())
    joined = replace(plan.cables["W1"], start=replace(plan.cables["W1"].start, lug=Lug("M8", form)))
    plan = replace(plan, conductors={**plan.conductors, "70": replace(conductor, lug=lug)})
    return plan.with_things([joined])


def test_a_square_lug_lifts_the_cable_and_bends_it_back():
    """Up 15 to the wire stop, 22 of barrel, a quarter circle of 64 back to level: 101 over the stud at 10 + 64."""
    plan = with_angled(two_units(8, 8, 500), "90")
    assert levels_of(plan)[0] == (0, 74, 8 + 15 + 22 + 64)
    length = length_of(plan)
    lift = 22 + 64 * (math.pi / 2 - 1)  # barrel and quarter circle, less the 64 below
    down = dict(length.rises)["down 101 from U1.T to the board, 125 along"]
    assert dict(length.rises)["up the 90° lug at U1.T and back to level"] == pytest.approx(lift)
    assert length.rise == pytest.approx(lift + down)
    assert [end.deduction for end in length.ends] == [10, 18]
    assert [end.strip for end in length.ends] == [24, 24]  # barrel and 2
    assert length.final


def test_half_a_square_lug_lifts_it_less():
    """Barrel 22 under 45 degrees and an eighth of a circle of 64: b (1 - cos t) + R (t - sin t)."""
    length = length_of(with_angled(two_units(8, 8, 500), "45"))
    lift = 22 * (1 - math.sqrt(0.5)) + 64 * (math.pi / 4 - math.sqrt(0.5))
    assert dict(length.rises)["up the 45° lug at U1.T and back to level"] == pytest.approx(lift)


def test_an_angled_lug_that_nobody_measured_is_asked_for():
    length = length_of(with_angled(two_units(8, 8, 500), "90", measured=False))
    assert (length.ends[0].lug_unknown, length.ends[0].deduction, length.ends[0].strip) == (True, 0, None)
    assert (length.ends[0].tube, length.rises) == (None, ())


def counted_of(climbs, levels):
    """Say of each step from level to level whether it counts; steps of no height are none."""
    by_start = {each.before: each.counts for each in climbs}
    return [by_start.get(level, False) for level in levels]


@given(
    st.floats(8, 150),
    st.floats(8, 150),
    st.floats(150, 350),
    st.sampled_from(((), ("channel",), ("body",), ("channel", "body"))),
)
@settings(max_examples=25)
def test_the_path_is_as_long_as_a_curve_stepped_in_space(low, high, aside, between):
    """Stepped by 0.1 mm along straights, bends, slants and square climbs, with nothing of the formulas used."""
    things = [channel("RW1", (20, 600), (980, 600))] if "channel" in between else []
    things += [unit("B1", 300 + aside, 400, kind="body")] if "body" in between else []
    pins = (350, 330), (350 + aside, 330), (350 + aside, 680), (350, 680)
    plan = two_units(low, high, 800, *things, pins=pins)
    way = find_routes(plan)["W1"]
    levels = height_profile(plan, plan.cables["W1"], way, passables(plan))
    climbs = climbs_of(levels, way.radius, 3)
    tuples = [(each.start, each.end, each.height) for each in levels]
    points = profile_points(tuples, way.radius, counted_of(climbs, levels))
    assert points[-1][0] == pytest.approx(sum(piece.length for piece in way.pieces))
    assert length_of(plan).path == pytest.approx(length_in_space(way.pieces, points), abs=0.05)


@given(st.floats(8, 300), st.floats(0, 100), st.floats(130, 600))
def test_a_higher_terminal_never_shortens_a_cable(height, more, apart):
    lower, higher = (length_of(two_units(each, 8, apart)) for each in (height, height + more))
    flat = length_of(replace(two_units(height, 8, apart), rules=library_bus().rules))
    assert higher.path >= lower.path - 1e-9
    assert lower.path >= flat.path - 1e-9


@given(st.floats(0, 300), st.floats(130, 299))
def test_a_jumper_between_studs_of_one_height_is_as_long_as_a_flat_one(height, apart):
    plan = two_units(height, height, apart)
    assert length_of(plan).path == length_of(replace(plan, rules=library_bus().rules)).path


@given(st.floats(130, 600))
def test_a_cable_that_lies_all_along_is_as_long_as_a_flat_one(apart):
    plan = two_units(8, 8, apart)
    assert length_of(plan).path == length_of(replace(plan, rules=library_bus().rules)).path


@pytest.mark.parametrize("board", [library_bus, lookout_cabin, honey_trailer])
def test_true_lengths_of_the_samples_are_no_shorter_and_their_parts_add_up(board):
    flat, plan = board(), true(board())
    before, after = (cut_lengths(each, find_routes(each)) for each in (replace(flat, rules=EARLIER), plan))
    for name, length in after.items():
        assert sum(value for _, value in length.parts) == pytest.approx(length.cut, abs=1e-9)
        assert sum(value for _, value in length.rises) == pytest.approx(length.rise)
        assert all(value > 0 for _, value in length.rises)
        assert length.path == pytest.approx(before[name].path + length.rise)
        assert length.cut >= before[name].cut
        assert not any("flat" in line for line in explain(length))
        assert any("flat" in line for line in explain(before[name]))


EARLIER = library_bus().rules


@given(plans())
def test_parts_add_up_to_the_cut_in_any_plan(plan):
    plan = true(plan)
    for length in cut_lengths(plan, find_routes(plan)).values():
        if length.cut is not None:
            assert sum(value for _, value in length.parts) == pytest.approx(length.cut, abs=1e-9)
            assert length.rise >= 0


def test_a_cable_is_measured_again_when_what_it_lies_on_moves_away():
    """The cable itself is pinned and does not change."""
    plan = two_units(8, 8, 600, unit("B1", 300, 440, kind="body"), pins=((350, 300), (350, 700)))
    before = review_of(plan)
    moved = move_components(plan, ["B1"], Point(200, 0))
    after = refreshed(before, moved)
    assert before.lengths["W1"].rise > 0
    assert after.lengths["W1"].rise == 0
    assert after.lengths == review_of(moved).lengths
    assert refreshed(after, plan).lengths == before.lengths
