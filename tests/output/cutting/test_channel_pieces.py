"""Pieces of channels: lengths along the longer wall, worked out by hand and from the drawn outline."""

from dataclasses import replace

import pytest
from boards import honey_trailer
from hypothesis import given
from hypothesis import strategies as st
from strategies import square_lines

from boardplan.drawing.rings import beside_line
from boardplan.geometry.point import Point
from boardplan.model.channel import Channel
from boardplan.model.stock import Stock
from boardplan.output.cutting.channel_pieces import SQUARE, ChannelEnd, channel_pieces


def plan_with(*line, corners="mitred", cover=True):
    channel = Channel("RW1", "A", tuple(Point(*each) for each in line), 60, 60, 56, 56, cover=cover)
    return replace(honey_trailer(), channels={"RW1": channel}, stock=Stock(corners=corners))


def bases(plan):
    return [each for each in channel_pieces(plan) if each.part == "base"]


def test_a_mitred_corner_is_longer_by_half_the_width():
    first, second = bases(plan_with((40, 330), (820, 330), (820, 640)))
    assert (first.name, first.length, second.length) == ("RW1-1", pytest.approx(810), pytest.approx(340))
    assert first.ends == (SQUARE, ChannelEnd(45, "right"))
    assert second.ends == (ChannelEnd(45, "right"), SQUARE)
    assert first.ends[1].words == "45°, longer on the right"


def test_at_a_square_corner_one_runs_through_and_the_other_meets_it():
    first, second = bases(plan_with((40, 330), (820, 330), (820, 640), corners="square"))
    assert (first.length, second.length) == (pytest.approx(780 + 30), pytest.approx(310 - 30))
    assert {*first.ends, *second.ends} == {SQUARE}


def test_a_slanting_corner_is_mitred_whatever_is_wanted():
    one, other = (bases(plan_with((0, 0), (300, 0), (600, -300), corners=each)) for each in ("mitred", "square"))
    assert one == other
    assert one[0].length == pytest.approx(300 + 30 * 0.41421356)  # tan 22.5°
    assert one[0].ends[1] == ChannelEnd(22.5, "left")


def test_a_corner_that_is_none_makes_no_piece():
    (only,) = bases(plan_with((0, 0), (300, 0), (500, 0)))
    assert (only.length, only.ends) == (500, (SQUARE, SQUARE))


def test_a_cover_is_as_long_as_its_base_and_an_open_channel_has_none():
    pieces = channel_pieces(plan_with((40, 330), (820, 330), (820, 640)))
    assert [each.name for each in pieces] == ["RW1-1", "RW1-C1", "RW1-2", "RW1-C2"]
    assert pieces[0].length == pieces[1].length
    assert pieces[0].ends == pieces[1].ends
    assert {each.part for each in channel_pieces(plan_with((0, 0), (300, 0), cover=False))} == {"base"}


@given(square_lines(), st.integers(10, 60))
def test_mitred_pieces_are_as_long_as_the_longer_side_of_the_outline(line, width):
    channel = Channel("RW1", "A", line, width, 40, width - 4, 37)
    pieces = bases(replace(honey_trailer(), channels={"RW1": channel}))
    left, right = beside_line(line, width / 2), beside_line(line, -width / 2)
    if not len(left) == len(right) == len(line) == len(pieces) + 1:
        return  # legs in one line make one piece
    for index, piece in enumerate(pieces):
        sides = [side[index].distance_to(side[index + 1]) for side in (left, right)]
        ends = {end.longer for end in piece.ends} - {""}
        if len(ends) < 2 and min(sides) > width:
            assert piece.length == pytest.approx(max(sides))
