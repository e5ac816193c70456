"""Current flow: orders that a plan says for certain, and those of which it says nothing; common practice, no source."""

from dataclasses import replace

import pytest
from checks.plans import cable, named, plan_of

from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.board import Exit
from boardplan.model.cable import Leg, OffBoardEnd, TerminalEnd
from boardplan.model.component import Component
from boardplan.routing.currents.current_flow import ROLES, flow_faults, has_fuses, role_of

KINDS = bundled_shelf().kinds
UNITS = {
    "BT": "lithium-battery-24v-100ah",
    "B2": "lithium-battery-24v-100ah",
    "FT": "class-t-fuse-block",
    "SW": "battery-shut-off-1-pole",
    "PB": "fused-busbar-5-way",
    "PP": "positive-busbar-5-stud",
    "SH": "shunt-500a",
    "NB": "busbar-5-stud",
    "INV": "inverter-charger-24v-3kva",
    "LP": "blade-fuse-panel-6-way",
    "CV": "converter-24-12-20a",
    "HB": "monitoring-hub",
}
GOOD = (
    "BT.POS FT.LINE", "FT.LOAD SW.IN", "SW.OUT PB.MAIN", "PB.F5 INV.DC+", "PB.F1 LP.MAIN+",
    "BT.NEG SH.BAT", "SH.SYS NB.S1", "NB.S5 INV.DC-", "NB.S2 LP.NEG",
)  # fmt: skip


def wired(*cables, kinds=None, leaving=()):
    """A plan whose cables are given as pairs of ends; where things lie doesn't matter for the order."""
    used = {name for each in cables for name in (end.split(".")[0] for end in each.split())}
    components = [Component(name, UNITS[name], "A", Point(10, 10)) for name in sorted(used)]
    laid = [
        cable(f"W{n}", *(tuple(end.split(".")) for end in each.split()), conductor="70")
        for n, each in enumerate(cables, start=1)
    ]
    plan = plan_of(*components, *laid, Exit("X", "A", "edge", Point(0, 400)), kinds=KINDS.values())
    off = [
        replace(laid[0], id=f"L{n}", start=OffBoardEnd("X", "battery", (Leg(900, "measured"),)), end=_end(each))
        for n, each in enumerate(leaving, start=1)
    ]
    return replace(plan.with_things(off), **({"kinds": {**plan.kinds, **kinds}} if kinds else {}))


def _end(words):
    return TerminalEnd(*words.split("."))


def told(*cables, **fields):
    return [(each.sort, ".".join(each.at)) for each in flow_faults(wired(*cables, **fields))]


def without(*gone):
    return tuple(each for each in GOOD if each not in gone)


def test_the_order_of_the_trade_is_fine():
    assert told(*GOOD) == []


@pytest.mark.parametrize(
    ("gone", "instead", "faults"),
    [
        ("NB.S5 INV.DC-", "SH.BAT INV.DC-", [("load before shunt", "INV.DC-")]),
        ("NB.S5 INV.DC-", "BT.NEG INV.DC-", [("load before shunt", "INV.DC-")]),
        ("NB.S2 LP.NEG", "SH.BAT LP.NEG", [("load before shunt", "LP.NEG")]),
        ("SH.SYS NB.S1", "BT.NEG NB.S1", [("load before shunt", "INV.DC-"), ("load before shunt", "LP.NEG")]),
        ("BT.POS FT.LINE", "BT.POS SW.IN", [("bus before fuse", "PB.MAIN"), ("shut-off before fuse", "SW.IN")]),
        ("PB.F5 INV.DC+", "BT.POS INV.DC+", [("no fuse", "INV.DC+")]),
    ],
)
def test_one_cable_on_the_wrong_stud(gone, instead, faults):
    assert told(*without(gone), instead) == faults


def test_a_shunt_that_is_joined_past():
    assert told(*GOOD, "BT.NEG NB.S3") == [
        ("load before shunt", "INV.DC-"),
        ("load before shunt", "LP.NEG"),
        ("shunt bypassed", "SH.SYS"),
    ]


def test_a_shunt_the_wrong_way_round():
    wrong = without("BT.NEG SH.BAT", "SH.SYS NB.S1")
    assert told(*wrong, "BT.NEG SH.SYS", "SH.BAT NB.S1") == [
        ("battery behind shunt", "BT.NEG"),
        ("load before shunt", "INV.DC-"),
        ("load before shunt", "LP.NEG"),
    ]


def test_another_battery_on_the_system_side_may_be_the_vehicles_own():
    assert told(*GOOD, "B2.NEG NB.S3") == []


def test_the_battery_side_may_come_from_off_the_board():
    rest = without("BT.NEG SH.BAT", "BT.POS FT.LINE")
    assert told(*rest, "B2.NEG NB.S3", leaving=("SH.BAT", "FT.LINE")) == []


def test_the_sense_lead_is_no_load():
    assert told(*GOOD, "SH.SENSE HB.C1") == []


def test_a_plain_positive_bus_has_no_fuse_for_its_loads():
    rest = without("SW.OUT PB.MAIN", "PB.F5 INV.DC+", "PB.F1 LP.MAIN+")
    assert told(*rest, "SW.OUT PP.S1", "PP.S2 LP.MAIN+") == []
    assert told(*rest, "SW.OUT PP.S1", "PP.S2 INV.DC+") == [("no fuse", "INV.DC+")]


def test_batteries_may_share_a_bus_before_their_fuse_but_one_alone_needs_none():
    negatives = ("BT.NEG SH.BAT", "SH.SYS NB.S1")
    assert told("BT.POS PP.S1", "B2.POS PP.S2", "PP.S3 FT.LINE", "B2.NEG SH.BAT", *negatives) == []
    assert told("BT.POS PP.S1", "PP.S3 FT.LINE", *negatives) == [("bus before fuse", "PP.S1")]


def test_what_a_converter_gives_out_is_another_circuit():
    assert told("PP.S1 CV.OUT+", "PP.S2 LP.MAIN+") == []
    assert told("PP.S1 CV.IN+", "PP.S2 LP.MAIN+") == [("no fuse", "CV.IN+")]


def test_a_family_that_nobody_knows_says_nothing():
    shunt = replace(KINDS["shunt-500a"], family="Odds and ends")
    assert told(*without("NB.S5 INV.DC-"), "SH.BAT INV.DC-", kinds={shunt.id: shunt}) == []


def test_a_shunt_that_does_not_name_its_sides_says_nothing():
    plain = KINDS["shunt-500a"]
    shunt = replace(plain, terminals=tuple(replace(each, id=each.id.replace("BAT", "A")) for each in plain.terminals))
    assert told(*without("NB.S5 INV.DC-", "BT.NEG SH.BAT"), "SH.A INV.DC-", kinds={shunt.id: shunt}) == []


def test_ac_and_signal_cables_carry_no_battery_current():
    plan = wired(*without("NB.S5 INV.DC-"), "SH.BAT INV.DC-")
    signal = replace(plan.cables["W9"], cable_class="signal")
    assert flow_faults(plan.with_things([signal])) == ()


def test_every_family_it_knows_is_on_the_shelf():
    """A word that no family has would be a rule that never speaks."""
    assert set(ROLES) <= {kind.family.casefold() for kind in KINDS.values()}


@pytest.mark.parametrize(("kind", "fuses"), [("fused-busbar-5-way", True), ("positive-busbar-5-stud", False)])
def test_which_bus_has_fuses(kind, fuses):
    assert role_of(KINDS[kind]) == "bus"
    assert has_fuses(KINDS[kind]) is fuses


def test_the_finding_stops_and_names_the_cables():
    (found,) = named(wired(*without("NB.S5 INV.DC-"), "SH.BAT INV.DC-"), "flow-out-of-order")
    assert found.severity == "stop"
    assert found.things == ("INV", "W9", "SH")
    assert "battery side of the shunt" in found.sentence
    assert "W9" in found.sentence
