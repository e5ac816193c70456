import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon
from strategies import boxes

from boardplan.files.rings import ring_fault, turned_counter_clockwise
from boardplan.geometry.point import Point, signed_area


def ring(*pairs):
    return tuple(Point(*pair) for pair in pairs)


SOUND = {
    "rectangle": ring((0, 0), (9, 0), (9, 5), (0, 5)),
    "clockwise": ring((0, 0), (0, 5), (9, 5), (9, 0)),
    "triangle": ring((0, 0), (9, 0), (9, 9)),
    "notched": ring((0, 0), (9, 0), (9, 9), (6, 9), (6, 4), (3, 4), (3, 9), (0, 9)),
    "corner on a straight edge": ring((0, 0), (4, 0), (9, 0), (9, 9), (0, 9)),
}
UNSOUND = {
    "bow": (ring((0, 0), (9, 9), (9, 0), (0, 9)), "cross or touch"),
    "first repeated at the end": (ring((0, 0), (9, 0), (9, 9), (0, 0)), "each corner once"),
    "no area": (ring((0, 0), (9, 0), (5, 0)), "cross or touch"),
    "a sliver": (ring((0, 0), (9, 0), (9, 0.1)), "an area"),
    "touches itself": (ring((0, 0), (9, 0), (9, 9), (4, 0), (0, 9)), "cross or touch"),
    "folds back": (ring((0, 0), (9, 0), (9, 9), (9, 4), (0, 4)), "cross or touch"),
}


@pytest.mark.parametrize("name", SOUND)
def test_an_outline_one_can_cut(name):
    assert ring_fault(SOUND[name]) is None
    assert Polygon(SOUND[name]).is_valid


@pytest.mark.parametrize("name", UNSOUND)
def test_an_outline_one_can_not_cut(name):
    outline, words = UNSOUND[name]
    assert words in ring_fault(outline)


@given(st.lists(st.tuples(st.integers(0, 6), st.integers(0, 6)), min_size=3, max_size=7))
def test_the_geometry_library_agrees(pairs):
    """Shapely's own validity test is the independent oracle; it allows an area below a square millimetre."""
    outline = ring(*pairs)
    fault = ring_fault(outline)
    shape = Polygon(outline)
    if fault is None:
        assert shape.is_valid
        assert shape.area >= 1
    elif "an area" not in fault and len(set(outline)) == len(outline):
        assert not shape.is_valid or not shape.exterior.is_simple


@given(boxes(), st.booleans())
def test_rings_run_counter_clockwise(box, backwards):
    outline = tuple(reversed(box.corners())) if backwards else box.corners()
    assert signed_area(turned_counter_clockwise(outline)) > 0
