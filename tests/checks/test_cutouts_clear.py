"""Cut-outs clear: bodies up to a cut-out's edge and over it."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, channel, named, plan_of, unit

from boardplan.geometry.point import Box

SAWN = replace(BOARD, cutouts=(Box(300, 300, 400, 400).corners(),))


@pytest.mark.parametrize(("x", "over"), [(400, False), (399.9, True), (200, False), (200.1, True)])
def test_unit_over_a_cutout(x, over):
    found = named(plan_of(unit("U1", x, 300), board=SAWN), "over-cutout")
    assert [each.severity for each in found] == (["stop"] if over else [])


@pytest.mark.parametrize(("y", "over"), [(430, False), (429.9, True)])
def test_channel_over_a_cutout(y, over):
    assert len(named(plan_of(channel("RW", (100, y), (600, y)), board=SAWN), "over-cutout")) == over
