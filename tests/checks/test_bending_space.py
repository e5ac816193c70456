"""Bending space: NEC Table 312.6(A), one wire a terminal, against bodies at the limit."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, cable, channel, named, plan_of, unit

from boardplan.files.rule_set_file import find_rule_set
from boardplan.geometry.point import Point
from boardplan.model.component_kind import Terminal

INCH = 25.4


@pytest.mark.parametrize(
    ("size", "inches"),
    # NEC Table 312.6(A): 8-6 AWG 1-1/2 in, 4-3 AWG 2, 2 AWG 2-1/2, 1/0-2/0 3-1/2, 3/0-4/0 4
    [(16, 1.5), (25, 2), (35, 2.5), (50, 3.5), (70, 3.5), (95, 4), (120, 4)],
)
def test_limits_are_those_of_the_table(size, inches):
    rules = find_rule_set("trade-practice", "2026.1")
    assert rules.value(f"bending-space-{size}") == pytest.approx(inches * INCH)


def bent(room, conductor="70", mouth=40):
    """A cable that leaves U1.T upwards from (150, 390) and turns right; U3 stands `room` beyond its lug's mouth."""
    return plan_of(
        unit("U1", 100, 300),
        unit("U2", 700, 300),
        unit("U3", 100, 390 + mouth + room),
        cable("W1", ("U1", "T"), ("U2", "T"), (150, 500), (750, 500), conductor=conductor),
    )


@pytest.mark.parametrize(("room", "short"), [(88.9, False), (88.8, True), (20, True)])
def test_the_first_body_straight_out(room, short):
    found = [each for each in named(bent(room), "bending-space-short") if each.things == ("W1", "U3")]
    assert [(each.measured, each.severity) for each in found] == ([(pytest.approx(room), "stop")] if short else [])
    assert all("NEC Table 312.6(A)" in each.sentence and "U1.T" in each.sentence for each in found)


def test_thin_cables_need_none():
    assert named(bent(5, conductor="2.5"), "bending-space-short") == []


def test_a_straight_jumper_is_not_bent():
    plan = plan_of(unit("U1", 100, 300), unit("U2", 100, 560), cable("W1", ("U1", "T"), ("U2", "B"), conductor="70"))
    assert named(plan, "bending-space-short") == []


def test_the_channel_it_runs_in_is_no_obstacle():
    things = (unit("U1", 100, 300), unit("U2", 700, 300), channel("RW", (60, 480), (900, 480)))
    inside = cable("W1", ("U1", "T"), ("U2", "T"), (150, 480), (750, 480), conductor="16", way="channel")
    beside = cable("W1", ("U1", "T"), ("U2", "T"), (150, 430), (750, 430), conductor="16", way="outside")
    assert named(plan_of(*things, inside), "bending-space-short") == []
    assert {each.things for each in named(plan_of(*things, beside), "bending-space-short")} == {("W1", "RW")}


def into_gland(room, *pins, conductor="3x6"):
    """A gland in U1's upper edge that looks up; U3 stands `room` above it."""
    entry = replace(
        UNIT, id="entry", terminals=(Terminal("G", Point(50, 100), 20, "gland", "", 90.0), *UNIT.terminals[1:])
    )
    return plan_of(
        unit("U1", 100, 300, kind="entry"),
        unit("U2", 700, 300),
        unit("U3", 100, 400 + room),
        cable("W1", ("U1", "G"), ("U2", "T"), *pins, conductor=conductor, cable_class="ac"),
        kinds=(UNIT, entry),
    )


@pytest.mark.parametrize(("room", "short"), [(120, False), (119.9, True), (90, True)])
def test_room_before_a_gland(room, short):
    # 60 mm for nut and spanner, and the bend of a sheathed cable of 15 mm, 4 x: common practice, no source.
    plan = into_gland(room, (150, 480), (750, 480))
    found = named(plan, "gland-room-short")
    assert [(each.measured, each.limit) for each in found] == ([(pytest.approx(room), 120)] if short else [])
    assert all(each.severity == "warn" and "U1.G" in each.sentence for each in found)
