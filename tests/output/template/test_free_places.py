"""Words keep clear of what is drawn."""

from boardplan.geometry.point import Box
from boardplan.output.template.free_places import FreePlaces, places_within


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
