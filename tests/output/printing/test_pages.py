"""Tiles: as few sheets as the trade expects, and every point of a board on one of them."""

import math
import random
import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, Datum
from boardplan.output.printing.joints import joints_of
from boardplan.output.printing.pages import OVERLAP, PAPERS, tiles_of
from boardplan.output.printing.paper import MARGIN
from boardplan.output.printing.sheet_layouts import fewest_layouts


def sheet(width, height, **other):
    return Board("A", "", (Point(0, 0), Point(width, 0), Point(width, height), Point(0, height)), **other)


# a board, and for each paper the sheets of the better plain grid and of the best strips; 10 mm margins, 10 mm overlap,
# 20 mm border; grids counted by hand, ceil((L - o) / (w - o)); common practice, no source
COUNTS = [
    (1300, 880, {"a4": (30, 28), "letter": (30, 28), "a3": (15, 13)}),
    (832, 880, {"a4": (20, 19), "letter": (20, 18), "a3": (12, 10)}),
    (1160, 700, {"a4": (21, 21), "letter": (20, 20), "a3": (10, 9)}),
    (560, 860, {"a4": (15, 13)}),  # 600 x 900 with its border: 4 x 4 upright, 3 x 5 lying
]


def grid(width, height, across, up):
    """Sheets of a plain grid; the board with a border of 20 mm, neighbours sharing 10 mm."""
    return math.prod(
        max(1, math.ceil((each + 30) / (room - 10) - 1e-9)) for each, room in ((width, across), (height, up))
    )


def strips_of_both(width, height, across, up):
    """The fewest sheets in level strips, some of upright sheets and the rest of lying ones: every number of each."""
    upright, lying = (math.ceil((width + 30) / (each - 10) - 1e-9) for each in (across, up))
    return min(
        a * upright + b * lying
        for a in range(30)
        for b in range(30)
        if a + b > 0 and a * (up - 10) + b * (across - 10) >= height + 30 - 1e-9
    )


def best_counts(width, height, paper):
    """Sheets of the better plain grid and of the best strips, worked out as slowly as can be."""
    across, up = paper.width - 20, paper.height - 20
    plain = min(grid(width, height, across, up), grid(width, height, up, across))
    return plain, min(strips_of_both(width, height, across, up), strips_of_both(height, width, across, up))


@pytest.mark.parametrize(
    ("width", "height", "paper", "counts"),
    [(width, height, paper, counts) for width, height, papers in COUNTS for paper, counts in papers.items()],
)
def test_fewest_sheets(width, height, paper, counts):
    plain, best = counts
    assert best_counts(width, height, PAPERS[paper]) == (plain, best)
    assert len(tiles_of(sheet(width, height), PAPERS[paper])) == best <= plain


@given(st.floats(300, 2500), st.floats(250, 1500), st.sampled_from([each for each in PAPERS.values() if each.height]))
def test_never_more_sheets_than_the_best_of_grids_and_strips(width, height, paper):
    plain, best = best_counts(width, height, paper)
    count = len(tiles_of(sheet(width, height), paper))
    assert count in {best, 1}
    assert count <= plain


def test_a_tenth_of_the_sheets_of_an_upright_grid_is_saved():
    """2,000 random boards of 0.3 to 2.5 m by 0.25 to 1.5 m on A4: the mean of what each saves."""
    chance = random.Random(20)
    saved = []
    for _ in range(2000):
        width, height = chance.uniform(300, 2500), chance.uniform(250, 1500)
        layouts = fewest_layouts(Box(0, 0, width, height), PAPERS["a4"])
        saved.append(1 - layouts[0].sheets / grid(width, height, 190, 277))
    assert statistics.mean(saved) > 0.10
    assert min(saved) >= 0


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
    row = [tile for tile in tiles if tile.row == 0]
    column = [tile for tile in tiles if tile.column == 0]
    assert [tile.column for tile in row] == list(range(len(row)))
    assert [tile.row for tile in column] == list(range(len(column)))
    assert row[-1].rect.right >= 1300 + 6
    assert column[-1].rect.top >= 880 + 6
    assert len(column) > 3


@pytest.mark.parametrize("corner", ["lower-left", "lower-right", "upper-left", "upper-right"])
def test_the_row_and_the_column_of_the_datum_are_always_there(corner):
    ring = (Point(0, 0), Point(1300, 0), Point(1300, 880), Point(650, 440), Point(0, 880))
    for paper in ("a4", "letter", "a3"):
        tiles = tiles_of(Board("A", "", ring, datum=Datum(corner)), PAPERS[paper])
        y = 1 if "lower" in corner else 879
        x = 1 if "left" in corner else 1299
        for along in range(0, 1301, 10):
            assert any(tile.rect.holds((along, y)) for tile in tiles)
        for up in range(0, 881, 10):
            assert any(tile.rect.holds((x, up)) for tile in tiles)


def pieces(tiles):
    """How many heaps of sheets there are, each joined in itself by joints long enough for two crosses."""
    heap = {tile.name: {tile.name} for tile in tiles}
    for joint in joints_of(tiles):
        if joint.length >= 30:
            both = heap[joint.first.name] | heap[joint.second.name]
            heap |= dict.fromkeys(both, both)
    return len({frozenset(each) for each in heap.values()})


@given(
    st.floats(300, 2500), st.floats(250, 1500), st.floats(0.1, 0.9), st.floats(0.1, 0.9), st.sampled_from(["a4", "a3"])
)
def test_the_sheets_of_a_notched_board_are_all_joined(width, height, share_x, share_y, paper):
    x, y = share_x * width, share_y * height
    ring = (Point(0, 0), Point(width, 0), Point(width, y), Point(x, y), Point(x, height), Point(0, height))
    tiles = tiles_of(Board("A", "", ring), PAPERS[paper])
    assert pieces(tiles) == 1
    assert len(tiles) <= best_counts(width, height, PAPERS[paper])[1]
    for point in (*ring, Point(x / 2, height / 2), Point(width / 2, y / 2)):
        assert any(tile.rect.holds(point) for tile in tiles)


def test_seams_spare_the_hole_marks_where_there_is_room():
    board = sheet(832, 880)
    rects = [tile.rect for tile in tiles_of(board, PAPERS["a4"])]
    seam = (rects[0].right + rects[1].left) / 2
    marks = [Point(seam, 100)]
    moved = [tile.rect for tile in tiles_of(board, PAPERS["a4"], marks)]
    assert any(rect.left + 9 <= seam <= rect.right - 9 for rect in moved)
