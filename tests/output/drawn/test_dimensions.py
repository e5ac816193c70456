"""Dimensions: values where they belong, none over another, arrowheads at the ends of what is meant."""

import itertools

from hypothesis import given
from hypothesis import strategies as st

from boardplan.drawing.picture import Area, Line, Words
from boardplan.geometry.point import Point
from boardplan.geometry.units import INCH
from boardplan.output.drawn.dimensions import (
    PITCH,
    Station,
    at_least_text,
    dimension_text,
    linear_level,
    linear_upright,
    merged,
    running_level,
    running_upright,
    spread,
)
from boardplan.output.printing.lettering import text_box


def words(picture):
    return [mark for mark in picture if isinstance(mark, Words)]


def tips(picture):
    return [mark.rings[0][0] for mark in picture if isinstance(mark, Area)]


def test_a_linear_dimension_stands_above_its_line_between_two_arrowheads(fonts):
    picture = linear_level(Point(10, 0), Point(60, 5), 20, "500", fonts.width)
    (text,) = words(picture)
    assert (text.at.x, text.turn, text.anchor) == (35, 0, "middle")
    assert text.at.y > 20
    assert tips(picture) == [Point(10, 20), Point(60, 20)]
    assert Line((Point(60, 5.8), Point(60, 21.4)), "ink", 0.13) in picture


def test_an_upright_dimension_reads_from_the_right(fonts):
    picture = linear_upright(Point(0, 10), Point(3, 60), -9, "500", fonts.width)
    (text,) = words(picture)
    assert text.turn == 90
    assert text.at.x < -9
    assert abs(text.at.y - 35) < 1e-9
    assert {(round(tip.x, 9), round(tip.y, 9)) for tip in tips(picture)} == {(-9, 10), (-9, 60)}


def test_a_narrow_dimension_has_its_arrows_outside_and_its_value_beside(fonts):
    picture = linear_level(Point(0, 0), Point(2, 0), 10, "1-13/16", fonts.width)
    (text,) = words(picture)
    assert text.at.x > 2
    assert text.anchor == "start"
    backs = [max(point.x for point in mark.rings[0]) for mark in picture if isinstance(mark, Area)]
    assert min(point.x for mark in picture if isinstance(mark, Area) for point in mark.rings[0]) < 0
    assert max(backs) > 2


@given(st.lists(st.floats(0, 180), min_size=1, max_size=25), st.sampled_from(["below", "above"]))
def test_no_value_of_a_running_dimension_covers_another(places, side):
    stations = [Station(Point(x, 30), f"{x:.1f}") for x in places]
    texts = words(running_level(Point(0, 30), stations, 20, side))
    ups = sorted(text.at.x for text in texts)
    assert all(b - a >= PITCH - 1e-6 for a, b in itertools.pairwise(ups))
    assert all((text.at.y < 20) == (side == "below") for text in texts)


def test_running_dimensions_begin_at_nought_and_name_each_place_once():
    stations = [Station(Point(x, 5), str(x)) for x in (30, 10, 30)]
    picture = running_level(Point(0, 0), stations, -8, "below")
    assert sorted(text.text for text in words(picture)) == ["0", "10", "30"]
    assert sorted(tip.x for tip in tips(picture)) == [10, 30]


def test_upright_values_are_level_and_stay_on_their_side(fonts):
    stations = [Station(Point(5, y), str(y)) for y in (10, 10.5, 40)]
    for side, sign in (("left", -1), ("right", 1)):
        texts = words(running_upright(Point(0, 0), stations, sign * 8, side))
        boxes = [text_box(text, fonts.width) for text in texts]
        assert all(text.turn == 0 for text in texts)
        assert all(sign * box.centre.x > 8 for box in boxes)
        assert not any(a.touches(b) for a, b in itertools.combinations(boxes, 2))


def test_dimensions_to_the_left_of_the_origin_point_away_from_it():
    picture = running_level(Point(50, 0), [Station(Point(20, 0), "30")], -8, "below")
    (arrow,) = [mark for mark in picture if isinstance(mark, Area)]
    assert arrow.rings[0][0] == Point(20, -8)
    assert all(point.x >= 20 for point in arrow.rings[0])


def test_stations_that_say_the_same_are_one():
    stations = [Station(Point(10, 0), "35-1/8"), Station(Point(10.1, 0), "35-1/8"), Station(Point(10.1, 0), "35-5/32")]
    assert [each.text for each in merged(stations, Point(0, 0))] == ["35-1/8", "35-5/32"]


@given(st.lists(st.floats(-500, 500), max_size=20), st.floats(0.5, 10))
def test_places_are_spread_in_their_order_and_stay_where_they_have_room(places, pitch):
    places = sorted(places)
    found = spread(places, pitch)
    assert len(found) == len(places)
    assert all(b - a >= pitch - 1e-6 for a, b in itertools.pairwise(found))
    if all(b - a >= pitch for a, b in itertools.pairwise(places)):
        assert all(abs(a - b) < 1e-6 for a, b in zip(found, places, strict=True))
    if places:
        assert abs(sum(found) - sum(places)) < 1e-6 * max(1, len(places) * 500)


@given(st.floats(0, 5000))
def test_what_must_not_be_smaller_is_rounded_up_in_inches(length):
    """Read back as a tape reads it: no smaller, and no more than 1/32 in larger."""
    whole, _, fraction = at_least_text(length, "inch").rpartition("-")
    over, _, under = fraction.partition("/")
    stated = (int(whole or 0) + int(over) / int(under or 1)) * INCH
    assert -1e-4 <= stated - length < INCH / 32


def test_dimensions_carry_no_unit():
    assert dimension_text(46.25, "mm") == "46.3"
    assert dimension_text(16.5 * INCH, "inch") == "16-1/2"
