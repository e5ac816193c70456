"""Blocking: what holds each fixing, against rectangles of an independent library, and where a piece is needed."""

from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from checks.plans import BOARD, plan_of
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point as ShapelyPoint
from shapely import box

from boardplan.geometry.point import Point
from boardplan.model.board import BoardFixing, Datum, Framing
from boardplan.output.customer.blocking import (
    blocking_of,
    blocking_records,
    corner_words,
    from_corner,
    held_fixings,
    survey_corner,
)

STUDS = tuple(Framing(f"S{index}", "A", "upright", x, 40) for index, x in enumerate((100, 500, 900)))


@pytest.mark.parametrize("plan", [library_bus(), lookout_cabin(), honey_trailer()], ids=["bus", "cabin", "trailer"])
def test_the_samples_need_none(plan):
    for board in plan.boards.values():
        assert held_fixings(plan, board)
        assert blocking_of(plan, board) == ()


def test_members_are_where_the_survey_measured_them():
    """Posts of the bus at 140, 740 and 1340 from the locker's corner, as its survey has them."""
    bus = library_bus()
    board = bus.boards["A"]
    assert [from_corner(board, Point(each.centre, 0)).x for each in bus.framing.values()] == [140, 740, 1340]
    assert survey_corner(board) == Point(-110, -90)
    assert "as surveyed" in corner_words(board)


def test_a_fixing_beside_its_member_needs_blocking_in_its_bay():
    plan = plan_of(*STUDS, BoardFixing("F1", "A", Point(104, 50), 7), BoardFixing("F2", "A", Point(300, 400), 7))
    board = plan.boards["A"]
    first, second = held_fixings(plan, board)
    assert not first.misses
    assert first.inside == 16
    assert second.misses
    (piece,) = blocking_of(plan, board)
    assert (piece.left.id, piece.right.id, piece.level, piece.fixings) == ("S0", "S1", 400, ("F2",))


def test_fixings_of_a_height_in_a_bay_share_a_piece():
    things = [BoardFixing(f"F{index}", "A", Point(x, 400), 7) for index, x in enumerate((200, 300, 700))]
    plan = plan_of(*STUDS, *things)
    assert [each.fixings for each in blocking_of(plan, plan.boards["A"])] == [("F0", "F1"), ("F2",)]


def test_past_the_last_member_an_end_is_not_known():
    plan = plan_of(*STUDS, BoardFixing("F1", "A", Point(960, 400), 7))
    (piece,) = blocking_of(plan, plan.boards["A"])
    assert piece.left.id == "S2"
    assert piece.right is None


def test_without_framing_nothing_is_known_to_hold():
    plan = plan_of(BoardFixing("F1", "A", Point(100, 100), 7))
    (held,) = held_fixings(plan, plan.boards["A"])
    assert (held.member, held.inside, held.misses) == (None, None, True)
    assert next(iter(blocking_records(plan)))["inside"] is None


@given(st.floats(0, 1000), st.floats(0, 800))
def test_a_fixing_is_held_where_its_disc_lies_in_a_member(x, y):
    plan = plan_of(*STUDS, BoardFixing("F1", "A", Point(x, y), 7))
    (held,) = held_fixings(plan, plan.boards["A"])
    ways_in = [
        ShapelyPoint(x, y).distance(box(each.centre - 20, -1e5, each.centre + 20, 1e5).boundary)
        * (1 if abs(x - each.centre) <= 20 else -1)
        for each in STUDS
    ]
    assert held.inside == pytest.approx(max(ways_in), abs=1e-6)
    if abs(max(ways_in) - held.asked) > 1e-3:
        assert held.misses == (max(ways_in) < held.asked)


@pytest.mark.parametrize(
    ("corner", "place"),
    [
        ("lower-left", (300, 250)),
        ("lower-right", (1100, 250)),
        ("upper-left", (300, 950)),
        ("upper-right", (1100, 950)),
    ],
)
def test_dimensions_run_from_the_compartments_corner_on_the_datums_side(corner, place):
    board = replace(BOARD, datum=Datum(corner))
    assert from_corner(board, Point(100, 50)) == Point(*place)


def test_without_a_compartment_they_run_from_the_boards_datum():
    board = replace(BOARD, compartment=None)
    assert survey_corner(board) == Point(0, 0)
    assert corner_words(board) == "bare edges, lower left corner"
