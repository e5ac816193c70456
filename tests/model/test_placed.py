import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Point as ShapelyPoint
from shapely.geometry import Polygon
from strategies import places, plans, turns

from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box
from boardplan.model.component import Component
from boardplan.model.placed import beside, place, placed

# Terminals of the library bus, worked out separately from the program: place on the board, exit as turned.
TERMINALS = {
    ("FT1", "LINE"): ((58, 84), 180),
    ("FT1", "LOAD"): ((190, 84), 0),
    ("SW1", "IN"): ((326, 84), 180),
    ("SW1", "OUT"): ((394, 84), 0),
    ("PB1", "MAIN"): ((544, 84), 180),
    ("PB1", "F5"): ((850, 124), 90),
    ("INV1", "DC+"): ((850, 302), 270),
    ("SH1", "BAT"): ((62, 168), 180),
    ("NB1", "S1"): ((288, 168), None),
    ("NB1", "S5"): ((480, 168), None),
    ("MP1", "BAT+"): ((280, 632), 270),
    ("LP1", "MAIN+"): ((84, 368), 270),
    ("DC1", "OUT+"): ((574, 652), 270),
    ("PV1", "LINE-"): ((102, 844), 90),
    ("HB1", "C4"): ((442, 464), 90),
}


@pytest.mark.parametrize(("component", "terminal"), TERMINALS)
def test_terminals_of_the_library_bus(bus_plan, component, terminal):
    position, exit_ = TERMINALS[component, terminal]
    found = placed(bus_plan, bus_plan.components[component]).terminals[terminal]
    assert (found.position, found.exit) == (pytest.approx(position), exit_)


SIZES = {"PV1": (110, 170), "FT1": (168, 76), "SW1": (96, 96), "PB1": (372, 128), "INV1": (268, 442), "AT1": (222, 348)}


@pytest.mark.parametrize("component", SIZES)
def test_outlines_of_the_library_bus(bus_plan, component):
    held = bus_plan.components[component]
    box = placed(bus_plan, held).box
    assert (box.left, box.bottom) == held.position
    assert (box.width, box.height) == SIZES[component]


def test_a_component_is_placed_once(bus_plan):
    component = bus_plan.components["INV1"]
    assert placed(bus_plan, component) is placed(bus_plan, component)


@given(st.sampled_from(list(bundled_shelf().kinds.values())), places, turns)
def test_the_geometry_library_turns_and_shifts_alike(kind, at, turn):
    held = place(kind, Component("Q1", kind.id, "A", at, turn))
    shape = affinity.rotate(Polygon(kind.outline), turn, origin=(0, 0))
    left, bottom, _, _ = shape.bounds
    shape = affinity.translate(shape, at.x - left, at.y - bottom)
    assert Polygon(held.outline).symmetric_difference(shape).area == pytest.approx(0, abs=1e-6)
    for hole, position in held.holes:
        turned = affinity.rotate(ShapelyPoint(hole.position), turn, origin=(0, 0))
        assert position == pytest.approx((turned.x + at.x - left, turned.y + at.y - bottom), abs=1e-6)


@given(plans())
def test_zones_lie_against_the_outline_and_leave_it_free(plan):
    for component in plan.components.values():
        held = placed(plan, component)
        body = Polygon(Box(*held.box).corners())
        for zone in held.zones:
            ring = Polygon(zone.ring)
            assert ring.intersection(body).area == pytest.approx(0, abs=1e-6)
            assert ring.touches(body)


@pytest.mark.parametrize(
    ("face", "box"),
    [
        ("left", (-9, 0, 0, 10)),
        ("right", (30, 0, 39, 10)),
        ("bottom", (0, -9, 30, 0)),
        ("top", (0, 10, 30, 19)),
    ],
)
def test_the_strip_beside_a_face(face, box):
    assert beside(Box(0, 0, 30, 10), face, 9) == Box(*box).corners()
