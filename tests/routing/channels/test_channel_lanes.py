"""How cables lie beside each other in a channel, against all orders tried out and boards looked at from outside."""

import random
from dataclasses import replace
from itertools import combinations, permutations

import pytest

from boardplan.geometry.point import Point
from boardplan.model.channel import Channel
from boardplan.routing.channels.channel_lanes import Strand, drawn_beside_each_other, lanes, least_crossing, strands_in
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import InChannel, Route


def crossed(strands, order):
    """Return how often strands cross in an order from left to right: looked at between their places, not at them."""
    places = {number: place for place, number in enumerate(order)}
    count = 0
    for number, one in enumerate(strands):
        for at, side in ((one.start, one.before), (one.end, one.after)):
            for other_number, other in enumerate(strands):
                if other_number != number and other.start < at < other.end and side:
                    is_right = places[other_number] > places[number]
                    count += is_right == (side < 0)
    return count


def some_strands(chance, count):
    found = []
    for number in range(count):
        start, end = sorted(chance.sample(range(0, 1000, 7), 2))
        sides = chance.choice((-1, 0, 1)), chance.choice((-1, 0, 1))
        found.append(Strand(f"W{number}", start, end, *sides, chance.choice((3.6, 5.0, 8.5))))
    return found


@pytest.mark.parametrize("seed", range(60))
def test_no_order_crosses_less(seed):
    chance = random.Random(seed)
    strands = some_strands(chance, chance.randint(2, 6))
    least = min(crossed(strands, each) for each in permutations(range(len(strands))))
    assert crossed(strands, least_crossing(strands)) == least


@pytest.mark.parametrize("seed", range(40))
def test_strands_lie_beside_each_other_within_the_walls(seed):
    chance = random.Random(seed)
    strands = some_strands(chance, chance.randint(1, 25))
    wide = lanes(strands, 1000.0)
    for (a, at), (b, other) in combinations(list(zip(strands, wide, strict=True)), 2):
        if min(a.end, b.end) > max(a.start, b.start):
            assert abs(at - other) >= (a.diameter + b.diameter) / 2 - 1e-9
    tight = lanes(strands, 20.0)
    assert all(abs(at) <= 10 for at in tight)
    largest = max(map(abs, wide))
    shrunk = max(map(abs, tight)) / largest if largest else 1.0
    assert tight == pytest.approx([each * shrunk for each in wide], abs=1e-9)


def test_one_strand_lies_in_the_middle():
    assert lanes([Strand("W1", 0, 100, 1, -1, 5.0)], 56) == [0.0]
    assert lanes([], 56) == []


def test_what_leaves_first_to_the_left_lies_outermost_on_the_left():
    # all enter from the left, one after the other leaves to the left: none need cross
    strands = [Strand(f"W{n}", 10 * n, 500 - 10 * n, 1, 1, 4.0) for n in range(4)]
    at = lanes(strands, 56)
    assert at == sorted(at)
    assert crossed(strands, least_crossing(strands)) == 0


def test_a_way_round_the_corner_of_a_channel_is_one_strand():
    corner = Channel("RW9", "A", (Point(100, 100), Point(400, 100), Point(400, 500)), 60, 60, 56, 56)
    points = (Point(150, 300), Point(150, 100), Point(400, 100), Point(400, 450), Point(600, 450))
    way = Route("W08", points, 20, (InChannel("RW9", 50, 650),))
    strands = strands_in(corner, corner.line, [(way, 8.5)])
    assert [(each.start, each.end, each.before, each.after, each.legs) for each in strands] == [
        (50, 650, 1, -1, (1, 2))
    ]
    back = strands_in(corner, corner.line, [(replace(way, points=points[::-1]), 8.5)])
    assert [(each.start, each.end, each.before, each.after, each.legs) for each in back] == [(50, 650, 1, -1, (1, 2))]


@pytest.mark.parametrize("board", ["bus_plan", "cabin_plan"])
def test_drawn_ways_keep_their_ends_and_their_square_corners(board, request):
    plan = request.getfixturevalue(board)
    ways = find_routes(plan)
    drawn = drawn_beside_each_other(plan, ways)
    moved = {name: way.points for name, way in drawn.items() if way is not ways[name]}
    assert {name for name, way in ways.items() if isinstance(way, Route) and way.in_channels} >= set(moved) > set()
    for name, points in moved.items():
        before = ways[name].points
        assert (points[0], points[-1], len(points)) == (before[0], before[-1], len(before))
        for number in range(len(points) - 1):
            a, b = before[number], before[number + 1]
            if a.x == b.x or a.y == b.y:
                assert points[number].x == points[number + 1].x or points[number].y == points[number + 1].y
    lying = [points for name, points in moved.items() if points != ways[name].points]
    assert len(set(lying)) == len(lying) > 1


def test_what_lies_as_it_lay_is_drawn_as_the_same_object(bus_plan):
    ways = find_routes(bus_plan)
    drawn, again = drawn_beside_each_other(bus_plan, ways), drawn_beside_each_other(bus_plan, dict(ways))
    assert all(again[name] is way for name, way in drawn.items())
    inside = next(name for name, way in ways.items() if isinstance(way, Route) and way.in_channels)
    fewer = drawn_beside_each_other(bus_plan, {name: way for name, way in ways.items() if name != inside})
    assert any(fewer[name] != drawn[name] for name in fewer)


def test_drawn_ways_do_not_depend_on_the_order_of_cables(bus_plan):
    ways = find_routes(bus_plan)
    assert drawn_beside_each_other(bus_plan, dict(reversed(ways.items()))) == drawn_beside_each_other(bus_plan, ways)


def test_a_thick_bundle_is_drawn_as_one(bus_plan):
    ways = find_routes(bus_plan)
    inside = next(way for way in ways.values() if isinstance(way, Route) and way.in_channels)
    cable = bus_plan.cables[inside.cable]
    many = {f"B{number}": replace(cable, id=f"B{number}") for number in range(25)}
    plan = replace(bus_plan, cables={**bus_plan.cables, **many})
    alike = {name: replace(inside, cable=name) for name in many}
    assert drawn_beside_each_other(plan, alike) == alike
    few = dict(list(alike.items())[:10])
    assert len({way.points for way in drawn_beside_each_other(plan, few).values()}) == 10
