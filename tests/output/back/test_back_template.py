"""The back template, read back with PDFium: mirrored as X' = W - X by the trade's rule, and never like the front."""

from dataclasses import replace
from functools import cache

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from output.expected_holes import LIBRARY_BUS, LOOKOUT_CABIN
from output.read_back import read_pages

from boardplan.bundled import data_dir
from boardplan.checks.review import review_of
from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart, Datum, Framing
from boardplan.model.fastener import Fastener
from boardplan.model.holes import holes_of
from boardplan.model.printer_bars import PrintedBar, PrinterBars
from boardplan.output.back.back_cover import covered_words, flange_words
from boardplan.output.back.back_heading import headings
from boardplan.output.back.back_records import back_records
from boardplan.output.back.back_sheet import back_set_of, back_sheets
from boardplan.output.back.back_view import back_holes, board_from_behind, check_holes, from_behind, member_from_behind
from boardplan.output.holes.datum import running
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.pdf import Fonts, pdf_of
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.printing.printer_tiles import page_factors

SAMPLES = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}
EXPECTED = {"library bus": LIBRARY_BUS, "lookout cabin": LOOKOUT_CABIN}
PAPERS_TRIED = ("a4", "letter", "a3", "roll-914")
WITHIN = 0.01


@cache
def reviewed(sample):
    return review_of(SAMPLES[sample]())


def fonts():
    return Fonts(data_dir("assets") / "fonts")


def back_pages(review, board, printing):
    own = fonts()
    shared = back_set_of(review, board, printing, own.width)
    return shared, read_pages(pdf_of(tuple(back_sheets(shared)), own, "back"))


def test_the_worked_holes_are_those_with_nuts_at_the_board_width_less_x():
    """X' = W - X, same Y: the trade's rule for a template of the back, common practice, no source."""
    for sample, rows in EXPECTED.items():
        plan = SAMPLES[sample]()
        wanted = {row[0]: (plan.boards[row[1]].box.right - row[2], row[3], row[4]) for row in rows if row[5] == "t-nut"}
        found = {
            hole.id: (*hole.position, hole.bit) for board in plan.boards.values() for hole in back_holes(plan, board)
        }
        assert found.keys() == wanted.keys()
        for name, place in wanted.items():
            assert found[name] == pytest.approx(place, abs=0.05), name


@pytest.mark.parametrize("paper", PAPERS_TRIED)
@pytest.mark.parametrize("sample", SAMPLES)
def test_every_hole_is_at_its_mirrored_place_on_paper_and_no_hole_of_the_front_is(sample, paper):
    review = reviewed(sample)
    for board in review.plan.boards.values():
        nuts = [hole for hole in holes_of(review.plan) if hole.board == board.id and hole.sort == "t-nut"]
        if not nuts:
            continue
        shared, pages = back_pages(review, board, Printing(PAPERS[paper]))
        seen = set()
        for tile, page in zip(shared.tiles, pages, strict=True):
            circles = list(page.circles)
            for hole in nuts:
                x = tile.at.x + board.box.left + board.box.right - hole.position.x - tile.rect.left
                y = tile.at.y + hole.position.y - tile.rect.bottom
                near = [each for each in circles if abs(each.x - x) < WITHIN and abs(each.y - y) < WITHIN]
                circles = [each for each in circles if each not in near]
                mirrored = Point(board.box.left + board.box.right - hole.position.x, hole.position.y)
                if tile.rect.holds(mirrored):
                    wide = {hole.bit, review.plan.fasteners[hole.fastener].flange_diameter}
                    assert all(any(abs(each.diameter - want) < WITHIN for each in near) for want in wide), hole.id
                    seen.add(hole.id)
            assert circles == [], tile.name
            for hole in holes_of(review.plan):
                if hole.sort == "pilot":
                    assert hole.id not in [each.words for each in page.texts]
        assert seen == {hole.id for hole in nuts}


@pytest.mark.parametrize(("short", "long"), [(1.013, 0.991), (0.982, 1.024)])
def test_a_printer_is_corrected_as_on_the_front(short, long):
    review = reviewed("library bus")
    board = review.plan.boards["A"]
    bars = PrinterBars("P", "a3", PrintedBar(150, 150, short), PrintedBar(250, 250, long))
    shared, pages = back_pages(review, board, Printing(PAPERS["a3"], "P", bars))
    for tile, page in zip(shared.tiles, pages, strict=True):
        by_x, by_y = page_factors(shared.printing, tile)
        assert {by_x, by_y} == {short, long}
        for hole in shared.template.holes:
            if tile.rect.holds(hole.position):
                x = tile.at.x + (hole.position.x - tile.rect.left) * by_x
                y = tile.at.y + (hole.position.y - tile.rect.bottom) * by_y
                assert any(abs(each.x - x) < WITHIN and abs(each.y - y) < WITHIN for each in page.circles), hole.id


@pytest.mark.parametrize("paper", ["a4", "letter", "roll-914"])
@pytest.mark.parametrize("sample", SAMPLES)
def test_every_sheet_says_back_large_and_never_front_and_is_within_reach_of_a_printer(sample, paper):
    review = reviewed(sample)
    for board in review.plan.boards.values():
        if not back_holes(review.plan, board):
            continue
        _, pages = back_pages(review, board, Printing(PAPERS[paper]))
        for page in pages:
            said = [each for each in page.texts if "BACK, MIRRORED" in each.words]
            assert len(said) >= 4  # across the sheet, in the heading, in the stamp, in the strip above
            assert sum(each.top - each.bottom > 3 for each in said) >= 3
            assert "FRONT" not in page.words
            assert "lower right here, lower left on the front" in page.words
            for text in page.texts:
                assert text.left >= 9.9
                assert text.right <= page.width - 9.9
                assert text.bottom >= 4.5
                assert text.top <= page.height - 4.5


@pytest.mark.parametrize("sample", SAMPLES)
def test_all_words_are_upright_or_read_from_the_right(sample):
    """A mirrored letter would need a negative scale; none is written, and no words stand on their head."""
    review = reviewed(sample)
    own = fonts()
    for board in review.plan.boards.values():
        shared = back_set_of(review, board, Printing(PAPERS["a3"]), own.width)
        for sheet in back_sheets(shared) if shared else ():
            assert all(min(part.scale) > 0 for part in sheet.parts)
            turns = {mark.turn for part in sheet.parts for mark in part.picture if hasattr(mark, "turn")}
            assert turns <= {0.0, 90.0}


def test_only_the_back_has_a_hatched_frame(packs):
    def hatch_ends(entry, page):
        """Slanting strokes that end on the left edge of the tile."""
        left = entry["at"][0]
        return [
            each
            for each in page.strokes
            if min(abs(each.x0 - left), abs(each.x1 - left)) < WITHIN
            and abs((each.x1 - each.x0) + (each.y1 - each.y0)) < WITHIN
        ]

    pack = packs("honey trailer", "a4")
    backs = [(each, pack.pages[each["file"]][each["page"] - 1]) for each in pack.contents["back_template_pages"]]
    assert backs
    assert all(len(hatch_ends(*each)) > 40 for each in backs)
    assert not any(len(hatch_ends(*each)) > 40 for each in pack.template_pages())


def test_rulers_run_the_other_way():
    review = reviewed("library bus")
    board = review.plan.boards["A"]
    shared, ((page),) = back_pages(review, board, Printing(PAPERS["roll-914"]))
    numbers = {each.words: each.left for each in page.texts if each.bottom < shared.tiles[0].to_page((0, 0)).y}
    assert numbers["100"] > numbers["200"] > numbers["700"] > numbers["1200"]


@pytest.mark.parametrize("corner", ["lower-left", "lower-right", "upper-left", "upper-right"])
def test_running_dimensions_are_those_of_the_front(corner):
    plan = library_bus()
    board = replace(plan.boards["A"], datum=Datum(corner))
    behind = board_from_behind(board)
    assert board_from_behind(behind) == board
    assert (behind.datum.corner == corner) is False
    for hole in holes_of(plan):
        assert running(behind, from_behind(board, hole.position)) == pytest.approx(running(board, hole.position))


def test_the_heading_names_both_datum_corners(fonts):
    from boardplan.output.template.free_places import FreePlaces  # noqa: PLC0415
    from boardplan.output.template.word_desk import WordDesk  # noqa: PLC0415

    rect = Box(0, 0, 190, 277)
    board = replace(library_bus().boards["A"], datum=Datum("upper-right"))
    desk = WordDesk((rect,), (rect,), FreePlaces(), fonts.width)
    (heading,) = headings(board_from_behind(board), desk)
    words = [mark.text for mark in heading.picture if hasattr(mark, "text")]
    assert "Datum corner: upper left here, upper right on the front." in words
    assert "X runs to the right here, to the left on the front." in words


def test_through_holes_are_crosses_without_a_circle():
    review = reviewed("library bus")
    board = review.plan.boards["A"]
    checks = check_holes(review.plan, board)
    assert {hole.id for hole in checks} == {row[0] for row in LIBRARY_BUS if row[5] in {"fixing", "through"}}
    shared, ((page),) = back_pages(review, board, Printing(PAPERS["roll-914"]))
    for hole in checks:
        x, y = shared.tiles[0].to_page(hole.position)
        level = [
            each
            for each in page.strokes
            if abs(each.y0 - y) < WITHIN and abs(each.y1 - y) < WITHIN and abs((each.x0 + each.x1) / 2 - x) < WITHIN
        ]
        assert any(abs(abs(each.x1 - each.x0) - 8.0) < WITHIN for each in level), hole.id


def test_a_board_without_nuts_has_no_back_template(tmp_path):
    review = reviewed("lookout cabin")
    contents = write_pack(Making(review, Printing(PAPERS["a3"])), tmp_path / "pack", chosen=("template", "back"))
    files = {each["file"] for each in contents["files"]}
    assert "back-template-B.pdf" in files
    assert "back-template-A.pdf" not in files
    assert {each["board"] for each in contents["back_template_pages"]} == {"B"}
    assert not any(each["file"].startswith("back-") for each in contents["template_pages"])
    assert contents["holes_on_no_sheet"] == []


def test_the_same_plan_gives_the_same_bytes():
    review, own = reviewed("honey trailer"), fonts()
    board = next(iter(review.plan.boards.values()))

    def once():
        return pdf_of(tuple(back_sheets(back_set_of(review, board, Printing(PAPERS["a4"]), own.width))), own, "back")

    assert once() == once()


def test_members_and_ends_are_mirrored_too():
    board = library_bus().boards["A"]
    left, right = board.box.left, board.box.right
    assert member_from_behind(board, Framing("S", "A", "upright", 100, 40)).centre == left + right - 100
    level = member_from_behind(board, Framing("R", "A", "level", 300, 40, start=50, end=None))
    assert (level.start, level.end, level.centre) == (None, left + right - 50, 300)


def with_part(ring):
    plan = library_bus()
    return replace(plan, framing={}, back_parts={"K1": BackPart("K1", "A", "cleat", ring)})


@pytest.mark.parametrize(
    ("left", "right", "words"),
    [
        (-40.0, 40.0, ["hidden on the back by K1: all of it"]),
        (5.0, 40.0, ["hidden on the back by K1: its left side"]),  # right of the hole on the front
        (-40.0, -5.0, ["hidden on the back by K1: its right side"]),
        (9.6, 40.0, []),  # past the flange of 19 mm
    ],
)
def test_what_hides_a_hole_and_on_which_side_of_the_back(left, right, words):
    front = next(hole for hole in holes_of(library_bus()) if hole.id == "INV1-1").position
    plan = with_part(Box(front.x + left, front.y - 40, front.x + right, front.y + 40).corners())
    board = plan.boards["A"]
    assert plan.fasteners["M6 T-nut"].flange_diameter == 19
    hole = next(each for each in back_holes(plan, board) if each.id == "INV1-1")
    assert covered_words(plan, board, hole) == words
    record = next(each for each in back_records(plan)["from_back"] if each["id"] == "INV1-1")
    assert record["hidden"] == words
    assert (record["x"], record["y"]) == pytest.approx(hole.position)
    assert record["from_datum"] == pytest.approx(list(running(board, front)))
    assert (record["bit"], record["flange"]) == (8, 19)


def test_a_flange_nobody_measured_is_a_question():
    assert flange_words(Fastener("n", "insert", "t-nut", bit=9, thread=6)) == "flange Ø ?"
    assert flange_words(Fastener("n", "insert", "t-nut", bit=9, thread=6, flange_diameter=15)) == "flange Ø 15.0"
    assert flange_words(None) == "flange Ø ?"
