"""What is drawn over the board: when it changes, the boxes it covered and covers are drawn again, nothing else."""

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QGraphicsScene

from boardplan.geometry.point import Point
from boardplan.routing.together.crossings import Crossing
from boardplan.ui.canvas.crossing_marks import CrossingMarks
from boardplan.ui.canvas.handles import Handle, HandlesItem
from boardplan.ui.canvas.over_item import OverItem
from boardplan.ui.canvas.over_lines import GapsItem, LineItem


class Scene(QGraphicsScene):
    """A scene that keeps what was to be drawn again."""

    def __init__(self):
        super().__init__()
        self.scale = 0.5
        self.drawn = []

    def update(self, box):
        self.drawn.append(QRectF(box))


@pytest.fixture
def scene(qapp):  # noqa: ARG001 - items need an application
    return Scene()


def laid(scene, item):
    scene.addItem(item)
    scene.drawn.clear()
    return item


def line(*points):
    path = QPainterPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    return path


def area(boxes):
    return sum(box.width() * box.height() for box in boxes)


def test_an_over_item_has_what_it_covered_and_what_it_covers_drawn_again(scene):
    item = laid(scene, OverItem(5))
    item.cover([QRectF(0, 0, 10, 10)])
    item.cover([QRectF(500, 0, 10, 10), QRectF(700, 0, 10, 10)])
    assert [box.left() for box in scene.drawn] == [0, 0, 500, 700]
    scene.drawn.clear()
    item.cover([])
    assert [box.left() for box in scene.drawn] == [500, 700]


def test_an_over_item_is_in_nobodys_way(scene):
    item = laid(scene, OverItem(5))
    item.cover([QRectF(0, 0, 10, 10)])
    assert item.shape().isEmpty()
    assert scene.drawn == [QRectF(0, 0, 10, 10)]


def test_px_are_mm_at_the_scale_of_the_scene(scene):
    assert laid(scene, OverItem(5)).px(3) == 6
    assert OverItem(5).px(3) == 3


def test_the_same_line_again_costs_nothing(scene):
    item = laid(scene, LineItem(5, "accent", 2.0))
    item.show_path(line((0, 0), (100, 0)), "light")
    assert len(scene.drawn) == 1
    assert scene.drawn[0].contains(QRectF(0, -1, 100, 2))
    item.show_path(line((0, 0), (100, 0)), "light")
    assert len(scene.drawn) == 1


def test_gaps_that_cross_have_little_of_the_box_round_them_drawn_again(scene):
    item = laid(scene, GapsItem(5))
    item.show_lines([(Point(-2000, 0), Point(-50, 0), "1950"), (Point(0, 50), Point(0, 2000), "1950")], "light")
    assert area(scene.drawn) < 0.05 * 2000 * 2000
    before = list(scene.drawn)
    item.show_lines([(Point(-2000, 0), Point(-50, 0), "1950"), (Point(0, 50), Point(0, 2000), "1950")], "light")
    assert scene.drawn == before


def test_handles_far_apart_are_drawn_again_one_by_one(scene):
    item = laid(scene, HandlesItem(5))
    item.show_handles(tuple(Handle(Point(at, at), corner=True) for at in (0, 3000)), "light")
    assert [box.center().x() for box in scene.drawn] == [0, 3000]
    assert area(scene.drawn) < 3000 * 3000 / 100


def test_choosing_a_cable_has_only_its_crossings_drawn_again(scene):
    item = laid(scene, CrossingMarks(5))
    crossings = [Crossing(pair, Point(at, 0), square=False) for at, pair in ((0, ("W1", "W2")), (900, ("W2", "W3")))]
    item.show_crossings(crossings, "light", [8.0, 8.0])
    assert [box.center().x() for box in scene.drawn] == [0, 900]
    scene.drawn.clear()
    item.choose(["W1"])
    assert [box.center().x() for box in scene.drawn] == [0]
    item.choose(["W1"])
    item.choose(["W3"])
    assert [box.center().x() for box in scene.drawn] == [0, 0, 900]
