"""Tiles: as few sheets as the trade expects, and every point of a board on one of them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Point
from boardplan.model.board import Board
from boardplan.output.printing.pages import OVERLAP, PAPERS, tiles_of
from boardplan.output.printing.paper import MARGIN


def sheet(width, height, **other):
    return Board("A", "", (Point(0, 0), Point(width, 0), Point(width, height), Point(0, height)), **other)


# 10 mm margins, 10 mm overlap, 20 mm border: counted by hand, ceil((L - o) / (w - o)); common practice, no source
COUNTS = [
    (1300, 880, {"a4": 30, "letter": 30, "a3": 15}),
    (832, 880, {"a4": 20, "letter": 20, "a3": 12}),
    (1160, 700, {"a4": 21, "letter": 20, "a3": 10}),
    (560, 860, {"a4": 15}),  # 600 x 900 with its border: 4 x 4 upright, 3 x 5 lying
]


@pytest.mark.parametrize(
    ("width", "height", "paper", "count"),
    [(width, height, paper, count) for width, height, counts in COUNTS for paper, count in counts.items()],
)
def test_fewest_sheets(width, height, paper, count):
    assert len(tiles_of(sheet(width, height), PAPERS[paper])) == count


@pytest.mark.parametrize(
    ("width", "height", "paper", "strips", "page"),
    [
        (1300, 880, "roll-914", 1, (1332, 914)),  # 880 + 2 x 6 = 892 of 894 printable
        (1300, 880, "roll-1067", 1, (1360, 1067)),
        (1300, 880, "roll-610", 2, (1360, 610)),
        (832, 880, "roll-914", 1, (914, 940)),
    ],
)
def test_a_roll_gives_up_border_before_it_splits(width, height, paper, strips, page):
    tiles = tiles_of(sheet(width, height), PAPERS[paper])
    assert len(tiles) == strips
    assert (tiles[0].page_width, tiles[0].page_height) == pytest.approx(page)


boards = st.builds(sheet, st.floats(120, 2500), st.floats(120, 2500))


@given(
    boards, st.sampled_from(list(PAPERS.values())), st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1)), max_size=8)
)
def test_every_point_of_a_board_is_on_a_tile(board, paper, shares):
    box = board.box
    points = [Point(x * box.width, y * box.height) for x, y in shares]
    tiles = tiles_of(board, paper, points)
    for point in (*box.corners(), *points):
        assert any(tile.rect.holds(point) for tile in tiles)


@given(boards, st.sampled_from(list(PAPERS.values())))
def test_tiles_overlap_keep_the_margin_and_hold_a_border(board, paper):
    tiles = tiles_of(board, paper)
    by_place = {(tile.column, tile.row): tile for tile in tiles}
    for tile in tiles:
        assert tile.on_page.grown(MARGIN - 1e-6).holds((1e-3, 1e-3)) is True
        assert tile.page_width - tile.on_page.right == pytest.approx(MARGIN)
        assert tile.page_height - tile.on_page.top == pytest.approx(MARGIN)
        beside, above = by_place.get((tile.column + 1, tile.row)), by_place.get((tile.column, tile.row + 1))
        assert beside is None or tile.rect.right - beside.rect.left >= OVERLAP - 1e-6
        assert above is None or tile.rect.top - above.rect.bottom >= OVERLAP - 1e-6
        if paper.height is not None:
            assert sorted((tile.page_width, tile.page_height)) == pytest.approx([paper.width, paper.height])
        else:
            assert paper.width in (pytest.approx(tile.page_width), pytest.approx(tile.page_height))
    assert min(tile.rect.left for tile in tiles) <= -6 + 1e-6
    assert max(tile.rect.top for tile in tiles) >= board.box.top + 6 - 1e-6


def test_what_is_on_two_tiles_lies_within_their_overlap():
    first, second, *_ = tiles_of(sheet(1300, 880), PAPERS["a4"])
    shared = first.rect.right - second.rect.left
    assert (first.name, second.name, shared) == ("A1", "B1", pytest.approx(OVERLAP))


def test_tiles_off_a_notched_board_are_left_out_but_not_those_that_carry_the_joints():
    low = (Point(0, 0), Point(1300, 0), Point(1300, 200), Point(200, 200), Point(200, 880), Point(0, 880))
    whole = tiles_of(sheet(1300, 880), PAPERS["a4"])
    tiles = tiles_of(Board("A", "", low), PAPERS["a4"])
    assert len(tiles) < len(whole)
    assert {tile.column for tile in tiles if tile.row == 0} == {0, 1, 2, 3, 4}
    assert {tile.row for tile in tiles if tile.column == 0} == {0, 1, 2, 3, 4, 5}


def test_seams_spare_the_hole_marks_where_there_is_room():
    board = sheet(832, 880)
    rects = [tile.rect for tile in tiles_of(board, PAPERS["a4"])]
    seam = (rects[0].right + rects[1].left) / 2
    marks = [Point(seam, 100)]
    moved = [tile.rect for tile in tiles_of(board, PAPERS["a4"], marks)]
    assert any(rect.left + 9 <= seam <= rect.right - 9 for rect in moved)
