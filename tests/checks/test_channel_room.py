"""Channel room: terminals that look at a channel, and bodies beside its cover."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, channel, named, plan_of, unit


@pytest.mark.parametrize(
    ("y", "room"),
    [
        (250, None),  # the terminal B at y + 10 looks down at the channel's top at 220
        (249.9, 39.9),
        (230, 20),
    ],
)
def test_finger_room(y, room):
    found = named(plan_of(channel("RW", (100, 190), (700, 190)), unit("U1", 300, y)), "little-finger-room")
    assert [each.measured for each in found] == ([] if room is None else [pytest.approx(room)])
    assert all("Terminal B of U1 is" in each.sentence for each in found)


def test_terminals_that_look_elsewhere_need_no_room():
    blind = replace(UNIT, terminals=UNIT.terminals[:1])
    plan = plan_of(channel("RW", (100, 190), (700, 190)), unit("U1", 300, 226), kinds=[blind])
    assert named(plan, "little-finger-room") == []


@pytest.mark.parametrize(
    ("depth", "x", "y", "near"),
    [
        (50, 300, 255, False),
        (50, 300, 244.9, True),
        (29, 300, 244.9, False),  # less than half as high as the channel
        (50, 700, 200, False),  # off its end
    ],
)
def test_cover(depth, x, y, near):
    plan = plan_of(channel("RW", (100, 190), (690, 190)), unit("U1", x, y), kinds=[replace(UNIT, depth=depth)])
    assert len(named(plan, "cover-crowded")) == near


def test_channel_without_a_cover():
    plan = plan_of(channel("RW", (100, 190), (690, 190), cover=False), unit("U1", 300, 230))
    assert named(plan, "cover-crowded") == []
