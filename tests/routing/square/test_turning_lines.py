"""Turning lines by corners, against a hand's reckoning of where a bend just clears one."""

import math

import pytest

from boardplan.geometry.point import Box
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.open_lines import OpenLines, units
from boardplan.routing.square.square_way import Ray
from boardplan.routing.square.turning_lines import turning_lines

HALF, GAP, RADIUS = 5.0, 3.0, 40.0
MARGIN = HALF + GAP
WALL = Blocker("body", "U1", Box(-100, -400, 0, 0), GAP)
"""Its upper right corner is in the middle of the wall."""


def uprights(y, *, winding):
    """Return the x of the upright lines, in mm, for a cable that comes along level at a y."""
    lines, ray = OpenLines([WALL], HALF), Ray((units(-500), units(y)), 0, 1, units(1000), 0)
    return {x / 1000 for x in turning_lines([ray], lines, RADIUS, lines.barriers, exact=False, winding=winding)[0]}


@pytest.mark.parametrize("y", [10.0, 20.0, 30.0])
def test_round_a_corner_a_bend_may_come_as_near_as_it_just_clears_it(y):
    """The corner lies inside of the bend, off its centre by the radius less the margin."""
    x = RADIUS - math.sqrt((RADIUS - MARGIN) ** 2 - (RADIUS - y) ** 2)
    assert math.ceil(x) in uprights(y, winding=True)


@pytest.mark.parametrize("y", [5.0, -10.0, -25.0])
def test_a_bend_may_swing_past_outside_of_a_corner_that_its_legs_would_touch(y):
    """The corner lies outside of the bend, off its centre by the radius and the margin."""
    x = math.sqrt((RADIUS + MARGIN) ** 2 - (RADIUS + y) ** 2) - RADIUS
    assert x < MARGIN
    assert math.ceil(x) in uprights(y, winding=True)


def test_only_winding_ways_turn_there():
    assert 16.0 in uprights(20.0, winding=True) - uprights(20.0, winding=False)
