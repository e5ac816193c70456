"""Screw length: length less flange less fabric, against the board and against what a screw has to hold."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, SCREW, UNIT, channel, named, plan_of, unit

from boardplan.model.board import Fabric


def plan_with(length, flange, mass, *, fabric=False):
    board = replace(BOARD, fabric=Fabric(2) if fabric else None)
    kind = replace(UNIT, flange=flange, mass=mass)
    plan = plan_of(unit("U1", 300, 300), kinds=[kind], board=board)
    return replace(plan, fasteners={"screw": replace(SCREW, length=length)})


@pytest.mark.parametrize(
    ("length", "flange", "fabric", "left"),
    [
        (19, 3, False, None),  # 16 in 18
        (19.1, 3, False, 1.9),
        (19, 2.9, False, 1.9),
        (19, 1.5, True, None),  # the fabric takes 1.5
        (19, 1.4, True, 1.9),
        (25, 6, True, 0.5),  # 17.5 in the wood of an 18 mm sheet
    ],
)
def test_point_stays_inside(length, flange, fabric, left):
    found = named(plan_with(length, flange, 0.5, fabric=fabric), "screw-goes-through")
    assert [each.measured for each in found] == ([] if left is None else [pytest.approx(left)])


@pytest.mark.parametrize(
    ("length", "mass", "severity", "limit"),
    [
        (11, 0.5, None, None),
        (10.9, 0.5, "stop", 8),
        (15, 2.5, None, None),
        (14.9, 2.5, "stop", 12),
        (14.9, 1.0, None, None),  # over 1 kg, not at 1 kg
        (10.9, 2.5, "stop", 8),
    ],
)
def test_hold(length, mass, severity, limit):
    found = named(plan_with(length, 3, mass), "screw-holds-too-little")
    assert [(each.severity, each.limit) for each in found] == ([(severity, limit)] if severity else [])


def test_19_mm_screw_through_a_flange_of_6_and_fabric_holds_in_11_and_a_half():
    # The arithmetic of the trade: 19 - 6 - 1.5 = 11.5; common practice, no source.
    (found,) = named(plan_with(19, 6, 2.5, fabric=True), "screw-holds-too-little")
    assert found.measured == 11.5
    assert "11.5 mm" in found.sentence
    assert "12 mm" in found.sentence


def test_what_is_not_known_is_not_reckoned_with():
    assert named(plan_with(None, 3, 2), "screw-holds-too-little") == []
    assert named(plan_with(19, None, 2), "screw-goes-through") == []


@pytest.mark.parametrize(("length", "short"), [(10, 0), (9.9, 1)])
def test_channel_with_walls_of_2(length, short):
    plan = plan_of(channel("RW", (100, 300), (700, 300)))
    plan = replace(plan, fasteners={"screw": replace(SCREW, length=length)})
    assert len(named(plan, "screw-holds-too-little")) == short


@pytest.mark.parametrize(("thickness", "left"), [(0.5, 1.9), (1.5, 2.9), (6, 2.9)])
def test_thin_fabric_takes_no_more_than_it_is_thick(thickness, left):
    # 19 of screw less 2.4 of flange in 18 of board: 1.4 is left, and what the fabric takes.
    plan = plan_with(19, 2.4, 0.5)
    plan = plan.with_things([replace(BOARD, fabric=Fabric(thickness))])
    found = named(plan, "screw-goes-through")
    assert [each.measured for each in found] == ([pytest.approx(left)] if left < 2 else [])


def test_a_screw_that_comes_out_says_by_how_much():
    (found,) = named(plan_with(25, 4, 0.5), "screw-goes-through")
    assert found.measured == -3
    assert "come 3 mm out of the back of the board" in found.sentence
