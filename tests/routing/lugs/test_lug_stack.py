"""Lug stacks: order, thread and fan, the fan against rectangles turned by small steps."""

from dataclasses import replace
from math import cos, radians, sin

import pytest
from checks.independent import convex_overlap
from checks.plans import UNIT, cable, plan_of, unit

from boardplan.model.component_kind import ComponentKind
from boardplan.routing.lugs.lug_stack import Barrel, fan_of, least_fan, stacks_of

ONE_WAY = replace(UNIT, terminals=tuple(replace(each, usable_thread=24.0) for each in UNIT.terminals))
ROUND = ComponentKind(
    **{name: getattr(UNIT, name) for name in ("id", "name", "family", "prefix", "outline", "depth", "mass", "flange")},
    terminals=tuple(replace(each, exit=None) for each in UNIT.terminals),
)


def stacked(*sizes, kind=ONE_WAY, **fields):
    cables = (
        cable(f"W{n}", ("U1", "T"), ("U2", "R"), (150, 650), (800, 650 - n), conductor=size, **fields)
        for n, size in enumerate(sizes, start=1)
    )
    return plan_of(unit("U1", 100, 500), unit("U2", 600, 500), *cables, kinds=[kind])


def test_the_largest_conductor_lies_on_the_contact_face():
    # ABYC E-11, 11.14.6 as summarised: largest current next to the face; equal ones by their ids.
    (stack,) = stacks_of(stacked("16", "70", "35", "70"))
    assert [each.cable for each in stack.lugs] == ["W2", "W4", "W3", "W1"]
    assert (stack.place, stack.size, stack.count) == ("U1.T", "M8", 4)


def test_thread_is_the_worked_example_of_the_trade():
    # 3.6 + 3.6 + 2.0 of palms + washers 2.0 + 1.6 + nut 8 + two turns 3 = 23.8 mm; common practice, no source.
    (stack,) = stacks_of(stacked("70", "70", "16"))
    assert stack.palms == pytest.approx(9.2)
    assert stack.asked == pytest.approx(23.8)
    assert stack.short == 0
    (longer,) = stacks_of(stacked("70", "70", "16", "16"))
    assert longer.short == pytest.approx(1.8)


def test_a_palm_that_nobody_measured_leaves_the_thread_open():
    (stack,) = stacks_of(stacked("16", "lead"))
    assert (stack.palms, stack.asked, stack.short) == (None, None, 0)


def rectangle(barrel, length, degrees):
    c, s = cos(radians(degrees)), sin(radians(degrees))
    own = (
        (barrel.begins, -barrel.half),
        (barrel.begins + length, -barrel.half),
        (barrel.begins + length, barrel.half),
        (barrel.begins, barrel.half),
    )
    return [(x * c - y * s, x * s + y * c) for x, y in own]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (Barrel(18, 8), Barrel(18, 8)),
        (Barrel(18, 8), Barrel(13, 4.25)),
        (Barrel(22, 10), Barrel(13, 3)),
        (Barrel(20, 9), Barrel(16, 6)),
    ],
)
def test_fan_is_the_first_angle_at_which_the_rectangles_are_clear(one, other):
    """Turned in steps of a fiftieth of a degree, by separating axes."""
    steps = (each / 50 for each in range(180 * 50))
    first = next(angle for angle in steps if convex_overlap(rectangle(one, 22, 0), rectangle(other, 22, angle)) <= 0)
    assert least_fan(one, other) == pytest.approx(first, abs=0.03)
    assert least_fan(other, one) == pytest.approx(least_fan(one, other))


def test_a_barrel_at_the_stud_itself_has_no_fan():
    assert least_fan(Barrel(0, 8), Barrel(0, 8)) is None


def test_room_to_fan_is_what_a_terminal_lets_a_cable_be_askew():
    plan = stacked("70", "70", "70")
    (stack,) = stacks_of(plan)
    fan = fan_of(plan, stack)
    assert fan.room == 90  # 45 degrees to each side
    assert fan.spread == pytest.approx(2 * fan.least)
    assert fan.least == pytest.approx(47.92, abs=0.01)


def test_lugs_go_all_round_a_free_stud():
    plan = stacked("70", "70", "70", kind=ROUND)
    (stack,) = stacks_of(plan)
    fan = fan_of(plan, stack)
    assert fan.room == 360
    assert fan.spread == pytest.approx(3 * fan.least)


def test_the_best_order_counts():
    # A thin lug between two thick ones takes less than two thick ones side by side and the thin one outside.
    plan = stacked("120", "16", "120")
    (stack,) = stacks_of(plan)
    thick, thin = Barrel(22, 10), Barrel(13, 4.25)
    side, apart = least_fan(thick, thick), least_fan(thick, thin)
    assert fan_of(plan, stack).spread == pytest.approx(min(2 * apart, side + apart))


def test_one_lug_and_more_than_four_have_no_fan():
    for sizes in (["70"], ["16"] * 5):
        plan = stacked(*sizes)
        (stack,) = stacks_of(plan)
        assert fan_of(plan, stack) is None
