"""The sheet: fabric or wood within the outline, out of the cut-outs, in few marks."""

import pytest

from boardplan.drawing.board_sheet_picture import board_sheet_picture
from boardplan.drawing.hatching import inside
from boardplan.drawing.picture import Area
from boardplan.drawing.rings import rectangle
from boardplan.geometry.point import Point
from boardplan.model.board import Board, Fabric

OUTLINE = (Point(0, 0), Point(900, 0), Point(900, 400), Point(700, 600), Point(0, 600))
COVERED = Board("A", "Board", OUTLINE, (rectangle(100, 100, 120, 80),), fabric=Fabric(2))
BARE = Board("A", "Board", OUTLINE, (rectangle(100, 100, 120, 80),))


def middle(ring):
    return Point(sum(point.x for point in ring) / len(ring), sum(point.y for point in ring) / len(ring))


@pytest.mark.parametrize("board", [COVERED, BARE], ids=["covered", "bare"])
def test_a_sheet_is_few_marks(board):
    assert len(board_sheet_picture(board)) < 200


@pytest.mark.parametrize("size", [(200, 100), (1300, 880), (3000, 1500)])
def test_a_large_sheet_is_not_slower_to_draw(size):
    board = Board("A", "Board", rectangle(0, 0, *size), fabric=Fabric(2))
    assert sum(len(mark.rings) for mark in board_sheet_picture(board)) < 2200


def test_threads_keep_to_the_fabric():
    rings = (COVERED.outline, *COVERED.cutouts)
    threads = [
        ring
        for mark in board_sheet_picture(COVERED)
        if isinstance(mark, Area) and mark.fill in {"fabric-weave", "fabric-warp"} and len(mark.rings) > 2
        for ring in mark.rings
    ]
    assert len(threads) > 100
    assert all(inside(rings, middle(ring)) for ring in threads)


@pytest.mark.parametrize(("board", "face"), [(COVERED, "fabric"), (BARE, "ply-face")], ids=["covered", "bare"])
def test_the_face_is_cut_out_where_the_sheet_is(board, face):
    sheet = next(mark for mark in board_sheet_picture(board) if mark.fill == face)
    assert sheet.rings == (board.outline, *board.cutouts)


def test_the_layers_show_where_nothing_covers_the_wood():
    inks = [mark.fill for mark in board_sheet_picture(BARE)]
    assert inks.count("ply-edge") >= 2
    assert inks.count("ply-edge-dark") >= 3


def test_the_same_board_is_drawn_the_same():
    assert board_sheet_picture(COVERED) == board_sheet_picture(COVERED)
