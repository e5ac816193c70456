"""Hot units: what warmth harms, above them and beside."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, named, plan_of, unit

from boardplan.model.component_kind import Cooling

HEATER = replace(UNIT, id="heater", heat=40)
BLOWER = replace(UNIT, id="blower", cooling=Cooling(exhaust=("right",)))
TENDER = replace(UNIT, id="tender", heat_sensitive=True)
KINDS = (UNIT, HEATER, BLOWER, TENDER)


@pytest.mark.parametrize(
    ("low", "turn", "high", "x", "y", "near"),
    [
        ("heater", 0, "tender", 300, 400, False),
        ("heater", 0, "tender", 300, 399.9, True),
        ("heater", 0, "tender", 399.9, 350, True),
        ("heater", 0, "tender", 400, 350, False),  # beside the column of warm air
        ("heater", 0, "unit", 300, 350, False),
        ("unit", 0, "tender", 300, 350, False),
        ("blower", 90, "tender", 300, 350, True),  # turned, its right side looks up
        ("blower", 0, "tender", 300, 350, False),
        ("tender", 0, "heater", 300, 350, False),
    ],
)
def test_above(low, turn, high, x, y, near):
    plan = plan_of(unit("U1", 300, 100, turn, kind=low), unit("U2", x, y, kind=high), kinds=KINDS)
    found = named(plan, "heat-sensitive-above-hot")
    assert [(each.severity, each.things, each.limit) for each in found] == (
        [("warn", ("U2", "U1"), 200)] if near else []
    )
