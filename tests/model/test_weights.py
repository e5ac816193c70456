import pytest
from hypothesis import given
from shapely.geometry import Polygon
from strategies import plans

from boardplan.geometry.point import Point
from boardplan.model.board import Board
from boardplan.model.weights import centre_of_area, weights_of

# Worked out separately from the program for the two boards: kg, centre in mm, carried depth in mm.
WORKED = {
    ("bus", "A"): (14.3, 26.7, (538, 442), 60.1, (788, 491), 123),
    ("cabin", "A"): (8.4, 22.1, (419, 481), 22.1, (419, 481), 123),
    ("cabin", "B"): (8.4, 8.8, (412, 426), 63.6, (410, 584), 58),
}


@pytest.mark.parametrize(("job", "board"), WORKED)
def test_weights_of_the_boards(job, board, bus_plan, cabin_plan):
    plan = {"bus": bus_plan, "cabin": cabin_plan}[job]
    bare, carried, carried_centre, finished, finished_centre, depth = WORKED[job, board]
    weights = weights_of(plan, plan.boards[board])
    assert weights.bare == pytest.approx(bare, abs=0.05)
    assert weights.carried == pytest.approx(carried, abs=0.05)
    assert weights.carried_centre == pytest.approx(carried_centre, abs=0.5)
    assert weights.finished == pytest.approx(finished, abs=0.05)
    assert weights.finished_centre == pytest.approx(finished_centre, abs=0.5)
    assert weights.carried_depth == depth
    assert weights.unknown == ()


def ring(*pairs):
    return tuple(Point(*pair) for pair in pairs)


@pytest.mark.parametrize(
    ("outline", "cutouts"),
    [
        (ring((0, 0), (900, 0), (900, 600), (0, 600)), ()),
        (ring((0, 0), (900, 0), (900, 600)), ()),
        (ring((0, 0), (900, 0), (900, 300), (300, 300), (300, 600), (0, 600)), ()),
        (
            ring((0, 0), (900, 0), (900, 600), (0, 600)),
            (ring((600, 300), (800, 300), (800, 500), (600, 500)), ring((10, 10), (60, 10), (60, 90))),
        ),
    ],
)
def test_the_geometry_library_finds_the_same_area_and_centre(outline, cutouts):
    board = Board("A", "", outline, cutouts)
    shape = Polygon(outline, cutouts)
    assert board.area == pytest.approx(shape.area)
    assert centre_of_area(board) == pytest.approx((shape.centroid.x, shape.centroid.y))


@given(plans())
def test_what_nobody_weighed_is_named(plan):
    for board in plan.boards.values():
        weights = weights_of(plan, board)
        assert weights.finished >= weights.carried >= weights.bare >= 0
        assert (board.mass is None) == (f"board {board.id}" in weights.unknown)
        unweighed = [each.id for each in plan.components.values() if plan.kind_of(each).mass is None]
        assert {each for each in weights.unknown if not each.startswith("board ")} <= set(unweighed)
