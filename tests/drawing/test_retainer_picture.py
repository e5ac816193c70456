"""Retainer picture: across its channel from wall to wall, clips seen beside the cover, however that runs."""

from dataclasses import replace

import pytest
from boards import honey_trailer
from checks.plans import channel, rules

from boardplan.drawing.board_picture import pictures_in_order
from boardplan.drawing.picture import Area
from boardplan.drawing.retainer_picture import retainer_picture
from boardplan.geometry.point import Point, box_around
from boardplan.routing.find_route import find_routes
from boardplan.routing.supports.retainers import Retainer, retainers_of

RUN = channel("C", (0, -200), (0, 200))  # 60 wide, 56 inside


def box_of(picture):
    return box_around(
        point
        for mark in picture
        if isinstance(mark, Area) and mark.fill != "shadow"
        for ring in mark.rings
        for point in ring
    )


@pytest.mark.parametrize("towards", [90, 270, 0, 45])
def test_it_reaches_over_both_walls_and_no_farther(towards):
    around = box_of(retainer_picture(RUN, Retainer("C", Point(0, 0), towards, 56)))
    left, right = Point(0, 0).ahead(towards + 90, 30), Point(0, 0).ahead(towards - 90, 30)
    assert all(around.holds(wall) for wall in (left, right))
    assert around.width < 60 + 20
    assert around.height < 60 + 20


def test_the_job_s_picture_has_them_over_the_cables_and_under_the_cover():
    plan = replace(honey_trailer(), rules=rules())
    ways = find_routes(plan)
    order = list(pictures_in_order(plan, ways))
    base, straps, cover = (at for at, (name, _) in enumerate(order) if name == "RW1")
    inside = [name for name, way in ways.items() if way.in_channels]
    assert inside
    drawn = [at for at, (name, _) in enumerate(order) if name in inside]
    assert base < min(drawn)
    assert max(at for at in drawn if at < cover) < straps < cover
    around = box_of(order[straps][1])
    assert all(around.holds(each.at) for each in retainers_of(plan, ways)["RW1"])


def test_an_earlier_edition_draws_none():
    plan = honey_trailer()
    assert [name for name, _ in pictures_in_order(plan, find_routes(plan))].count("RW1") == 2
