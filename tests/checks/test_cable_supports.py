"""Cable supports: a finding where nothing can hold a thick cable for more than 18 in (ABYC E-11, as summarised)."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, cable, named, plan_of, unit

from boardplan.checks.review import refreshed, review_of
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Exit
from boardplan.model.cable import Cable, Leg, OffBoardEnd, TerminalEnd

WIDE = replace(BOARD, outline=Box(0, 0, 2000, 800).corners())
ENDS = unit("U1", 100, 300), unit("U2", 1180, 300)
W1 = cable("W1", ("U1", "R"), ("U2", "L"), (190, 350), (1190, 350))


def plan_with_body(width, conductor="wire"):
    """Return a cable of a metre over a body, which begins at x = 450."""
    long = replace(UNIT, id="long", outline=Box(0, 0, width, 100).corners(), holes=(), terminals=())
    ends = (*ENDS, unit("U3", 450, 300, kind="long"), replace(W1, conductor=conductor))
    return plan_of(*ends, kinds=(UNIT, long), board=WIDE)


# the clamps beside a body are 15 off it: 5 of room and half of a clamp; between them the body and 30 are free
@pytest.mark.parametrize(("width", "found"), [(424.9, 0), (425.1, 1)])
def test_a_gap_of_more_than_455(width, found):
    findings = named(plan_with_body(width), "cable-unsupported")
    assert len(findings) == found
    for each in findings:
        assert (each.severity, each.things, each.board, each.limit) == ("warn", ("W1",), "A", 455)
        assert each.measured == pytest.approx(width + 30)
        assert each.place == pytest.approx((450 + width / 2, 350))
        assert "ABYC E-11" in each.sentence


def test_a_thin_cable_is_not_asked_about():
    assert named(plan_with_body(500, conductor="6"), "cable-unsupported") == []


def test_a_body_that_comes_asks_again():
    plan = plan_with_body(500)
    free = plan.without(["U3"])
    for before, after in ((free, plan), (plan, free)):
        again = refreshed(review_of(before), after)
        assert again.findings == review_of(after).findings
        assert again.clamps == review_of(after).clamps


BATTERY = replace(UNIT, id="battery", family="Batteries and trays")


def plan_to_battery(width, kind):
    """Return the cable over a body, from a unit of a kind: a battery or another."""
    plan = plan_with_body(width)
    start = replace(plan.components["U1"], kind=kind)
    return replace(plan.with_things([start]), kinds={**plan.kinds, "battery": BATTERY})


# beside a body the clamps are 15 off it, as above: what is free between them is the body and 30
@pytest.mark.parametrize(
    ("width", "kind", "found"),
    [(269.9, "battery", 0), (270.1, "battery", 1), (270.1, "unit", 0), (424.9, "battery", 1), (425.1, "battery", 0)],
)
def test_a_battery_cable_is_held_every_300(width, kind, found):
    # ISO 10133:2012, 7.3 and 7.4: battery conductors; beyond 455 it is told of as any cable is
    findings = named(plan_to_battery(width, kind), "battery-cable-unsupported")
    assert len(findings) == found
    for each in findings:
        assert (each.severity, each.things, each.limit) == ("warn", ("W1",), 300)
        assert each.measured == pytest.approx(width + 30)
        assert "ISO 10133" in each.sentence


def test_a_unit_that_becomes_a_battery_asks_again():
    plan, later = plan_to_battery(300, "unit"), plan_to_battery(300, "battery")
    for before, after in ((plan, later), (later, plan)):
        assert refreshed(review_of(before), after) == review_of(after)


@pytest.mark.parametrize(
    ("length", "name", "found"), [(1000, "battery +", 0), (1001, "battery +", 1), (1001, "inlet", 0)]
)
def test_a_battery_far_off_the_board_wants_its_first_support_on_the_way(length, name, found):
    # ISO 10133:2012, 7.3 and 7.4: the first support no farther than 1 m from the terminal
    away = OffBoardEnd("X1", name, (Leg(length, "measured"),))
    leaving = Exit("X1", "A", "left", Point(0, 350))
    plan = plan_of(*ENDS, leaving, Cable("W1", TerminalEnd("U1", "L"), away, "16", "red", "dc"), board=WIDE)
    findings = named(plan, "battery-first-support")
    assert [(each.severity, each.measured, each.limit) for each in findings] == [("note", length, 1000)] * found
