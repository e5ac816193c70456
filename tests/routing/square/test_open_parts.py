"""Parts of the wall that hang together, against a flood fill over halves of units."""

from collections import deque

from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Box
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.open_lines import UNITS, Lane, OpenLines
from boardplan.routing.square.open_parts import open_parts_of

SIDE = 8
PLACE = st.integers(0, SIDE)
SPANS = st.tuples(PLACE, PLACE).map(sorted).filter(lambda span: span[0] < span[1])
BOXES = st.lists(
    st.tuples(SPANS, SPANS).map(lambda each: Box(each[0][0], each[1][0], each[0][1], each[1][1])), max_size=8
)
SPOT = st.tuples(PLACE, PLACE)
ROUND = (Box(-9, -9, 20, 0), Box(-9, SIDE, 20, 20), Box(-9, -9, 0, 20), Box(SIDE, -9, 20, 20))


def flooded(boxes, start):
    """Return all places, in halves, that can be reached from one without coming strictly into a box."""

    def is_open(x, y):
        return not any(2 * b.left < x < 2 * b.right and 2 * b.bottom < y < 2 * b.top for b in boxes)

    found, left = set(), deque([start] if is_open(*start) else [])
    while left:
        x, y = left.popleft()
        if (x, y) in found:
            continue
        found.add((x, y))
        left += [each for each in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)) if is_open(*each)]
    return found


def parts_at(parts, spot):
    at = spot[0] * UNITS, spot[1] * UNITS
    return parts.along(at, at)


@given(BOXES, SPOT, SPOT)
def test_places_hang_together_where_a_flood_gets_from_one_to_the_other(boxes, a, b):
    boxes = [*boxes, *ROUND]
    parts = open_parts_of(OpenLines([Blocker("body", str(i), box, 0.0) for i, box in enumerate(boxes)], 0.0))
    together = bool(parts_at(parts, a) & parts_at(parts, b))
    assert together == ((2 * b[0], 2 * b[1]) in flooded(boxes, (2 * a[0], 2 * a[1])))


def test_a_lane_leads_through_what_blocks():
    wall = Box(40, -5, 60, 55)
    frame = Box(-9, -9, 200, 0), Box(-9, 50, 200, 90), Box(-9, -9, 0, 90), Box(100, -9, 200, 90)
    held = [Blocker("body", str(i), box, 0.0) for i, box in enumerate((wall, *frame))]
    lane = Lane(0, 5 * UNITS, 30 * UNITS, 70 * UNITS, UNITS, 5 * UNITS)
    apart, joined = (open_parts_of(OpenLines(held, 0.0, lanes)) for lanes in ((), (lane,)))
    for parts, together in ((apart, False), (joined, True)):
        assert bool(parts_at(parts, (10, 20)) & parts_at(parts, (90, 20))) == together
