"""Nuts and framing: a T-nut's flange on a member is a warning on a flat board, a question where nobody said."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, named, plan_of, post, unit

HUNG = replace(UNIT, fastener="nut")  # holes at x 50; the flange of its nuts is 20 mm wide


def over(centre, stand_off, kind=HUNG):
    board = replace(BOARD, stand_off=stand_off)
    return plan_of(unit("U1", 300, 300), post("post", centre, 40), kinds=[kind], board=board)


@pytest.mark.parametrize(("centre", "nuts"), [(350, 2), (379.9, 2), (380, 0), (320, 0), (320.1, 2)])
def test_a_flange_that_touches_a_member(centre, nuts):
    found = named(over(centre, 0), "nut-on-framing")
    assert [each.severity for each in found] == ["warn"] * nuts
    assert all("post" in each.sentence and "U1-" in each.sentence for each in found)


def test_a_board_that_stands_off_has_room():
    assert named(over(350, 20), "nut-on-framing") == []
    assert named(over(350, 20), "stand-off-unknown") == []


def test_nobody_said_how_far_it_stands_off():
    assert [each.severity for each in named(over(350, None), "stand-off-unknown")] == ["note"]
    assert named(over(500, None), "stand-off-unknown") == []


def test_wood_screws_have_no_nut():
    assert named(over(350, 0, kind=UNIT), "nut-on-framing") == []
