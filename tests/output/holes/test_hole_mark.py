"""Each sort of hole has a symbol of its own, as the trade draws them: common practice, no source."""

from dataclasses import replace

import pytest

from boardplan.drawing.picture import Disc, Line
from boardplan.geometry.point import Point
from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole
from boardplan.output.holes.hole_mark import hole_mark

AT = Point(100, 50)
HOLE = Hole("H", "A", "H", AT, 8.0, None, "pilot", "", "", "shop")
NUT = Fastener("n", "nut", "t-nut", bit=8, thread=6, flange_diameter=19)


def parts(hole, fastener=None):
    """The radii of its circles, whether each is dashed, and how many corners or ends its lines have."""
    mark = hole_mark(hole, fastener)
    circles = [(each.radius, bool(each.dashes)) for each in mark if isinstance(each, Disc)]
    rings = [len(each.points) for each in mark if isinstance(each, Line) and each.closed]
    strokes = [each for each in mark if isinstance(each, Line) and not each.closed]
    return circles, rings, strokes


@pytest.mark.parametrize(
    ("sort", "circles", "rings", "strokes"),
    [
        ("pilot", [(4, False)], [], 4),
        ("through", [(4, False), (5.2, False)], [], 4),
        ("t-nut", [(4, False)], [4], 4),
        ("fixing", [(4, False)], [6], 4),
        ("exit", [(4, False), (0.25, False)], [], 8),
    ],
)
def test_symbols(sort, circles, rings, strokes):
    found = parts(replace(HOLE, sort=sort), NUT if sort == "t-nut" else None)
    assert (found[0], found[1], len(found[2])) == (circles, rings, strokes)


def test_a_hole_for_the_site_has_a_dashed_circle_more():
    assert parts(replace(HOLE, stage="site"))[0] == [(4, False), (6.5, True)]


def test_a_bit_nobody_knows_is_dotted():
    assert parts(replace(HOLE, bit=None))[0] == [(2, True)]


def test_the_cross_is_14_mm_wide_and_open_in_the_middle():
    _, _, strokes = parts(HOLE)
    ends = sorted(AT.distance_to(end) for each in strokes for end in each.points)
    assert ends == pytest.approx([0.5] * 4 + [7.0] * 4)


def test_the_square_of_a_nut_is_as_wide_as_its_flange():
    (square,) = [each for each in hole_mark(replace(HOLE, sort="t-nut"), NUT) if isinstance(each, Line) and each.closed]
    assert max(x for x, _ in square.points) - min(x for x, _ in square.points) == pytest.approx(19)
