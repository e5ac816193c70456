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
    (lit,), (dark,) = edge_strips(rectangle(0, 0, 20, 10), 1, 135)
    assert set(lit) == {(0, 0), (0, 10), (20, 10), (1, 1), (1, 9), (19, 9)}
    assert set(dark) == {(0, 0), (20, 0), (20, 10), (1, 1), (19, 1), (19, 9)}


@pytest.mark.parametrize("ring", [rectangle(0, 0, 20, 10, 3), disc(Point(5, 5), 9), hexagon(Point(0, 0), 16, 15)])
def test_both_strips_together_go_once_round_the_ring(ring):
    strips = [strip for each in edge_strips(ring, 1, 100) for strip in each]
    assert sum(abs(signed_area(strip)) for strip in strips) == pytest.approx(
        signed_area(ring) - signed_area(inset(ring, 1))
    )


def test_edges_of_a_clockwise_ring_are_lit_alike():
    ring = rectangle(0, 0, 20, 10)
    for one, other in zip(edge_strips(tuple(reversed(ring)), 1, 135), edge_strips(ring, 1, 135), strict=True):
        assert {frozenset(strip) for strip in one} == {frozenset(strip) for strip in other}


def test_a_line_beside_another_is_mitred():
    line = (Point(0, 0), Point(100, 0), Point(100, 50))
    assert beside_line(line, 10) == ((0, 10), (90, 10), (90, 50))
    assert beside_line(line, -10) == ((0, -10), (110, -10), (110, 50))
