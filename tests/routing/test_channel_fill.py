"""How full channels are, against two boards reckoned by hand."""

import math
from dataclasses import replace

import pytest

from boardplan.geometry.point import Point
from boardplan.routing.channel_fill import channel_fills, jacket_area, point_along
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


def test_areas_and_places():
    assert jacket_area(2, 3) == pytest.approx(3 * math.pi)
    line = (Point(0, 0), Point(100, 0), Point(100, 50))
    assert [point_along(line, at) for at in (0, 100, 120, 999)] == [(0, 0), (100, 0), (100, 20), (100, 50)]


def test_fill_does_not_depend_on_the_order_of_cables(bus_plan):
    ways = find_routes(bus_plan)
    backwards = dict(reversed(ways.items()))
    plan = replace(bus_plan, cables=dict(reversed(bus_plan.cables.items())))
    assert channel_fills(plan, backwards) == channel_fills(bus_plan, ways)
