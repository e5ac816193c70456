"""Hole to edge: centres moved up to the limit and past it, at edges, cut-outs and under a heavy board."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, channel, fixing, named, plan_of, unit

from boardplan.geometry.point import Box
from boardplan.model.board import Material
from boardplan.model.channel import ChannelScrews


@pytest.mark.parametrize(("x", "room"), [(18, None), (17.9, 17.9), (982, None), (982.1, 17.9), (-3, -3)])
def test_fixing(x, room):
    found = named(plan_of(fixing("F1", x, 400)), "hole-near-edge")
    assert [each.measured for each in found] == ([pytest.approx(room)] if room else [])


@pytest.mark.parametrize(("y", "near"), [(-2, False), (-2.1, True)])
def test_unit_by_its_holes(y, near):
    # The lower hole sits 20 mm above the unit's bottom.
    assert len(named(plan_of(unit("U1", 300, y)), "hole-near-edge")) == near


@pytest.mark.parametrize(("first", "near"), [(18, 0), (17.9, 2)])
def test_channel_screws(first, near):
    runs = channel("RW", (0, 300), (1000, 300), screws=ChannelScrews(first=first, fastener="screw"))
    assert len(named(plan_of(runs), "hole-near-edge")) == near


@pytest.mark.parametrize(("x", "room"), [(282, None), (282.1, 17.9), (350, -50)])
def test_cutout(x, room):
    board = replace(BOARD, cutouts=(Box(300, 300, 400, 500).corners(),))
    found = named(plan_of(fixing("F1", x, 400), board=board), "hole-near-edge")
    assert [each.measured for each in found] == ([pytest.approx(room)] if room else [])


@pytest.mark.parametrize(
    ("mass", "x", "near"),
    [
        (16.4, 20, False),  # 16.4 kg + 0.8 m² at 4.5 kg/m² = 20.0 kg on one fixing: not over 20
        (16.5, 20, True),  # 20.1 kg: 25 mm is asked
        (16.5, 25, False),
        (16.5, 24.9, True),
        (None, 20, False),  # nobody weighed it: a question elsewhere
    ],
)
def test_loaded_fixing(mass, x, near):
    board = replace(BOARD, material=Material("light", 4.5))
    plan = plan_of(unit("U1", 500, 400), fixing("F1", x, 300), kinds=[replace(UNIT, mass=mass)], board=board)
    assert len(named(plan, "hole-near-edge")) == near


def test_second_fixing_shares_the_load():
    board = replace(BOARD, material=Material("light", 4.5))
    things = unit("U1", 500, 400), fixing("F1", 20, 300), fixing("F2", 20, 600)
    assert named(plan_of(*things, kinds=[replace(UNIT, mass=30)], board=board), "hole-near-edge") == []
