"""What is said of a printer: refused, warned, not measured, not yet true, and the error left."""

from dataclasses import replace

import pytest

from boardplan.geometry.point import Point
from boardplan.model.board import Board
from boardplan.model.printer_bars import PrintedBar, PrinterBars
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.printer_correction import (
    Printing,
    bar_sentences,
    drawn_words,
    error_words,
    missing_words,
    not_ready_words,
    printing_record,
    readiness_words,
)

BOARD = Board("A", "", (Point(0, 0), Point(1300, 0), Point(1300, 880), Point(0, 880)))


def bars(short=150.0, long=250.0, drawn=(1.0, 1.0), **other):
    return PrinterBars("P", "a3", PrintedBar(150, short, drawn[0]), PrintedBar(250, long, drawn[1]), **other)


def printing(measured=None, printer="P"):
    return Printing(PAPERS["a3"], printer, measured)


def test_nothing_is_ready_before_true_bars():
    for each, words in (
        (Printing(PAPERS["a3"]), "no printer named, no bars measured"),
        (printing(), "bars not measured on this printer and paper"),
        (printing(bars(149.0)), "correction not yet checked by a print"),
        (printing(bars(140.0)), "the last print was out of scale"),
        (printing(bars(finer=True)), "correction not yet checked by a print"),
    ):
        assert not each.ready
        assert not_ready_words(each) == f"NOT READY TO DRILL: {words}"
        assert readiness_words(each, [BOARD], "mm") == f"Not ready to drill: {words}."
    assert printing(bars(150.3)).ready
    assert not_ready_words(printing(bars(150.3))) == ""
    assert missing_words(bars()) == ""


@pytest.mark.parametrize(
    ("measured", "cause"),
    [
        (bars(short=145.6), None),  # 150 / 145.6 = 1.0302
        (bars(short=145.0), "'shrink oversized' was most likely on"),
        (bars(long=258.0), "with enlarging, or borderless printing, was most likely on"),
    ],
)
def test_what_is_refused_says_the_likely_cause(measured, cause):
    said = " ".join(bar_sentences(measured))
    assert "Not corrected" in said
    assert "fit to page" in said
    if cause:
        assert cause in said
    assert "From now on" not in said


def test_both_sides_that_are_refused_are_named():
    assert [each.split()[0] for each in bar_sentences(bars(140, 240))][:2] == ["x", "y"]


@pytest.mark.parametrize(
    ("short", "warned"),
    [
        (150 / 1.005, False),
        (150 / 1.0051, True),
        (150 / 0.995, False),
        (150 / 0.9949, True),
    ],
)
def test_more_than_half_a_percent_is_warned_of(short, warned):
    said = bar_sentences(bars(short))
    assert any(each.startswith("Caution: x needs") for each in said) is warned
    assert not any(each.startswith("Caution: y") for each in said)
    assert any("From now on drawn" in each for each in said)


def test_a_warning_stays_once_the_print_is_true():
    said = bar_sentences(bars(150.0, 250.0, (1.008, 1.0)))
    assert said[0].startswith("Caution: x needs 100.80 %")
    assert said[-1] == "Both bars are true within 0.3 mm."


def test_a_sheet_says_what_it_is_drawn_at():
    measured = printing(bars(150.0, 250.0, (1.003, 0.998)))
    assert drawn_words(measured, (1.003, 0.998)) == "drawn 100.30 % in x, 99.80 % in y for printer P on A3"
    assert drawn_words(Printing(PAPERS["a3"]), (1, 1)) == "drawn 100.00 % in x, 100.00 % in y, A3"


@pytest.mark.parametrize(
    ("short", "long", "units", "words"),
    [
        (150.0, 250.0, "mm", "error left over 1300 mm: at most 0.1 mm"),
        (150.1, 250.0, "mm", "error left over 1300 mm: at most 0.9 mm"),  # 1300 x 0.1 / 150 = 0.867
        (150.0, 249.7, "mm", "error left over 1300 mm: at most 1.6 mm"),  # 1300 x 0.3 / 250 = 1.56
        (150.0, 250.0, "inch", "error left over 51-3/16 in: at most 1/64 in"),
        (150.1, 250.0, "inch", "error left over 51-3/16 in: at most 3/64 in"),  # 0.867 mm = 2.18 / 64 in
        (150.3, 250.0, "inch", "error left over 51-3/16 in: at most 7/64 in"),  # 2.6 mm = 6.55 / 64 in
        (149.0, 250.0, "mm", "error left over 1300 mm: not known"),
    ],
)
def test_the_error_left_over_the_board_is_rounded_up(short, long, units, words):
    assert error_words(printing(bars(short, long)), 1300, units) == words


def test_words_for_the_shell_name_the_largest_board():
    small = replace(BOARD, id="B", outline=tuple(Point(x / 2, y / 2) for x, y in BOARD.outline))
    said = readiness_words(printing(bars(150.1)), [small, BOARD], "mm")
    assert said == "Bars true within 0.3 mm: printer P on A3; error left over 1300 mm: at most 0.9 mm."


def test_the_record_says_what_the_words_say():
    record = printing_record(printing(bars(150.1)), [BOARD], "mm")
    assert record["bars_true"] is True
    assert record["boards"][0]["error_left_mm"] == pytest.approx(0.8667, abs=1e-4)
    assert record["bars"]["short"] == {"length_mm": 150, "measured_mm": 150.1, "drawn_at": 1.0}
    assert printing_record(Printing(PAPERS["a3"]), [BOARD], "mm")["bars"] is None


@pytest.mark.parametrize(("x", "y"), [(98.6, 98.6), (98.6, 98.5), (101.4, 101.5)])
def test_bars_out_alike_along_both_sides_were_scaled_by_a_setting(x, y):
    """98.6 mm for 100 both ways: a setting, although 1.0142 alone would be within 0.97 to 1.03."""
    bars = PrinterBars("Hall laser", "a4", PrintedBar(100, x), PrintedBar(100, y))
    assert not bars.plausible
    assert not bars.ready
    assert bars.factors == (1.0, 1.0)
    said = " ".join(bar_sentences(bars))
    assert "'fit to page'" in said
    assert "Not corrected" in said


@pytest.mark.parametrize(("x", "y"), [(99.4, 100.1), (98.6, 100.0), (99.1, 99.1), (98.6, 98.9)])
def test_bars_out_along_one_side_or_by_little_are_corrected(x, y):
    bars = PrinterBars("Hall laser", "a4", PrintedBar(100, x), PrintedBar(100, y))
    assert bars.plausible
    if (x, y) == (99.4, 100.1):
        assert bars.short.corrected == 1.0060
        assert bars.long.corrected == 0.9990
