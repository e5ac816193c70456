"""Bends, against arcs drawn by shapely."""

import math

from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, box

from boardplan.routing.square.square_way import bend_clears

WITHIN = 400
"""Units of a picture in which a bend lies; whole ones, as in a search."""
places = st.integers(-WITHIN, WITHIN)
signs = st.sampled_from((1, -1))


def arc(spot, sign_x, sign_y, radius):
    """Return the quarter circle that touches both legs of a corner."""
    centre = (spot[0] + sign_x * radius, spot[1] + sign_y * radius)
    angles = [math.radians(90 * step / 2000) for step in range(2001)]
    return LineString(
        [(centre[0] - sign_x * radius * math.cos(a), centre[1] - sign_y * radius * math.sin(a)) for a in angles]
    )


corners = st.tuples(places, places)
sizes = st.integers(0, 300)
boxes = st.tuples(places, places, sizes, sizes).map(lambda of: (of[0], of[1], of[0] + of[2], of[1] + of[3]))


@given(corners, st.tuples(signs, signs), st.integers(1, 200), boxes, st.integers(0, 100))
def test_a_bend_clears_a_box_that_is_as_far_off_as_its_margin(spot, sides, radius, sides_of, margin):
    left, bottom, right, top = sides_of
    apart = arc(spot, *sides, radius).distance(box(*sides_of))
    assume(abs(apart - margin) > 0.01)
    assert bend_clears(spot, sides, radius, [((left, right), (bottom, top), margin, "U1")], {"-"}) is (apart > margin)


def test_what_belongs_to_an_end_is_spared():
    thing = ((0, 10), (0, 10), 5, "U1")
    assert not bend_clears((0, 0), (1, 1), 20, [thing], {"-"})
    assert bend_clears((0, 0), (1, 1), 20, [thing], {"U1"})
