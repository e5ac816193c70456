"""Terminals: every sort in a few marks, however many there are, and neighbours apart."""

import pytest

from boardplan.drawing.metal import thread_of
from boardplan.drawing.picture import Area
from boardplan.drawing.rings import rectangle
from boardplan.drawing.terminal_picture import room_of, terminals_picture
from boardplan.geometry.point import Point, box_around
from boardplan.model.component_kind import ComponentKind, Terminal


def kind_with(sort, count, pitch=20.0, towards=270.0):
    terminals = tuple(Terminal(f"T{i}", Point(20 + pitch * i, 10), 20, sort, "M8", towards) for i in range(count))
    return ComponentKind("k", "K", "", "X", rectangle(0, 0, 400, 60), 40, terminals=terminals)


@pytest.mark.parametrize("sort", ["stud", "clamp", "gland", "plug", "blade"])
def test_many_terminals_are_no_more_marks_than_one(sort):
    one, many = (terminals_picture(kind_with(sort, count), 0) for count in (1, 12))
    assert 0 < len(many) == len(one) <= 9


def test_a_kind_without_terminals_has_none():
    assert terminals_picture(kind_with("stud", 0), 0) == ()


@pytest.mark.parametrize(("pitch", "width"), [(100, 14), (10, 8.2)])
def test_neighbours_keep_apart(pitch, width):
    assert room_of(kind_with("clamp", 5, pitch).terminals, 14) == pytest.approx(width)


@pytest.mark.parametrize(
    ("towards", "side"),
    [(270, lambda box: box.bottom < 0), (90, lambda box: box.top > 20), (0, lambda box: box.right > 30)],
)
def test_a_gland_stands_out_where_the_cable_leaves(towards, side):
    rings = [
        ring
        for mark in terminals_picture(kind_with("gland", 1, towards=towards), 0)
        if isinstance(mark, Area)
        for ring in mark.rings
    ]
    assert side(box_around(point for ring in rings for point in ring))


@pytest.mark.parametrize(("size", "thread"), [("M10", 10), ("M8", 8), ("", 8), ("5/16", 8), ("M12x1.5", 12)])
def test_thread_of_a_size(size, thread):
    assert thread_of(size) == thread
