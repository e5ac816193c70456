"""Turns allowed: full turns count as none, any turn where the kind says nothing."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, named, plan_of, unit

from boardplan.geometry.point import Point
from boardplan.model.component_kind import MountingHole


@pytest.mark.parametrize(
    ("allowed", "turn", "wrong"),
    [
        ((0.0,), 0, False),
        ((0.0,), 360, False),
        ((0.0,), 0.1, True),
        ((0.0, 90.0), 90, False),
        ((0.0, 90.0), 180, True),
        ((270.0,), -90, False),
        (None, 33, False),
        ((), 0, True),
    ],
)
def test_turn(allowed, turn, wrong):
    plan = plan_of(unit("U1", 300, 300, turn), kinds=[replace(UNIT, allowed_turns=allowed)])
    found = named(plan, "turn-not-allowed")
    assert [each.severity for each in found] == (["stop"] if wrong else [])


@pytest.mark.parametrize(
    ("shapes", "turn", "slips"),
    [
        (("keyhole", "keyhole"), 0, False),
        (("keyhole", "keyhole"), 360, False),
        (("keyhole", "keyhole"), 180, True),
        (("keyhole", "keyhole"), 90, True),
        (("keyhole", "round"), 180, False),  # a screw holds it
        ((), 180, False),
    ],
)
def test_keyholes_hold_downwards_alone(shapes, turn, slips):
    holes = tuple(MountingHole(Point(50, 20 + 30 * place), shape) for place, shape in enumerate(shapes))
    found = named(plan_of(unit("U1", 300, 300, turn), kinds=[replace(UNIT, holes=holes)]), "keyholes-slip")
    assert [(each.severity, each.measured) for each in found] == ([("stop", turn)] if slips else [])
