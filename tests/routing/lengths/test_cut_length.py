"""Cut lengths against two boards reckoned by hand, and against elementary geometry."""

import json
import math
from dataclasses import replace
from pathlib import Path

import pytest
from boards import library_bus, lookout_cabin
from checks.plans import cable, plan_of, unit

from boardplan.editing.component_edits import move_components
from boardplan.geometry.bends import corner_saving
from boardplan.geometry.point import Point
from boardplan.model.board import Exit
from boardplan.model.cable import ExitEnd, Leg, Lug, OffBoardEnd
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths, rounded_up
from boardplan.routing.lengths.evening import Shift
from boardplan.routing.lengths.length_sum import explain
from boardplan.routing.route import NoWay, Route

EXPECTED = json.loads((Path(__file__).parent / "expected_cables.json").read_text(encoding="utf-8"))
PLANS = {"library-bus": library_bus, "lookout-cabin": lookout_cabin}
ROWS = [(board, cable) for board in PLANS for cable in EXPECTED[board]]


def lengths_of(plan):
    return cut_lengths(plan, find_routes(plan))


@pytest.mark.parametrize(("board", "cable"), ROWS)
def test_every_cable_of_the_worked_boards_is_as_long_as_reckoned_by_hand(board, cable):
    # our own worked example
    length, expected = lengths_of(PLANS[board]())[cable], EXPECTED[board][cable]
    assert length.path == pytest.approx(expected["path"], abs=0.0501)
    assert length.net == pytest.approx(expected["net"], abs=0.0501)
    assert length.slack == pytest.approx(expected["slack"], abs=0.0501)
    assert length.cut == expected["cut"]


@pytest.mark.parametrize("board", PLANS)
def test_parts_add_up_to_the_cut(board):
    for length in lengths_of(PLANS[board]()).values():
        assert sum(value for _, value in length.parts) == pytest.approx(length.cut, abs=1e-9)
        assert sum(length.legs) - sum(each.saving for each in length.bends) + length.off_board == pytest.approx(
            length.path
        )


@pytest.mark.parametrize(
    ("turn", "share"),
    # (2 - pi/2) R for a square corner, 2R tan(t/2) - R t for others: elementary geometry of a fillet
    [(90, 0.429204), (60, 0.107503), (45, 0.043029), (30, 0.012300)],
)
def test_corner_savings_are_those_of_a_fillet(turn, share):
    assert corner_saving(100, turn) == pytest.approx(100 * share, abs=1e-4)
    assert corner_saving(25, 90) == pytest.approx(2 * 25 - 39.2699, abs=1e-4)  # arc of 90 degrees, R 25: R times angle


def test_the_path_of_three_legs_with_two_square_bends(bus_plan):
    # 300 + 200 + 150 mm with R 40: 650 - 2 x 0.429204 x 40, elementary geometry
    way = Route("W20", (Point(0, 0), Point(300, 0), Point(300, 200), Point(450, 200)), 40.0)
    plan = bus_plan.with_things([replace(bus_plan.cables["W20"], end=OffBoardEnd("X3", "far", ()))])
    assert cut_lengths(plan, {**find_routes(plan), "W20": way})["W20"].path == pytest.approx(615.6637, abs=1e-4)


@pytest.mark.parametrize(
    ("length", "step", "up"),
    [(405.5, 5, 410), (100.0000001, 5, 100), (99.9999999, 5, 100), (100.001, 5, 105), (0.0, 5, 0), (1500, 50, 1500)],
)
def test_rounding_up_takes_no_notice_of_float_noise(length, step, up):
    assert rounded_up(length, step) == up


def test_a_lug_shortens_a_wire_only_at_a_stud_on_the_board(bus_plan):
    lengths = lengths_of(bus_plan)
    assert [end.deduction for end in lengths["W01"].ends] == [0.0, 18.0]
    assert [end.raw for end in lengths["W01"].ends] == [True, False]
    assert [end.ferrule for end in lengths["W08"].ends] == [True, False]
    assert [end.lug for end in lengths["W07"].ends] == ["70 mm² x M10 straight", "70 mm² x M8 straight"]


def test_slack_classes_follow_the_conditions_of_the_rule_set(bus_plan):
    lengths = lengths_of(bus_plan)
    wanted = {"W02": "jumper", "W07": "large", "W08": "small", "W11": "small", "W14": "off-board", "W40": "signal"}
    assert {name: lengths[name].slack_class for name in wanted} == wanted


def test_a_cable_may_name_its_slack_class(bus_plan):
    plan = bus_plan.with_things([replace(bus_plan.cables["W02"], slack="small")])
    assert lengths_of(plan)["W02"].cut == 150  # 100 net and 50 slack


def test_an_estimated_leg_leaves_the_length_open(bus_plan):
    lengths = lengths_of(bus_plan)
    assert (lengths["W32"].trust, lengths["W32"].final) == ("estimated", False)
    assert (lengths["W01"].trust, lengths["W01"].final) == ("customer", True)
    assert "not final" in explain(lengths["W32"])


def test_the_longest_of_a_matched_group_governs_and_a_large_surplus_is_named(cabin_plan):
    short = lengths_of(cabin_plan)["W21"]
    assert (short.own_cut, short.cut, short.surplus) == (540, 870, 330)
    assert short.surplus_percent == pytest.approx(37.9, abs=0.05)
    assert any("bow" in note for note in short.notes)


def test_a_group_with_a_member_without_a_way_is_not_settled(cabin_plan):
    ways = find_routes(cabin_plan) | {"W22": NoWay("W22", "a wall", Point(0, 0))}
    lengths = cut_lengths(cabin_plan, ways)
    assert (lengths["W22"].cut, lengths["W22"].reason) == (None, "a wall")
    assert (lengths["W21"].cut, lengths["W21"].final) == (540, False)
    assert explain(lengths["W22"]) == ("W22 has no length: a wall",)


def test_a_lead_longer_than_any_in_stock_has_no_cut(bus_plan):
    conductor = replace(bus_plan.conductors["signal"], stock_lengths=(300, 500))
    plan = replace(bus_plan, conductors={**bus_plan.conductors, "signal": conductor})
    lengths = lengths_of(plan)
    assert (lengths["W40"].cut, lengths["W41"].cut) == (300, None)
    assert any("no stock lead" in note for note in lengths["W41"].notes)


def test_mass_counts_every_piece(bus_plan):
    looms = lengths_of(bus_plan)["W20"]
    assert looms.mass == pytest.approx(10 * 2.9 * 0.035)


def test_longer_off_board_legs_never_shorten_a_cut(bus_plan):
    cable, cuts = bus_plan.cables["W14"], []
    for more in range(0, 500, 7):
        end = OffBoardEnd("X3", "far", (Leg(1000.0 + more, "measured"),))
        cuts.append(lengths_of(bus_plan.with_things([replace(cable, end=end)]))["W14"].cut)
    assert cuts == sorted(cuts)
    assert all(math.isclose(cut % 50, 0) for cut in cuts)


def with_trust(plan, name, trust):
    end = plan.cables[name].start
    return plan.with_things([replace(plan.cables[name], start=replace(end, legs=(Leg(1000.0, trust),)))])


def test_an_estimated_member_keeps_the_whole_group_open(bus_plan):
    """Once it is measured it may be the longest, and then all others are too short."""
    plan = bus_plan.with_things([replace(bus_plan.cables[name], group="B") for name in ("W01", "W05")])
    assert [lengths_of(plan)[name].final for name in ("W01", "W05")] == [True, True]
    lengths = lengths_of(with_trust(plan, "W01", "estimated"))
    assert [lengths[name].final for name in ("W01", "W05")] == [False, False]
    assert lengths["W05"].notes[0] == "matched group B is not settled: W01 is not final"
    assert "estimated" in lengths["W01"].notes[0]


def test_a_matched_group_has_a_tolerance_that_keeps_it_alike(bus_plan):
    # Within 2 mm, or 0.5 % of a cut over a metre: common practice, no source.
    plan = bus_plan.with_things([replace(bus_plan.cables[name], group="B") for name in ("W01", "W05")])
    lengths = lengths_of(plan)
    assert [(lengths[name].plus, lengths[name].minus) for name in ("W01", "W05")] == [(7.75, 0), (7.75, 0)]
    pair = bus_plan.with_things([replace(bus_plan.cables[name], group="J") for name in ("W02", "W06")])
    assert [(each.plus, each.minus) for each in map(lengths_of(pair).get, ("W02", "W06"))] == [(2, 0), (2, 0)]
    alone = bus_plan.with_things([replace(bus_plan.cables["W02"], group="J")])
    assert (lengths_of(alone)["W02"].plus, lengths_of(alone)["W02"].minus) == (2, 2)


def test_a_lead_that_no_shop_sells_is_not_final(bus_plan):
    conductor = replace(bus_plan.conductors["signal"], stock_lengths=(300,))
    plan = replace(bus_plan, conductors={**bus_plan.conductors, "signal": conductor})
    assert [lengths_of(plan)[name].final for name in ("W40", "W41")] == [True, False]


def test_a_way_whose_bends_overlap_has_no_length(bus_plan):
    """A way that doubles back would save more at its corners than its legs are long."""
    cable = bus_plan.cables["W02"]
    first = lengths_of(bus_plan)["W02"]
    assert first.path == 136
    doubled = lengths_of(bus_plan.with_things([replace(cable, pins=(Point(180, 150), Point(182, 20)))]))["W02"]
    assert (doubled.path, doubled.cut, doubled.final) == (None, None, False)
    assert "bends" in doubled.reason


def test_lugs_longer_than_the_way_leave_no_length(bus_plan):
    ways = find_routes(bus_plan) | {"W02": Route("W02", (Point(0, 0), Point(36, 0)), 64.0)}
    length = cut_lengths(bus_plan, ways)["W02"]
    assert (length.cut, length.final, length.reason) == (None, False, "its lugs take more than its way is long")


def test_nothing_is_taken_off_for_an_angled_lug(bus_plan):
    """It is not the straight lug that was measured: better too long than too short."""
    cable = bus_plan.cables["W07"]
    angled = replace(cable, end=replace(cable.end, lug=Lug("M8", "90")))
    length = lengths_of(bus_plan.with_things([angled]))["W07"]
    assert [end.deduction for end in length.ends] == [18, 0]
    assert any("INV1.DC- is not measured" in note for note in length.notes)


@pytest.mark.parametrize(("across", "slack_class"), [(299.9, "jumper"), (300.0, "large"), (300.1, "large")])
def test_a_short_jumper_ends_where_the_rule_set_says(bus_plan, across, slack_class):
    ways = find_routes(bus_plan) | {"W02": Route("W02", (Point(0.1, 0.2), Point(0.1 + across, 0.2)), 64.0)}
    assert cut_lengths(bus_plan, ways)["W02"].slack_class == slack_class


def test_a_cable_that_ends_at_an_exit_says_so(bus_plan):
    plan = bus_plan.with_things([replace(bus_plan.cables["W01"], start=ExitEnd("X1"))])
    assert lengths_of(plan)["W01"].notes == ("ends at left edge, battery +: nothing is added beyond it",)


def test_bought_leads_of_a_group_match_bought_leads(bus_plan):
    alike = [replace(bus_plan.cables[name], group="G") for name in ("W08", "W40", "W41")]
    lengths = lengths_of(bus_plan.with_things(alike))
    assert lengths["W40"].cut == lengths["W41"].cut == 1500  # the longer lead's stock length
    assert lengths["W08"].cut == lengths["W08"].own_cut == 850


def between(left, right):
    """A unit with one cable to its left and one to its right, of one group; the gaps are from unit to unit."""
    units = unit("U1", 400, 300), unit("U2", 300 - left, 300), unit("U3", 500 + right, 300)
    cables = cable("W1", ("U1", "L"), ("U2", "R"), group="G"), cable("W2", ("U1", "R"), ("U3", "L"), group="G")
    return plan_of(*units, *cables)


def test_a_large_surplus_says_which_unit_to_move_and_that_evens_the_group():
    plan = between(100, 300)
    lengths = lengths_of(plan)
    # 320 and 120 from clamp to clamp; both get 50 of slack: 370 and 170
    assert (lengths["W1"].own_cut, lengths["W2"].own_cut, lengths["W1"].surplus) == (170, 370, 200)
    assert lengths["W1"].evened_by == Shift("U1", 100, "to the right", ("W1", "W2"))
    assert lengths["W1"].notes[-1].endswith("moving U1 about 100 mm to the right would even W1 and W2")
    moved = lengths_of(move_components(plan, ["U1"], Point(100, 0)))
    assert moved["W1"].own_cut == moved["W2"].own_cut == 270
    assert moved["W1"].evened_by is None


def test_where_no_unit_is_shared_the_far_one_of_the_longer_cable_moves_by_all_of_it():
    units = [unit(f"U{n}", x, y) for n, x, y in ((1, 100, 100), (2, 300, 100), (3, 100, 400), (4, 700, 400))]
    cables = cable("W1", ("U1", "R"), ("U2", "L"), group="G"), cable("W2", ("U3", "R"), ("U4", "L"), group="G")
    plan = plan_of(*units, *cables)
    assert lengths_of(plan)["W1"].evened_by == Shift("U4", 400, "to the left", ("W1", "W2"))
    moved = lengths_of(move_components(plan, ["U4"], Point(-400, 0)))
    assert moved["W1"].own_cut == moved["W2"].own_cut


def test_where_a_move_does_the_same_to_both_none_is_named():
    """What brings the shared unit nearer to one far end brings it nearer to the other too."""
    units = unit("U1", 100, 100), unit("U2", 300, 300)
    exit_far = Exit("X1", "A", "top edge", Point(900, 800))
    short = cable("W1", ("U1", "R"), ("U2", "L"), group="G")
    far = replace(short, id="W2", end=OffBoardEnd("X1", "far", ()))
    lengths = lengths_of(plan_of(*units, exit_far, short, far))
    assert lengths["W1"].surplus_percent > 25
    assert lengths["W1"].evened_by is None
    assert any("move or turn what it connects" in note for note in lengths["W1"].notes)


@pytest.mark.parametrize(
    ("conductor", "tube"),
    # barrel + 25 over the jacket, and a tenth more: common practice, no source. 70: (22 + 25) x 1.1 = 51.7
    [("70", 52), ("16", 44), ("120", 59)],
)
def test_a_tube_covers_the_barrel_and_some_jacket(conductor, tube):
    plan = plan_of(
        unit("U1", 100, 100), unit("U2", 100, 500), cable("W1", ("U1", "T"), ("U2", "B"), conductor=conductor)
    )
    assert [end.tube for end in lengths_of(plan)["W1"].ends] == [tube, tube]
    assert [end.tube for end in lengths_of(replace(plan, rules=library_bus().rules))["W1"].ends] == [None, None]


def test_there_is_no_tube_without_a_measured_lug():
    plan = plan_of(unit("U1", 100, 100), unit("U2", 100, 500), cable("W1", ("U1", "T"), ("U2", "B"), conductor="6"))
    assert [end.tube for end in lengths_of(plan)["W1"].ends] == [None, None]
    clamps = plan_of(unit("U1", 100, 100), unit("U2", 400, 100), cable("W1", ("U1", "R"), ("U2", "L"), conductor="16"))
    assert [end.tube for end in lengths_of(clamps)["W1"].ends] == [None, None]


def test_each_end_says_where_it_is_crimped(bus_plan):
    lengths = lengths_of(bus_plan)
    assert [end.stage_words for end in lengths["W07"].ends] == ["crimp in shop", "crimp on site"]
    assert [end.stage_words for end in lengths["W01"].ends] == ["raw, finish on site", "crimp in shop"]
    assert [end.stage_words for end in lengths["W40"].ends] == ["shop", "shop"]  # moulded: nothing is crimped
