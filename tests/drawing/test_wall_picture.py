"""Behind and before the board: members to scale, a no-go box with its name."""

import pytest
from inks import words_in

from boardplan.drawing.picture import Line
from boardplan.drawing.rings import rectangle
from boardplan.drawing.wall_picture import back_part_picture, framing_box, framing_picture, no_go_picture
from boardplan.geometry.point import Box
from boardplan.model.board import BackPart, Board, Framing, NoGoBox

BOARD = Board("A", "Board", rectangle(0, 0, 1300, 880))


@pytest.mark.parametrize(
    ("member", "box"),
    [
        (Framing("p", "A", "upright", 630, 40), Box(610, -60, 650, 940)),
        (Framing("p", "A", "level", 400, 38, 100, 900), Box(100, 381, 900, 419)),
        (Framing("p", "A", "level", 400, 38), Box(-60, 381, 1360, 419)),
    ],
)
def test_a_member_lies_where_it_was_measured(member, box):
    assert framing_box(member, BOARD) == box
    assert framing_picture(member, BOARD)[0].rings == (box.corners(),)


def test_a_back_part_is_dashed():
    line = back_part_picture(BackPart("c", "A", "cleat", rectangle(0, 0, 300, 60)))[-1]
    assert isinstance(line, Line)
    assert line.dashes


def test_a_no_go_box_says_what_is_there():
    picture = no_go_picture(NoGoBox("n", "A", "Locker lamp", 1270, 910, 120, 40))
    assert [mark.text for mark in words_in(picture)] == ["Locker lamp"]
    assert len(picture) < 100
