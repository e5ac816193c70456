"""Metal: nuts and screws by the dozen in a handful of marks, sized by their thread."""

import pytest

from boardplan.drawing.metal import ACROSS_FLATS, nuts, screws
from boardplan.geometry.point import Point, signed_area


@pytest.mark.parametrize("count", [1, 12])
def test_nuts_are_five_marks(count):
    picture = nuts([(Point(30 * index, 0), 10) for index in range(count)])
    assert [mark.fill for mark in picture] == ["steel", "steel-light", "steel-dark", "steel-light", "steel-dark"]
    assert all(len(mark.rings) >= count for mark in picture)


def test_a_nut_is_as_wide_as_its_thread_asks():
    """A hexagon of width s across its flats has an area of s² √3 / 2."""
    nut = nuts([(Point(0, 0), 8)])[0].rings[0]
    assert signed_area(nut) == pytest.approx(ACROSS_FLATS[8] ** 2 * 3**0.5 / 2)


def test_nothing_to_hold_is_nothing_to_draw():
    assert nuts([]) == ()
    assert screws([]) == ()


def test_screws_are_five_marks():
    assert len(screws([(Point(0, 0), 8.2), (Point(50, 0), 8.2)])) == 5
