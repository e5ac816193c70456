"""How far off things matter to a way: many boxes at once, against one after the other."""

from itertools import pairwise

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Box, Point
from boardplan.routing.reach import Reach

PLACES = st.integers(-400, 400)


@st.composite
def boxes(draw):
    left, bottom = draw(PLACES), draw(PLACES)
    return Box(left, bottom, left + draw(st.integers(0, 200)), bottom + draw(st.integers(0, 200)))


@st.composite
def reaches(draw):
    start, end = (Point(draw(PLACES), draw(PLACES)) for _ in range(2))
    apart = abs(start.x - end.x) + abs(start.y - end.y)
    return Reach(
        start,
        end,
        limit=draw(st.floats(0.2, 2)) * apart + 0.013,
        margin=draw(st.sampled_from((0.0, 7.5, 30.25))),
        in_lane=draw(st.sampled_from((1.0, 0.75, 0.25))),
        by_x=draw(st.integers(0, 300)),
        by_y=draw(st.integers(0, 300)),
        legs=tuple(draw(st.lists(boxes(), max_size=2))),
        corners=draw(st.integers(0, 2)),
    )


def rows(some):
    return np.array(some, dtype=float).reshape(-1, 4)


@given(reaches(), st.lists(boxes(), max_size=12))
def test_boxes_touched_are_those_touched_one_by_one(reach, some):
    assert reach.touched(rows(some)) == [number for number, each in enumerate(some) if reach.touches(each)]


@given(reaches(), st.lists(boxes(), max_size=12), boxes())
def test_boxes_touched_by_way_of_another_are_fewer_and_never_that_box_itself_left_out(reach, some, also):
    by_way = reach.touched(rows([*some, also]), also)
    assert set(by_way) <= set(reach.touched(rows([*some, also])))
    if reach.touches(also) and not reach.margin:
        assert len(some) in by_way


@given(reaches(), boxes(), boxes())
def test_a_box_on_the_shortest_way_by_another_is_touched_by_way_of_it(reach, one, also):
    """From the start to a corner of each and on to the end, no longer than the limit: such a way touches both."""
    a, b = Point(one.left, one.bottom), Point(also.left, also.bottom)
    stops = (reach.start, a, b, reach.end)
    length = sum(abs(p.x - q.x) + abs(p.y - q.y) for p, q in pairwise(stops))
    spare = reach.limit - reach.corners * 30
    if length <= spare:
        assert reach.touched(rows([one]), also) == [0]
