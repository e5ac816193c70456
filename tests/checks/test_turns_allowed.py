"""Turns allowed: full turns count as none, any turn where the kind says nothing."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, named, plan_of, unit


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
