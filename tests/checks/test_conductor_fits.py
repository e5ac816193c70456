"""Conductor fits: sizes at the limits a terminal's sheet gives; nothing is asked where it gives none."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, WIRE, cable, named, plan_of, unit


@pytest.mark.parametrize(
    ("least", "largest", "area", "limit"),
    [
        (None, None, 70, None),
        (None, 16, 16, None),
        (None, 16, 25, 16),
        (1.5, 16, 1.5, None),
        (1.5, 16, 1, 1.5),
        (1.5, None, 70, None),
        (1.5, 16, None, None),  # a lead with moulded ends has no size
    ],
)
def test_sizes(least, largest, area, limit):
    ends = tuple(replace(each, least_conductor=least, largest_conductor=largest) for each in UNIT.terminals[:1])
    kind = replace(UNIT, terminals=(*ends, *UNIT.terminals[1:]))
    plan = plan_of(
        unit("U1", 100, 300), unit("U2", 500, 300), cable("W1", ("U1", "T"), ("U2", "L"), (150, 350)), kinds=[kind]
    )
    plan = replace(plan, conductors={"wire": replace(WIRE, area=area)})
    found = named(plan, "conductor-misses-terminal")
    assert [(each.severity, each.measured, each.limit) for each in found] == ([("stop", area, limit)] if limit else [])
