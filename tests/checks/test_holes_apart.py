"""Holes apart: three times the larger diameter, between things; and any pair by brute force."""

from dataclasses import replace
from math import hypot

import pytest
from checks.plans import UNIT, fixing, named, plan_of, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Point
from boardplan.model.component_kind import MountingHole


@pytest.mark.parametrize(("x", "apart"), [(327, None), (326.9, 26.9)])
def test_fixings_of_7_and_9(x, apart):
    found = named(plan_of(fixing("F1", 300, 300, 7), fixing("F2", x, 300, 9)), "holes-too-close")
    expected = [] if apart is None else [(pytest.approx(apart), 27, "mm", "warn")]
    assert [(each.measured, each.limit, each.unit, each.severity) for each in found] == expected


def test_holes_on_different_boards_do_not_count():
    plan = plan_of(fixing("F1", 995, 300), fixing("F2", 5, 300, board="B"))
    board = replace(plan.boards["A"], id="B", position=Point(1000, 0))
    assert named(replace(plan, boards={**plan.boards, "B": board}), "holes-too-close") == []


@given(
    st.lists(st.tuples(st.integers(0, 100), st.integers(0, 100)), min_size=1, max_size=4, unique=True),
    st.tuples(st.integers(100, 220), st.integers(200, 320)),
    st.sampled_from([3, 7, 9]),
)
def test_any_fixing_near_any_pattern_as_brute_force_says(pattern, at, bit):
    kind = replace(UNIT, holes=tuple(MountingHole(Point(*each)) for each in pattern))
    plan = plan_of(unit("U1", 150, 250), fixing("F1", *at, bit), kinds=[kind])
    apart = min(hypot(150 + x - at[0], 250 + y - at[1]) for x, y in pattern)
    expected = [pytest.approx(apart)] if apart < 3 * max(bit, 3) else []
    assert [each.measured for each in named(plan, "holes-too-close")] == expected
