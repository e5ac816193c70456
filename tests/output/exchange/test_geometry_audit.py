"""Everything that no machine may get is found, and a sound drawing passes."""

import math

import pytest

from boardplan.drawing.picture import Area, Disc, Line, Words
from boardplan.geometry.point import Box, Point
from boardplan.output.exchange.geometry_audit import BadDrawing, drawing_faults, refuse_bad
from boardplan.output.exchange.layer import BoardDrawing, Layer

SQUARE = (Point(0, 0), Point(100, 0), Point(100, 60), Point(0, 60))
OPENING = (Point(40, 20), Point(60, 20), Point(60, 40), Point(40, 40))
BOW_TIE = (Point(0, 0), Point(100, 60), Point(100, 0), Point(0, 60))


def hole(x, y, bit=8.0):
    return Disc(Point(x, y), bit / 2, None, "ink")


def cut(ring, name="CUT-OUTLINE", *, closed=True):
    return Layer(name, "cut", (Line(ring, "ink", closed=closed),))


def drilled(*marks, role="drill"):
    return Layer(f"{role.upper()}-THROUGH-8", role, marks)


def faults(*layers):
    return list(drawing_faults(BoardDrawing("A board", layers, Box(0, 0, 100, 60))))


def test_a_sound_drawing_has_no_fault():
    sound = (cut(SQUARE), cut(OPENING, "CUT-OPENINGS"), drilled(hole(10, 10), hole(30, 10)))
    assert faults(*sound) == []
    refuse_bad(BoardDrawing("A board", sound, Box(0, 0, 100, 60)))


@pytest.mark.parametrize(
    ("layers", "words"),
    [
        ((cut(SQUARE, closed=False),), "not closed"),
        ((cut(SQUARE[:2]),), "not closed"),
        ((cut(BOW_TIE),), "crosses itself"),
        ((cut((Point(0, 0), Point(50, 0), Point(100, 0))),), "holds no area"),
        ((cut((*SQUARE, SQUARE[0])),), "no length at 0, 0"),
        ((cut(SQUARE), cut(SQUARE)), "outlines of the board, expected one"),
        ((drilled(hole(10, 10)),), "0 outlines"),
        ((cut(SQUARE), drilled(hole(10, 10, 0.0))), "of radius 0"),
        ((cut(SQUARE), drilled(hole(10, 10, -3.0))), "of radius -1.5"),
        ((cut(SQUARE), drilled(hole(10, 10, math.nan))), "of radius nan"),
        ((cut(SQUARE), drilled(hole(math.nan, 10))), "no number"),
        ((cut(SQUARE), drilled(Words(Point(math.inf, 1), "x", 2, "ink"))), "no number"),
        ((cut(SQUARE), drilled(Area(((Point(0, 0), Point(math.nan, 1)),), "ink"))), "no number"),
        ((cut(SQUARE), drilled(hole(10, 10), hole(10, 10))), "second hole at 10, 10"),
        ((cut(SQUARE), drilled(hole(10, 10)), drilled(hole(10, 10, 3.0), role="site")), "second hole"),
        ((cut(SQUARE), drilled(hole(3.9, 10))), "over the edge"),
        ((cut(SQUARE), drilled(hole(-30, 10), role="clamp")), "over the edge"),
        ((cut(SQUARE), cut(OPENING, "CUT-OPENINGS"), drilled(hole(50, 30))), "over the edge"),
        ((cut(SQUARE), Layer("REFERENCE-X", "reference", (hole(10, 10),))), "no hole"),
        ((cut(SQUARE), Layer("REFERENCE-X", "reference", (Line((Point(1, 1),), "ink"),))), "less than two points"),
        ((cut(SQUARE), Layer("REFERENCE-X", "reference", (Line((Point(1, 1), Point(1, 1)), "ink"),))), "no length"),
    ],
)
def test_what_is_wrong_is_said(layers, words):
    found = faults(*layers)
    assert any(words in each for each in found), found
    with pytest.raises(BadDrawing, match=words):
        refuse_bad(BoardDrawing("A board", layers, Box(0, 0, 100, 60)))


def test_a_hole_that_just_keeps_to_the_board_is_none_too_many():
    assert faults(cut(SQUARE), drilled(hole(4.0, 10))) == []


def test_holes_that_somebody_has_to_ask_about_may_lie_anywhere():
    assert faults(cut(SQUARE), Layer("ASK-OFF-BOARD", "ask", (hole(-30, 10), hole(-30, 10)))) == []
