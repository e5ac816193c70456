"""Ways pulled tight, against a hand's reckoning of how near a bend goes round a corner."""

import math
from itertools import pairwise

import pytest

from boardplan.geometry.point import Box
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.least_left import CORNER
from boardplan.routing.square.open_lines import WEIGHT, OpenLines, units
from boardplan.routing.square.pulled_tight import may_be_loose, pulled_tight
from boardplan.routing.square.square_way import Found, Ray, Search

HALF, GAP, RADIUS = 5.0, 3.0, 40.0
WALL = Blocker("body", "U1", Box(-100, 0, 100, 40), GAP)
"""A wall 200 long that the way goes round at its right end."""


def corners(*points):
    return tuple((units(x), units(y)) for x, y in points)


def tight(*points, lines=None, straight=0.0):
    """Return the corners of a level way pulled tight, in mm."""
    lines = lines or OpenLines([WALL], HALF)
    spots = corners(*points)
    rays = tuple(
        Ray(spots[at], 0, 1 if spots[to][0] > spots[at][0] else -1, units(1000), units(straight))
        for at, to in ((0, 1), (-1, -2))
    )
    lengths = sum(abs(a[0] - b[0]) + abs(a[1] - b[1]) for a, b in pairwise(spots))
    cost = WEIGHT * lengths + CORNER * (len(spots) - 2)
    ends = [rays[0]], [rays[1]]
    found = pulled_tight(
        Found(spots, cost, 0, 0),
        units(RADIUS),
        lambda turning: Search(lines, ends, units(RADIUS), turning, lines.barriers, ("-", "-")),
    )
    return [(x / 1000, y / 1000) for x, y in found.spots]


@pytest.mark.parametrize("beside", [30.0, 20.0, 15.0])
def test_a_leg_round_the_end_of_a_wall_comes_as_near_as_its_bends_let_it(beside):
    """Level legs `beside` off the wall: its corner comes within R - margin of the bend's centre."""
    above, below = 40 + HALF + GAP + beside, -HALF - GAP - beside
    found = tight((0, above), (170, above), (170, below), (0, below))
    margin = HALF + GAP
    deep = RADIUS - margin - beside
    aside = margin if deep <= 0 else RADIUS - math.sqrt((RADIUS - margin) ** 2 - deep**2)
    nearest = 100 + max(margin, aside)
    assert nearest <= found[1][0] < nearest + 1
    assert [y for _, y in found] == [above, above, below, below]


def test_a_way_that_turns_back_at_once_is_as_narrow_as_two_bends():
    found = tight((0, 200), (170, 200), (170, 100), (0, 100), lines=OpenLines([], HALF))
    assert found[1][0] == pytest.approx(RADIUS, abs=1)


def test_a_way_that_would_be_little_shorter_stays_in_its_tidy_places():
    above, below = 78.0, -38.0
    assert tight((-400, above), (112, above), (112, below), (-400, below))[1][0] == 112


def test_only_a_way_that_turns_back_and_costs_more_than_the_least_may_be_loose():
    ahead = Found(corners((0, 0), (170, 0), (170, 200), (400, 200)), 1000, 0, 0)
    back = Found(corners((0, 0), (170, 0), (170, 200), (0, 200)), 1000, 0, 0)
    assert not may_be_loose(ahead, 900)
    assert may_be_loose(back, 900)
    assert not may_be_loose(back, 991)
