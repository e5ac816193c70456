"""Channels shared out among cables, against all ways tried out, areas added up, and other orders and places."""

import math
import random
from dataclasses import replace
from itertools import pairwise, product

import numpy as np
import pytest
from bench.shared_channels import case
from boards import library_bus
from hypothesis import given
from hypothesis import strategies as st
from routing.laid import unpinned
from scipy.optimize import Bounds, LinearConstraint, milp

from boardplan.geometry.point import Point
from boardplan.model.channel import Channel
from boardplan.routing.channels.channel_fill import channel_fills
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.one_way import found_way
from boardplan.routing.route import Route
from boardplan.routing.sharing.capacity import overfull, spread_over_channels
from boardplan.routing.sharing.choice import cost, over
from boardplan.routing.sharing.clusters import overfull_clusters, reached
from boardplan.routing.sharing.fewest import counted, fewest_outside
from boardplan.routing.sharing.left import SavingLeft, saving_left
from boardplan.routing.sharing.network import Network, Piece, Wish, least_path
from boardplan.routing.sharing.places import meetings
from boardplan.routing.sharing.plan import layout_of
from boardplan.routing.sharing.prices import Prices
from boardplan.routing.sharing.pricing import Pricing
from boardplan.routing.sharing.search import Work, sharings
from boardplan.routing.square.surroundings import surroundings_of


def overfilled(network, wishes, chosen):
    """Return the pieces that hold more than their room, each area added up from the answer alone."""
    return [
        number
        for number, piece in enumerate(network.pieces)
        if sum(w.area for w, path in zip(wishes, chosen, strict=True) if path and number in path.pieces)
        > piece.room + 1e-6
    ]


def end_of(network, path):
    """Return where a path leads from its start, having asserted that its pieces hang together."""
    node = path.start
    for number in path.pieces:
        piece = network.pieces[number]
        assert node in (piece.a, piece.b)
        node = piece.a + piece.b - node
    return node


def assert_lawful(network, wishes, sharing):
    assert overfilled(network, wishes, sharing.chosen) == []
    total = 0.0
    for wish, path in zip(wishes, sharing.chosen, strict=True):
        if path is None:
            total += wish.outside
            continue
        ends = dict(wish.starts)[path.start], dict(wish.ends)[end_of(network, path)]
        total += sum(ends) + sum(network.pieces[each].length for each in path.pieces)
        assert wish.closed.isdisjoint(path.pieces)
    assert sharing.cost == pytest.approx(total)
    assert sharing.bound <= sharing.cost + 1e-6


def small_question(seed):
    """Return a network of 4 to 6 nodes with 3 to 5 cables, room for few."""
    chance = random.Random(seed)
    nodes = chance.randint(4, 6)
    pairs = [(a, b) for a in range(nodes) for b in range(a) if chance.random() < 0.6]
    pieces = tuple(Piece(a, b, chance.randint(1, 9) * 10.0, chance.choice((5.0, 10.0, 16.0))) for a, b in pairs)
    wishes = []
    for number in range(chance.randint(3, 5)):
        starts, ends = (
            tuple((node, chance.randint(0, 5) * 4.0) for node in chance.sample(range(nodes), chance.randint(1, 2)))
            for _ in range(2)
        )
        closed = frozenset(each for each in range(len(pieces)) if chance.random() < 0.1)
        wishes.append(
            Wish(f"W{number}", chance.choice((3.0, 4.5, 7.0)), starts, ends, chance.randint(9, 40) * 10, closed)
        )
    return Network(nodes, pieces), tuple(wishes)


def all_ways(network, wish):
    """Yield the pieces and the cost of every way of a cable that passes no node twice, and of staying outside."""
    yield (), wish.outside

    def go_on(node, passed, pieces, so_far):
        if node in dict(wish.ends):
            yield tuple(pieces), so_far + dict(wish.ends)[node]
        for number, piece in enumerate(network.pieces):
            if node in (piece.a, piece.b) and number not in wish.closed:
                other = piece.a + piece.b - node
                if other not in passed:
                    yield from go_on(other, passed | {other}, [*pieces, number], so_far + piece.length)

    for node, access in wish.starts:
        yield from go_on(node, {node}, [], access)


def least_of_all(network, wishes, longest=None):
    """Return what the best answer costs, all of them tried out; `longest` is what ways may cost, if not outside."""
    options = []
    for wish, most in zip(wishes, longest or [each.outside for each in wishes], strict=True):
        cheapest = {}
        for pieces, cost_of_it in all_ways(network, wish):
            key = frozenset(pieces)
            cheapest[key] = min(cheapest.get(key, math.inf), cost_of_it)
        options.append([(key, each) for key, each in cheapest.items() if each <= most or not key])
    least = math.inf
    for some in product(*options):
        total = sum(each for _, each in some)
        if total < least:
            held = [0.0] * len(network.pieces)
            for wish, (pieces, _) in zip(wishes, some, strict=True):
                for piece in pieces:
                    held[piece] += wish.area
            if all(area <= piece.room for area, piece in zip(held, network.pieces, strict=True)):
                least = total
    return least


@pytest.mark.parametrize("seed", range(25))
def test_no_answer_to_a_small_question_costs_less(seed):
    network, wishes = small_question(seed)
    answers = list(sharings(network, wishes, Work(tries=2)))
    for each in answers:
        assert_lawful(network, wishes, each)
    least = least_of_all(network, wishes)
    assert answers[-1].cost == pytest.approx(least)
    assert max(each.bound for each in answers) <= least + 1e-6


def priced(network, wishes):
    """Return the prices when no others change anything."""
    prices = Prices(network, wishes)
    while prices.improve():
        pass
    return prices


@given(st.integers(0, 10**6))
def test_no_bound_is_above_what_the_best_of_all_answers_costs(seed):
    network, wishes = small_question(seed)
    least = least_of_all(network, wishes)
    prices = priced(network, wishes)
    assert prices.plain <= prices.bound <= least + 1e-6
    *_, last = sharings(network, wishes, Work(tries=2))
    assert least - 1e-6 <= last.cost


@given(st.integers(0, 10**6))
def test_no_answer_leaves_fewer_cables_outside_than_must_be(seed):
    network, wishes = small_question(seed)
    only_count, counting = counted(network, wishes)
    least = fewest_outside(only_count, counting, priced(only_count, counting).bound)
    # by all answers tried out, each outside as dear as all ways together, so that the fewest come first
    dear = 1e6
    raised = tuple(replace(each, outside=each.outside + dear) for each in wishes)
    fewest = math.floor(least_of_all(network, raised, [each.outside for each in wishes]) / dear)
    assert least <= fewest


@pytest.mark.parametrize("seed", range(4))
def test_no_bound_is_above_the_optimum_of_a_program_over_single_arcs(seed):
    chance = random.Random(seed)
    found = case(3, 3, 9, chance.uniform(0.6, 1.0), seed)
    optimum = least_by_arcs(found.network, found.wishes)
    assert priced(found.network, found.wishes).bound <= optimum * (1 + 1e-6)
    *_, last = sharings(found.network, found.wishes, Work(tries=20))
    assert optimum * (1 - 1e-6) <= last.cost


def least_by_arcs(network, wishes):
    """Return the least cost of any answer: a flow of each cable over single arcs, whole, solved by HiGHS."""
    arcs = [(each.a, each.b, n) for n, each in enumerate(network.pieces)]
    arcs += [(b, a, n) for a, b, n in arcs]
    costs, rows, lower, upper, area_of_column = [], [], [], [], []
    for wish in wishes:
        first = len(costs)
        columns = [(a, b, network.pieces[n].length, n) for a, b, n in arcs]
        columns += [(-1, node, access, None) for node, access in wish.starts]
        columns += [(node, -2, access, None) for node, access in wish.ends]
        columns += [(-1, -2, wish.outside, None)]
        costs += [length for _, _, length, _ in columns]
        area_of_column += [(piece, wish.area) for *_, piece in columns]
        for node in range(-2, network.nodes):
            out = {first + n: 1.0 for n, (a, *_) in enumerate(columns) if a == node}
            rows.append(out | {first + n: -1.0 for n, (_, b, *_) in enumerate(columns) if b == node})
            flow = {-1: 1.0, -2: -1.0}.get(node, 0.0)
            lower.append(flow)
            upper.append(flow)
    for number, piece in enumerate(network.pieces):
        rows.append({n: area for n, (own, area) in enumerate(area_of_column) if own == number})
        lower.append(-math.inf)
        upper.append(piece.room)
    matrix = np.zeros((len(rows), len(costs)))
    for line, row in zip(matrix, rows, strict=True):
        line[list(row)] = list(row.values())
    within = LinearConstraint(matrix, lower, upper)
    solved = milp(costs, constraints=within, integrality=np.ones(len(costs)), bounds=Bounds(0, 1))
    assert solved.success
    return solved.fun


@pytest.mark.parametrize("tight", [0.35, 0.8])
def test_answers_get_better_and_bounds_closer_and_are_the_same_each_time(tight):
    found = case(5, 4, 60, tight)
    answers = list(sharings(found.network, found.wishes, Work(tries=2)))
    for each in answers:
        assert_lawful(found.network, found.wishes, each)
    for before, after in pairwise(answers):
        assert after.cost <= before.cost
        assert after.bound >= before.bound
    again = list(sharings(found.network, found.wishes, Work(tries=2)))
    assert [each.chosen for each in again] == [each.chosen for each in answers]


@pytest.mark.parametrize("seed", range(20))
def test_the_least_ways_at_prices_are_those_of_a_search_for_each_cable(seed):
    network, wishes = small_question(seed)
    chance = random.Random(seed)
    prices = [chance.choice((0.0, 0.5, 3.0)) for _ in network.pieces]
    costs, _ = Pricing(network, wishes).chosen(np.array(prices), Prices(network, wishes).rows)
    for wish, found in zip(wishes, costs, strict=True):
        path = least_path(network, wish, dearer(network, wish, prices))
        paid = path.cost + sum(prices[each] * wish.area for each in path.pieces) if path else math.inf
        assert found == pytest.approx(min(wish.outside, paid))


def dearer(network, wish, prices):
    def cost_of_piece(number):
        piece = network.pieces[number]
        if number in wish.closed or piece.room < wish.area:
            return math.inf
        return piece.length + prices[number] * wish.area

    return cost_of_piece


@pytest.mark.parametrize("seed", range(20))
def test_the_pieces_a_cable_may_come_into_are_those_of_its_ways(seed):
    network, wishes = small_question(seed)
    for wish in wishes:
        ways = [set(pieces) for pieces, each in all_ways(network, wish) if pieces and each <= wish.outside]
        fitting = [each for each in ways if all(network.pieces[piece].room >= wish.area for piece in each)]
        assert set().union(*fitting) <= reached(network, wish)


def test_channels_meet_where_they_cross_tee_or_butt_square():
    level = (Point(0, 0), Point(500, 0))
    halves = (30.0, 20.0)
    assert meetings(level, (Point(200, -100), Point(200, 100)), halves) == [(200, 100, 0)]  # crossing
    assert meetings(level, (Point(200, 30), Point(200, 100)), halves) == [(200, 0, 30)]  # tee on the wall
    assert meetings(level, (Point(200, 32), Point(200, 100)), halves) == []  # 2 mm short of it
    assert meetings(level, (Point(515, 0), Point(515, 100)), halves) == [(500, 0, 15)]  # corner
    assert meetings(level, (Point(0, 10), Point(500, 10)), halves) == []  # beside


def tight_plan(height=14.0, width=30.0):
    """Return the library bus with a narrow channel and a second one above it, all cables that may in channels."""
    free = unpinned(library_bus())
    main = replace(free.channels["RW1"], width=width + 4, height=height + 6, inner_width=width, inner_height=height)
    second = Channel("RW8", "A", (Point(40, 330), Point(580, 330)), 34, 30, 30, 26)
    links = [Channel(f"RW{n}", "A", (Point(x, 266), Point(x, 330)), 34, 30, 30, 26) for n, x in ((6, 57), (7, 563))]
    return free.with_things([main, second, *links])


PLANS = {f"{height} mm": tight_plan(height) for height in (6.0, 9.0, 14.0)}


def alone(plan):
    around = surroundings_of(plan)
    return around, {name: found_way(around, each) for name, each in plan.cables.items()}


def one_by_one(plan, around, ways):
    """Return the ways with cables laid one after the other, the thickest first, looked at afresh each time."""
    settled = dict(ways)

    def area(name):
        cable = plan.cables[name]
        return cable.count * math.pi / 4 * plan.conductors[cable.conductor].outside_diameter ** 2

    laid = {}
    for name in sorted(plan.cables, key=lambda each: (-area(each), each)):
        way = settled[name]
        if not isinstance(way, Route) or not way.in_channels:
            continue
        full = overfull(plan, {**laid, name: way}, 45)
        if full:
            other = found_way(around, plan.cables[name], full)
            if isinstance(other, Route) and not overfull(plan, {**laid, name: other}, 45):
                way = settled[name] = other
        laid[name] = way
    return settled


def _has_room_elsewhere(plan, around, ways, name):
    """Say whether a cable has another way that would overfill less."""
    other = found_way(around, plan.cables[name], overfull(plan, ways, 45))
    return isinstance(other, Route) and over(plan, {**ways, name: other}, 45) < over(plan, ways, 45)


@pytest.mark.parametrize("name", PLANS)
def test_spread_ways_overfill_less_than_unspread_ones_and_are_no_worse_than_one_by_one(name):
    plan = PLANS[name]
    around, ways = alone(plan)
    assert overfull(plan, ways, 45)
    spread = spread_over_channels(plan, ways, lambda cable, full: found_way(around, cable, full))
    greedy = one_by_one(plan, around, ways)
    assert (over(plan, spread, 45), cost(plan, spread)) <= (over(plan, greedy, 45), cost(plan, greedy) + 0.1)
    for section in (each for fill in channel_fills(plan, spread).values() for each in fill.sections):
        if section.percent > 45:
            assert not [each for each in section.cables if _has_room_elsewhere(plan, around, spread, each)]
    moved = [each for each in plan.cables if spread[each] is not ways[each]]
    assert moved
    assert all(spread[each].full or not overfull(plan, {each: ways[each]}, 45) for each in moved)


@pytest.mark.parametrize("name", ["6.0 mm", "9.0 mm"])
def test_spread_ways_do_not_depend_on_the_order_of_cables_or_channels(name):
    plan = PLANS[name]
    turned = replace(plan, cables=dict(reversed(plan.cables.items())), channels=dict(reversed(plan.channels.items())))
    assert find_routes(turned) == find_routes(plan)


@pytest.mark.parametrize("name", ["9.0 mm", "14.0 mm"])
def test_spread_ways_after_a_change_are_those_of_a_fresh_look(name):
    plan = PLANS[name]
    ways = find_routes(plan)
    held = plan.components["HB1"]
    for by in ((12, 5),):
        after = plan.with_things([replace(held, position=held.position.moved(*by))])
        assert refreshed_routes(plan, ways, after) == find_routes(after)


def test_cables_far_from_an_overfull_section_stay_as_they_lie():
    # two questions that share no piece, one overfull: the cluster holds that one's cables alone
    pieces = (Piece(0, 1, 100, 10), Piece(0, 1, 150, 10), Piece(2, 3, 100, 20), Piece(2, 3, 150, 20))
    network = Network(4, pieces)
    wishes = [Wish(f"W{n}", 6.0, ((a, 0.0),), ((a + 1, 0.0),), 400.0) for n, a in enumerate((0, 0, 2, 2))]
    now = [frozenset({0}), frozenset({0}), frozenset({2}), frozenset({2})]
    (cluster,) = overfull_clusters(network, wishes, now)
    assert (cluster.cables, cluster.pieces) == ((0, 1), (0, 1))
    *_, last = sharings(cluster.network, cluster.wishes)
    assert sorted(path.pieces for path in last.chosen) == [(0,), (1,)]


def test_shallow_channels_and_those_of_mains_cables_are_closed_to_others():
    plan = tight_plan()
    mains = replace(plan.cables["W08"], cable_class="ac", way="channel")
    plan = plan.with_things([mains, replace(plan.channels["RW7"], inner_height=4.0)])
    _, ways = alone(plan)
    layout = layout_of(plan, ways, 45)
    assert ways["W08"].in_channels
    assert "W08" not in {each.cable for each in layout.wishes}
    apart = {
        number
        for number, each in enumerate(layout.stretches)
        if each
        and any(
            each.channel == p.channel and p.start <= each.start and each.end <= p.end for p in ways["W08"].in_channels
        )
    }
    shallow = {number for number, each in enumerate(layout.stretches) if each and each.channel == "RW7"}
    assert apart
    assert shallow
    for wish, now in zip(layout.wishes, layout.now, strict=True):
        assert (apart | shallow) - now <= wish.closed
    divided = plan.with_things([replace(each, dividers=(10.0,)) for each in plan.channels.values()])
    closed = {name: each.closed for each in layout_of(divided, ways, 45).wishes for name in [each.cable]}
    thin = [each for each in closed if plan.conductors[plan.cables[each].conductor].outside_diameter < 4.6]
    assert thin
    assert all(closed[each].isdisjoint(apart) for each in thin)


def test_the_saving_left_bounds_what_any_sharing_could_save():
    plan = PLANS["9.0 mm"]
    _, ways = alone(plan)
    spread = find_routes(plan)
    left = saving_left(plan, spread)
    before = {name: each.alone or each for name, each in spread.items() if isinstance(each, Route)}
    known = {name: each for name, each in ways.items() if name in before}
    assert left.at_most == pytest.approx(cost(plan, before) - cost(plan, known), abs=0.2)
    assert left.moved == tuple(name for name in sorted(before) if before[name].points != ways[name].points)
    assert left.outside == tuple(name for name in left.moved if not spread[name].in_channels)
    assert "could still be saved" in left.sentence


@pytest.mark.parametrize(
    ("at_most", "outside", "words"),
    [
        (0.0, (), "no cable can be saved by sharing channels otherwise"),
        (701.0, (), "at most 0.8 m of cable could still be saved by sharing channels otherwise"),
        (800.0, (), "at most 0.8 m of cable could still be saved by sharing channels otherwise"),
        (
            4.0,
            ("W11", "W14"),
            "no cable can be saved by sharing channels otherwise; outside for want of room: W11, W14",
        ),
    ],
)
def test_the_saving_left_in_words(at_most, outside, words):
    assert SavingLeft(at_most, outside, outside).sentence == words


def test_nothing_is_left_to_save_where_no_channel_is_full(bus_plan):
    assert saving_left(bus_plan, find_routes(bus_plan)) == SavingLeft(0.0, (), ())
