"""What blocks, against areas reckoned by shapely."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import unary_union
from shapely.geometry import Polygon, box

from boardplan.geometry.point import Box, Point
from boardplan.model.board import NoGoBox
from boardplan.routing.square.blockers import blockers_of, boxes_of_ring, channel_rings

L_SHAPE = (Point(0, 0), Point(300, 0), Point(300, 100), Point(100, 100), Point(100, 200), Point(0, 200))


def area_of(boxes):
    return unary_union([box(*each) for each in boxes])


def test_shapes_with_square_sides_are_covered_exactly():
    assert area_of(boxes_of_ring(L_SHAPE)).equals(Polygon(L_SHAPE))
    assert boxes_of_ring(Box(1, 2, 3, 4).corners()) == [Box(1, 2, 3, 4)]


@given(st.integers(0, 359))
def test_turned_shapes_are_covered_with_little_to_spare(turn):
    ring = [each.turned(turn) for each in L_SHAPE]
    covered, shape = area_of(boxes_of_ring(ring)), Polygon(ring)
    assert shape.difference(covered).area < 1e-6
    assert covered.difference(shape.buffer(100)).area < 1e-6
    assert covered.area < shape.area * 1.7


def test_all_but_the_boards_blocks_at_their_edges(cabin_plan):
    edges = area_of(each.box for each in blockers_of(cabin_plan) if each.sort == "edge")
    boards = box(0, 0, 1664, 880)  # two boards of 832 side by side: no seam between them
    assert edges.intersection(boards).area < 1e-6
    assert box(-100, -100, 1764, 980).difference(edges).symmetric_difference(boards).area < 1e-6


def test_a_cutout_blocks(bus_plan):
    cutout = Box(600, 400, 700, 500).corners()
    plan = bus_plan.with_things([replace(bus_plan.boards["A"], cutouts=(cutout,))])
    edges = area_of(each.box for each in blockers_of(plan) if each.sort == "edge")
    assert edges.contains(box(600, 400, 700, 500))


@pytest.mark.parametrize(("from_z", "blocks"), [(0, True), (59, True), (60, False), (200, False)])
def test_only_no_go_boxes_near_the_board_block(bus_plan, from_z, blocks):
    plan = bus_plan.with_things([NoGoBox("N", "A", "pipe", 0, 0, 10, 10, from_z, 300)])
    assert any(each.thing == "N" for each in blockers_of(plan)) == blocks


def test_channel_legs_meet_round_their_corners(bus_plan):
    bent = replace(bus_plan.channels["RW1"], line=(Point(100, 300), Point(400, 300), Point(400, 500)))
    plan = bus_plan.with_things([bent])
    covered = unary_union([Polygon(each) for each in channel_rings(plan, bent)])
    assert covered.equals(Polygon([(100, 270), (430, 270), (430, 500), (370, 500), (370, 330), (100, 330)]))
