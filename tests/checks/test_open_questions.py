"""Open questions: one for each kind in use that lacks something a check needs."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, NUT, SCREW, UNIT, channel, fixing, named, plan_of, unit

from boardplan.geometry.point import Point
from boardplan.model.board import Exit, Material
from boardplan.model.channel import ChannelScrews

FIXING = fixing("F1", 30, 30)


@pytest.mark.parametrize(
    ("changes", "missing"),
    [
        ({}, None),
        ({"mass": None}, "mass"),
        ({"flange": None}, "flange thickness"),
        ({"fastener": ""}, "fastener"),
        ({"flange": None, "fastener": "nut"}, None),  # a machine screw is cut to suit
        ({"fastener": "", "holes": ()}, None),
        ({"mass": None, "flange": None}, "mass and its flange thickness"),
    ],
)
def test_question(changes, missing):
    plan = plan_of(unit("U1", 300, 300), unit("U2", 500, 300), kinds=[replace(UNIT, **changes)])
    found = named(replace(plan, fasteners={"screw": SCREW, "nut": NUT}), "kind-data-missing")
    assert [each.severity for each in found] == (["note"] if missing else [])
    assert all(f"what is its {missing}?" in each.sentence for each in found)
    assert all(each.things == ("U1", "U2") for each in found)


def test_screw_without_a_length():
    plan = plan_of(unit("U1", 300, 300))
    (found,) = named(replace(plan, fasteners={"screw": replace(SCREW, length=None)}), "kind-data-missing")
    assert "screw length" in found.sentence


@pytest.mark.parametrize(("through", "diameter", "asked"), [("hole", None, 1), ("hole", 40, 0), ("edge", None, 0)])
def test_exit_hole_without_a_width(through, diameter, asked):
    found = named(plan_of(Exit("X1", "A", "roof", Point(500, 400), through, diameter)), "exit-width-missing")
    assert [each.severity for each in found] == ["note"] * asked


def test_channel_without_screws():
    assert named(plan_of(channel("RW1", (100, 300), (700, 300))), "channel-screws-missing") == []
    bare = channel("RW1", (100, 300), (700, 300), screws=ChannelScrews())
    assert len(named(plan_of(bare), "channel-screws-missing")) == 1


@pytest.mark.parametrize(("things", "weighed", "asked"), [((FIXING,), False, 1), ((FIXING,), True, 0), ((), False, 0)])
def test_board_that_nobody_weighed(things, weighed, asked):
    """What a fixing carries says how far from the edge it must be."""
    board = replace(BOARD, material=Material("ply", 12 if weighed else None))
    assert len(named(plan_of(*things, board=board), "board-mass-missing")) == asked
