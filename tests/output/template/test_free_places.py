"""Words keep clear of what is drawn."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Box
from boardplan.output.template.free_places import (
    FreePlaces,
    places_from_corner,
    places_from_left,
    places_from_middle,
    places_within,
    shared_area,
)


def test_a_free_place_is_better_than_a_taken_one():
    places = FreePlaces()
    places.take(Box(0, 0, 10, 10), 5)
    taken, free = Box(5, 5, 12, 12), Box(20, 20, 27, 27)
    assert places.cost(taken) == 125
    assert places.best([(taken, 0.0), (free, 1.0)]) == (free, 1.0)


def test_a_large_box_counts_once():
    places = FreePlaces()
    places.take(Box(0, 0, 500, 500), 1)
    assert places.cost(Box(10, 10, 210, 210)) == 200 * 200


def test_no_place_where_nothing_fits():
    assert list(places_within(Box(0, 0, 10, 10), 11, 2, 1)) == []
    assert FreePlaces().best([]) is None


def test_places_stay_in_their_room():
    room = Box(0, 0, 30, 20)
    found = list(places_within(room, 10, 10, 4))
    assert len(found) == 6 * 3
    assert all(room.holds(box.corners()[0]) and room.holds(box.corners()[2]) for box in found)


rooms = st.builds(
    lambda left, bottom, width, height: Box(left, bottom, left + width, bottom + height),
    *(st.floats(-300, 300), st.floats(-300, 300), st.floats(1, 120), st.floats(1, 120)),
)


@given(rooms, st.floats(1, 40), st.floats(1, 20), st.sampled_from([3.0, 4.0, 5.0]))
def test_orders_are_those_of_sorting_all_places(room, width, height, step):
    every = list(places_within(room, width, height, step))
    assert list(places_from_left(room, width, height, step)) == sorted(every, key=lambda box: box.left)
    middle = room.centre
    about = sorted(every, key=lambda box: box.centre.distance_to(middle))
    assert list(places_from_middle(room, width, height, step)) == about


@pytest.mark.parametrize(
    "away_in",
    [
        lambda room: lambda box: 0.05 * (room.right - box.right + room.top - box.top),
        lambda room: lambda box: 0.05 * (box.left - room.left + room.top - box.top),
        lambda room: lambda box: 0.05 * (box.left - room.left + box.bottom - room.bottom),
    ],
)
@given(room=rooms, width=st.floats(1, 40), height=st.floats(1, 20))
def test_nearest_a_corner_comes_first(away_in, room, width, height):
    away = away_in(room)
    every = [(box, away(box)) for box in places_within(room, width, height, 5.0)]
    assert list(places_from_corner(room, width, height, 5.0, away)) == sorted(every, key=lambda each: each[1])


@given(st.lists(st.tuples(rooms, st.floats(0.1, 60)), max_size=12), st.lists(rooms, min_size=1, max_size=12))
def test_the_best_has_the_least_sum_however_it_is_asked_for(taken, boxes):
    places = FreePlaces()
    for box, weight in taken:
        places.take(box, weight)
    candidates = [(box, 0.5 * index) for index, box in enumerate(boxes)]
    sums = [own + sum(weight * shared_area(box, other) for other, weight in taken) for box, own in candidates]
    found = places.best(candidates)
    assert found == places.best(candidates, rising=True)
    assert found is not None
    assert found[1] == pytest.approx(min(sums))


def test_no_more_are_asked_for_than_can_be_the_best():
    asked = []

    def spots():
        for index in range(100):
            asked.append(index)
            yield Box(0, 20.0 * index, 10, 20.0 * index + 10), 1.0 * index

    assert FreePlaces().best(spots(), rising=True) == (Box(0, 0, 10, 10), 0.0)
    assert asked == [0, 1]
