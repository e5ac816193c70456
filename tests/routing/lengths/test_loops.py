"""Loops, tails and ropes: what is left beside the way on purpose, and what is asked."""

import math
from dataclasses import replace

import pytest
from boards import library_bus
from checks.plans import UNIT, cable, plan_of, rules, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Point
from boardplan.model.board import Exit
from boardplan.model.cable import Leg, Loop, OffBoardEnd
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.loops import bow_adds


def joined(conductor, *, sort="stud", tail=None, **fields):
    terminals = tuple(replace(each, sort=sort, tail=tail) for each in UNIT.terminals)
    kinds = (replace(UNIT, terminals=terminals),)
    plan = plan_of(unit("U1", 100, 100), unit("U2", 100, 600), kinds=kinds)
    one = cable("W1", ("U1", "T"), ("U2", "B"), conductor=conductor, way="outside")
    ends = {"start": replace(one.start, **fields)} if fields else {}
    return plan.with_things([replace(one, **ends)])


def length_of(plan):
    return cut_lengths(plan, find_routes(plan))["W1"]


@pytest.mark.parametrize(
    ("conductor", "loop", "adds"),
    [
        ("16", Loop("service"), 100),  # one hand's width: common practice, no source
        ("70", Loop("service"), 4 * 64 * (math.pi / 3 - math.sqrt(3) / 2)),  # a bow: four arcs of 60 degrees
        ("16", Loop("drip"), 100),
        ("70", Loop("drip", 180), 180),
        ("16", Loop("service", 60), 60),
    ],
)
def test_a_loop_is_a_line_of_the_sum(conductor, loop, adds):
    bare, looped = length_of(joined(conductor)), length_of(joined(conductor, loop=loop))
    assert looped.extra == pytest.approx(adds)
    assert dict(looped.parts)[f"{loop.sort} loop at U1.T"] == pytest.approx(adds)
    assert (looped.path, looped.net, looped.slack) == (bare.path, bare.net, bare.slack)
    assert sum(value for _, value in looped.parts) == pytest.approx(looped.cut)
    assert looped.cut == math.ceil((bare.net + bare.slack + adds) / bare.step - 1e-9) * bare.step


@given(st.floats(1, 300), st.floats(1, 120))
def test_a_bow_is_as_long_as_one_stepped_through(radius, turn):
    """Aside by a turn, twice back, and straight again, in small steps: what it spans, what it takes, where it ends."""
    steps, along, aside = 4000, 0.0, 0.0
    angle = math.radians(turn)
    for index in range(steps):
        share = (index + 0.5) / steps * 4
        heading = angle * (share if share < 1 else 2 - share if share < 3 else share - 4)
        along += radius * angle * 4 / steps * math.cos(heading)
        aside += radius * angle * 4 / steps * math.sin(heading)
    assert aside == pytest.approx(0, abs=1e-6)
    assert bow_adds(radius, turn) == pytest.approx(4 * radius * angle - along, abs=1e-3)


def test_under_an_edition_without_loops_only_a_given_length_counts():
    plan = replace(joined("16", loop=Loop("service")), rules=library_bus().rules)
    assert length_of(plan).extra == 0
    assert length_of(plan).notes == ("the service loop at U1.T has no length: nothing is added",)
    given_length = replace(joined("16", loop=Loop("service", 80)), rules=library_bus().rules)
    assert length_of(given_length).extra == 80


def test_a_tail_inside_a_gland_is_added_and_asked_for():
    with_tail = length_of(joined("3x6", sort="gland", tail=100))
    assert with_tail.extra == 200
    assert [words for words, _ in with_tail.parts].count("tail inside the gland of U1.T") == 1
    assert with_tail.notes == ()
    asked = length_of(joined("3x6", sort="gland"))
    assert asked.extra == 0
    assert asked.notes[0] == "how long is the tail inside the gland of U1.T? Nothing is added"
    assert length_of(replace(joined("3x6", sort="gland", tail=100), rules=library_bus().rules)).extra == 0


def roped(rope, *legs):
    plan = joined("16")
    end = OffBoardEnd("X1", "battery", tuple(Leg(each, "measured") for each in legs), rope=rope)
    one = replace(plan.cables["W1"], end=end)
    return plan.with_things([Exit("X1", "A", "top", Point(150, 800)), one])


@pytest.mark.parametrize(
    ("rope", "legs", "again"),
    [
        (None, (1000,), False),
        (1000, (600, 450), False),
        (1000, (600, 460), True),
        (2000, (1900,), False),
        (1050, (), True),
    ],
)
def test_a_rope_that_the_legs_disagree_with_is_measured_again(rope, legs, again):
    # more than 5 % of the longer: common practice, no source
    length = length_of(roped(rope, *legs))
    assert length.final is not again
    assert any("measure again" in note for note in length.notes) is again
    assert length.off_board == sum(legs)  # the legs are what is cut to


def test_a_rope_is_asked_about_first():
    assert rules().value("rope-against-legs") == 5
    assert length_of(roped(1000, 500)).notes[0].startswith("a rope to battery measured 1000 mm, its legs come to 500")
