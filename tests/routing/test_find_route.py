"""Ways of cables: pinned ones as they are pinned, found ones looked at from outside."""

from dataclasses import replace
from functools import cache

import pytest
from boards import library_bus, lookout_cabin
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.laid import askew_at_ends, off_boards, short_legs, too_near, unpinned

from boardplan.geometry.bends import straight_length
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Exit, NoGoBox
from boardplan.model.cable import ExitEnd, TerminalEnd
from boardplan.model.channel import Channel
from boardplan.routing.channels.channel_fill import channel_fills
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.route import NoWay, Route

BOARDS = (library_bus, lookout_cabin)
FREE = [(board, name) for board in BOARDS for name in board().cables]


@cache
def ways_without_pins(board):
    return find_routes(unpinned(board()))


def moved(plan, moves):
    """Return a plan with components moved, each by whole millimetres."""
    changed = []
    for name, dx, dy in moves:
        component = plan.components[name]
        changed.append(replace(component, position=component.position.moved(dx, dy)))
    return plan.with_things(changed)


def moves(names, most=60):
    """Return up to three moves by whole millimetres of different components."""
    shift = st.integers(-most, most)
    return st.lists(st.tuples(st.sampled_from(names), shift, shift), max_size=3, unique_by=lambda each: each[0])


SHUFFLED = st.one_of(*(st.tuples(st.just(board), moves(sorted(board().components))) for board in BOARDS))


def shuffled(choice):
    board, moved_by = choice
    return moved(unpinned(board()), moved_by)


def test_a_pinned_way_runs_straight_from_corner_to_corner(bus_plan):
    way = find_routes(bus_plan)["W07"]
    assert way.points == (Point(480, 168), Point(800, 168), Point(800, 302))
    assert (way.source, way.radius) == ("pinned", 64)


@pytest.mark.parametrize("board", BOARDS)
def test_without_pins_every_cable_finds_a_way_about_as_long_as_a_person_made_it(board):
    plan = board()
    pinned, found = find_routes(plan), find_routes(unpinned(plan))
    for name, way in found.items():
        assert isinstance(way, Route), way
        # a person keeps cables apart from each other, so that theirs are rarely shorter
        assert straight_length(way.points) <= straight_length(pinned[name].points) + 30, name
    meant = [name for name, cable in plan.cables.items() if cable.way == "channel" and name != "W09"]
    assert all(found[name].in_channels for name in meant)


@pytest.mark.parametrize(("board", "name"), FREE)
def test_found_ways_keep_off_bodies_and_hold_their_lugs_and_bends(board, name):
    plan = unpinned(board())
    cable, way = plan.cables[name], ways_without_pins(board)[name]
    assert too_near(plan, cable, way) == set()
    assert short_legs(plan, cable, way) == []
    assert max(askew_at_ends(plan, cable, way)) <= 10.0
    assert off_boards(plan, way) < 0.01


@settings(max_examples=10)
@given(SHUFFLED)
def test_ways_found_on_shuffled_boards_keep_off_bodies_and_hold_their_lugs_and_bends(choice):
    plan = shuffled(choice)
    for name, way in find_routes(plan).items():
        if isinstance(way, Route):
            cable = plan.cables[name]
            assert too_near(plan, cable, way) == set(), (name, way)
            assert short_legs(plan, cable, way) == [], (name, way)
            assert max(askew_at_ends(plan, cable, way)) <= 10.0, (name, way)


@settings(max_examples=5)
@given(SHUFFLED, st.randoms(use_true_random=False))
def test_ways_do_not_depend_on_the_order_of_things(choice, chance):
    plan = shuffled(choice)

    def mixed(things):
        names = list(things)
        chance.shuffle(names)
        return {name: things[name] for name in names}

    other = replace(
        plan,
        **{each: mixed(getattr(plan, each)) for each in ("boards", "components", "channels", "exits", "cables")},
    )
    assert find_routes(other) == find_routes(plan)


@settings(max_examples=10)
@given(SHUFFLED, st.data())
def test_refreshed_ways_are_those_of_a_fresh_look(choice, data):
    before = shuffled(choice)
    after = moved(before, data.draw(moves(sorted(before.components), 40)))
    ways = find_routes(before)
    refreshed = refreshed_routes(before, ways, after)
    assert refreshed == find_routes(after)
    assert all(refreshed[name] is way for name, way in ways.items() if refreshed[name] == way)


CHANGES = {
    "a channel moved": lambda plan: [replace(plan.channels["RW1"], line=(Point(40, 276), Point(580, 276)))],
    "a no-go box": lambda _: [NoGoBox("N1", "A", "pipe", 560, 500, 40, 100)],
    "a cable without pins": lambda plan: [replace(plan.cables["W41"], pins=())],
    "an exit moved": lambda plan: [replace(plan.exits["X6"], position=Point(1300, 240))],
    "a smaller board": lambda plan: [replace(plan.boards["A"], outline=Box(0, 0, 1300, 875).corners())],
    "a new cable": lambda plan: [replace(plan.cables["W41"], id="W99", pins=())],
}


@pytest.mark.parametrize("change", CHANGES)
def test_refreshed_ways_follow_every_sort_of_change(bus_plan, change):
    for plan in (bus_plan, unpinned(bus_plan)):
        after = plan.with_things(CHANGES[change](plan))
        assert refreshed_routes(plan, find_routes(plan), after) == find_routes(after)


def test_nothing_changed_keeps_every_way(bus_plan):
    ways = find_routes(unpinned(bus_plan))
    refreshed = refreshed_routes(unpinned(bus_plan), ways, unpinned(bus_plan))
    assert all(refreshed[name] is way for name, way in ways.items())


def test_a_cable_that_may_choose_goes_by_its_size_and_class(bus_plan):
    free = unpinned(bus_plan)
    plan = free.with_things([replace(free.cables[name], way="choose") for name in ("W08", "W07", "W15", "W30")])
    ways = find_routes(plan)
    assert ways["W08"].in_channels
    assert "70 mm²" in ways["W07"].why
    assert ways["W15"].why.startswith("outside: PV")
    assert ways["W30"].why.startswith("outside: AC")
    assert not any(ways[name].in_channels for name in ("W07", "W15", "W30"))


def test_a_cable_for_outside_is_in_no_channel(bus_plan):
    plan = bus_plan.with_things([replace(bus_plan.cables["W08"], way="outside")])
    assert find_routes(plan)["W08"].in_channels == ()


def test_an_edge_exit_is_left_square_to_its_edge(bus_plan):
    free = unpinned(bus_plan)
    end = ExitEnd("X6")
    plan = free.with_things([replace(free.cables["W31"], end=end)])
    a, b = find_routes(plan)["W31"].points[-2:]
    assert a.y == b.y == 250


def test_a_hole_is_left_in_any_direction(bus_plan):
    free = unpinned(bus_plan)
    hole = Exit("X9", "A", "hole", Point(1196, 250), "hole", 30)
    plan = free.with_things([hole, replace(free.cables["W31"], end=ExitEnd("X9"))])
    assert find_routes(plan)["W31"].points == (Point(1196, 398), Point(1196, 250))


def test_cables_cross_the_joint_between_boards_that_touch(cabin_plan):
    ways = find_routes(unpinned(cabin_plan))
    assert isinstance(ways["W43"], Route)
    apart = cabin_plan.with_things([replace(cabin_plan.boards["B"], position=Point(842, 0))])
    assert isinstance(find_routes(unpinned(apart))["W43"], NoWay)


def test_a_leg_too_short_for_lug_and_bend_is_named(bus_plan):
    # the bottom of INV1 lowered onto the busbar: no room for a lug of 40 and a bend of 48 mm at 3 x 16
    free = unpinned(bus_plan)
    plan = free.with_things([replace(free.components["INV1"], position=Point(680, 185))])
    way = find_routes(plan)["W07"]
    assert isinstance(way, NoWay)
    assert "INV1.DC-" in way.reason
    assert "too short" in way.reason
    assert "PB1" in way.reason


def test_the_body_that_blocks_every_way_is_named(bus_plan):
    walls = [
        NoGoBox("wall 1", "A", "pipe", 700, 0, 20, 880),
        NoGoBox("far lamp", "A", "lamp", 0, 0, 1300, 880, 200, 300),
    ]
    plan = unpinned(bus_plan).with_things(walls)
    way = find_routes(plan)["W42"]
    assert isinstance(way, NoWay)
    assert "wall 1" in way.reason


def test_least_bends_are_used_and_named_where_only_they_fit(bus_plan):
    # PB1.F5 to INV1.DC+ 20 mm out of line: both legs hold 40 for the lug and a tangent, the middle one two
    cable = replace(unpinned(bus_plan).cables["W07"], start=TerminalEnd("PB1", "F4"))
    plan = unpinned(bus_plan).with_things([cable])
    tight = moved(plan, [("INV1", 100, -4), ("AT1", 0, 0)])
    way = find_routes(tight)["W07"]
    if isinstance(way, Route) and way.radius < 64:
        assert "3 x" in way.why


def test_no_more_cables_than_fit_go_into_a_channel(bus_plan):
    free = unpinned(bus_plan)
    narrow = replace(free.channels["RW1"], width=34, height=30, inner_width=30, inner_height=14)
    ways = find_routes(free.with_things([narrow]))
    fill = channel_fills(free.with_things([narrow]), ways)["RW1"]
    loose = find_routes(free.with_things([replace(narrow, inner_height=1000.0)]))
    assert fill.percent <= 45 or any(way.full for way in ways.values() if isinstance(way, Route))
    assert sum(bool(way.in_channels) for way in ways.values()) < sum(bool(way.in_channels) for way in loose.values())


def test_channels_that_tee_are_one_network(bus_plan):
    free = unpinned(bus_plan)
    branch = Channel("RW2", "A", (Point(620, 400), Point(620, 600)), 40, 60, 36, 56)
    main = replace(free.channels["RW1"], line=(Point(40, 266), Point(660, 266)))
    joint = Channel("RW3", "A", (Point(620, 296), Point(620, 400)), 40, 60, 36, 56)
    plan = free.with_things([main, branch, joint])
    way = find_routes(plan)["W12"]
    assert isinstance(way, Route)
    assert way.in_channels


def test_cables_beside_each_other_do_not_lie_on_top_of_each_other(cabin_plan):
    ways = find_routes(unpinned(cabin_plan))
    level = {name: ways[name].points[1].y for name in ("W21", "W22")}
    assert abs(level["W21"] - level["W22"]) >= 14 + 3
    assert ways["W21"].alone.points[1].y == ways["W22"].alone.points[1].y


def test_a_cable_between_one_terminal_has_no_way(bus_plan):
    cable = unpinned(bus_plan).cables["W07"]
    way = find_routes(bus_plan.with_things([replace(cable, end=cable.start)]))["W07"]
    assert isinstance(way, NoWay)
    assert way.reason == "both ends are at NB1.S5"


@pytest.mark.parametrize("turn", [30, 45, 200])
def test_slanted_terminals_are_left_in_their_own_direction(bus_plan, turn):
    free = unpinned(bus_plan)
    plan = free.with_things([replace(free.components["HB1"], turn=turn)])
    way = find_routes(plan)["W40"]
    assert isinstance(way, Route)
    assert max(askew_at_ends(plan, plan.cables["W40"], way)) < 0.01
    assert short_legs(plan, plan.cables["W40"], way) == []


@pytest.mark.parametrize(("down", "radius"), [(128, 64), (127.9, 48), (96, 48)])
def test_a_pinned_way_has_the_least_bends_where_no_more_fits(bus_plan, down, radius):
    """70 mm² is 16 mm thick: 4 x is 64, 3 x is 48; a leg between two square corners holds both radii."""
    pins = Point(640, 168), Point(640, 168 - down), Point(800, 168 - down)
    way = find_routes(bus_plan.with_things([replace(bus_plan.cables["W07"], pins=pins)]))["W07"]
    assert (way.source, way.radius) == ("pinned", radius)
    assert way.points[1:-1] == pins
