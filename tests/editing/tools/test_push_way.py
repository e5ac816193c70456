from dataclasses import replace

import pytest
from pointing import click, done, drag, held, key, move, press, shown

from boardplan.editing.cable_edits import pin_way
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.push_way import without_pin
from boardplan.editing.tools.select import select
from boardplan.geometry.bends import turns
from boardplan.geometry.point import Point
from boardplan.model.placed import placed
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import Route


@pytest.fixture
def hand(bus_plan):
    return Hand(bus_plan, ways=find_routes(bus_plan))


def inner_leg(hand, cable):
    """The middle of the longest leg of a cable that holds neither of its ends, and whether it is level."""
    points = hand.ways[cable].points
    number = max(range(1, len(points) - 2), key=lambda each: points[each].distance_to(points[each + 1]))
    a, b = points[number : number + 2]
    return ((a.x + b.x) / 2, (a.y + b.y) / 2), a.y == b.y


def aside(place, level, by):
    return (place[0], place[1] + by) if level else (place[0] + by, place[1])


def pushable(hand):
    """A cable whose inner leg lies clear of all others."""
    return next(
        name
        for name, way in hand.ways.items()
        if isinstance(way, Route) and len(way.points) > 3 and not way.in_channels and not hand.plan.cables[name].pins
    )


def test_a_leg_of_a_found_way_is_pushed_and_pinned_as_it_is_shown(cabin_plan):
    bare = cabin_plan.with_things([replace(each, pins=()) for each in cabin_plan.cables.values()])
    hand = Hand(bare, ways=find_routes(bare))
    name = pushable(hand)
    start, level = inner_leg(hand, name)
    hand = replace(hand, selection=Selection((name,)))
    result = done(select(hand), *drag(start, aside(start, level, 6), aside(start, level, 12), over=name))
    pins = result.plan.cables[name].pins
    assert pins
    assert result.words == f"Pin the way of {name}"
    points = (hand.ways[name].points[0], *pins, hand.ways[name].points[-1])
    assert all(abs(turn) == pytest.approx(90) for turn in turns(points))


def test_meanwhile_the_cable_is_named_for_its_length(hand):
    name = next(name for name, way in hand.ways.items() if isinstance(way, Route) and len(way.points) > 3)
    start, level = inner_leg(hand, name)
    seen = shown(select(hand), press(*start, over=name), held(*aside(start, level, 20), over=name))
    assert seen.pushed == name
    assert seen.selection.ids == (name,)
    assert seen.plan.cables[name].pins


def test_over_a_body_it_says_so_and_where(cabin_plan):
    bare = cabin_plan.with_things([replace(each, pins=()) for each in cabin_plan.cables.values()])
    hand = Hand(bare, ways=find_routes(bare))
    name = pushable(hand)
    start, level = inner_leg(hand, name)
    own = {getattr(end, "component", "") for end in bare.cables[name].ends}
    bodies = {
        each.id: placed(bare, each).box.moved(*bare.boards[each.board].position)
        for each in bare.components.values()
        if each.id not in own
    }
    target = min(bodies, key=lambda each: bodies[each].centre.distance_to(Point(*start)))
    centre = bodies[target].centre
    to = (start[0], centre.y) if level else (centre.x, start[1])
    seen = shown(select(hand), press(*start, over=name), held(*to, over=name))
    assert seen.stuck is not None
    assert "over " in seen.hint or "too tight" in seen.hint


def test_too_tight_a_place_names_the_leg(hand):
    pinned = pin_way(hand.plan, "W08", hand.ways["W08"].points[1:-1])
    hand = Hand(pinned, Selection(("W08",)), find_routes(pinned))
    first, second = hand.ways["W08"].points[1:3]
    seen = shown(select(hand), press(*first), held(first.x + (second.x - first.x) * 0.98, second.y - 1))
    assert "W08: too tight: a leg is " in seen.hint
    assert seen.stuck is not None


def test_escape_leaves_the_way(hand):
    name = next(name for name, way in hand.ways.items() if isinstance(way, Route) and len(way.points) > 3)
    start, level = inner_leg(hand, name)
    there = aside(start, level, 20)
    assert done(select(hand), press(*start, over=name), held(*there, over=name), key("escape")).plan is None


def pinned_hand(hand, cable="W08"):
    plan = pin_way(hand.plan, cable, hand.ways[cable].points[1:-1])
    return Hand(plan, Selection((cable,)), find_routes(plan))


def test_a_pinned_corner_is_dragged_by_its_handle(hand):
    hand = pinned_hand(hand)
    corner = hand.ways["W08"].points[1]
    result = done(select(hand), *drag(tuple(corner), (corner.x, corner.y + 5), (corner.x, corner.y + 10)))
    assert result.plan.cables["W08"].pins[0] == pytest.approx(corner.moved(0, 10))
    assert result.plan.cables["W08"].pins[1].y == pytest.approx(corner.y + 10), "its neighbour stays square to it"


def test_a_clicked_corner_is_what_is_removed_next(hand):
    hand = pinned_hand(hand)
    corner = hand.ways["W08"].points[2]
    assert done(select(hand), *click(*corner)).corner == ("W08", 2)


def test_a_handle_says_what_it_is_for(hand):
    hand = pinned_hand(hand)
    assert "press Del" in shown(select(hand), move(*hand.ways["W08"].points[1])).hint


def test_of_a_cable_that_is_not_selected_the_leg_is_caught(hand):
    hand = replace(pinned_hand(hand), selection=Selection())
    assert done(select(hand), *click(*hand.ways["W08"].points[1])).corner is None


def test_a_pin_is_taken_out_with_its_step(hand):
    step = pin_way(hand.plan, "W08", (Point(100, 300), Point(100, 200), Point(300, 200), Point(300, 90)))
    way = Route("W08", (Point(50, 300), *step.cables["W08"].pins, Point(500, 90)), 30.0)
    less = without_pin(step, "W08", way, 2).cables["W08"].pins
    assert 0 < len(less) < 4


def test_the_last_pin_gives_the_way_back(hand):
    one = pin_way(hand.plan, "W08", (Point(100, 300),))
    way = Route("W08", (Point(100, 100), Point(100, 300), Point(400, 300)), 30.0)
    assert without_pin(one, "W08", way, 1).cables["W08"].pins == ()


def test_no_pin_of_that_number_is_refused(hand):
    with pytest.raises(EditRefused, match="no pinned corner 3"):
        without_pin(pin_way(hand.plan, "W08", (Point(1, 2),)), "W08", hand.ways["W08"], 3)
