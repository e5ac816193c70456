"""Stud stacks: four lugs a stud (ABYC E-11, 11.14.6 as summarised), and thread for what lies on it."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, cable, named, plan_of, unit

UNITS = (unit("U1", 100, 500), unit("U2", 600, 500))


def stacked(count, kinds=(UNIT,)):
    return plan_of(
        *UNITS,
        *(cable(f"W{n}", ("U1", "T"), ("U2", "R"), (150, 650), (800, 650 - n)) for n in range(1, count + 1)),
        kinds=kinds,
    )


@pytest.mark.parametrize(("count", "stops"), [(1, 0), (4, 0), (5, 1)])
def test_four_lugs_may_lie_on_a_stud(count, stops):
    found = named(stacked(count), "too-many-lugs")
    assert [each.severity for each in found] == ["stop"] * stops
    assert all(each.measured == count and "U1.T" in each.sentence for each in found)


def test_cables_alike_count_each():
    plan = plan_of(*UNITS, cable("W1", ("U1", "T"), ("U2", "R"), (150, 650), (800, 650), count=6))
    assert [each.measured for each in named(plan, "too-many-lugs")] == [6]


@pytest.mark.parametrize(("thread", "short"), [(18.6, False), (18.5, True), (None, False)])
def test_thread_holds_palms_washers_and_nut(thread, short):
    # two palms of 2 mm, washers and nut 14.6 mm: 18.6 mm
    terminals = tuple(replace(each, usable_thread=thread) for each in UNIT.terminals)
    found = named(stacked(2, kinds=[replace(UNIT, terminals=terminals)]), "thread-too-short")
    assert [(each.measured, each.limit) for each in found] == ([(thread, pytest.approx(18.6))] if short else [])


@pytest.mark.parametrize(("sizes", "spread"), [(("70", "70"), None), (("70", "70", "70"), 95.8), (("16",) * 4, None)])
def test_lugs_are_fanned_within_what_the_terminal_allows(sizes, spread):
    # Three of 70 mm² take twice 47.9 degrees, 45 to each side are there; four of 16 mm² three times 36.2.
    cables = (
        cable(f"W{n}", ("U1", "T"), ("U2", "R"), (150, 650), (800, 650 - n), conductor=size)
        for n, size in enumerate(sizes, start=1)
    )
    found = named(plan_of(*UNITS, *cables), "lugs-have-no-fan")
    if sizes[0] == "16":
        assert [each.measured for each in found] == [pytest.approx(108.7, abs=0.1)]
    else:
        assert [each.measured for each in found] == ([pytest.approx(spread, abs=0.1)] if spread else [])
    assert all((each.severity, each.limit) == ("warn", 90) for each in found)
