"""Cable lengths: short jumpers, leads no shop sells, legs nobody measured, lugs, matched groups."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, WIRE, cable, named, plan_of, unit

from boardplan.geometry.point import Point
from boardplan.model.board import Exit
from boardplan.model.cable import Cable, Leg, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Terminal

STUDS = replace(
    UNIT,
    terminals=(
        Terminal("R", Point(90, 50), 20, "stud", "M8", 0.0),
        Terminal("L", Point(10, 50), 20, "stud", "M8", 180.0),
    ),
)
HEAVY = replace(WIRE, area=50)


@pytest.mark.parametrize(("apart", "short"), [(71, False), (70.9, True)])
def test_jumper(apart, short):
    # Two mouths of 28 and 2.5 times 6 of free jacket: 71 from stud to stud.
    x = 190 + apart - 10
    plan = plan_of(
        unit("U1", 100, 300), unit("U2", x, 300), cable("W1", ("U1", "R"), ("U2", "L"), way="outside"), kinds=[STUDS]
    )
    plan = replace(plan, conductors={**plan.conductors, "wire": HEAVY})
    found = named(plan, "jumper-too-short")
    assert [(each.measured, each.limit) for each in found] == ([(pytest.approx(14.9), 15)] if short else [])
    assert all("71 mm from stud to stud" in each.sentence for each in found)


@pytest.mark.parametrize(("apart", "missing"), [(450, False), (450.1, True)])
def test_lead_of_at_most_500_with_50_of_slack(apart, missing):
    x = 190 + apart - 10
    plugs = replace(UNIT, terminals=tuple(replace(each, sort="plug") for each in UNIT.terminals))
    lead = cable("W1", ("U1", "R"), ("U2", "L"), conductor="lead", cable_class="signal")
    found = named(plan_of(unit("U1", 100, 300), unit("U2", x, 300), lead, kinds=[plugs]), "lead-not-in-stock")
    assert [each.measured for each in found] == ([500] if missing else [])


@pytest.mark.parametrize(
    ("trusts", "doubtful"), [(("measured", "customer"), 0), (("measured", "estimated"), 1), (("photo",), 1)]
)
def test_legs(trusts, doubtful):
    legs = tuple(Leg(500, trust) for trust in trusts)
    away = Cable("W1", TerminalEnd("U1", "T"), OffBoardEnd("X1", "battery", legs), "wire", "red", "dc")
    plan = plan_of(unit("U1", 300, 300), Exit("X1", "A", "top", Point(350, 800)), away)
    found = named(plan, "leg-estimated")
    assert [each.severity for each in found] == ["note"] * doubtful
    assert all("500 mm" in each.sentence for each in found)


def test_lug_that_nobody_measured():
    plan = plan_of(unit("U1", 100, 300), unit("U2", 500, 300), cable("W1", ("U1", "T"), ("U2", "T")))
    assert named(plan, "lug-not-measured") == []
    plan = replace(plan, conductors={"wire": replace(WIRE, lug=None)})
    (found,) = named(plan, "lug-not-measured")
    assert "U1.T, U2.T" in found.sentence
    assert found.severity == "note"


@pytest.mark.parametrize(("near", "surplus"), [(400, True), (640, False)])
def test_matched_group(near, surplus):
    # Own paths of about near - 180 and 520: the shorter is filled up to the longer.
    things = unit("U1", 100, 100), unit("U2", 700, 100), unit("U3", 100, 400), unit("U4", near, 400)
    cables = (
        cable("W1", ("U1", "R"), ("U2", "L"), (400, 150), group="M"),
        cable("W2", ("U3", "R"), ("U4", "L"), (250, 450), group="M"),
    )
    found = named(plan_of(*things, *cables), "matched-surplus")
    assert [(each.severity, each.things) for each in found] == ([("note", ("W1", "W2"))] if surplus else [])


def test_jumper_whose_lugs_overlap():
    # Pinned between studs 50 apart: two mouths of 28 are 6 more than that.
    plan = plan_of(
        unit("U1", 100, 300),
        unit("U2", 230, 300),
        cable("W1", ("U1", "R"), ("U2", "L"), (200, 350), way="outside"),
        kinds=[STUDS],
    )
    plan = replace(plan, conductors={**plan.conductors, "wire": HEAVY})
    (found,) = named(plan, "jumper-too-short")
    assert found.measured == pytest.approx(-6)
    assert "lugs that overlap by 6 mm" in found.sentence
