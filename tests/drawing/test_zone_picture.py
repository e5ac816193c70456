"""Keep-clear zones: as large as demanded, hatched where a sheet demands them."""

from boards import library_bus

from boardplan.drawing.picture import Area, Line
from boardplan.drawing.zone_picture import zone_picture
from boardplan.geometry.point import box_around
from boardplan.model.placed import placed

PLAN = library_bus()


def test_zones_lie_beside_the_unit():
    unit = placed(PLAN, PLAN.components["INV1"])
    boxes = [box_around(mark.rings[0]) for mark in zone_picture(unit) if isinstance(mark, Area)]
    assert len(boxes) == 4
    assert {(round(box.width), round(box.height)) for box in boxes} == {(268, 100), (60, 442)}


def test_what_a_sheet_demands_is_hatched():
    hatched = zone_picture(placed(PLAN, PLAN.components["INV1"]))
    assert sum(isinstance(mark, Line) and not mark.dashes for mark in hatched) > 20


def test_a_unit_that_needs_no_room_shows_none():
    assert zone_picture(placed(PLAN, PLAN.components["NB1"])) == ()
