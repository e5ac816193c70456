"""Where cables cross, against the shared points of lines of many short straights, found by shapely."""

from dataclasses import replace
from functools import cache

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.laid import channel_bodies, sampled, unpinned
from shapely import unary_union
from shapely.geometry import LineString, Point

from boardplan.geometry import point
from boardplan.model.channel import Channel
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import NoWay, Route
from boardplan.routing.together.crossings import Crossing, crossings_of

NEAR = 0.5  # mm: the short straights of the reference lie 0.15 mm inside of the smallest bends


def points_of(geometry):
    """Return the single points of what two lines share, stretches left out."""
    parts = getattr(geometry, "geoms", [geometry])
    return [each for each in parts if isinstance(each, Point)]


def reference(plan, ways):
    """Return pairs of cables with the points their lines share, outside of channels and of their ends."""
    channels = unary_union(list(channel_bodies(plan).values()))
    lines = {
        name: LineString([each for run in sampled(way) for each in run])
        for name, way in sorted(ways.items())
        if isinstance(way, Route)
    }
    names, found = list(lines), set()
    for index, one in enumerate(names):
        for other in names[index + 1 :]:
            shared = lines[one].intersection(lines[other])
            ends = [Point(lines[each].coords[end]) for each in (one, other) for end in (0, -1)]
            on = lines[one].buffer(1e-6).intersection(lines[other].buffer(1e-6))
            stretches = [each for each in getattr(on, "geoms", [on]) if each.length > 1]
            found |= {
                (one, other, at.x, at.y)
                for at in points_of(shared)
                if all(at.distance(end) > NEAR for end in ends)
                and all(at.distance(each) > NEAR for each in stretches)
                and not channels.intersects(at)
            }
    return found


def agree(plan, ways):
    """Say that found crossings are those of the reference, each within a hair's breadth."""
    found = [(*each.cables, *each.at) for each in crossings_of(plan, ways)]
    wanted = reference(plan, ways)
    for left, right in ((wanted, found), (found, wanted)):
        for one, other, x, y in left:
            assert any((one, other) == each[:2] and Point(x, y).distance(Point(each[2:])) < NEAR for each in right), (
                one,
                other,
                x,
                y,
            )
    return len(wanted)


@cache
def samples():
    boards = (library_bus, honey_trailer, lookout_cabin)
    return {each.__name__: (each(), unpinned(each())) for each in boards}


@pytest.mark.parametrize("name", ["library_bus", "honey_trailer", "lookout_cabin"])
def test_crossings_of_the_samples_are_those_of_shapely(name):
    for plan in samples()[name]:
        agree(plan, find_routes(plan))


spots = st.tuples(st.integers(0, 80), st.integers(0, 80)).map(lambda at: point.Point(at[0] * 10.0, at[1] * 10.0))


@st.composite
def askew_lines(draw):
    """Return a way with corners anywhere, none of them a turn back."""
    corners = draw(st.lists(spots, min_size=2, max_size=5, unique=True))
    return Route("", tuple(corners), draw(st.sampled_from((5.0, 17.0, 64.0))))


@settings(max_examples=60, deadline=None)
@given(st.lists(askew_lines(), min_size=2, max_size=5), st.booleans())
def test_crossings_of_any_lines_are_those_of_shapely(routes, channel):
    plan = library_bus()
    plan = replace(
        plan,
        channels={"RW1": Channel("RW1", "A", (point.Point(100, 303.3), point.Point(700, 303.3)), 61.7, 60, 56, 56)}
        if channel
        else {},
    )
    ways = {f"W{index}": replace(each, cable=f"W{index}") for index, each in enumerate(routes)}
    # two lines that meet at less than a few degrees have a shared point that hangs on every hair
    found = crossings_of(plan, ways)
    wanted = reference(plan, ways)
    for one, other, x, y in wanted:
        if _sharp(ways[one], ways[other], (x, y)):
            near = [each for each in found if each.cables == (one, other)]
            assert any(Point(x, y).distance(Point(each.at)) < NEAR for each in near), (one, other, x, y)
    for each in found:
        if _sharp(*(ways[name] for name in each.cables), each.at):
            assert any(each.cables == at[:2] and Point(each.at).distance(Point(at[2:])) < NEAR for at in wanted), each


def _sharp(one, other, at):
    """Say whether two lines part quickly on both sides of a place, and cross no channel's edge near it."""
    lines = [LineString([each for run in sampled(way) for each in run]) for way in (one, other)]
    around = Point(at).buffer(6.0).exterior
    cuts = [line.intersection(around) for line in lines]
    walls = [303.3 - 30.85, 303.3 + 30.85]
    clear = all(abs(at[1] - wall) > 1 for wall in walls) and all(abs(at[0] - x) > 1 for x in (100, 700))
    ends = [Point(line.coords[index]) for line in lines for index in (0, -1)]
    clear = clear and all(Point(at).distance(end) > 1 for end in ends)
    return clear and not cuts[0].is_empty and not cuts[1].is_empty and cuts[0].distance(cuts[1]) > 2


def route(*corners, name="W1", radius=20.0):
    return Route(name, tuple(point.Point(*each) for each in corners), radius)


def test_a_level_and_an_upright_line_cross_squarely():
    plan = replace(library_bus(), channels={})
    ways = {"W2": route((0, 50), (100, 50), name="W2"), "W1": route((50, 0), (50, 100))}
    assert crossings_of(plan, ways) == (Crossing(("W1", "W2"), point.Point(50, 50), square=True),)


def test_a_bend_that_stays_clear_of_a_corner_crosses_nothing():
    """A bend of radius 60 about (40, 60) comes no nearer to its corner (100, 0) than 0.414 x 60 = 24.9 mm."""
    plan = replace(library_bus(), channels={})
    bent = route((0, 0), (100, 0), (100, 100), radius=60)
    across = route((110, 30), (70, -10), name="W2")
    assert crossings_of(plan, {"W1": bent, "W2": across}) == ()
    assert len(crossings_of(plan, {"W1": replace(bent, radius=1.0), "W2": across})) == 2


def test_a_crossing_askew_is_not_square():
    plan = replace(library_bus(), channels={})
    ways = {"W1": route((0, 0), (100, 100)), "W2": route((0, 50), (100, 50), name="W2")}
    assert [each.square for each in crossings_of(plan, ways)] == [False]


def test_lines_in_a_channel_or_with_one_end_or_on_each_other_do_not_cross():
    plan = library_bus()
    line = plan.channels["RW1"].line
    x, y = (line[0].x + line[1].x) / 2, line[0].y
    inside = {"W1": route((x, y - 200), (x, y + 200)), "W2": route((x - 50, y), (x + 50, y), name="W2")}
    assert crossings_of(plan, inside) == ()
    assert len(crossings_of(replace(plan, channels={}), inside)) == 1
    bare = replace(plan, channels={})
    assert crossings_of(bare, {"W1": route((0, 0), (90, 0)), "W2": route((0, 0), (0, 90), name="W2")}) == ()
    assert crossings_of(bare, {"W1": route((0, 0), (90, 0)), "W2": route((40, 0), (200, 0), name="W2")}) == ()


def test_a_cable_without_a_way_crosses_nothing():
    plan = replace(library_bus(), channels={})
    ways = {"W1": NoWay("W1", "shut in", point.Point(0, 0)), "W2": route((0, 50), (100, 50), name="W2")}
    assert crossings_of(plan, ways) == ()
