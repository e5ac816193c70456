"""Plates: references written over small bodies keep clear of each other and of the signs."""

import pytest
from boards import library_bus, lookout_cabin

from boardplan.geometry.point import Box, Point
from boardplan.ui.canvas.plates import Plate, settled


def apart(first, second):
    return (
        first.right <= second.left
        or second.right <= first.left
        or first.top <= second.bottom
        or second.top <= first.bottom
    )


def test_a_plate_alone_stays_where_it_is():
    plate = Plate("A", Box(0, 0, 30, 16), Box(-10, -10, 40, 30))
    assert settled([plate], []) == {"A": Point(0, 0)}


def test_a_sign_moves_the_plate_over_its_own_body():
    plate = Plate("A", Box(0, 0, 30, 16), Box(-10, -30, 40, 40))
    sign = Box(5, 0, 21, 16)
    shift = settled([plate], [sign])["A"]
    assert apart(plate.box.moved(*shift), sign)
    assert plate.body.grown(6).holds(Point(plate.box.left + shift.x, plate.box.bottom + shift.y))


def test_the_smaller_body_gives_way_and_is_left_out_where_there_is_no_room():
    large = Plate("L", Box(0, 0, 30, 16), Box(-50, -50, 80, 60))
    small = Plate("S", Box(10, 4, 40, 20), Box(12, 4, 38, 20))
    assert settled([small, large], []) == {"L": Point(0, 0), "S": None}


@pytest.mark.parametrize("plan", [library_bus(), lookout_cabin()], ids=lambda plan: plan.job.title)
@pytest.mark.parametrize("zooms", [0, 1, 2, 4])
def test_no_two_plates_overlap_at_small_scales(open_plan, plan, zooms):
    hands = open_plan(plan)
    for _ in range(zooms):
        hands.act("smaller")
    scene, scale = hands.bench.canvas.scene, hands.bench.canvas.view.scale_now
    items = [scene.items_of(each)[0] for each in plan.components]
    shown = [(item.plate(scale), item.plate_shift) for item in items]
    boxes = [plate.box.moved(*shift) for plate, shift in shown if plate is not None and shift is not None]
    assert boxes
    assert all(apart(a, b) for number, a in enumerate(boxes) for b in boxes[:number])
