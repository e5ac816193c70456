from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from strategies import plans, square_lines

from boardplan.geometry.point import Point
from boardplan.model.channel import Channel, ChannelScrews
from boardplan.model.holes import holes_of, screw_places

# Hole schedules of the two boards, worked out separately from the program.
BUS_HOLES = {
    "PV1-1": (46, 834, 2.8),
    "PV1-4": (124, 696, 2.8),
    "MP1-1": (182, 848, 3.2),
    "DC1-4": (590, 656, 2.8),
    "LP1-1": (72, 396, 2.8),
    "HB1-2": (474, 416, 2.4),
    "SH1-1": (91, 168, 2.8),
    "FT1-1": (124, 110, 3.2),
    "FT1-2": (124, 58, 3.2),
    "SW1-1": (324, 120, 3.2),
    "SW1-2": (324, 48, 3.2),
    "SW1-3": (396, 120, 3.2),
    "PB1-4": (878, 134, 3.2),
    "INV1-1": (784, 714, 8),
    "AT1-3": (1079, 402, 8),
    "EB1-2": (1260, 80, 2.8),
    "RW1-1": (80, 266, 2.8),
    "RW1-2": (310, 266, 2.8),
    "RW1-3": (540, 266, 2.8),
    "BF-1": (30, 25, 9),
    "BF-9": (1230, 800, 9),
}
BITS = {
    "bus": {2.4: 2, 2.8: 19, 3.2: 18, 8.0: 8, 9.0: 9},
    "cabin": {2.4: 2, 2.8: 15, 3.2: 22, 7.0: 17, 10.0: 8},
}


@pytest.mark.parametrize("name", BUS_HOLES)
def test_holes_of_the_library_bus(bus_plan, name):
    hole = next(each for each in holes_of(bus_plan) if each.id == name)
    assert (*hole.position, hole.bit) == pytest.approx(BUS_HOLES[name])


@pytest.mark.parametrize("board", BITS)
def test_how_many_holes_of_which_bit(board, bus_plan, cabin_plan):
    plan = {"bus": bus_plan, "cabin": cabin_plan}[board]
    assert Counter(hole.bit for hole in holes_of(plan)) == BITS[board]


def test_how_each_hole_is_made(bus_plan):
    holes = {hole.id: hole for hole in holes_of(bus_plan)}
    assert holes["PV1-1"].words == "pilot 15 deep, #8 x 19 mm pan head"
    assert (holes["PV1-1"].depth, holes["PV1-1"].stage) == (15, "shop")
    assert holes["INV1-1"].words == "through, T-nut M6 from back"
    assert (holes["INV1-1"].depth, holes["INV1-1"].sort) == (None, "t-nut")
    assert holes["BF-1"].words == "through, board fixing"


@given(plans())
def test_hole_numbers_are_used_once(plan):
    names = [hole.id for hole in holes_of(plan)]
    assert len(names) == len(set(names))


def test_no_fastener_is_a_question_not_a_guess(bus_plan):
    channel = replace(bus_plan.channels["RW1"], screws=ChannelScrews())
    holes = [each for each in holes_of(bus_plan.with_things([channel])) if each.owner == "RW1"]
    assert len(holes) == 3
    assert {(each.bit, each.depth, each.words) for each in holes} == {(None, None, "which fastener? none is given")}


@given(square_lines())
def test_screws_of_a_channel_keep_their_distances(line):
    channel = Channel("RW1", "A", line, 60, 60, 56, 56, screws=ChannelScrews(first=40, pitch=400))
    places = screw_places(channel)
    assert places
    for start, end in pairwise(line):
        leg = [
            each
            for each in places
            if abs(start.distance_to(each) + each.distance_to(end) - start.distance_to(end)) < 1e-6
        ]
        along = sorted(start.distance_to(each) for each in leg)
        length = start.distance_to(end)
        if length > 80:
            assert along[0] <= 40 + 1e-6
            assert length - along[-1] <= 40 + 1e-6
            assert all(b - a <= 400 + 1e-6 for a, b in pairwise(along))


@pytest.mark.parametrize(
    ("length", "places"),
    [(540, [40, 270, 500]), (480, [40, 440]), (481, [40, 240.5, 441]), (80, [40]), (30, [15])],
)
def test_screws_of_a_straight(length, places):
    channel = Channel("RW1", "A", (Point(0, 0), Point(length, 0)), 60, 60, 56, 56, screws=ChannelScrews(40, 400))
    assert [each.x for each in screw_places(channel)] == pytest.approx(places)
