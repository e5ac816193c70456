"""Board fixings: in the member, beside it, past its end; heads under units, channels and cables."""

import pytest
from checks.plans import cable, channel, fixing, named, plan_of, post, unit

from boardplan.model.board import Framing


@pytest.mark.parametrize(
    ("x", "y", "inside"),
    [
        (312, 300, None),
        (312.1, 300, 7.9),
        (288, 300, None),
        (287.9, 300, 7.9),
        (330, 300, -10),
        (300, 692, None),
        (300, 692.1, 7.9),
        (300, 750, -50),
    ],
)
def test_upright_member_40_wide_up_to_700(x, y, inside):
    found = named(plan_of(post("P1", 300, end=700), fixing("F1", x, y)), "fixing-misses-framing")
    assert [each.measured for each in found] == ([] if inside is None else [pytest.approx(inside)])


@pytest.mark.parametrize(("y", "misses"), [(412, False), (412.1, True)])
def test_level_member(y, misses):
    bearer = Framing("L1", "A", "level", 400, 40)
    assert len(named(plan_of(bearer, fixing("F1", 300, y)), "fixing-misses-framing")) == misses


def test_any_member_will_do():
    plan = plan_of(post("P1", 300), post("P2", 600), fixing("F1", 600, 300))
    assert named(plan, "fixing-misses-framing") == []


def test_no_framing_is_a_question():
    (found,) = named(plan_of(fixing("F1", 300, 300), fixing("F2", 500, 300)), "framing-unknown")
    assert found.severity == "note"
    assert named(plan_of(fixing("F1", 300, 300), post("P1", 300)), "framing-unknown") == []


@pytest.mark.parametrize(("x", "y", "blocked"), [(310, 250, False), (309.9, 250, True), (309.9, 310, False)])
def test_unit_in_the_square_round_the_head(x, y, blocked):
    found = named(plan_of(fixing("F1", 300, 300), unit("U1", x, y)), "fixing-head-blocked")
    assert [each.severity for each in found] == (["stop"] if blocked else [])


@pytest.mark.parametrize(("turn", "x", "blocked"), [(45, 309.9, False), (45, 299.9, True)])
def test_turned_unit_by_its_true_outline(turn, x, blocked):
    # Its left corner is half its diagonal above its lower end: 300 - 70.71 puts it level with the head.
    plan = plan_of(fixing("F1", 300, 310), unit("U1", x, 310 - 70.71 - 12, turn))
    assert len(named(plan, "fixing-head-blocked")) == blocked


@pytest.mark.parametrize(("y", "blocked"), [(340, False), (339.9, True)])
def test_channel_in_the_square(y, blocked):
    plan = plan_of(fixing("F1", 300, 300), channel("RW", (100, y), (700, y)))
    assert len(named(plan, "fixing-head-blocked")) == blocked


@pytest.mark.parametrize(("y", "covered"), [(300, False), (300.1, True), (325.9, True), (326, False)])
def test_cable_6_thick_at_313(y, covered):
    # The square reaches 10 from the head, the jacket 3 from the cable's centre line.
    things = unit("U1", 60, 263), unit("U2", 700, 263), cable("W1", ("U1", "R"), ("U2", "L"), (300, 313))
    found = named(plan_of(*things, fixing("F1", 400, y)), "fixing-under-cable")
    assert [(each.severity, each.things) for each in found] == ([("warn", ("F1", "W1"))] if covered else [])
