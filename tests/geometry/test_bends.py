import math
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from strategies import points, square_lines

from boardplan.geometry.bends import (
    Bend,
    corner_saving,
    rounded,
    straight_length,
    tangent_length,
    turn_between,
    turns,
    without_repeats,
)
from boardplan.geometry.point import Point, bearing

# A bend of radius R through t is R t long and begins R tan(t/2) before its corner, so a corner saves
# 2 R tan(t/2) - R t: elementary geometry of a fillet, as in any table of sheet-metal or pipe bends.
SAVINGS = {90: 0.429204, 60: 0.107503, 45: 0.043029, 30: 0.012300}


@pytest.mark.parametrize("turn", SAVINGS)
@pytest.mark.parametrize("radius", [1, 25, 64])
def test_what_a_corner_saves(turn, radius):
    assert corner_saving(radius, turn) == pytest.approx(SAVINGS[turn] * radius, abs=1e-6 * radius)
    assert corner_saving(radius, -turn) == corner_saving(radius, turn)


def test_a_square_bend_of_25_is_39_27_long():
    """R times the angle: 25 x pi / 2 = 39.2699."""
    (_, bend, _) = rounded([Point(0, 0), Point(100, 0), Point(100, 100)], 25)
    assert bend.length == pytest.approx(39.2699, abs=1e-4)
    assert bend.centre == pytest.approx((75, 25))
    assert (bend.start, bend.end) == ((75, 0), pytest.approx((100, 25)))
    assert bend.turn == 90


def test_a_way_of_three_legs():
    """300 + 200 + 150 with two square bends of 40: 650 - 2 x 0.429204 x 40 = 615.6637."""
    pieces = rounded([Point(0, 0), Point(300, 0), Point(300, 200), Point(450, 200)], 40)
    assert sum(piece.length for piece in pieces) == pytest.approx(615.6637, abs=1e-4)
    assert [type(piece).__name__ for piece in pieces] == ["Straight", "Bend", "Straight", "Bend", "Straight"]
    assert [piece.turn for piece in pieces if isinstance(piece, Bend)] == [90, -90]


@given(square_lines(), st.floats(0.1, 80))
def test_pieces_join_and_save_what_their_bends_save(line, radius):
    pieces = rounded(line, radius)
    assert (pieces[0].start, pieces[-1].end) == (pytest.approx(line[0]), pytest.approx(line[-1]))
    for before, after in pairwise(pieces):
        assert before.end == pytest.approx(after.start, abs=1e-6)
    saved = sum(corner_saving(piece.radius, piece.turn) for piece in pieces if isinstance(piece, Bend))
    assert sum(piece.length for piece in pieces) == pytest.approx(straight_length(line) - saved, abs=1e-6)
    assert all(piece.radius <= radius + 1e-9 for piece in pieces if isinstance(piece, Bend))


@given(square_lines(), st.floats(0.1, 80))
def test_bends_are_true_arcs(line, radius):
    for piece in rounded(line, radius):
        if isinstance(piece, Bend):
            assert piece.centre.distance_to(piece.start) == pytest.approx(piece.radius, abs=1e-6)
            assert piece.centre.distance_to(piece.end) == pytest.approx(piece.radius, abs=1e-6)


@given(st.lists(points, min_size=2, max_size=8))
def test_a_line_without_repeats_has_the_same_length_and_ends(line):
    kept = without_repeats(line)
    assume(len(kept) > 1)
    assert straight_length(kept) == pytest.approx(straight_length(line), abs=1e-3)
    assert (kept[0], kept[-1]) == (pytest.approx(line[0]), pytest.approx(line[-1]))
    assert all(abs(turn) > 1e-8 for turn in turns(kept))


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ([(0, 0), (0, 0), (5, 0)], [(0, 0), (5, 0)]),
        ([(0, 0), (2, 0), (5, 0), (5, 5)], [(0, 0), (5, 0), (5, 5)]),
        ([(0, 0), (5, 0), (2, 0)], [(0, 0), (5, 0), (2, 0)]),
        ([(0, 0)], [(0, 0)]),
        ([], []),
    ],
)
def test_repeats_and_straight_points_go(line, kept):
    assert list(without_repeats([Point(*each) for each in line])) == kept


@pytest.mark.parametrize(
    ("before", "after", "turn"), [(0, 90, 90), (90, 0, -90), (350, 10, 20), (10, 350, -20), (0, 180, -180)]
)
def test_the_turn_between_two_directions(before, after, turn):
    assert turn_between(before, after) == turn


def test_nothing_to_round():
    assert rounded([], 10) == ()
    assert rounded([Point(3, 3), Point(3, 3)], 10) == ()
    (straight,) = rounded([Point(0, 0), Point(3, 4)], 10)
    assert straight.length == 5


@given(st.floats(1, 100), st.floats(1, 170))
def test_tangents_meet_in_the_corner(radius, turn):
    """The corner lies R / cos(t/2) from the centre: Pythagoras on tangent and radius."""
    assert math.hypot(radius, tangent_length(radius, turn)) == pytest.approx(radius / math.cos(math.radians(turn / 2)))


def test_bearing_of_a_leg():
    assert bearing((0, 0), (0, -5)) == 270
