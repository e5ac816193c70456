"""Rings: shapes as corners, against areas known from elementary geometry."""

import math

import pytest

from boardplan.drawing.rings import bar, beside_line, disc, edge_strips, hexagon, inset, rectangle
from boardplan.geometry.point import Point, box_around, signed_area


@pytest.mark.parametrize(
    ("ring", "area"),
    [
        (rectangle(3, 4, 20, 10), 200),
        (disc(Point(5, 5), 10, 400), math.pi * 100),
        (hexagon(Point(0, 0), 16), 16**2 * math.sqrt(3) / 2),
        (bar(Point(1, 1), 33, 50, 4), 200),
        (inset(rectangle(0, 0, 20, 10), 2), 16 * 6),
        (inset(hexagon(Point(0, 0), 16), 3), 10**2 * math.sqrt(3) / 2),
    ],
)
def test_areas(ring, area):
    assert signed_area(ring) == pytest.approx(area, rel=1e-3)


def test_rounded_corners_stay_in_the_rectangle_and_lose_a_little():
    ring = rectangle(0, 0, 20, 10, 3)
    assert box_around(ring) == pytest.approx((0, 0, 20, 10))
    assert 200 - (4 - math.pi) * 9 - 1 < signed_area(ring) < 200


def test_a_radius_too_large_makes_a_slot():
    assert box_around(rectangle(0, 0, 20, 10, 99)) == pytest.approx((0, 0, 20, 10))


def test_edges_to_the_light_are_those_above_and_to_the_left():
    lit, dark = edge_strips(rectangle(0, 0, 20, 10), 1, 135)
    assert {box_around(strip) for strip in lit} == {(0, 0, 1, 10), (0, 9, 20, 10)}
    assert {box_around(strip) for strip in dark} == {(19, 0, 20, 10), (0, 0, 20, 1)}


def test_edges_of_a_clockwise_ring_are_lit_alike():
    ring = rectangle(0, 0, 20, 10)
    assert {box_around(strip) for strip in edge_strips(tuple(reversed(ring)), 1, 135)[0]} == {
        box_around(strip) for strip in edge_strips(ring, 1, 135)[0]
    }


def test_a_line_beside_another_is_mitred():
    line = (Point(0, 0), Point(100, 0), Point(100, 50))
    assert beside_line(line, 10) == pytest.approx([(0, 10), (90, 10), (90, 50)])
    assert beside_line(line, -10) == pytest.approx([(0, -10), (110, -10), (110, 50)])
