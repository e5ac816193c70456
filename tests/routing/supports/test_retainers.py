"""Retainers: in channels that run up, one each 300 mm (common practice, no source)."""

from dataclasses import replace
from itertools import pairwise

import pytest
from boards import library_bus
from checks.plans import cable, channel, plan_of, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Point
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import InChannel, Route
from boardplan.routing.supports.retainers import retainers_of

MOST = 300
UNITS = unit("U1", 100, 100), unit("U2", 700, 600)
W1 = cable("W1", ("U1", "R"), ("U2", "L"))


def found(run, *spans):
    """Return where retainers stand in a channel that a cable lies in from here to there."""
    ways = {"W1": Route("W1", (Point(0, 0), Point(1, 1)), 24.0, in_channels=tuple(InChannel("C", *s) for s in spans))}
    return [(each.at.x, each.at.y) for each in retainers_of(plan_of(*UNITS, W1, run), ways).get("C", ())]


@pytest.mark.parametrize(
    ("line", "span", "places"),
    [
        (((500, 0), (500, 700)), (0, 600), [(500, 150), (500, 450)]),  # twice 300, to the millimetre
        (((500, 0), (500, 700)), (0, 601), [(500, 601 / 6), (500, 300.5), (500, 601 * 5 / 6)]),
        (((500, 700), (500, 0)), (100, 300), [(500, 500)]),  # down from the top: 200 of it hold a cable
        (((100, 400), (800, 400)), (0, 700), []),  # level: nothing slides
        (((100, 100), (500, 100), (500, 400)), (0, 700), [(500, 250)]),  # only the part that runs up
    ],
)
def test_upright_stretches_that_hold_cables(line, span, places):
    assert found(channel("C", *line), span) == [pytest.approx(each) for each in places]


def test_an_empty_channel_wants_none():
    assert retainers_of(plan_of(*UNITS, W1, channel("C", (500, 0), (500, 700))), {}) == {}


@given(st.lists(st.tuples(st.integers(0, 690), st.integers(1, 700)), min_size=1, max_size=5))
def test_no_cable_is_farther_from_a_retainer_than_half_of_what_is_asked(spans):
    spans = [(low, min(700, low + length)) for low, length in spans]
    heights = [y for _, y in found(channel("C", (500, 0), (500, 700)), *spans)]
    for low, high in spans:
        for at in range(low, high + 1):
            assert min(abs(at - y) for y in heights) <= MOST / 2 + 1e-6
    assert all(b - a > 0 for a, b in pairwise(heights))


def test_an_earlier_edition_asks_for_none():
    plan = library_bus()
    assert plan.channels
    assert retainers_of(plan, find_routes(plan)) == {}


def test_on_a_board_that_hangs_elsewhere():
    plan = plan_of(*UNITS, W1, channel("C", (500, 0), (500, 200)))
    plan = replace(plan, boards={"A": replace(plan.boards["A"], position=Point(1000, 50))})
    ways = {"W1": Route("W1", (Point(0, 0), Point(1, 1)), 24.0, in_channels=(InChannel("C", 0, 200),))}
    (only,) = retainers_of(plan, ways)["C"]
    assert (only.at, only.towards, only.width) == ((1500, 150), 90, 56)
