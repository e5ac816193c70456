"""The whole job: everything is drawn, once, and in the order it lies."""

import pytest
from boards import library_bus, lookout_cabin

from boardplan.drawing.board_picture import board_picture, pictures_in_order
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import Route


@pytest.mark.parametrize("plan", [library_bus(), lookout_cabin()], ids=["library bus", "lookout cabin"])
def test_everything_is_drawn_in_its_order(plan):
    ways = find_routes(plan)
    order = [name for name, _ in pictures_in_order(plan, ways)]
    unlaid = {name for name, way in ways.items() if not isinstance(way, Route)}
    assert set(order) == set(plan.things) - unlaid
    for channel in plan.channels:
        base, cover = (at for at, name in enumerate(order) if name == channel)
        inside = [order.index(name) for name, way in ways.items() if isinstance(way, Route) and way.in_channels]
        assert all(base < at < cover for at in inside)
    assert max(order.index(name) for name in plan.boards) < min(order.index(name) for name in plan.components)


def test_a_job_is_a_bounded_number_of_marks():
    plan = library_bus()
    assert 500 < len(board_picture(plan, find_routes(plan))) < 2000
