"""A page as pixels: its size, its colours in their order, its rows from the top."""

import pytest

from boardplan.drawing.picture import Area
from boardplan.geometry.point import Box
from boardplan.output.printing.page_raster import page_pixels
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.printing.sheet import Part, Sheet


@pytest.fixture
def pdf(fonts):
    """Two pages: an empty one, and one that is red above and blue below."""
    marks = (Area((Box(0, 25, 30, 50).corners(),), "#FF0000"), Area((Box(0, 0, 30, 25).corners(),), "#0000FF"))
    pages = [Sheet("empty", 60, 20, ()), Sheet("flag", 30, 50, (Part(marks),))]
    return pdf_of(pages, fonts, "two pages")


def test_the_longer_side_is_as_asked(pdf):
    wide, high = page_pixels(pdf, 0, 300), page_pixels(pdf, 1, 301)
    assert wide.width == 300
    assert wide.height in {100, 101}  # what a page covers in part is a pixel too
    assert high.height == 301
    assert high.width in {180, 181}
    assert len(high.rgb) == high.width * high.height * 3


def test_colours_and_rows_keep_their_order(pdf):
    found = page_pixels(pdf, 1, 301)
    assert found.rgb[:3] == b"\xff\x00\x00"
    assert found.rgb[-3:] == b"\x00\x00\xff"
    assert set(page_pixels(pdf, 0, 60).rgb) == {255}
