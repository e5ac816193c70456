"""Tray size: sums as worked by hand, gaps from the plan or the rule set and never made up, pulls as the law says."""

from dataclasses import replace

import pytest
from checks.plans import rules

from boardplan.files.rule_set_file import find_rule_set
from boardplan.model.tray import Battery, Tray, TrayGaps
from boardplan.output.customer.tray_size import between_gap, built_over, inside_of, over_of, pull_newton, side_gap

TRAY = Tray("T1", battery=Battery(390, 190, 240, 26), columns=4, rows=1, along="width", gaps=TrayGaps(10, 20, 90))
EARLIER = find_rule_set("trade-practice", "2026.1")


def test_four_batteries_side_by_side():
    """4 x 190 + 3 x 20 + 2 x 10 = 840, 390 + 2 x 10 = 410: worked by hand, as the trade does (no source)."""
    inside = inside_of(TRAY, EARLIER)
    assert (inside.length.total, inside.width.total, inside.height.total) == (840, 410, 330)


def test_the_other_way_round_and_in_rows():
    inside = inside_of(replace(TRAY, along="length", columns=2, rows=2), EARLIER)
    assert (inside.length.total, inside.width.total) == (2 * 390 + 20 + 20, 2 * 190 + 20 + 20)


def test_one_battery_needs_no_gap_between():
    inside = inside_of(replace(TRAY, columns=1, gaps=TrayGaps(side=10)), EARLIER)
    assert (inside.length.total, inside.width.total) == (210, 410)
    assert inside.height.total is None
    assert inside.height.missing == ("room above the posts",)


def test_a_gap_that_is_not_given_is_the_rule_sets_or_a_question():
    bare = replace(TRAY, gaps=TrayGaps())
    assert side_gap(bare, EARLIER).value is None
    assert inside_of(bare, EARLIER).length.total is None
    later = side_gap(bare, rules())
    assert later.value == 10
    assert "planning value unless the battery's own sheet says other" in later.source
    assert between_gap(bare, rules()).value == 20
    assert inside_of(bare, rules()).height.total is None


@pytest.mark.parametrize(
    "tray",
    [
        replace(TRAY, columns=None),
        replace(TRAY, along=None),
        replace(TRAY, battery=Battery(390, None, 240)),
        Tray("T2"),
    ],
)
def test_what_is_not_known_has_no_sum(tray):
    inside = inside_of(tray, rules())
    assert inside.length.total is None
    assert inside.length.missing


@pytest.mark.parametrize(("built", "over"), [(840, 0), (838, -2), (843, 3), (843.5, 3.5)])
def test_what_was_built_is_held_against_what_is_needed(built, over):
    assert built_over(840.0, built) == over
    assert built_over(None, built) is None


def test_a_tray_may_be_larger_by_what_a_tape_shows():
    assert over_of("mm") == 3
    assert over_of("inch") == pytest.approx(25.4 / 8)


@pytest.mark.parametrize(("mass", "pull"), [(26, 400.3), (15, 294.2), (None, None)])
def test_a_boat_battery_stands_90_pounds_or_twice_its_weight(mass, pull):
    """Whichever is less, with no more than an inch of movement: 33 CFR 183.420(a)."""
    tray = replace(TRAY, craft="boat", battery=replace(TRAY.battery, mass=mass))
    assert pull_newton(tray) == (None if pull is None else pytest.approx(pull, abs=0.1))
    assert pull_newton(replace(tray, craft="vehicle")) is None
