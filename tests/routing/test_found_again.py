"""Ways said to be found again after a change, against ways found afresh."""

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from random_plans import random_plan

from boardplan.geometry.point import Point
from boardplan.routing.changes import Changes
from boardplan.routing.find_route import find_routes
from boardplan.routing.one_way import found_again, found_way
from boardplan.routing.square.surroundings import surroundings_of
from boardplan.routing.together.stirred import alone

SEEDS = (3, 5, 8, 13, 21)


@cache
def laid(seed):
    """Return a random board with all cables free to be laid, and their ways."""
    plan = random_plan(seed)
    plan = replace(plan, cables={name: replace(each, pins=()) for name, each in plan.cables.items()})
    return plan, find_routes(plan)


def moved(plan, name, dx, dy):
    held = plan.components[name]
    return plan.with_things([replace(held, position=held.position.moved(dx, dy))])


def asked(seed, after):
    """Return for each cable near a change whether its way is said to be found again, and whether it is."""
    plan, ways = laid(seed)
    around, fresh = surroundings_of(after), surroundings_of(after)
    changes = Changes(plan, around)
    found = []
    for cable in after.cables.values():
        was = alone(ways[cable.id])
        near = [] if changes.concern(cable, was) else changes.near(cable, was)
        if near:
            found.append((found_again(around, cable, was, near), found_way(fresh, cable) == was))
    return found


@settings(max_examples=60)
@given(st.sampled_from(SEEDS), st.data())
def test_a_way_said_to_be_found_again_is_what_a_fresh_look_finds(seed, data):
    plan, _ = laid(seed)
    name, by = data.draw(st.sampled_from(sorted(plan.components))), st.integers(-80, 80)
    answers = asked(seed, moved(plan, name, data.draw(by), data.draw(by)))
    assert all(again for said, again in answers if said)


def test_some_ways_past_a_component_that_moved_a_little_are_said_to_be_found_again():
    answers = []
    for seed in SEEDS:
        plan, _ = laid(seed)
        for name in sorted(plan.components)[:6]:
            answers += asked(seed, moved(plan, name, 3, 0))
    assert sum(said for said, _ in answers) >= 3
    assert all(again for said, again in answers if said)


@pytest.mark.parametrize("seed", SEEDS[:2])
def test_a_component_put_on_a_way_leaves_none_that_is_said_to_be_found_again_there(seed):
    plan, ways = laid(seed)
    way = next(each for each in ways.values() if len(getattr(alone(each), "points", ())) > 3)
    points = alone(way).points
    middle = Point((points[1].x + points[2].x) / 2, (points[1].y + points[2].y) / 2)
    ends = {getattr(end, "component", "") for end in plan.cables[way.cable].ends}
    name = next(each for each in sorted(plan.components) if each not in ends)
    held = plan.components[name]
    after = plan.with_things([replace(held, position=middle.minus(plan.boards[held.board].position))])
    changes = Changes(plan, surroundings_of(after))
    near = changes.near(plan.cables[way.cable], alone(way))
    assert not near or not found_again(surroundings_of(after), after.cables[way.cable], alone(way), near)
