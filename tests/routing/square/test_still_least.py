"""Whether a way is still the least costly one, on a wall with a few bodies, against a search afresh."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from boardplan.geometry.point import Box, Point
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.ends import End
from boardplan.routing.square.least_way import least_way
from boardplan.routing.square.open_lines import OpenLines
from boardplan.routing.square.still_least import still_least

HALF, GAP, RADIUS = 4.0, 3.0, 24.0
ENDS = End(Point(0, 0), 90.0, 10.0, "A", "A.1"), End(Point(600, 40), 90.0, 10.0, "B", "B.1")
LOW = Blocker("body", "U1", Box(250, -100, 330, 90), GAP)
"""It stands in the way low down: the way goes over it."""


def around(*boxes):
    """Return the lines among the low body and others."""
    return OpenLines([LOW, *(Blocker("body", f"U{n}", box, GAP) for n, box in enumerate(boxes, start=2))], HALF)


def answers(before, after):
    """Return whether the way among some bodies is said to stay when one becomes another, and what a search says."""
    was, now = (least_way(ENDS, around(box), RADIUS) for box in (before, after))
    assert was.points is not None
    grown = [each.grown(HALF + GAP) for each in (before, after)]
    return still_least(ENDS, around(after), was.points, was.reach, grown, RADIUS), was == now


def test_a_way_stays_where_a_body_above_it_moves():
    assert answers(Box(300, 250, 380, 350), Box(303, 250, 383, 350)) == (True, True)


def test_a_way_does_not_stay_where_a_body_comes_onto_it():
    said, stays = answers(Box(300, 250, 380, 350), Box(300, 100, 380, 350))
    assert (said, stays) == (False, False)


def test_a_way_that_had_to_go_round_is_not_said_to_stay_when_the_body_goes():
    said, stays = answers(Box(100, 60, 500, 300), Box(100, 400, 500, 500))
    assert (said, stays) == (False, False)


@pytest.mark.parametrize("by", [1, -4, 12])
def test_a_way_is_not_said_to_stay_beside_what_it_turns_past(by):
    said, _ = answers(Box(331, -100, 380, 92), Box(331, -100, 380, 92 + by))
    assert not said


@settings(max_examples=150)
@given(
    st.integers(-50, 600), st.integers(-80, 400), st.integers(10, 150), st.integers(10, 150),
    st.integers(-60, 60), st.integers(-60, 60),
)  # fmt: skip
def test_what_is_said_to_stay_is_found_again(left, bottom, width, height, dx, dy):
    before = Box(left, bottom, left + width, bottom + height)
    after = before.moved(dx, dy)
    ends = [end.point for end in ENDS]
    assume(not any(box.grown(60).holds(point) for box in (before, after) for point in ends))
    assume(least_way(ENDS, around(before), RADIUS).points is not None)
    said, stays = answers(before, after)
    assert stays or not said
