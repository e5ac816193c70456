"""Covers of small knapsacks against every set of cables that fits, areas added up."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.routing.sharing.covers import Knapsack, cover_row, heaviest_set, lifted, quick_cover_row
from boardplan.routing.sharing.tightening import Tightening

AREAS = st.sampled_from([3.14, 6.6, 10.2, 16.6, 28.3, 56.7])
LOADS = st.lists(st.tuples(AREAS, st.floats(0, 1)), min_size=2, max_size=8)


def sets_that_fit(areas, room):
    """Return every set of cables whose areas add up to no more than the room."""
    numbers = range(len(areas))
    sets = [each for size in range(len(areas) + 1) for each in combinations(numbers, size)]
    return [list(each) for each in sets if sum(areas[one] for one in each) <= room + 1e-6]


@pytest.mark.parametrize("look", [cover_row, quick_cover_row])
@given(LOADS, st.floats(4, 120))
def test_no_set_that_fits_breaks_a_cover_but_the_shares_do(look, loads, room):
    areas, shares = (np.array(each) for each in zip(*loads, strict=True))
    weights = look(shares, areas, room)
    if weights is not None:
        assert max(weights[each].sum() for each in sets_that_fit(areas, room)) <= 1 + 1e-9
        assert weights @ shares > 1 + 1e-5
        assert (weights >= 0).all()


@given(LOADS, st.floats(4, 120))
def test_no_cover_bars_a_mean_of_sets_that_fit(loads, room):
    areas = np.array([area for area, _ in loads])
    sets = sets_that_fit(areas, room)
    shares = np.zeros(len(areas))
    for each in sets:
        shares[each] += 1 / len(sets)
    assert cover_row(shares, areas, room) is None
    assert quick_cover_row(shares, areas, room) is None


@given(LOADS, st.floats(4, 120), st.integers(1, 7))
def test_lifted_weights_stay_within_what_sets_may_weigh(loads, room, first):
    areas, weights = (np.array(each) for each in zip(*loads, strict=True))
    weights[first:] = 0.0
    own = [each for each in sets_that_fit(areas, room) if all(one < first for one in each)]
    weights /= max(1.0, *(weights[each].sum() for each in own))
    # a set may fit in whole steps that is too great by a step for the room: lifting must hold against those too
    weights /= max(1.0, heaviest_set(weights, Knapsack.of(areas, room))[0])
    found = lifted(weights, Knapsack.of(areas, room), range(first, len(areas)))
    assert (found >= weights).all()
    assert max(found[each].sum() for each in sets_that_fit(areas, room)) <= 1 + 1e-9


@given(LOADS, st.floats(4, 120))
def test_the_heaviest_set_is_no_lighter_than_any_that_fits(loads, room):
    areas, weights = (np.array(each) for each in zip(*loads, strict=True))
    weight, some = heaviest_set(weights, Knapsack.of(areas, room))
    assert weight == pytest.approx(weights[some].sum())
    assert weight >= max(weights[each].sum() for each in sets_that_fit(areas, room)) - 1e-9
    assert areas[some].sum() <= room * (1 + len(areas) / 2000) + 1e-5


@pytest.mark.parametrize("cover_row", [cover_row, quick_cover_row])
def test_two_of_three_equal_cables_have_no_room_for_halves_of_each(cover_row):
    # no two cables of 6 go together into 8.9, though three times 0.49 would: x1 + x2 + x3 <= 1 (extended cover,
    # Balas 1975)
    weights = cover_row(np.array([0.49, 0.49, 0.49]), np.array([6.0, 6.0, 6.0]), 8.9)
    assert weights == pytest.approx([1.0, 1.0, 1.0], abs=1e-6)
    assert cover_row(np.array([0.5, 0.5, 0.0]), np.array([6.0, 6.0, 6.0]), 8.9) is None


@given(LOADS, st.lists(st.floats(4, 120), min_size=2, max_size=4), st.data())
def test_a_cover_known_from_one_piece_holds_in_every_other_where_it_is_used(loads, rooms, data):
    areas = np.array([area for area, _ in loads])
    shares = st.lists(st.floats(0, 1), min_size=len(areas), max_size=len(areas))
    tightening = Tightening(np.array(rooms), areas)
    for _ in range(3):
        inside = np.array([data.draw(shares) for _ in rooms])
        for row in tightening.rows(inside):
            assert max(row.takes[each].sum() for each in sets_that_fit(areas, rooms[row.piece])) <= row.most
            assert row.takes @ inside[row.piece] > row.most
