"""Cable bends: legs at what their bends and ends need, with the preferred and the least radius."""

from dataclasses import replace
from math import radians, tan

import pytest
from checks.plans import UNIT, WIRE, cable, named, plan_of, unit

from boardplan.geometry.point import Point
from boardplan.model.component_kind import Terminal

TWO = unit("U1", 100, 100), unit("U2", 700, 100)
MOUTH = WIRE.lug.mouth
PREFER, LEAST = 4 * 6, 3 * 6
"""Radii of fine-strand cable 6 thick: 4 and 3 times its diameter, common practice, no source."""


def names(plan):
    return [each.name for name in ("bend-too-tight", "bend-tighter-than-preferred") for each in named(plan, name)]


@pytest.mark.parametrize(
    ("rise", "name"),
    [
        (MOUTH + PREFER, None),
        (MOUTH + PREFER - 0.1, "bend-tighter-than-preferred"),
        (MOUTH + LEAST, "bend-tighter-than-preferred"),
        (MOUTH + LEAST - 0.1, "bend-too-tight"),
    ],
)
def test_square_corner_behind_a_lug(rise, name):
    top = 190 + rise
    plan = plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), (150, top), (750, top)))
    assert names(plan) == ([name] if name else [])


@pytest.mark.parametrize(
    ("step", "name"), [(2 * PREFER, None), (2 * PREFER - 0.1, "bend-tighter-than-preferred"), (35.9, "bend-too-tight")]
)
def test_leg_between_two_corners(step, name):
    pins = (150, 400), (400, 400), (400, 400 + step), (750, 400 + step)
    assert names(plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), *pins))) == ([name] if name else [])


@pytest.mark.parametrize(("sort", "straight"), [("gland", 20), ("clamp", 6), ("plug", 12)])
def test_what_stands_straight_behind_other_terminals(sort, straight):
    kind = replace(UNIT, terminals=(Terminal("T", Point(50, 90), 20, sort, "", 90.0),))
    for short, name in ((0, None), (0.1, "bend-tighter-than-preferred")):
        top = 190 + straight + PREFER - short
        plan = plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), (150, top), (750, top)), kinds=[kind])
        assert names(plan) == ([name] if name else [])


def test_slanted_corner_needs_the_tangent_of_half_its_turn():
    # From straight up to 45 degrees to the right: R tan(22.5°).
    need = MOUTH + PREFER * tan(radians(22.5))
    for short, name in ((0, None), (0.1, "bend-tighter-than-preferred")):
        top = 190 + need - short
        plan = plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), (150, top), (350, top + 200), (750, top + 200)))
        assert names(plan) == ([name] if name else [])


def test_doubling_back_is_a_stop():
    plan = plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), (150, 400), (150, 300), (750, 300)))
    (found,) = named(plan, "bend-too-tight")
    assert "doubles back" in found.sentence


def test_sentence_names_leg_need_and_radius():
    plan = plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), (150, 230), (750, 230)))
    (found,) = named(plan, "bend-too-tight")
    for words in ("40 mm", "46 mm", "radius 18 mm", found.source):
        assert words in found.sentence


@pytest.mark.parametrize(
    ("rise", "left"),
    [(MOUTH + 20 + LEAST, None), (MOUTH + 20 + LEAST - 0.1, 19.9), (MOUTH + LEAST, 0), (MOUTH + LEAST - 0.1, None)],
)
def test_straight_behind_a_lug(rise, left):
    # 20 mm, then the least bend; where not even that has room the leg itself is found. Common practice, no source.
    top = 190 + rise
    found = named(
        plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "R"), (150, top), (900, top), (900, 150))), "bend-at-lug"
    )
    assert [each.measured for each in found] == ([] if left is None else [pytest.approx(left)])
    assert all("U1.T" in each.sentence and each.severity == "warn" for each in found)
