"""Holes behind: drills near a batten on the back and near the nuts of other units."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, fixing, named, plan_of, unit

from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart
from boardplan.model.component_kind import MountingHole

BATTEN = BackPart("BP", "A", "batten", Box(400, 0, 440, 800).corners())
ONE_HOLE = replace(UNIT, holes=(MountingHole(Point(50, 50)),))
NUTTED = replace(ONE_HOLE, id="nutted", fastener="nut")


@pytest.mark.parametrize(
    ("kind", "x", "room"),
    [
        ("unit", 343.5, None),  # 400 - 393.5 - 1.5
        ("unit", 343.6, 4.9),
        ("unit", 370, 0),
        ("nutted", 335, None),  # its flange of 20 counts, not its drill of 8
        ("nutted", 335.1, 4.9),
    ],
)
def test_batten(kind, x, room):
    found = named(plan_of(BATTEN, unit("U1", x, 300, kind=kind), kinds=[ONE_HOLE, NUTTED]), "hole-meets-back-part")
    assert [each.measured for each in found] == ([] if room is None else [pytest.approx(room)])


def test_fixings_go_through_battens():
    assert named(plan_of(BATTEN, fixing("F1", 420, 300)), "hole-meets-back-part") == []


@pytest.mark.parametrize(("x", "near"), [(368.5, False), (368.4, True)])
def test_fixing_near_a_nut(x, near):
    # The nut sits at 350: 10 flange + 5 + 3.5 of the fixing's own hole.
    plan = plan_of(unit("U1", 300, 300, kind="nutted"), fixing("F1", x, 350), kinds=[NUTTED])
    found = named(plan, "hole-meets-nut")
    assert [each.things for each in found] == ([("F1", "U1")] if near else [])


def test_nuts_of_one_unit_are_its_makers_affair():
    twin = replace(NUTTED, holes=(MountingHole(Point(50, 50)), MountingHole(Point(60, 50))))
    assert named(plan_of(unit("U1", 300, 300, kind="nutted"), kinds=[twin]), "hole-meets-nut") == []


@pytest.mark.parametrize(("apart", "room"), [(25, None), (24.9, 4.9), (15, 0)])
def test_two_nuts_said_once(apart, room):
    # Two flanges of 20: 10 + 5 + 10 from hole to hole.
    low = replace(NUTTED, id="low", holes=(MountingHole(Point(50, 100)),))
    high = replace(NUTTED, id="high", holes=(MountingHole(Point(50, 0)),))
    plan = plan_of(unit("U2", 300, 300, kind="low"), unit("U1", 300, 400 + apart, kind="high"), kinds=[low, high])
    found = named(plan, "hole-meets-nut")
    assert [(each.things, each.measured) for each in found] == (
        [] if room is None else [(("U1", "U2"), pytest.approx(room))]
    )
