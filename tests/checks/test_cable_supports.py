"""Cable supports: a finding where nothing can hold a thick cable for more than 18 in (ABYC E-11, as summarised)."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, cable, named, plan_of, unit

from boardplan.checks.review import refreshed, review_of
from boardplan.geometry.point import Box

WIDE = replace(BOARD, outline=Box(0, 0, 2000, 800).corners())
ENDS = unit("U1", 100, 300), unit("U2", 1180, 300)
W1 = cable("W1", ("U1", "R"), ("U2", "L"), (190, 350), (1190, 350))


def plan_with_body(width, conductor="wire"):
    """Return a cable of a metre over a body, which begins at x = 450."""
    long = replace(UNIT, id="long", outline=Box(0, 0, width, 100).corners(), holes=(), terminals=())
    ends = (*ENDS, unit("U3", 450, 300, kind="long"), replace(W1, conductor=conductor))
    return plan_of(*ends, kinds=(UNIT, long), board=WIDE)


# the clamps beside a body are 15 off it: 5 of room and half of a clamp; between them the body and 30 are free
@pytest.mark.parametrize(("width", "found"), [(424.9, 0), (425.1, 1)])
def test_a_gap_of_more_than_455(width, found):
    findings = named(plan_with_body(width), "cable-unsupported")
    assert len(findings) == found
    for each in findings:
        assert (each.severity, each.things, each.board, each.limit) == ("warn", ("W1",), "A", 455)
        assert each.measured == pytest.approx(width + 30)
        assert each.place == pytest.approx((450 + width / 2, 350))
        assert "ABYC E-11" in each.sentence


def test_a_thin_cable_is_not_asked_about():
    assert named(plan_with_body(500, conductor="6"), "cable-unsupported") == []


def test_a_body_that_comes_asks_again():
    plan = plan_with_body(500)
    free = plan.without(["U3"])
    for before, after in ((free, plan), (plan, free)):
        again = refreshed(review_of(before), after)
        assert again.findings == review_of(after).findings
        assert again.clamps == review_of(after).clamps
