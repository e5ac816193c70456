"""Pattern check: pitches of a pattern as turned, and the one note for kinds nobody compared with the unit."""

from dataclasses import replace

import pytest
from boards import library_bus
from checks.plans import UNIT, named, plan_of, unit

from boardplan.checks.pattern_check import PatternDimensions, pattern_dimensions


@pytest.mark.parametrize(
    ("component", "expected"),
    [
        # The invented inverter's holes are 160 and 406 apart; diagonal by Pythagoras 436.39.
        ("INV1", PatternDimensions(160, 406, pytest.approx(436.3897, abs=1e-3), (1, 4))),
        ("HB1", PatternDimensions(142, 0, 142, (1, 2))),
        ("FT1", PatternDimensions(0, pytest.approx(52), pytest.approx(52), (1, 2))),  # turned by 270
    ],
)
def test_pitches(component, expected):
    plan = library_bus()
    assert pattern_dimensions(plan, plan.components[component]) == expected


def test_none_without_two_holes():
    plan = plan_of(unit("U1", 300, 300), kinds=[replace(UNIT, holes=UNIT.holes[:1])])
    assert pattern_dimensions(plan, plan.components["U1"]) is None


@pytest.mark.parametrize(("state", "notes"), [("typical", 1), ("from sheet", 1), ("checked", 0), ("used", 0)])
def test_one_note_for_the_job(state, notes):
    kinds = [replace(UNIT, data_state=state), replace(UNIT, id="other", data_state=state)]
    plan = plan_of(unit("U1", 300, 300), unit("U2", 500, 300), unit("U3", 700, 300, kind="other"), kinds=kinds)
    found = named(plan, "pattern-not-checked")
    assert [each.severity for each in found] == ["note"] * notes
    assert all("2 of 2" in each.sentence for each in found)
