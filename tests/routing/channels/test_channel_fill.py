"""How full channels are, against two boards reckoned by hand."""

import math
from dataclasses import replace

import pytest

from boardplan.checks.review import review_of
from boardplan.geometry.point import Point
from boardplan.routing.channels.channel_fill import channel_fills, jacket_area, point_along
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import InChannel, Route


def test_the_fullest_section_of_the_library_bus(bus_plan):
    # our own worked example: 322 mm² of 56 x 56 mm at x = 310
    fill = channel_fills(bus_plan, find_routes(bus_plan))["RW1"]
    assert fill.at == Point(310, 266)
    assert fill.cables == ("W08", "W09", "W10", "W11", "W14", "W19")
    assert fill.fullest.area == pytest.approx(322, abs=0.5)
    assert fill.percent == pytest.approx(10.3, abs=0.05)


def test_the_fullest_section_of_the_lookout_cabin(cabin_plan):
    # our own worked example: 152 mm² at x = 405
    fill = channel_fills(cabin_plan, find_routes(cabin_plan))["RW1"]
    assert fill.fullest.start <= 405 - 60 <= fill.fullest.end
    assert fill.cables == ("W08", "W11", "W19")
    assert fill.fullest.area == pytest.approx(152, abs=0.5)
    assert fill.percent == pytest.approx(4.8, abs=0.05)


def test_sections_follow_each_other_from_end_to_end(bus_plan):
    fill = channel_fills(bus_plan, find_routes(bus_plan))["RW1"]
    assert fill.sections[0].start == 0
    assert fill.sections[-1].end == fill.length == 540
    assert all(a.end == b.start for a, b in zip(fill.sections, fill.sections[1:], strict=False))


def test_every_piece_of_a_cable_counts(bus_plan):
    ways = {"W20": Route("W20", (), 1, (InChannel("RW1", 10, 20),))}
    assert channel_fills(bus_plan, ways)["RW1"].fullest.area == pytest.approx(10 * math.pi / 4 * 3.6**2)


def test_an_empty_channel_has_no_fullest_section(bus_plan):
    fill = channel_fills(bus_plan, {})["RW1"]
    assert (fill.fullest, fill.percent, fill.cables, fill.largest) == (None, 0.0, (), "")


def test_the_largest_cable_is_held_against_the_depth(bus_plan):
    fill = channel_fills(bus_plan, find_routes(bus_plan))["RW1"]
    assert (fill.largest, fill.largest_diameter) == ("W08", 8.5)
    assert fill.largest_percent == pytest.approx(8.5 / 56 * 100)


def test_conductors_that_may_carry_current_are_counted_section_by_section(bus_plan):
    # NEC 376.22(B): signal conductors don't count, each core of the others does
    cables = {
        "W08": replace(bus_plan.cables["W08"], cable_class="dc", count=2),
        "W14": replace(bus_plan.cables["W14"], cable_class="signal"),
        "W10": replace(bus_plan.cables["W10"], cable_class="ac", conductor="three"),
    }
    three = replace(bus_plan.conductors[bus_plan.cables["W08"].conductor], id="three", cores=3)
    plan = replace(bus_plan, cables=cables, conductors={**bus_plan.conductors, "three": three})
    ways = {
        "W08": Route("W08", (), 1, (InChannel("RW1", 0, 300),)),
        "W14": Route("W14", (), 1, (InChannel("RW1", 50, 400),)),
        "W10": Route("W10", (), 1, (InChannel("RW1", 200, 540),)),
    }
    fill = channel_fills(plan, ways)["RW1"]
    assert [(each.start, each.loaded) for each in fill.sections] == [(0, 2), (50, 2), (200, 5), (300, 3), (400, 3)]
    assert fill.most_loaded == 5


def test_a_smaller_channel_on_the_library_bus_is_found_too_full_where_it_is_fullest(bus_plan):
    # 25 x 40 mm outside, 21 x 37 mm inside, in place of 60 x 60: the areas added up here, millimetre by millimetre
    held = bus_plan.channels["RW1"]
    small = replace(held, width=25, height=40, inner_width=21, inner_height=37)
    plan = bus_plan.with_things([small])
    review = review_of(plan)
    inside = {
        name: [(each.start, each.end) for each in way.in_channels]
        for name, way in review.ways.items()
        if isinstance(way, Route)
    }
    at, area, names = max(
        (
            (
                place + 0.5,
                sum(
                    math.pi / 4 * plan.conductors[plan.cables[name].conductor].outside_diameter ** 2
                    for name, parts in inside.items()
                    for start, end in parts
                    if start < place + 0.5 < end
                ),
                sorted(n for n, parts in inside.items() if any(start < place + 0.5 < end for start, end in parts)),
            )
            for place in range(540)
        ),
        key=lambda each: each[1],
    )
    percent = 100 * area / (21 * 37)
    limits = {"channel-too-full": 45, "channel-fuller-than-planned": 40}
    wanted = next(code for code, limit in limits.items() if percent > limit)
    found = next(each for each in review.findings if each.name == wanted)
    assert found.measured == pytest.approx(percent, abs=0.01)
    assert f"with {', '.join(names)};" in found.sentence
    assert review.fills["RW1"].fullest.start <= at <= review.fills["RW1"].fullest.end


def test_areas_and_places():
    assert jacket_area(2, 3) == pytest.approx(3 * math.pi)
    line = (Point(0, 0), Point(100, 0), Point(100, 50))
    assert [point_along(line, at) for at in (0, 100, 120, 999)] == [(0, 0), (100, 0), (100, 20), (100, 50)]


def test_fill_does_not_depend_on_the_order_of_cables(bus_plan):
    ways = find_routes(bus_plan)
    backwards = dict(reversed(ways.items()))
    plan = replace(bus_plan, cables=dict(reversed(bus_plan.cables.items())))
    assert channel_fills(plan, backwards) == channel_fills(bus_plan, ways)
