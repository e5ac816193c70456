"""Open lines that share what is known of others, against lines looked up afresh."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from random_plans import random_plan

from boardplan.routing.square.blockers import blockers_of
from boardplan.routing.square.open_lines import OpenLines, units
from boardplan.routing.square.surroundings import changed_surroundings, remembered, surroundings_of

PLANS = {seed: random_plan(seed) for seed in (3, 5, 8)}


def asked(lines, places):
    return [lines.span(axis, units(line), units(at)) for axis in (0, 1) for line in places for at in places]


@settings(max_examples=25)
@given(st.sampled_from(sorted(PLANS)), st.data())
def test_lines_of_a_changed_plan_are_open_as_those_looked_up_afresh(seed, data):
    plan, half = PLANS[seed], 5.0
    held = plan.components[data.draw(st.sampled_from(sorted(plan.components)))]
    by = st.integers(-200, 200)
    after = plan.with_things([replace(held, position=held.position.moved(data.draw(by), data.draw(by)))])
    places = data.draw(st.lists(st.integers(-20, 1200), min_size=4, max_size=10))
    before, now = blockers_of(plan), blockers_of(after)
    known = OpenLines(before, half)
    asked(known, places)
    shared = OpenLines(now, half, like=(known, set(before) ^ set(now)))
    assert asked(shared, places) == asked(OpenLines(now, half), places)
    assert asked(known, places) == asked(OpenLines(before, half), places)


def test_surroundings_share_with_those_of_a_plan_that_differs_in_little_and_with_no_others():
    plan = PLANS[3]
    known = remembered(surroundings_of(plan))
    name = min(plan.components)
    held = plan.components[name]
    little = changed_surroundings(plan.with_things([replace(held, position=held.position.moved(4, 0))]))
    assert little.like is not None
    assert little.like[0] is known
    assert {each.thing for each in little.like[1]} == {name}
    board = next(iter(plan.boards.values()))
    other = changed_surroundings(plan.with_things([replace(board, position=board.position.moved(10, 0))]))
    assert other.like is None


@given(st.sampled_from(sorted(PLANS)), st.integers(0, 1200), st.integers(0, 900), st.integers(1, 120))
def test_bodies_round_a_spot_are_all_that_a_bend_there_could_come_too_near_to(seed, x, y, far):
    lines = OpenLines(blockers_of(PLANS[seed]), 5.0)
    spot, reach = (units(x), units(y)), units(far)
    near = [
        each
        for each in lines.bodies
        if all(
            low - each[2] < at + reach and at - reach < high + each[2]
            for at, (low, high) in zip(spot, each[:2], strict=True)
        )
    ]
    found = lines.bodies_round(spot, reach)
    assert all(each in found for each in near)
    assert all(each in lines.bodies for each in found)
