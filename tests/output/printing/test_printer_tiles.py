"""A corrected template, read back with PDFium: every hole at its place times the factor, nothing past the margins."""

from dataclasses import replace
from functools import cache

import pytest
from boards import honey_trailer
from hypothesis import example, given, settings
from hypothesis import strategies as st
from output.read_back import MM, read_pages

from boardplan.bundled import data_dir
from boardplan.checks.finding import Finding
from boardplan.checks.review import review_of
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.holes import holes_of
from boardplan.model.printer_bars import PrintedBar, PrinterBars
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.paper import MARGIN, PAPERS
from boardplan.output.printing.pdf import Fonts, pdf_of
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.printing.printer_tiles import drawn_box, page_factors, printed_tiles
from boardplan.output.template.template import template_of
from boardplan.output.template.template_set import TemplateSet
from boardplan.output.template.tile_sheet import tile_sheets

WITHIN = 0.01
LONGEST_PAGE = 14_400 * MM  # ISO 32000-1, annex C

factors = st.floats(0.97, 1.03).map(lambda each: round(each, 4))


@cache
def reviewed():
    return review_of(honey_trailer())


def printing_at(short, long, paper):
    true = PrinterBars("P", paper, PrintedBar(150, 150, short), PrintedBar(250, 250, long))
    return Printing(PAPERS[paper], "P", true)


def printed(printing):
    """The tiles of the first board and their pages as PDF."""
    review = reviewed()
    plan, board = review.plan, next(iter(review.plan.boards.values()))
    fonts = Fonts(data_dir("assets") / "fonts")
    tiles = printed_tiles(board, printing, [hole.position for hole in holes_of(plan) if hole.board == board.id])
    template = template_of(plan, review, board, tiles, fonts.width)
    shared = TemplateSet(plan.job, template, tiles, printing, 0, fonts.width)
    return tiles, pdf_of(tuple(tile_sheets(shared)), fonts, "template")


@settings(max_examples=12)
@given(factors, factors, st.sampled_from(["a3", "tabloid", "roll-914", "a1"]))
def test_every_hole_is_at_its_place_times_the_factor(short, long, paper):
    plan, printing = reviewed().plan, printing_at(short, long, paper)
    tiles, pdf = printed(printing)
    seen = set()
    for tile, page in zip(tiles, read_pages(pdf), strict=True):
        upright = abs(tile.page_width - PAPERS[paper].width) < 1e-6
        by_x, by_y = (short, long) if upright else (long, short)
        for hole in holes_of(plan):
            if hole.board != tile.board or not tile.rect.holds(hole.position):
                continue
            x = tile.at.x + (hole.position.x - tile.rect.left) * by_x
            y = tile.at.y + (hole.position.y - tile.rect.bottom) * by_y
            near = [each for each in page.circles if abs(each.x - x) < WITHIN and abs(each.y - y) < WITHIN]
            assert any(abs(each.diameter - hole.bit * by_x) < WITHIN for each in near), (hole.id, tile.name)
            seen.add(hole.id)
    assert seen == {hole.id for hole in holes_of(plan) if hole.board == tiles[0].board}


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_bars_are_drawn_at_the_factor_and_letters_are_not(paper):
    printing = printing_at(0.98, 1.02, paper)
    tiles, pdf = printed(printing)
    _, plain = printed(Printing(PAPERS[paper]))
    heights = {each.words: each.top - each.bottom for page in read_pages(plain) for each in page.texts}
    for tile, page in zip(tiles, read_pages(pdf), strict=True):
        x, y = page_factors(printing, tile)
        level = [each for each in page.strokes if abs(each.y1 - each.y0) < 0.001]
        upright = [each for each in page.strokes if abs(each.x1 - each.x0) < 0.001]
        for length in (100.0, 101.6):
            assert any(abs(abs(each.x1 - each.x0) - length * x) < 0.001 for each in level), tile.name
            assert any(abs(abs(each.y1 - each.y0) - length * y) < 0.001 for each in upright), tile.name
        for each in page.texts:
            if each.words in {"X 100.0 mm", "UP"}:
                assert each.top - each.bottom == pytest.approx(heights[each.words], abs=0.002)


@pytest.mark.parametrize("paper", ["a4", "letter", "roll-610"])
@pytest.mark.parametrize("factor", [(1.03, 1.03), (0.97, 0.97), (1.03, 0.97)])
def test_all_words_stay_on_the_paper(paper, factor):
    tiles, pdf = printed(printing_at(*factor, paper))
    for tile, page in zip(tiles, read_pages(pdf), strict=True):
        assert (page.width, page.height) == pytest.approx((tile.page_width, tile.page_height), abs=0.01)
        for each in page.texts:
            assert each.left > 3, each
            assert each.bottom > 3, each
            assert each.right < page.width - 3, each
            assert each.top < page.height - 3, each


boards = st.builds(
    lambda width, height: Board("A", "", (Point(0, 0), Point(width, 0), Point(width, height), Point(0, height))),
    st.floats(120, 6000),
    st.floats(120, 2500),
)


@example(Board("A", "", Box(0, 0, 238, 1300).corners()), "a3", 1.0, 1.0, [])  # its seams once left 297.0000000000001
@given(boards, st.sampled_from(sorted(PAPERS)), factors, factors, st.lists(st.tuples(st.floats(0, 1), st.floats(0, 1))))
def test_a_tile_as_drawn_is_within_the_margins_and_no_point_is_lost(board, paper, short, long, shares):
    printing = printing_at(short, long, paper)
    tiles = printed_tiles(board, printing)
    for tile in tiles:
        box, sheet = drawn_box(printing, tile), PAPERS[paper]
        sides = sorted((tile.page_width, tile.page_height))
        if sheet.height is not None:
            assert sides == pytest.approx([sheet.width, sheet.height])
        assert sheet.width in (tile.page_width, tile.page_height)
        assert max(sides) <= LONGEST_PAGE
        assert box.left >= MARGIN - 1e-6
        assert box.bottom >= MARGIN - 1e-6
        assert box.right <= tile.page_width - MARGIN + 1e-6
        assert box.top <= tile.page_height - MARGIN + 1e-6
    for x, y in shares:
        point = (x * board.box.width, y * board.box.height)
        assert any(tile.rect.holds(point) for tile in tiles)


def test_a_sheet_on_its_side_has_the_papers_long_side_in_x():
    printing = printing_at(0.99, 1.01, "a4")
    wide = Board("A", "", (Point(0, 0), Point(230, 0), Point(230, 140), Point(0, 140)))
    high = Board("A", "", (Point(0, 0), Point(140, 0), Point(140, 230), Point(0, 230)))
    assert page_factors(printing, printed_tiles(wide, printing)[0]) == (1.01, 0.99)
    assert page_factors(printing, printed_tiles(high, printing)[0]) == (0.99, 1.01)


def test_every_sheet_says_how_it_is_drawn_and_whether_it_is_ready():
    ready = printing_at(1.003, 0.998, "a3")
    tiles, pdf = printed(ready)
    for tile, page in zip(tiles, read_pages(pdf), strict=True):
        x, y = page_factors(ready, tile)
        assert f"drawn {100 * x:.2f} % in x, {100 * y:.2f} % in y for printer P on A3" in page.words
        assert "error left over" in page.words
        assert "NOT READY" not in page.words
    for unready in (Printing(PAPERS["a3"]), Printing(PAPERS["a3"], "P")):
        for page in read_pages(printed(unready)[1]):
            assert page.words.count("NOT READY TO DRILL") == 2


def test_true_bars_alone_make_nothing_ready_that_findings_stop(tmp_path):
    stop = Finding("edge margin", "stop", "PV1 is too near the edge.", ("PV1",), "A", Point(0, 0))
    for findings, printing, ready in (
        ((), printing_at(1.003, 0.998, "roll-914"), True),
        ((stop,), printing_at(1.003, 0.998, "roll-914"), False),
        ((), Printing(PAPERS["roll-914"], "P"), False),
        ((stop,), Printing(PAPERS["roll-914"], "P"), False),
    ):
        review = replace(reviewed(), findings=findings)
        contents = write_pack(Making(review, printing), tmp_path / "p", chosen=("template",))
        assert contents["ready_to_drill"] is ready
        assert contents["may_be_issued"] is (not findings)
        for entry in contents["template_pages"]:
            words = read_pages(tmp_path / "p" / entry["file"])[entry["page"] - 1].words
            assert ("NOT TO BE ISSUED: 1 finding stops" in words) is bool(findings)
            assert ("NOT READY TO DRILL: bars not measured on this printer and paper" in words) is (not printing.ready)


def test_the_same_input_gives_the_same_bytes():
    assert printed(printing_at(1.003, 0.998, "a3"))[1] == printed(printing_at(1.003, 0.998, "a3"))[1]
