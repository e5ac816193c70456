"""The calibration sheet read back with PDFium: bars of the length they say, all of it on the paper."""

import math

import pytest
from output.read_back import print_scaling, read_pages

from boardplan.model.printer_bars import PrintedBar, PrinterBars
from boardplan.output.printing.calibration_sheet import bar_lengths, calibration_pdf, inch_bar_lengths, sheet_size
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.printer_correction import Printing


def printing_at(short, long, paper):
    return Printing(PAPERS[paper], "P", PrinterBars("P", paper, PrintedBar(9, 9, short), PrintedBar(9, 9, long)))


def sheet_of(printing, fonts):
    (page,) = read_pages(calibration_pdf(printing, fonts))
    return page


def ends(strokes, axis, deep):
    """Where the strokes of a depth across a bar stand along it, first and last."""
    along = [
        (each.x0, abs(each.y1 - each.y0)) if axis == "X" else (each.y0, abs(each.x1 - each.x0))
        for each in strokes
        if abs(each.x1 - each.x0 if axis == "X" else each.y1 - each.y0) < 0.001
    ]
    found = [place for place, size in along if abs(size - deep) < 0.01]
    return max(found) - min(found)


@pytest.mark.parametrize("paper", PAPERS)
def test_bars_are_whole_50_mm_and_true_at_any_factor(paper, fonts):
    short, long = bar_lengths(PAPERS[paper])
    inches = inch_bar_lengths(PAPERS[paper])
    assert short % 50 == long % 50 == 0
    for by in ((1.0, 1.0), (0.97, 1.03), (1.03, 0.97)):
        page = sheet_of(printing_at(*by, paper), fonts)
        # the depths of end strokes: 5 mm on the side of the millimetres, 4 mm on that of the inches
        assert ends(page.strokes, "X", 5.0 * by[1]) == pytest.approx(short * by[0], abs=0.002)
        assert ends(page.strokes, "Y", 5.0 * by[0]) == pytest.approx(long * by[1], abs=0.002)
        assert ends(page.strokes, "X", 4.0 * by[1]) == pytest.approx(inches[0] * by[0], abs=0.002)
        assert ends(page.strokes, "Y", 4.0 * by[0]) == pytest.approx(inches[1] * by[1], abs=0.002)


@pytest.mark.parametrize(
    ("paper", "lengths"),
    [("a4", (150, 250)), ("letter", (150, 250)), ("a3", (250, 350)), ("a0", (750, 1000)), ("roll-914", (850, 1000))],
)
def test_bars_are_as_long_as_the_paper_lets_them(paper, lengths):
    """(side - 2 x 10 mm of margin) / 1.03, down to whole 50 mm, at most a metre; by hand."""
    assert bar_lengths(PAPERS[paper]) == lengths


@pytest.mark.parametrize("paper", PAPERS)
def test_nothing_is_past_the_margins_or_over_another_thing(paper, fonts):
    for by in ((1.0, 1.0), (1.03, 1.03), (0.97, 0.97)):
        page = sheet_of(printing_at(*by, paper), fonts)
        assert (page.width, page.height) == pytest.approx(sheet_size(PAPERS[paper]), abs=0.01)
        for stroke in page.strokes:
            for x, y in ((stroke.x0, stroke.y0), (stroke.x1, stroke.y1)):
                assert 8 < x < page.width - 8
                assert 8 < y < page.height - 8
        for each in page.texts:
            assert each.left > 8
            assert each.bottom > 8
            assert each.right < page.width - 10
            assert each.top < page.height - 10
        read = [each for each in page.texts if each.words]
        for place, one in enumerate(read):
            for other in read[place + 1 :]:
                apart = (
                    one.right <= other.left + 0.01
                    or other.right <= one.left + 0.01
                    or one.top <= other.bottom + 0.3
                    or other.top <= one.bottom + 0.3
                )
                assert apart, (one.words, other.words)


def test_it_says_how_to_print_and_to_measure_and_what_it_is_drawn_at(fonts):
    words = sheet_of(printing_at(1.0027, 0.998, "letter"), fonts).words.replace("\n", " ")
    for each in (
        "Calibration sheet",
        "Printer P, paper Letter",
        "Drawn 100.27 % in x, 99.80 % in y.",
        "Print at 100 % / actual size: no 'fit to page'",
        "steel rule",
        f"{math.hypot(150 - 24, 250 - 24):.1f} mm",
        "boardplan measured-bars --printer 'P' --paper letter",
        "X, 150 mm, reads",
        "or 9 in reads",
        "Diagonal up to the left",
    ):
        assert each in words, each


def test_no_viewer_may_scale_it_and_it_is_always_the_same(fonts):
    made = [calibration_pdf(Printing(PAPERS["a4"], "P"), fonts) for _ in range(2)]
    assert made[0] == made[1]
    assert not print_scaling(made[0])
