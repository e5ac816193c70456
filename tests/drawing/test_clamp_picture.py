"""Clamp picture: a saddle over its cable, its screw beside it, whichever way the cable runs."""

import pytest
from boards import honey_trailer

from boardplan.drawing.cable_picture import cable_picture
from boardplan.drawing.clamp_picture import clamp_picture
from boardplan.drawing.picture import Area, Words
from boardplan.geometry.point import Point, box_around
from boardplan.routing.find_route import find_routes
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.clamps import clamps_of


@pytest.mark.parametrize(
    ("towards", "box"), [(0, (-10, -12, 10, 30)), (90, (-30, -10, 12, 10)), (180, (-10, -30, 10, 12))]
)
def test_it_lies_over_the_cable_and_reaches_past_its_screw(towards, box):
    screw = Point(0, 0).ahead(towards + 90, 20)
    clamp = Clamp(("W1",), Point(0, 0), towards, (16.0,), 16.0, 20.0, (screw,), "A")
    solid = [mark for mark in clamp_picture(clamp) if isinstance(mark, Area) and mark.fill != "shadow"]
    around = box_around(point for mark in solid for ring in mark.rings for point in ring)
    assert all(inner >= outer - 1e-6 for inner, outer in zip(around[:2], box[:2], strict=True))
    assert all(inner <= outer + 1e-6 for inner, outer in zip(around[2:], box[2:], strict=True))
    assert around.grown(-1).holds(screw)
    assert around.holds(Point(0, 0).ahead(towards + 90, -8))


def test_a_pair_has_a_screw_on_either_side():
    clamp = Clamp(("W1", "W2"), Point(50, 50), 0, (14.0, 14.0), 32.0, 20.0, (Point(50, 78), Point(50, 22)), "A")
    points = [point for mark in clamp_picture(clamp) if isinstance(mark, Area) for ring in mark.rings for point in ring]
    assert box_around(points).top > 78
    assert box_around(points).bottom < 22


def test_a_cable_s_number_stands_clear_of_its_clamps():
    plan = honey_trailer()
    ways = find_routes(plan)
    clamps = clamps_of(plan, ways)
    for name in ("W04", "W07", "W30", "W31"):
        words = [
            mark
            for mark in cable_picture(plan, plan.cables[name], ways[name], clamps[name])
            if isinstance(mark, Words) and mark.text == name
        ]
        assert len(words) == 1
        assert clamps[name]
        for clamp in clamps[name]:
            assert words[0].at.distance_to(clamp.at) > clamp.length / 2 + 5
