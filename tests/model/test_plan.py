from dataclasses import replace

import pytest
from hypothesis import given
from strategies import plans, points

from boardplan.geometry.point import Point
from boardplan.model.plan import COLLECTIONS, Plan


def test_every_thing_is_found_by_its_id(bus_plan):
    assert len(bus_plan.things) == sum(len(getattr(bus_plan, name)) for name in COLLECTIONS.values())
    assert bus_plan.things["INV1"] is bus_plan.components["INV1"]
    assert list(bus_plan.things)[:2] == ["A", "post-A1"]


def test_every_collection_of_a_plan_is_in_the_table():
    others = {"job", "rules", "kinds", "conductors", "fasteners", "accepted", "stock", "supply", "trays"}
    assert set(Plan.__dataclass_fields__) - others == set(COLLECTIONS.values())


def test_things_are_added_and_put_in_place_of_others(bus_plan):
    moved = replace(bus_plan.components["INV1"], position=Point(1, 2))
    new = replace(moved, id="INV7")
    plan = bus_plan.with_things([moved, new])
    assert plan.components["INV1"] is moved
    assert list(plan.components)[-1] == "INV7"
    assert list(plan.components)[:-1] == list(bus_plan.components)
    assert plan.cables is bus_plan.cables
    assert bus_plan.components["INV1"].position == (730, 290)


def test_nothing_added_or_taken_is_the_same_plan(bus_plan):
    assert bus_plan.with_things([]) is bus_plan
    assert bus_plan.without([]) is bus_plan
    assert bus_plan.without(["nothing"]) is bus_plan


def test_taking_away_leaves_the_rest_as_it_is(bus_plan):
    plan = bus_plan.without(["RW1", "W40"])
    assert "RW1" not in plan.things
    assert plan.components is bus_plan.components


@pytest.mark.parametrize(("board", "on_wall"), [("A", (10, 20)), ("B", (842, 20))])
def test_places_on_the_wall(cabin_plan, board, on_wall):
    assert cabin_plan.on_wall(board, Point(10, 20)) == on_wall
    assert cabin_plan.off_wall(board, Point(*on_wall)) == (10, 20)


@given(plans(), points)
def test_there_and_back_again(plan, point):
    for board in plan.boards:
        assert plan.off_wall(board, plan.on_wall(board, point)) == pytest.approx(point, abs=1e-9)
