"""Shifts held against what they stand for: a shape moved by each, and its distance to the other one measured."""

import math
import random

import pytest
from shapely import LineString, MultiPolygon, Point, Polygon, box, union_all
from shapely.affinity import rotate, translate

from boardplan.geometry.shifts import EXCESS, convex_parts, rounded, shifts_within

L_SHAPE = Polygon([(0, 0), (60, 0), (60, 20), (25, 20), (25, 50), (0, 50)])
RING = box(0, 0, 90, 70).difference(box(20, 20, 60, 50))
WEDGE = Polygon([(0, 0), (50, 5), (10, 40)])
SHAPES = {
    "box": box(0, 0, 40, 20),
    "turned box": rotate(box(0, 0, 40, 20), 33.3),
    "L": L_SHAPE,
    "wedge": WEDGE,
    "frame": RING,
    "point": Point(7, -3),
    "line": LineString([(0, 0), (30, 12)]),
}


@pytest.mark.parametrize("gap", [5.0, 20.0])
@pytest.mark.parametrize("moved", SHAPES)
@pytest.mark.parametrize("still", SHAPES)
def test_a_shift_is_in_them_just_where_the_moved_shape_is_nearer_than_the_gap(still, moved, gap):
    chance = random.Random(f"{still} {moved} {gap}")
    found = union_all(shifts_within(SHAPES[still], SHAPES[moved], gap))
    for _ in range(150):
        x, y = chance.uniform(-120, 120), chance.uniform(-120, 120)
        apart = SHAPES[still].distance(translate(SHAPES[moved], x, y))
        if apart < gap:
            assert found.covers(Point(x, y)), (x, y, apart)
        elif apart > gap + EXCESS:
            assert not found.covers(Point(x, y)), (x, y, apart)


@pytest.mark.parametrize("moved", ["box", "turned box", "L", "wedge", "frame"])
@pytest.mark.parametrize("still", ["box", "turned box", "L", "wedge", "frame"])
def test_without_a_gap_they_are_those_that_overlap(still, moved):
    chance = random.Random(f"{still} {moved}")
    found = union_all(shifts_within(SHAPES[still], SHAPES[moved]))
    for _ in range(150):
        x, y = chance.uniform(-100, 100), chance.uniform(-100, 100)
        shared = SHAPES[still].intersection(translate(SHAPES[moved], x, y)).area
        if found.boundary.distance(Point(x, y)) > 1e-6:
            assert found.covers(Point(x, y)) == (shared > 0)


def test_the_sum_of_two_boxes_grown_is_the_textbook_one():
    """Steiner's formula for a convex body: area, circumference times radius, and the circle of the corners."""
    grown = rounded(box(0, 0, 30, 20), 10.0)
    exact = 600 + 100 * 10 + math.pi * 100
    assert exact < grown.area < exact + 2 * math.pi * (10 + EXCESS) * EXCESS
    assert grown.bounds == pytest.approx((-10, -10, 40, 30))


def test_convex_parts_are_convex_and_together_the_shape():
    for shape in (L_SHAPE, RING, MultiPolygon([box(0, 0, 5, 5), box(9, 0, 12, 5)])):
        parts = convex_parts(shape)
        assert union_all(parts).symmetric_difference(shape).area < 1e-9
        assert all(part.convex_hull.area == pytest.approx(part.area) for part in parts)


def test_an_empty_shape_bars_nothing():
    assert shifts_within(Point(0, 0).buffer(0), box(0, 0, 5, 5)) == []
