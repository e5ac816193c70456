"""Columns take what they need and the table never grows past its width."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.drawing.picture import Line, Words
from boardplan.output.printing.lettering import text_box
from boardplan.output.tables.table import Cell, Column, Heading, Table, column_widths, laid


def measure(text, height, *, bold=False):
    return len(text) * height * (1.0 if bold else 0.95)


words = st.text(st.sampled_from("abcdef "), max_size=40)
cells = st.builds(Cell, words, small=words, bold=st.booleans(), large=st.booleans(), tick=st.booleans())


@given(st.lists(st.tuples(cells, cells, cells), min_size=1, max_size=6), st.floats(90, 300))
def test_nothing_is_cut_off(rows, width):
    columns = (Column("no"), Column("a long head", "end", grows=True), Column("note", grows=True))
    table = Table(columns, (Heading("group"), *rows))
    assert sum(column_widths(table, width, measure)) <= width + 1e-6
    for strip in laid(table, width, measure).strips:
        for mark in strip.picture:
            if isinstance(mark, Words):
                box = text_box(mark, measure)
                assert -strip.height - 0.1 <= box.bottom
                assert box.top <= 0.1


def test_room_left_over_goes_to_the_columns_that_grow():
    table = Table((Column("a"), Column("b", grows=True)), ((Cell("xx"), Cell("yy")),))
    first, second = column_widths(table, 100, measure)
    assert first < 10
    assert first + second == pytest.approx(100)


def test_a_box_to_tick_is_large_enough_for_a_carpenters_pencil():
    strip = laid(Table((Column("done"),), ((Cell(tick=True),),)), 20, measure).strips[0]
    (box,) = [mark for mark in strip.picture if isinstance(mark, Line) and mark.closed]
    assert box.points[1].x - box.points[0].x >= 5


def test_a_word_that_fits_its_column_is_never_broken(fonts):
    rows = tuple((Cell(f"W{number:02}", bold=True), Cell("x" * 90)) for number in range(40))
    table = Table((Column("no"), Column("note", grows=True)), rows)
    for width in (90.1, 133.7, 187.4):
        marks = [mark for strip in laid(table, width, fonts.width).strips for mark in strip.picture]
        words = [mark.text for mark in marks if isinstance(mark, Words)]
        assert {f"W{number:02}" for number in range(40)} <= set(words)


def test_a_box_to_write_in_fills_its_cell_and_has_room_for_gloves():
    """At least as wide as asked, high enough for figures of 5 mm, and inside its row and column."""
    columns = (Column("what", grows=True), Column("value"))
    table = Table(columns, ((Cell("stud"), Cell(blank=20)), (Cell("stud"), Cell("17"))))
    blank, written = laid(table, 90, measure).strips
    (box,) = [mark for mark in blank.picture if isinstance(mark, Line) and mark.closed]
    left, bottom = min(box.points)
    right, top = max(box.points)
    assert right - left >= 20
    assert top - bottom >= 6
    assert -blank.height <= bottom < top <= 0
    assert right <= 90
    assert not [mark for mark in written.picture if isinstance(mark, Line) and mark.closed]
