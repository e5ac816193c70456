"""Cables apart: AC beside other classes and signal leads beside thick DC, measured by hand."""

from dataclasses import replace

import pytest
from checks.plans import cable, named, plan_of, unit

FROM, TO = ("U1", "R"), ("U2", "L")
ELSEWHERE = ("U3", "R"), ("U4", "L")
UNITS = (unit("U1", 100, 500), unit("U2", 800, 500), unit("U3", 100, 300), unit("U4", 800, 300))


def two(y, other="dc", conductor="wire", **fields):
    """An AC cable at y 400 and another one above it; both jackets are 6 mm unless the conductor is another."""
    return plan_of(
        *UNITS,
        cable("W1", FROM, TO, (250, 550), (250, 400), (700, 400), (700, 550), cable_class=fields.pop("first", "ac")),
        cable("W2", *ELSEWHERE, (260, 350), (260, y), (690, y), (690, 350), conductor=conductor, cable_class=other),
    )


@pytest.mark.parametrize(("y", "apart"), [(456, None), (455.9, 49.9), (430, 24), (400, -6)])
def test_gap_is_from_jacket_to_jacket(y, apart):
    found = named(two(y), "ac-beside-others")
    assert [each.measured for each in found] == ([] if apart is None else [pytest.approx(apart)])
    assert all("430 mm" in each.sentence and "50 mm" in each.sentence for each in found)
    assert all(each.things == ("W1", "W2") for each in found)


def test_ac_beside_ac_is_fine():
    assert named(two(410, other="ac"), "ac-beside-others") == []


def test_a_square_crossing_is_fine():
    plan = plan_of(
        *UNITS,
        cable("W1", FROM, TO, cable_class="ac"),
        cable("W2", ("U3", "T"), ("U4", "T"), (150, 700), (450, 700), (450, 420), (850, 420)),
    )
    assert named(plan, "ac-beside-others") == []


def test_a_short_stretch_side_by_side_is_fine():
    plan = plan_of(
        *UNITS,
        cable("W1", FROM, TO, cable_class="ac"),
        cable("W2", ("U3", "T"), ("U4", "T"), (150, 450), (400, 450), (400, 530), (500, 530), (500, 450), (850, 450)),
    )
    assert named(plan, "ac-beside-others") == []  # 100 mm at 20 mm; more than that counts


@pytest.mark.parametrize(("conductor", "notes"), [("16", 0), ("25", 1), ("70", 1)])
def test_signal_beside_thick_dc_is_a_note(conductor, notes):
    found = named(two(430, conductor=conductor, first="signal"), "signal-beside-thick-dc")
    assert [each.severity for each in found] == ["note"] * notes
    assert all(each.sentence.startswith("Signal cable W1") for each in found)


def common_unit(beyond):
    """AC and DC leave U1 side by side, 20 mm apart, and part `beyond` further along than 150 mm from its body."""
    turn = 200 + 150 + beyond
    return plan_of(
        *UNITS,
        cable("W1", FROM, TO, (turn, 550), (turn, 450), (750, 450), (750, 550), cable_class="ac"),
        cable("W2", ("U1", "T"), ("U2", "T"), (150, 620), (150, 570), (turn, 570), (turn, 700), (850, 700)),
    )


@pytest.mark.parametrize(("beyond", "length"), [(100, None), (110, 110), (200, 200)])
def test_cables_of_one_unit_part_within_150_mm_of_it(beyond, length):
    # 100 mm side by side are free anyway; common practice, no source.
    found = named(common_unit(beyond), "ac-beside-others")
    assert [each.measured for each in found] == ([] if length is None else [pytest.approx(14)])
    assert all(f"for {length} mm" in each.sentence for each in found)


def test_an_earlier_edition_lets_cables_of_one_unit_lie_together():
    plan = plan_of(
        *UNITS,
        cable("W1", FROM, TO, cable_class="ac"),
        cable("W2", ("U1", "T"), ("U4", "T"), (150, 620), (150, 560), (650, 560), (650, 420), (850, 420)),
    )
    earlier = {name: each for name, each in plan.rules.limits.items() if name != "ac-free-near-unit"}
    assert [each.measured for each in named(plan, "ac-beside-others")] == [pytest.approx(4)]
    assert named(replace(plan, rules=replace(plan.rules, limits=earlier)), "ac-beside-others") == []


def crossed(run, other="dc"):
    """A level AC cable at y 550 and one that crosses it, going up by 160 mm and aside by `run`."""
    return plan_of(
        *UNITS,
        unit("U5", 400, 650),
        cable("W1", FROM, TO, cable_class="ac"),
        cable("W2", ("U5", "B"), ("U3", "T"), (450, 630), (450 + run, 470), (150, 470), cable_class=other),
    )


@pytest.mark.parametrize(("run", "askew"), [(0, 0), (28, 0), (29, 1), (160, 1)])
def test_ac_is_crossed_square(run, askew):
    # 10 degrees off square are 28.2 mm aside over 160 mm; common practice, no source.
    found = named(crossed(run), "ac-crosses-askew")
    assert [each.severity for each in found] == ["warn"] * askew
    assert all(each.things == ("W1", "W2") and each.place.y == pytest.approx(550) for each in found)
    assert all(each.place.x == pytest.approx(450 + run / 2) for each in found)


def test_ac_may_cross_ac_askew():
    assert named(crossed(160, other="ac"), "ac-crosses-askew") == []


@pytest.mark.parametrize(("x", "askew"), [(330, 0), (420, 1)])
def test_near_their_common_unit_cables_may_cross_askew(x, askew):
    plan = plan_of(
        *UNITS,
        cable("W1", FROM, TO, cable_class="ac"),
        cable("W2", ("U1", "T"), ("U3", "R"), (150, 630), (x - 80, 630), (x + 80, 470), (x + 80, 350)),
    )
    assert len(named(plan, "ac-crosses-askew")) == askew
