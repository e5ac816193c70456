"""Exits open: units, channels and fixings up to the rim of an exit hole."""

import pytest
from checks.plans import channel, fixing, named, plan_of, post, unit

from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart, Exit

HOLE = Exit("X1", "A", "floor", Point(500, 400), "hole", 40)
EDGE = Exit("X2", "A", "edge", Point(500, 400))


@pytest.mark.parametrize(("x", "covered"), [(520, False), (519.9, True), (450, True), (380, False), (380.1, True)])
def test_unit_over_a_hole(x, covered):
    assert len(named(plan_of(HOLE, unit("U1", x, 350)), "exit-covered")) == covered


def test_an_exit_over_the_edge_can_not_be_covered():
    assert named(plan_of(EDGE, unit("U1", 450, 350)), "exit-covered") == []


@pytest.mark.parametrize(("y", "covered"), [(400, False), (410, False), (411, True), (450, False), (449, True)])
def test_channel_may_take_the_whole_hole_in(y, covered):
    assert len(named(plan_of(HOLE, channel("RW", (100, y), (900, y))), "exit-covered")) == covered


@pytest.mark.parametrize(("x", "inside"), [(523.5, False), (523.4, True), (500, True)])
def test_fixing_in_a_hole(x, inside):
    assert len(named(plan_of(HOLE, fixing("F1", x, 400)), "fixing-in-exit")) == inside


@pytest.mark.parametrize(("x", "lost"), [(140, True), (161.4, True), (161.5, False), (200, False)])
def test_screws_of_a_channel_over_an_exit(x, lost):
    # The first screw is 40 from the end, at 140; the hole reaches 20, the pilot 1.5.
    plan = plan_of(channel("RW", (100, 400), (900, 400)), Exit("X1", "A", "hole", Point(x, 400), "hole", 40))
    assert named(plan, "exit-covered") == []
    found = named(plan, "screw-in-exit")
    assert [(each.severity, each.things) for each in found] == ([("stop", ("RW", "X1"))] if lost else [])
    assert all("RW-1" in each.sentence for each in found)


@pytest.mark.parametrize(("x", "blocked"), [(460, False), (460.1, True), (500, True), (540, False)])
def test_exit_before_a_member(x, blocked):
    # A post 40 wide at x: its edge is 20 from its centre, the rim of the hole 20 from 500.
    found = named(plan_of(HOLE, EDGE, post("P1", x)), "exit-blocked-behind")
    assert [(each.severity, each.things) for each in found] == ([("stop", ("X1",))] if blocked else [])


@pytest.mark.parametrize(("left", "blocked"), [(520, False), (519.9, True), (490, True)])
def test_exit_before_a_batten(left, blocked):
    batten = BackPart("BP", "A", "batten", Box(left, 0, left + 40, 800).corners())
    assert len(named(plan_of(HOLE, EDGE, batten), "exit-blocked-behind")) == blocked
