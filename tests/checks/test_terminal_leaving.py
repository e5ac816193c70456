"""Terminal leaving: a cable pinned askew of its terminal is a stop, a lug that may turn is not."""

from dataclasses import replace
from math import cos, radians, sin

import pytest
from checks.plans import UNIT, cable, named, plan_of, unit

TERMINAL = (150, 590)  # U1.T, which points up


def leaving(degrees, kinds=(UNIT,)):
    pin = TERMINAL[0] + 80 * cos(radians(degrees)), TERMINAL[1] + 80 * sin(radians(degrees))
    return plan_of(unit("U1", 100, 500), unit("U2", 600, 500), cable("W1", ("U1", "T"), ("U2", "L"), pin), kinds=kinds)


@pytest.mark.parametrize(("degrees", "askew"), [(90, None), (45.1, None), (134.9, None), (44.5, 45.5), (0, 90)])
def test_within_45_degrees(degrees, askew):
    found = [each for each in named(leaving(degrees), "leaves-terminal-askew") if "U1.T" in each.sentence]
    assert [each.measured for each in found] == ([] if askew is None else [pytest.approx(askew)])
    assert all(each.severity == "stop" for each in found)


def test_a_lug_that_may_turn_leaves_as_it_likes():
    free = replace(UNIT, terminals=tuple(replace(each, exit=None) for each in UNIT.terminals))
    assert named(leaving(0, kinds=[free]), "leaves-terminal-askew") == []


def test_the_direction_turns_with_the_unit():
    plan = plan_of(
        unit("U1", 100, 500, turn=90), unit("U2", 600, 500), cable("W1", ("U1", "T"), ("U2", "L"), (60, 550), (60, 700))
    )
    assert [each for each in named(plan, "leaves-terminal-askew") if "U1.T" in each.sentence] == []


@pytest.mark.parametrize(("aside", "askew"), [(80, 0), (80.1, 1)])
def test_45_degrees_to_the_hair_is_within(aside, askew):
    plan = plan_of(
        unit("U1", 100, 500),
        unit("U2", 600, 500),
        cable("W1", ("U1", "T"), ("U2", "L"), (150 + aside, 670), (400, 670)),
    )
    assert len([each for each in named(plan, "leaves-terminal-askew") if "U1.T" in each.sentence]) == askew
