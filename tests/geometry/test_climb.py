"""Climbs against a curve bent step by step, and against elementary geometry of circles."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.climb import climb_adds, climb_length, least_run

heights = st.floats(0.1, 400)
radii = st.floats(0, 200)
runs = st.floats(0, 600)


def bent(height, run, radius, step=0.05):
    """Walk an arc, a straight and an arc back in small steps; the turn that gets there is found by halving.

    Nothing of the closed formula is used: the straight is whatever the height still lacks.
    """

    def ends_at(turn):
        rise = 2 * radius * (1 - math.cos(turn))
        slant = (height - rise) / math.sin(turn)
        return slant, 2 * radius * math.sin(turn) + slant * math.cos(turn)

    low, high = 1e-6, math.pi / 2 if height >= 2 * radius else math.acos(1 - height / (2 * radius))
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if ends_at(middle)[1] > run else (low, middle)
    slant, _ = ends_at(low)
    arc = max(1, round(radius * low / step))
    turns = [low * (index + 0.5) / arc for index in range(arc)]
    moves = [(radius * low / arc, turn) for turn in turns]
    moves += [(slant, low), *reversed(moves)]
    along = sum(length * math.cos(turn) for length, turn in moves)
    up = sum(length * math.sin(turn) for length, turn in moves)
    return sum(length for length, _ in moves), along, up


@given(heights, st.floats(1, 200), st.floats(0, 500))
def test_a_climb_is_as_long_as_one_bent_step_by_step(height, radius, more):
    run = least_run(height, radius) + 0.01 + more
    length, along, up = bent(height, run, radius)
    assert (along, up) == pytest.approx((run, height), abs=0.02)  # the steps get there
    assert climb_length(height, run, radius) == pytest.approx(length, abs=0.02)


@pytest.mark.parametrize(
    ("height", "run", "radius", "adds"),
    [
        (100, 100, 50, math.pi * 50 - 100),  # two quarter circles
        (30, 40, 0, 10),  # 3, 4, 5
        # 50 up over 130 with R 34: slant sqrt(130² + 50² - 4 x 34 x 50) = 112.25, turns of 2 atan(50 / 242.25)
        # = 0.40711, 68 x 0.40711 + 112.25 = 139.93. That it adds under 10: common practice, no source.
        (50, 130, 34, 9.93),
        (200, 0, 64, 200 - 2 * 0.429204 * 64),  # square: the height less two square corners
        (24, 0, 64, 128 * (0.62236 - 0.58302)),  # cos t = 1 - 24/128, no straight between
    ],
)
def test_climbs_reckoned_by_hand(height, run, radius, adds):
    assert climb_adds(height, run, radius) == pytest.approx(adds, abs=0.01)


@given(heights, runs, radii)
def test_a_climb_is_never_shorter_than_the_plain_slant(height, run, radius):
    taken = max(run, least_run(height, radius))
    assert climb_adds(height, run, radius) >= math.hypot(taken, height) - taken - 1e-6


@given(runs, radii)
def test_without_a_height_nothing_is_added(run, radius):
    assert climb_adds(0, run, radius) == 0


@given(heights, st.floats(0, 100), runs, radii)
def test_a_higher_climb_adds_no_less(height, more, run, radius):
    assert climb_adds(height + more, run, radius) >= climb_adds(height, run, radius) - 1e-6


@given(heights, runs, st.floats(0, 100), radii)
def test_a_longer_run_adds_no_more(height, run, more, radius):
    assert climb_adds(height, run + more, radius) <= climb_adds(height, run, radius) + 1e-6
