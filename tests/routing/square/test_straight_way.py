"""Straight ways through channels: along the middle or near it, never half over a wall."""

from itertools import pairwise

import pytest
from checks.plans import cable, channel, plan_of, unit

from boardplan.routing.find_route import find_routes

HALF, CABLE = 30.0, 5.0
"""Half the width of the channel and the thickness of a cable of 6 mm², in mm."""


def facing(aside, turned=0.0):
    """Two clamps that face each other along a channel, so far off its centre line; the second one farther."""
    ends = unit("U1", 100, 300 + aside), unit("U2", 700, 300 + aside + turned)
    joined = cable("W1", ("U1", "R"), ("U2", "L"), conductor="6", way="choose")
    return plan_of(*ends, channel("RW1", (250, 350), (650, 350), size=2 * HALF), joined)


@pytest.mark.parametrize("aside", [0.0, 10.0, -20.0, HALF - CABLE - 0.5, HALF + CABLE + 1])
def test_well_inside_or_clear_of_a_channel_a_cable_goes_straight(aside):
    assert len(find_routes(facing(aside))["W1"].points) == 2


@pytest.mark.parametrize("aside", [HALF - CABLE, HALF - 2, HALF, -HALF, HALF + 2.4])
def test_half_over_its_wall_it_does_not(aside):
    points = find_routes(facing(aside))["W1"].points
    along = [a.y for a, b in pairwise(points) if a.y == b.y and a.x < 600 and b.x > 300]
    assert along
    assert all(abs(y - 350) >= HALF + CABLE / 2 for y in along)


@pytest.mark.parametrize(("aside", "askew", "straight"), [(5.0, 10.0, True), (20.0, 15.0, False), (-40.0, 80.0, False)])
def test_askew_it_goes_straight_only_where_it_stays_inside(aside, askew, straight):
    assert (len(find_routes(facing(aside, askew))["W1"].points) == 2) is straight
