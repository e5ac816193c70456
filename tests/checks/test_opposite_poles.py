"""Opposite poles: gaps between lugs and studs, against polygons measured segment by segment."""

from dataclasses import replace
from math import cos, hypot, radians, sin

import pytest
from checks.independent import polygon_gap
from checks.plans import UNIT, cable, named, plan_of, unit

from boardplan.checks.review import refreshed, review_of
from boardplan.geometry.point import Point
from boardplan.model.component_kind import Terminal

PALM, OUTSIDE, STOP, MOUTH = 25, 16, 18, 40  # 70 mm²: planning table of the trade, common practice, no source


def kind(name, *studs, size="M8"):
    terminals = tuple(
        Terminal(f"S{n}", Point(x, y), z, "stud", size, exit_to, pole)
        for n, (x, y, z, exit_to, pole) in enumerate(studs)
    )
    return replace(UNIT, id=name, terminals=(*terminals, *UNIT.terminals[2:]))


def poles(apart, rise=0, headings=(90.0, 90.0), second="-"):
    """A unit with two studs side by side, both with a cable of 70 mm² upwards."""
    two = kind("two", (20, 90, 20, headings[0], "+"), (20 + apart, 90, 20 + rise, headings[1], second))
    return plan_of(
        unit("U1", 300, 300, kind="two"),
        unit("U2", 100, 600),
        unit("U3", 700, 600),
        cable("W1", ("U1", "S0"), ("U2", "R"), (320, 650), conductor="70"),
        cable("W2", ("U1", "S1"), ("U3", "L"), (320 + apart, 650), conductor="70"),
        kinds=(UNIT, two),
    )


@pytest.mark.parametrize(("apart", "gap"), [(35, None), (34.9, 9.9), (30, 5), (25, 0)])
def test_lugs_side_by_side(apart, gap):
    # Palms of 25 mm: what is between them is the pitch less 25.
    found = named(poles(apart), "opposite-lugs-near")
    assert [each.measured for each in found] == ([] if gap is None else [pytest.approx(gap)])
    assert all(each.severity == "stop" and each.limit == 10 and each.things == ("W1", "W2") for each in found)


def test_lugs_of_one_polarity_may_lie_close():
    assert named(poles(30, second="+"), "opposite-lugs-near") == []


def test_poles_that_are_not_known_are_not_judged():
    assert named(poles(30, second=""), "opposite-lugs-near") == []


@pytest.mark.parametrize(("rise", "near"), [(16, 1), (24, 1), (25, 0)])
def test_one_stud_higher_than_the_other_counts(rise, near):
    # Jackets of 16 mm: (25 - 16)² + 5² of plan is more than 10²; 8 of height with 5 is less.
    found = named(poles(30, rise=rise), "opposite-lugs-near")
    assert len(found) == near
    assert all(each.measured == pytest.approx(hypot(5, rise - 16)) for each in found)


def outline(at, degrees):
    """Palm and barrel as two rectangles, by hand."""
    c, s = cos(radians(degrees)), sin(radians(degrees))

    def turned(left, right, half):
        own = ((left, -half), (right, -half), (right, half), (left, half))
        return [(x * c - y * s + at[0], x * s + y * c + at[1]) for x, y in own]

    return turned(-0.525 * PALM, STOP, PALM / 2), turned(STOP, MOUTH, OUTSIDE / 2)


@pytest.mark.parametrize("turn", [0, 20, 37, 45, 62, 90])
@pytest.mark.parametrize("apart", [36, 44, 58])
def test_lugs_that_lean_towards_each_other(turn, apart):
    """The second lug leans to the left by a turn; the gap is that of four rectangles, segment by segment."""
    two = kind("two", (20, 90, 20, None, "+"), (20 + apart, 90, 20, None, "-"))
    far = Point(320 + apart, 390).ahead(90 + turn, 260)
    plan = plan_of(
        unit("U1", 300, 300, kind="two"),
        unit("U2", 100, 650),
        unit("U3", 700, 600),
        cable("W1", ("U1", "S0"), ("U2", "R"), (320, 700), conductor="70"),
        cable("W2", ("U1", "S1"), ("U3", "L"), tuple(far), conductor="70"),
        kinds=(UNIT, two),
    )
    ours, theirs = outline((320, 390), 90), outline((320 + apart, 390), 90 + turn)
    gap = min(polygon_gap(a, b) for a in ours for b in theirs)
    found = named(plan, "opposite-lugs-near")
    assert [each.measured for each in found] == ([pytest.approx(gap, abs=1e-6)] if gap < 10 else [])


@pytest.mark.parametrize(("apart", "near"), [(33, 0), (32.9, 1)])
def test_bare_studs_of_one_component(apart, near):
    # M8 threads: 25 mm between them are 33 mm from centre to centre.
    two = kind("two", (20, 90, 20, 90.0, "+"), (20 + apart, 90, 20, 90.0, "-"))
    found = named(plan_of(unit("U1", 300, 300, kind="two"), kinds=[two]), "opposite-studs-near")
    assert [each.severity for each in found] == ["stop"] * near
    assert all(each.measured == pytest.approx(24.9) and each.things == ("U1",) for each in found)


@pytest.mark.parametrize(("between", "near"), [(5, 1), (12.9, 1), (13.1, 0), (24, 0)])
def test_bare_studs_of_neighbours(between, near):
    # Studs 10 mm inside both outlines, M8: 20 - 8 = 12 mm more than what is between the units.
    plus = kind("plus", (90, 50, 20, None, "+"))
    minus = kind("minus", (10, 50, 20, None, "-"))
    plan = plan_of(unit("U1", 300, 300, kind="plus"), unit("U2", 400 + between, 300, kind="minus"), kinds=(plus, minus))
    found = named(plan, "opposite-studs-near")
    assert [each.things for each in found] == [("U1", "U2")] * near
    assert all(each.measured == pytest.approx(between + 12) for each in found)


@pytest.mark.parametrize(("up", "near"), [(49, 1), (53.9, 1), (54.1, 0)])
def test_a_lug_that_looks_at_an_opposite_stud(up, near):
    # The mouth lies 40 mm from its stud, the thread of M8 begins 4 mm before its centre: up - 44.
    two = kind("two", (50, 40, 20, 90.0, "+"), (50, 40 + up, 20, 90.0, "-"))
    plan = plan_of(
        unit("U1", 300, 300, kind="two"),
        unit("U2", 600, 600),
        cable("W1", ("U1", "S0"), ("U2", "L"), (350, 650), conductor="70"),
        kinds=(UNIT, two),
    )
    found = named(plan, "lug-near-opposite-stud")
    assert [each.things for each in found] == [("W1", "U1")] * near
    assert all(each.measured == pytest.approx(up - 44) for each in found)


def test_a_cable_from_plus_to_minus_has_lugs_too_near():
    two = kind("two", (20, 50, 20, 0.0, "+"), (80, 50, 20, 180.0, "-"))
    plan = plan_of(
        unit("U1", 300, 300, kind="two"), cable("W1", ("U1", "S0"), ("U1", "S1"), conductor="70"), kinds=[two]
    )
    way = named(plan, "cable-without-way")
    found = named(plan, "opposite-lugs-near")
    assert bool(way) != bool(found)


def test_an_earlier_edition_does_not_ask():
    plan = poles(30)
    limits = {name: each for name, each in plan.rules.limits.items() if not name.startswith("opposite")}
    assert named(replace(plan, rules=replace(plan.rules, limits=limits)), "opposite-lugs-near") == []


def refreshed_alike(plan, changed):
    """Say whether a review kept up to date says what one from scratch does, and how many lugs it finds too near."""
    after, anew = refreshed(review_of(plan), changed), review_of(changed)
    assert after.findings == anew.findings
    return len([each for each in after.findings if each.name == "opposite-lugs-near"])


def test_a_thinner_conductor_clears_the_lugs():
    plan = poles(30)
    thinner = [replace(each, conductor="16") for each in plan.cables.values()]
    assert refreshed_alike(plan, plan.with_things(thinner)) == 0
    assert refreshed_alike(plan.with_things(thinner), plan) == 1


@pytest.mark.parametrize(("left", "near"), [(0, 0), (4, 0), (6, 1), (24, 1)])
def test_a_neighbour_that_comes_nearer_is_found(left, near):
    """Palms of 25 mm on studs 10 mm inside two units 20 mm apart: 15 mm between them, less what one is moved."""
    plus, minus = kind("plus", (90, 50, 20, 90.0, "+")), kind("minus", (10, 50, 20, 90.0, "-"))
    plan = plan_of(
        unit("U1", 300, 300, kind="plus"),
        unit("U2", 420, 300, kind="minus"),
        unit("U3", 100, 600),
        unit("U4", 700, 600),
        cable("W1", ("U1", "S0"), ("U3", "R"), (390, 650), conductor="70"),
        cable("W2", ("U2", "S0"), ("U4", "L"), (430, 650), conductor="70"),
        kinds=(UNIT, plus, minus),
    )
    moved = [unit("U2", 420 - left, 300, kind="minus")]
    moved += [replace(plan.cables["W2"], pins=(Point(430 - left, 650),))]
    assert refreshed_alike(plan, plan.with_things(moved)) == near
