"""The shortest way among polygons, against published lengths, sums by hand and a search over all orders of corners."""

import math
import random
from itertools import pairwise, permutations

import pytest
import shapely

from boardplan.geometry.bends import straight_length
from boardplan.geometry.point import Box, Point
from boardplan.geometry.shortest_path import Room, around_boxes

SQUARE = Box(0, 0, 100, 100)


def test_nothing_in_the_way():
    room = around_boxes(SQUARE, [])
    assert room.corners == ()
    assert room.shortest(Point(10, 10), Point(40, 50)) == (Point(10, 10), Point(40, 50))


def test_round_a_box_by_its_nearer_corner():
    room = around_boxes(SQUARE, [Box(40, 20, 60, 80)])
    way = room.shortest(Point(20, 70), Point(80, 70))
    assert way == (Point(20, 70), Point(40, 80), Point(60, 80), Point(80, 70))
    assert straight_length(way) == pytest.approx(2 * math.hypot(20, 10) + 20)


def test_walls_may_be_followed_and_holes_may_touch():
    room = around_boxes(SQUARE, [Box(20, 20, 50, 50), Box(50, 20, 80, 50)])
    assert room.shortest(Point(20, 50), Point(80, 50)) == (Point(20, 50), Point(80, 50))


def test_no_way_where_a_wall_cuts_the_room():
    room = around_boxes(SQUARE, [Box(40, 0, 60, 100)])
    assert room.shortest(Point(10, 10), Point(90, 10)) is None


def test_a_point_inside_an_obstacle_has_no_way():
    room = around_boxes(SQUARE, [Box(40, 40, 60, 60)])
    assert room.shortest(Point(50, 50), Point(90, 10)) is None


def test_an_l_shaped_room_bends_at_its_inner_corner():
    ring = [Point(0, 0), Point(100, 0), Point(100, 40), Point(40, 40), Point(40, 100), Point(0, 100)]
    for outline in (ring, ring[::-1]):
        way = Room(outline).shortest(Point(90, 30), Point(30, 90))
        assert way == (Point(90, 30), Point(40, 40), Point(30, 90))


@pytest.mark.parametrize("seed", range(12))
def test_as_short_as_the_best_of_all_orders_of_corners(seed):
    chance = random.Random(seed)
    boxes = []
    for _ in range(2):
        x, y = chance.randrange(10, 70), chance.randrange(10, 70)
        boxes.append(Box(x, y, x + chance.randrange(5, 25), y + chance.randrange(5, 25)))
    floor = SQUARE_FLOOR.difference(shapely.union_all([shapely.box(*each) for each in boxes]))
    start, end = free_point(floor, chance), free_point(floor, chance)
    way = around_boxes(SQUARE, boxes).shortest(start, end)
    best = slow_shortest(floor, start, end)
    assert (way is None) == (best is None)
    if way is not None:
        assert straight_length(way) == pytest.approx(best, abs=1e-9)
        assert all(floor.buffer(1e-9).covers(shapely.LineString(leg)) for leg in pairwise(way))


SQUARE_FLOOR = shapely.box(*SQUARE)


def free_point(floor, chance):
    while True:
        point = Point(chance.randrange(0, 101), chance.randrange(0, 101))
        if floor.covers(shapely.Point(point)):
            return point


def slow_shortest(floor, start, end):
    """Try every order of up to four of all the floor's corners, with no thought for which can matter."""
    corners = {
        Point(*each)
        for part in shapely.get_parts(floor)
        for ring in (part.exterior, *part.interiors)
        for each in ring.coords
    } - {Point(0, 0), Point(100, 0), Point(100, 100), Point(0, 100)}
    open_leg = {}
    places = [*corners, start, end]
    for a in places:
        for b in places:
            open_leg[a, b] = floor.covers(shapely.LineString([a, b])) if a != b else True
    best = math.inf
    for count in range(5):
        for order in permutations(corners, count):
            legs = list(pairwise((start, *order, end)))
            length = sum(a.distance_to(b) for a, b in legs)
            if length < best and all(open_leg[leg] for leg in legs):
                best = length
    return None if math.isinf(best) else best
