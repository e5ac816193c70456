"""Lug fits: lugs ordered for another stud than the terminal's, and studs nobody measured."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, cable, named, plan_of, unit

from boardplan.model.cable import Lug, TerminalEnd


def plan_with(lug, size="M8", **fields):
    studs = tuple(replace(each, size=size) for each in UNIT.terminals)
    start = TerminalEnd("U1", "T", lug)
    cables = replace(cable("W1", ("U1", "T"), ("U2", "R"), (150, 500), **fields), start=start)
    return plan_of(unit("U1", 100, 300), unit("U2", 500, 300), cables, kinds=[replace(UNIT, terminals=studs)])


@pytest.mark.parametrize(
    ("lug", "size", "misses"),
    [
        (None, "M8", False),
        (Lug("M8"), "M8", False),
        (Lug("m 8"), "M8", False),
        (Lug("M10"), "M8", True),
        (Lug("M6"), "M8", True),
        (Lug("5/16 in"), "M8", True),  # near, and not the same
        (Lug("M10"), "", False),  # asked elsewhere what the stud is
    ],
)
def test_lug_for_another_stud(lug, size, misses):
    found = named(plan_with(lug, size), "lug-misses-stud")
    assert [(each.severity, each.things) for each in found] == ([("stop", ("W1",))] if misses else [])


def test_both_sizes_are_named():
    (found,) = named(plan_with(Lug("M10")), "lug-misses-stud")
    assert "U1.T is for a stud M10; the stud there is M8" in found.sentence


@pytest.mark.parametrize(("lug", "size", "asked"), [(None, "", 1), (None, "M8", 0), (Lug("M8"), "", 0)])
def test_stud_that_nobody_measured(lug, size, asked):
    assert [each.severity for each in named(plan_with(lug, size), "stud-unknown")] == ["note"] * asked


def test_leads_with_moulded_ends_get_no_lug():
    plan = plan_with(Lug("M10"), conductor="lead", cable_class="signal")
    assert named(plan, "lug-misses-stud") == []


@pytest.mark.parametrize(("pad", "over"), [(None, None), (23, None), (22.9, 2.1), (30, None)])
def test_palm_on_its_pad(pad, over):
    # 70 mm²: a palm of 25 mm may stand out 2 mm from its pad; common practice, no source.
    studs = tuple(replace(each, pad=pad) for each in UNIT.terminals)
    thick = cable("W1", ("U1", "T"), ("U2", "R"), (150, 500), conductor="70")
    plan = plan_of(unit("U1", 100, 300), unit("U2", 500, 300), thick, kinds=[replace(UNIT, terminals=studs)])
    found = named(plan, "palm-over-pad")
    assert [(each.measured, each.severity) for each in found] == (
        [] if over is None else [(pytest.approx(over), "stop")]
    )
