"""Covered screws: a neighbour or a channel up to the room for head and driver, and over the screw."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, channel, named, plan_of, unit

from boardplan.geometry.point import Point
from boardplan.model.component_kind import MountingHole

EAR = replace(UNIT, id="ear", holes=(MountingHole(Point(96, 50)),))
"""A hole 4 mm inside its edge; head 8 + 10: 9 mm round the centre are asked."""
KINDS = (UNIT, EAR)


@pytest.mark.parametrize(("x", "room"), [(405, None), (404.9, 8.9), (396, 0), (350, 0)])
def test_neighbour(x, room):
    found = named(plan_of(unit("U1", 300, 300, kind="ear"), unit("U2", x, 300), kinds=KINDS), "screw-covered")
    expected = [] if room is None else [(pytest.approx(room), 9, "warn")]
    assert [(each.measured, each.limit, each.severity) for each in found if each.things[0] == "U1"] == expected


@pytest.mark.parametrize(("x", "covered"), [(435, False), (434.9, True)])
def test_channel(x, covered):
    plan = plan_of(unit("U1", 300, 300, kind="ear"), channel("RW", (x, 100), (x, 700)), kinds=KINDS)
    assert len([each for each in named(plan, "screw-covered") if each.things == ("U1", "RW")]) == covered


def test_screws_under_the_unit_itself_are_its_own():
    assert named(plan_of(unit("U1", 300, 300)), "screw-covered") == []


def test_screw_of_a_channel_under_a_unit():
    plan = plan_of(channel("RW", (100, 300), (180, 300)), unit("U1", 120, 280))
    assert ("RW", "U1") in [each.things for each in named(plan, "screw-covered")]
