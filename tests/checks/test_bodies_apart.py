"""Bodies apart: gaps at the limit, overlaps, covers that snap off, joined channels; and any pair by brute force."""

from dataclasses import replace

import pytest
from checks.independent import convex_overlap, polygon_gap, turned_rectangle
from checks.plans import UNIT, channel, named, plan_of, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.checks.bodies_apart import box_gap
from boardplan.geometry.point import Box
from boardplan.model.component_kind import KeepClear


@pytest.mark.parametrize(
    ("x", "y", "gap"),
    [
        (405, 300, None),
        (404.9, 300, 4.9),
        (400, 300, 0),
        (403, 404, None),  # 3 aside and 4 above are 5 apart: the triangle 3-4-5
        (403, 403.9, 4.9204),
    ],
)
def test_gap_between_components(x, y, gap):
    found = named(plan_of(unit("U1", 300, 300), unit("U2", x, y)), "gap-too-small")
    assert [each.measured for each in found] == ([] if gap is None else [pytest.approx(gap, abs=1e-3)])


def test_box_gap_of_3_4_5():
    assert box_gap(Box(0, 0, 10, 10), Box(40, 50, 60, 60)) == 50.0


@pytest.mark.parametrize(("x", "overlap"), [(400, False), (399.9, True), (300, True)])
def test_overlap(x, overlap):
    plan = plan_of(unit("U1", 300, 300), unit("U2", x, 300))
    assert len(named(plan, "bodies-overlap")) == overlap
    assert len(named(plan, "gap-too-small")) == (not overlap)


@pytest.mark.parametrize(
    ("side", "x", "near"),
    [("right", 412, False), ("right", 411.9, True), ("left", 411.9, False), ("left", 404.9, True)],
)
def test_beside_a_cover_that_snaps_off(side, x, near):
    snappy = replace(UNIT, id="snappy", keep_clear=(KeepClear(side, 1, "cover"),))
    plan = plan_of(unit("U1", 300, 300, kind="snappy"), unit("U2", x, 300), kinds=[UNIT, snappy])
    found = named(plan, "gap-too-small")
    assert [each.limit for each in found] == ([12 if side == "right" else 5] if near else [])


@pytest.mark.parametrize(("y", "near"), [(435, False), (434.9, True)])
def test_component_and_channel(y, near):
    plan = plan_of(channel("RW", (100, 400), (600, 400)), unit("U1", 300, y))
    assert len(named(plan, "gap-too-small")) == near


@pytest.mark.parametrize(
    ("line", "overlap"),
    [
        (((100, 430), (100, 700)), False),  # a branch butted to the wall of the main one
        (((100, 400), (100, 700)), False),  # drawn to its centre line
        (((600, 400), (900, 400)), False),  # end to end
        (((300, 200), (300, 700)), True),  # straight across
        (((200, 450), (500, 450)), True),  # side by side, 10 mm into each other
        (((200, 460), (500, 460)), False),  # side by side, touching
    ],
)
def test_channels_may_join_but_not_cross(line, overlap):
    plan = plan_of(channel("RW1", (60, 400), (600, 400)), channel("RW2", *line))
    assert len(named(plan, "bodies-overlap")) == overlap
    assert named(plan, "gap-too-small") == []


SIDES = st.integers(20, 200)
PLACES = st.integers(200, 500)
TURNS = st.sampled_from([0, 90, 180, 270, 15, 33, 45, 200])


@given(st.tuples(SIDES, SIDES, PLACES, PLACES, TURNS), st.tuples(SIDES, SIDES, PLACES, PLACES, TURNS))
def test_any_two_rectangles_as_brute_force_says(one, other):
    rings = [turned_rectangle(*each) for each in (one, other)]
    depth = convex_overlap(*rings)
    gap = polygon_gap(*rings) if depth <= 0 else 0.0
    if abs(gap - 5) < 1e-6 or abs(depth) < 1e-2:
        return  # on the border itself a rounding of floats decides
    kinds = [
        replace(UNIT, id=name, outline=Box(0, 0, each[0], each[1]).corners(), holes=(), terminals=())
        for name, each in (("one", one), ("other", other))
    ]
    placed = [unit(name, each[2], each[3], each[4], kind=name) for name, each in (("one", one), ("other", other))]
    plan = plan_of(*(replace(each, id=each.kind.upper()) for each in placed), kinds=kinds)
    assert len(named(plan, "bodies-overlap")) == (depth > 0)
    found = named(plan, "gap-too-small")
    assert [each.measured for each in found] == ([pytest.approx(gap, abs=1e-6)] if depth <= 0 and gap < 5 else [])
