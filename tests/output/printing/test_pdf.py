"""The PDF itself: true to a thousandth of a millimetre, the same every time, its font inside."""

import pytest
from output.read_back import bookmarks, print_scaling, read_pages
from reportlab.pdfbase.pdfmetrics import stringWidth

from boardplan.drawing.picture import Area, Disc, Line, Strand, Words
from boardplan.geometry.bends import rounded
from boardplan.geometry.point import Point
from boardplan.geometry.units import mm_from_points, points_from_mm
from boardplan.output.printing.lettering import CAPITAL
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.printing.sheet import Part, Sheet


def sheet(*marks, width=420.0, height=300.0):
    return Sheet("one", width, height, (Part(marks),))


@pytest.mark.parametrize(
    ("x", "y", "diameter"), [(10, 10, 2.4), (123.456, 78.9, 10), (3000, 600, 100), (0.001, 0, 3.2)]
)
def test_circles_are_true(x, y, diameter, fonts):
    pdf = pdf_of([sheet(Disc(Point(x, y), diameter / 2, None, "ink"), width=3200, height=700)], fonts, "t")
    (circle,) = read_pages(pdf)[0].circles
    assert (circle.x, circle.y, circle.diameter) == pytest.approx((x, y, diameter), abs=0.001)


def test_lines_are_true(fonts):
    pdf = pdf_of([sheet(Line((Point(10, 20), Point(110, 20)), "ink"))], fonts, "t")
    (stroke,) = read_pages(pdf)[0].strokes
    assert (stroke.x0, stroke.y0, stroke.x1, stroke.y1) == pytest.approx((10, 20, 110, 20), abs=0.001)


def test_same_sheets_same_bytes(fonts):
    marks = (
        Line((Point(0, 0), Point(9, 9), Point(9, 0)), "ink", 0.3, (2, 1), closed=True),
        Area((((Point(0, 0)), Point(5, 0), Point(5, 5)),), "line", "ink", 0.1, opacity=0.5),
        Strand(rounded((Point(0, 0), Point(80, 0), Point(80, 80)), 20), "quiet", 3, opacity=0.7),
        Words(Point(50, 50), "Ø 8.0 (5/16) THRU", 2, "ink", turn=90, bold=True),
    )
    assert pdf_of([sheet(*marks)], fonts, "t") == pdf_of([sheet(*marks)], fonts, "t")


def test_the_font_is_inside_and_no_other(fonts):
    pdf = pdf_of([sheet(Words(Point(50, 50), "W07 NB1.S5 > INV1.DC-", 2, "ink"))], fonts, "t")
    (text,) = read_pages(pdf)[0].texts
    assert text.words == "W07 NB1.S5 > INV1.DC-"
    assert text.embedded
    assert b"Helvetica" not in pdf


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
def test_words_stand_at_their_anchor(turn, anchor, fonts):
    pdf = pdf_of([sheet(Words(Point(150, 150), "HHHH", 4, "ink", anchor, turn=turn))], fonts, "t")
    (text,) = read_pages(pdf)[0].texts
    wide = fonts.width("HHHH", 4)
    share = {"start": 0.5, "middle": 0, "end": -0.5}[anchor]
    centre = Point((text.left + text.right) / 2, (text.bottom + text.top) / 2)
    assert centre.distance_to(Point(150, 150).ahead(turn, share * wide)) < 0.3
    # less the room beside the first and the last letter
    assert sorted((text.right - text.left, text.top - text.bottom)) == pytest.approx([4, wide], abs=1.0)


def test_capitals_have_the_height_the_lettering_counts_on(fonts):
    """Measured on the drawn letter by PDFium: an H without bar is as high as its capital."""
    pdf = pdf_of([sheet(Words(Point(50, 50), "H", 10, "ink", centred=False))], fonts, "t")
    (text,) = read_pages(pdf)[0].texts
    assert (text.bottom, text.top) == pytest.approx((50, 60), abs=0.05)
    assert 0.6 < CAPITAL < 0.75


def test_a_viewer_is_told_not_to_scale(fonts):
    assert not print_scaling(pdf_of([sheet()], fonts, "t"))


def test_a_bookmark_for_each_sheet(fonts):
    sheets = [Sheet(name, 200, 100, ()) for name in ("A A1", "A B1")]
    assert bookmarks(pdf_of(sheets, fonts, "t")) == ["A A1", "A B1"]


def test_each_page_is_told_and_may_end_the_work(fonts):
    told = []
    pdf_of([sheet(), sheet()], fonts, "t", told.append)
    assert told == [1, 2]

    class Enough(Exception):  # noqa: N818
        pass

    def enough(_):
        raise Enough

    with pytest.raises(Enough):
        pdf_of([sheet()], fonts, "t", enough)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("height", [1.65, 2.4, 6.0])
def test_words_are_as_wide_as_the_library_says(bold, height, fonts):
    name = pdf_names(fonts)[bold]
    for text in ("", "W07 NB1.S5 > INV1.DC-", "Ø 8.0 (5/16) THRU"):
        size = points_from_mm(height) / CAPITAL
        assert fonts.width(text, height, bold=bold) == mm_from_points(stringWidth(text, name, size))


def pdf_names(fonts):
    """Register the fonts, as measuring does, and return their names in the library."""
    assert fonts.width("x", 2) < fonts.width("x", 2, bold=True)
    return {False: "boardplan-plain", True: "boardplan-bold"}


def test_pages_are_pressed_together_and_not_spelt_out_in_letters(fonts):
    pdf = pdf_of([sheet(Words(Point(50, 50), "W07", 2, "ink"))], fonts, "t")
    assert b"/FlateDecode" in pdf
    assert b"/ASCII85Decode" not in pdf
