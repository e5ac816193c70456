"""Blocks: every row is set once, none over another, and what has no room is told."""

import itertools

from hypothesis import given
from hypothesis import strategies as st

from boardplan.drawing.picture import Line, Words
from boardplan.geometry.point import Box, Point
from boardplan.output.drawn.blocks import Block, Row, block_height, columns_of, flow, set_block, split
from boardplan.output.printing.lettering import text_box

ROOM = Box(0, 0, 180, 100)


def words(picture):
    return [mark for mark in picture if isinstance(mark, Words)]


def long_block(count=30, title="Title"):
    return Block(
        title, [Row(f"row {index} says something of some length", f"lead {index}") for index in range(count)], 15
    )


def rows_set(picture):
    return [mark.text for mark in words(picture) if mark.text.startswith("lead")]


@given(st.lists(st.integers(1, 12), min_size=1, max_size=8))
def test_blocks_fill_columns_without_covering_each_other(counts):
    from boardplan.bundled import data_dir  # noqa: PLC0415
    from boardplan.output.printing.pdf import Fonts  # noqa: PLC0415

    measure = Fonts(data_dir("assets") / "fonts").width
    blocks = [long_block(count, f"B{index}") for index, count in enumerate(counts)]
    picture, left = flow(blocks, columns_of(ROOM, 3), measure)
    boxes = [text_box(mark, measure) for mark in words(picture)]
    assert all(
        ROOM.grown(0.5).holds((box.left, box.bottom)) and ROOM.grown(0.5).holds((box.right, box.top)) for box in boxes
    )
    assert not any(a.grown(-0.3).touches(b.grown(-0.3)) for a, b in itertools.combinations(boxes, 2))
    assert len(rows_set(picture)) + sum(len(block.rows) for block in left) == sum(counts)


def test_blocks_keep_their_order_where_that_fits(fonts):
    blocks = [long_block(8, f"B{index}") for index in range(4)]
    picture, left = flow(blocks, columns_of(ROOM, 3), fonts.width)
    assert left == ()
    at = {mark.text: mark.at for mark in words(picture) if mark.bold}
    order = sorted(at, key=lambda name: (at[name].x, -at[name].y))
    assert order == ["B0", "B1", "B2", "B3"]


def test_a_wide_block_takes_the_widest_column_and_stands_in_several(fonts):
    narrow, wide = Box(0, 0, 60, 100), Box(70, 0, 180, 100)
    block = Block("Wide", [Row(f"number {index}") for index in range(9)], narrow=30, wide=True)
    picture, left = flow([block], [narrow, wide], fonts.width)
    assert left == ()
    assert len({mark.at.x for mark in words(picture) if mark.text.startswith("number")}) == 3


def test_a_block_that_is_too_high_is_split_and_says_so(fonts):
    pieces = split(long_block(40), 80, 60, fonts.width)
    assert len(pieces) > 1
    assert [row for piece in pieces for row in piece.rows] == list(long_block(40).rows)
    assert all(block_height(piece, 80, fonts.width) <= 60 + 1e-6 for piece in pieces)
    titles = [mark.text for mark in set_block(pieces[1], Point(0, 60), 80, fonts.width) if isinstance(mark, Words)]
    assert titles[0] == "Title (continued)"


def test_a_blank_is_a_line_to_write_on_beside_or_below_its_question(fonts):
    short, long = (
        Row("How high?", blank=True),
        Row("Which bolts, how far apart, into which member of the floor?", blank=True),
    )
    for row, beside in ((short, True), (long, False)):
        marks = list(set_block(Block("T", [row]), Point(0, 50), 70, fonts.width))
        *_, line = (mark for mark in marks if isinstance(mark, Line))
        text = next(mark for mark in marks if isinstance(mark, Words) and mark.text != "T")
        assert line.points[1].x - line.points[0].x >= 20
        assert (line.points[0].x > text_box(text, fonts.width).right) == beside
