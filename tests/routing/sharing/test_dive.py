"""Dives into the linear program: answers that overfill nothing, held against whole ways chosen by HiGHS."""

import math
import random

import numpy as np
import pytest
from bench.shared_channels import case
from scipy.optimize import LinearConstraint, milp

from boardplan.routing.sharing.dive import dived
from boardplan.routing.sharing.prices import Prices
from boardplan.routing.sharing.sharing import cost_of


def priced(found, rounds):
    prices = Prices(found.network, found.wishes)
    for _ in range(rounds):
        if not prices.improve():
            break
    return prices


def overfilled(found, chosen):
    """Return in how many pieces areas add up to more than the room."""
    held = [0.0] * len(found.network.pieces)
    for wish, path in zip(found.wishes, chosen, strict=True):
        for piece in path.pieces if path else ():
            held[piece] += wish.area
    return sum(area > piece.room + 1e-6 for area, piece in zip(held, found.network.pieces, strict=True))


def least_of_known_ways(prices):
    """Return the least cost of whole ways known, with room for all: rooms added up here, solved by HiGHS."""
    ways = [(n, path) for n, paths in enumerate(prices.pool) for path in paths.values()]
    rows = np.zeros((len(prices.network.pieces) + len(prices.wishes), len(ways)))
    for column, (number, path) in enumerate(ways):
        rows[list(path.pieces), column] = prices.wishes[number].area
        rows[len(prices.network.pieces) + number, column] = 1.0
    most = [piece.room for piece in prices.network.pieces] + [1.0] * len(prices.wishes)
    gains = [path.cost - prices.wishes[number].outside for number, path in ways]
    solved = milp(gains, constraints=LinearConstraint(rows, -np.inf, most), integrality=1, bounds=(0, 1))
    assert solved.success
    return solved.fun + math.fsum(each.outside for each in prices.wishes)


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("rounds", [3, 40])
def test_a_dive_overfills_nothing_and_costs_no_less_than_the_best_of_the_ways_it_knows(seed, rounds):
    found = case(4, 3, 14, 0.8, seed)
    prices = priced(found, rounds)
    least = least_of_known_ways(prices)
    for start in range(3):
        chosen = dived(prices, random.Random(start))
        assert overfilled(found, chosen) == 0
        assert cost_of(found.wishes, chosen) >= least * (1 - 1e-7)
        assert dived(prices, random.Random(start)) == chosen
    assert prices.bound <= least + 1e-6


@pytest.mark.parametrize("seed", range(4))
def test_where_there_is_room_for_all_a_dive_is_the_best_answer(seed):
    found = case(4, 3, 14, 0.1, seed)
    prices = priced(found, 40)
    chosen = dived(prices, random.Random(0))
    assert cost_of(found.wishes, chosen) == pytest.approx(prices.bound)
    assert None not in chosen
