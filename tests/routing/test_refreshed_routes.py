"""Ways after a change, against ways found afresh: any change, on boards with channels, one change after the other."""

from dataclasses import replace

import pytest
from boards import library_bus, lookout_cabin
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.laid import unpinned

from boardplan.geometry.point import Point
from boardplan.model.board import NoGoBox
from boardplan.model.cable import TerminalEnd
from boardplan.model.channel import Channel
from boardplan.routing.find_route import find_routes, refreshed_routes

BOARDS = {"library bus": unpinned(library_bus()), "lookout cabin": unpinned(lookout_cabin())}


def with_branch(plan):
    """Return a plan with another channel, so that ways have channels along both axes to choose from."""
    return plan.with_things([Channel("RW8", "A", (Point(620, 330), Point(620, 700)), 40, 60, 36, 56)])


def choosing(plan):
    """Return a plan whose cables all may choose, so that ways are weighed in channels against outside."""
    return plan.with_things([replace(each, way="choose") for each in plan.cables.values()])


PLANS = {
    **BOARDS,
    "library bus, all may choose": choosing(BOARDS["library bus"]),
    "library bus, two channels": with_branch(BOARDS["library bus"]),
    "library bus, two channels, all may choose": choosing(with_branch(BOARDS["library bus"])),
    "lookout cabin, all may choose": choosing(BOARDS["lookout cabin"]),
}


def without_component(plan, name):
    """Return a plan without a component and the cables that end on it."""
    gone = [
        each.id
        for each in plan.cables.values()
        if any(isinstance(end, TerminalEnd) and end.component == name for end in each.ends)
    ]
    return replace(
        plan,
        components={key: each for key, each in plan.components.items() if key != name},
        cables={key: each for key, each in plan.cables.items() if key not in gone},
    )


def component_moved(draw, plan):
    name, by = draw(st.sampled_from(sorted(plan.components))), st.integers(-60, 60)
    held = plan.components[name]
    return plan.with_things([replace(held, position=held.position.moved(draw(by), draw(by)))])


def component_dragged_a_little(draw, plan):
    name, by = draw(st.sampled_from(sorted(plan.components))), st.sampled_from((-5, -1, 0, 0.5, 5))
    held = plan.components[name]
    return plan.with_things([replace(held, position=held.position.moved(draw(by), draw(by)))])


def component_turned(draw, plan):
    held = plan.components[draw(st.sampled_from(sorted(plan.components)))]
    return plan.with_things([replace(held, turn=draw(st.sampled_from((0, 90, 180, 270, 30))))])


def component_removed(draw, plan):
    return without_component(plan, draw(st.sampled_from(sorted(plan.components))))


def component_added(draw, plan):
    like = plan.components[draw(st.sampled_from(sorted(plan.components)))]
    at = Point(draw(st.integers(50, 1100)), draw(st.integers(50, 800)))
    return plan.with_things([replace(like, id="NEW1", board="A", position=at)])


def no_go_box_added(draw, plan):
    x, y = draw(st.integers(0, 1200)), draw(st.integers(0, 800))
    return plan.with_things([NoGoBox("N9", "A", "pipe", x, y, draw(st.integers(10, 90)), draw(st.integers(10, 90)))])


def channel_moved(draw, plan):
    if not plan.channels:
        return plan
    held, by = plan.channels[draw(st.sampled_from(sorted(plan.channels)))], st.integers(-30, 30)
    dx, dy = draw(by), draw(by)
    return plan.with_things([replace(held, line=tuple(each.moved(dx, dy) for each in held.line))])


def channel_removed(draw, plan):
    if not plan.channels:
        return plan
    gone = draw(st.sampled_from(sorted(plan.channels)))
    return replace(plan, channels={key: each for key, each in plan.channels.items() if key != gone})


def channel_added(draw, plan):
    x, y, long = draw(st.integers(60, 500)), draw(st.integers(60, 600)), draw(st.integers(100, 600))
    end = Point(x + long, y) if draw(st.booleans()) else Point(x, y + long)
    return plan.with_things([Channel("RW9", "A", (Point(x, y), end), 40, 60, 36, 56)])


def cable_removed(draw, plan):
    gone = draw(st.sampled_from(sorted(plan.cables)))
    return replace(plan, cables={key: each for key, each in plan.cables.items() if key != gone})


CHANGES = (
    component_moved,
    component_dragged_a_little,
    component_turned,
    component_removed,
    component_added,
    no_go_box_added,
    channel_moved,
    channel_removed,
    channel_added,
    cable_removed,
)
BLOCKERS_ONLY = CHANGES[:6]


def checked(plan, ways, after):
    """Return the refreshed ways of a changed plan, which are those of a fresh look, with the same objects kept."""
    refreshed = refreshed_routes(plan, ways, after)
    fresh = find_routes(after)
    assert refreshed == fresh
    assert list(refreshed) == list(fresh)
    assert all(way is ways[name] for name, way in refreshed.items() if ways.get(name) == way)
    return refreshed


@settings(max_examples=12)
@given(st.sampled_from(sorted(PLANS)), st.data())
def test_ways_are_those_of_a_fresh_look_after_each_of_some_changes(name, data):
    plan = PLANS[name]
    ways = find_routes(plan)
    for change in data.draw(st.lists(st.sampled_from(CHANGES), min_size=1, max_size=3)):
        after = change(data.draw, plan)
        plan, ways = after, checked(plan, ways, after)


@settings(max_examples=12)
@given(st.sampled_from(sorted(PLANS)), st.data())
def test_ways_are_those_of_a_fresh_look_while_channels_stay(name, data):
    plan = PLANS[name]
    ways = find_routes(plan)
    for change in data.draw(st.lists(st.sampled_from(BLOCKERS_ONLY), min_size=1, max_size=4)):
        after = change(data.draw, plan)
        plan, ways = after, checked(plan, ways, after)


@pytest.mark.parametrize("name", PLANS)
def test_ways_stay_while_nothing_changes(name):
    ways = find_routes(PLANS[name])
    assert all(way is ways[key] for key, way in checked(PLANS[name], ways, PLANS[name]).items())


def test_a_bend_over_an_edge_is_no_reason_to_call_an_end_shut_in():
    plan = PLANS["library bus, all may choose"]
    held = plan.channels["RW1"]
    after = plan.with_things([replace(held, line=tuple(each.moved(-2, 16) for each in held.line))])
    checked(plan, find_routes(plan), after)
