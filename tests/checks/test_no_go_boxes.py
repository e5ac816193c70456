"""No-go boxes: reached into from the front view and by depth; fronts and heads of fixings before them."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, channel, fixing, named, plan_of, unit

from boardplan.model.board import NoGoBox
from boardplan.model.component_kind import KeepClear


def pipe(from_z=0.0, to_z=200.0):
    return NoGoBox("pipe", "A", "Water pipe", 400, 100, 50, 600, from_z, to_z)


@pytest.mark.parametrize(
    ("x", "from_z", "inside"),
    [(300, 0, False), (300.1, 0, True), (300.1, 49.9, True), (300.1, 50, False), (450, 0, False)],
)
def test_unit_50_deep(x, from_z, inside):
    found = named(plan_of(pipe(from_z), unit("U1", x, 300)), "in-no-go-box")
    assert [each.things for each in found] == ([("U1", "pipe")] if inside else [])


@pytest.mark.parametrize(("from_z", "inside"), [(60, False), (59.9, True)])
def test_channel_60_high(from_z, inside):
    assert len(named(plan_of(pipe(from_z), channel("RW", (100, 400), (700, 400))), "in-no-go-box")) == inside


@pytest.mark.parametrize(("from_z", "room"), [(130, None), (129.9, 79.9), (50, 0)])
def test_front_asks_80(from_z, room):
    fused = replace(UNIT, keep_clear=(KeepClear("front", 80, "fuse pull"),))
    found = named(plan_of(pipe(from_z), unit("U1", 350, 300), kinds=[fused]), "front-blocked")
    assert [each.measured for each in found] == ([] if room is None else [pytest.approx(room)])


@pytest.mark.parametrize(("x", "from_z", "blocked"), [(425, 0, True), (425, 30, False), (395, 0, False)])
def test_fixing_head(x, from_z, blocked):
    assert len(named(plan_of(pipe(from_z), fixing("F1", x, 400)), "fixing-in-no-go-box")) == blocked
