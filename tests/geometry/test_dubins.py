"""The shortest way between two poses, against published lengths and by properties."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.bends import Bend, rounded
from boardplan.geometry.dubins import Pose, shortest_between, ways_between
from boardplan.geometry.point import Point

PUBLISHED = [
    # K. Sundar, open test suite of Dubins.jl (test1.jl), 8.2725 to 1e-3; more digits from Shkel and Lumelsky's formulas
    ((0, 0, 0), (5, 0, math.degrees(3)), 1, 8.272519, "RSL"),
    ((0, 0, 0), (4, 0, 0), 1, 4.0, "LSL"),
    ((0, 0, 0), (1, 0, 0), 1, 1.0, "LSL"),
    # Dubins (1957): arcs of pi/3, 5 pi/3, pi/3
    ((0, 0, 0), (0, 0, 180), 1, 7 * math.pi / 3, None),
    # a half circle, and a quarter one where both turning circles are one
    ((0, 0, 0), (0, 2, 180), 1, math.pi, "LSL"),
    ((0, 0, 0), (10, 10, 90), 10, 5 * math.pi, "LSL"),
    # two arcs of 45 degrees and 40 sqrt 2 between; a square corner would take 80 + 5 pi
    ((0, 0, 0), (50, 50, 90), 10, 5 * math.pi + 40 * math.sqrt(2), "LSL"),
    # closed form of the cross tangent: 2 sqrt 3 + pi / 3
    ((0, 0, 0), (4, 2, 0), 1, 2 * math.sqrt(3) + math.pi / 3, "LSR"),
    ((0, 0, 0), (200, 60, 0), 50, 209.266617, "LSR"),
    ((0, 0, 0), (100, 0, 180), 30, 212.857846, None),
]


@pytest.mark.parametrize(("start", "end", "radius", "length", "word"), PUBLISHED)
def test_lengths_are_the_published_ones(start, end, radius, length, word):
    way = shortest_between(pose(*start), pose(*end), radius)
    assert way.length == pytest.approx(length, abs=1e-6)
    if word:
        assert way.word == word


def pose(x, y, heading):
    return Pose(Point(x, y), heading)


places = st.floats(-400, 400).map(lambda value: round(value, 3))
poses = st.builds(pose, places, places, st.floats(0, 359.99))
radii = st.floats(1, 120)


@given(poses, poses, radii)
def test_every_word_leads_to_the_end(start, end, radius):
    for way in ways_between(start, end, radius):
        last = walked(way)
        assert last.at.distance_to(end.at) < 1e-6
        assert abs((last.heading - end.heading + 180) % 360 - 180) < 1e-6


def walked(way):
    """Integrate the way from scratch, part by part, with complex numbers."""
    at, heading = complex(*way.start.at), math.radians(way.start.heading)
    for letter, length in zip(way.word, way.lengths, strict=True):
        if letter == "S":
            at += length * complex(math.cos(heading), math.sin(heading))
            continue
        side = {"L": 1j, "R": -1j}[letter]
        ahead = complex(math.cos(heading), math.sin(heading))
        turn = side.imag * length / way.radius
        centre = at + side * way.radius * ahead
        at = centre + (at - centre) * complex(math.cos(turn), math.sin(turn))
        heading += turn
    return Pose(Point(at.real, at.imag), math.degrees(heading))


@given(poses, poses, radii)
def test_no_shorter_than_straight_and_no_longer_than_any_word(start, end, radius):
    way = shortest_between(start, end, radius)
    assert way.length >= start.at.distance_to(end.at) - 1e-9
    assert all(way.length <= other.length + 1e-9 for other in ways_between(start, end, radius))


@given(poses, poses, radii)
def test_the_way_back_is_as_long(start, end, radius):
    there = shortest_between(start, end, radius)
    back = shortest_between(Pose(end.at, end.heading + 180), Pose(start.at, start.heading + 180), radius)
    assert there.length == pytest.approx(back.length, abs=1e-6)


@given(poses, poses, radii, st.floats(0.1, 10))
def test_twice_as_large_is_twice_as_long(start, end, radius, factor):
    larger = [Pose(Point(each.at.x * factor, each.at.y * factor), each.heading) for each in (start, end)]
    way = shortest_between(start, end, radius)
    assert shortest_between(*larger, radius * factor).length == pytest.approx(way.length * factor, rel=1e-7, abs=1e-7)


@given(poses, poses, radii)
def test_its_corners_bend_into_the_way_itself(start, end, radius):
    way = shortest_between(start, end, radius)
    pieces = rounded(way.corners(), radius)
    assert sum(piece.length for piece in pieces) == pytest.approx(way.length, abs=1e-6)
    bends = [piece for piece in pieces if isinstance(piece, Bend) and abs(piece.turn) > 1e-5]  # less has no radius
    assert all(bend.radius == pytest.approx(radius, rel=1e-5) for bend in bends)
    along = 0.0
    for piece in pieces:
        along += piece.length
        assert piece.end.distance_to(way.pose_at(along).at) < 1e-5


@given(poses, poses, st.floats(20, 80))
def test_no_sampled_way_is_shorter(start, end, radius):
    """Any way of the same radius through a pose in the middle is at least as long."""
    way = shortest_between(start, end, radius)
    middle = Pose(Point((start.at.x + end.at.x) / 2, (start.at.y + end.at.y) / 2 + 30), start.heading + 40)
    over = shortest_between(start, middle, radius).length + shortest_between(middle, end, radius).length
    assert way.length <= over + 1e-7


def test_a_bend_needs_a_radius():
    with pytest.raises(ValueError, match="radius"):
        ways_between(pose(0, 0, 0), pose(10, 0, 0), 0)
