"""Cover sheet: read back from the PDF; drawn to the scale it states, with references, weights, papers and stops."""

import itertools
from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from output.read_back import read_pages

from boardplan.checks.finding import Finding
from boardplan.checks.review import review_of
from boardplan.geometry.point import Point
from boardplan.model.weights import weights_of
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.papers import files_of
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.printing.printer_correction import Printing

PLANS = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}
SAMPLES = tuple(PLANS)


def cover_pages(making):
    (file,) = files_of(making, ("cover",))
    return read_pages(pdf_of(file.sheets, making.fonts, "cover"))


@pytest.fixture(scope="module")
def trailer():
    return review_of(honey_trailer())


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("sample", SAMPLES)
def test_a_page_for_each_board_and_one_for_all_of_several(sample, paper, drawn):
    plan = PLANS[sample]()
    pages, boards = drawn(sample, paper)["cover.pdf"], list(plan.boards)
    assert len(pages) == (1 if len(boards) == 1 else 1 + len(boards))
    for page, board in zip(pages[-len(boards) :], boards, strict=True):
        components = [each for each in plan.components.values() if each.board == board]
        assert {each.id for each in components} <= {word for text in page.texts for word in text.words.split()}


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("sample", SAMPLES)
def test_words_stay_on_the_page_and_off_each_other(sample, paper, drawn):
    for page in drawn(sample, paper)["cover.pdf"]:
        inside = [each for each in page.texts if each.left > 8 and each.right < page.width - 8]
        assert inside == list(page.texts)
        for a, b in itertools.combinations(page.texts, 2):
            over = min(a.right, b.right) - max(a.left, b.left)
            high = min(a.top, b.top) - max(a.bottom, b.bottom)
            assert over < 0.5 or high < 0.5, (a.words, b.words)


@pytest.mark.parametrize("sample", SAMPLES)
def test_a_board_is_as_large_as_its_scale_says(sample, drawn):
    """The overall dimension's line, between its extension lines, is the width of the board over the scale."""
    boards = list(PLANS[sample]().boards.values())
    for page, board in zip(drawn(sample, "a4")["cover.pdf"][-len(boards) :], boards, strict=True):
        by = float(next(text.words for text in page.texts if text.words.startswith("1 : "))[4:])
        level = [each for each in page.strokes if abs(each.y0 - each.y1) < 0.01]
        assert any(abs(abs(each.x1 - each.x0) - board.box.width / by) < 0.05 for each in level)
        upright = [each for each in page.strokes if abs(each.x0 - each.x1) < 0.01]
        assert any(abs(abs(each.y1 - each.y0) - board.box.height / by) < 0.05 for each in upright)


def test_weights_are_those_of_the_model(packs):
    pack = packs("library bus", "a4")
    (page,) = pack.pages["cover.pdf"]
    weights = weights_of(pack.plan, pack.plan.boards["A"])
    assert f"{weights.carried:.1f} kg" in page.words
    assert f"{weights.finished:.1f} kg" in page.words
    assert pack.contents["cover"]["boards"][0]["carried"] == pytest.approx(weights.carried)


def test_board_fixings_are_dimensioned_from_the_datum(packs):
    (page,) = packs("library bus", "a4").pages["cover.pdf"]
    told = [each.words for each in page.texts]
    for value in ("25", "330", "600", "205", "450", "860", "310", "800", "630", "1230"):
        assert value in told


def test_every_paper_of_the_pack_is_listed_with_its_sheets(packs):
    pack = packs("lookout cabin", "letter")
    words = pack.pages["cover.pdf"][0].words
    sheets = [each for each in pack.contents["files"] if each.get("sheets")]
    for each in sheets:
        assert each["heading"] in words
    assert f"{sum(each['sheets'] for each in sheets)} sheets" in words
    assert pack.contents["files"][0]["file"] == "cover.pdf"


def test_a_cover_alone_says_so(trailer):
    pages = cover_pages(Making(trailer, Printing(PAPERS["a4"])))
    assert "printed alone, without the other papers" in "\n".join(page.words for page in pages)


def test_stops_are_told_in_words_however_many(trailer, tmp_path):
    one = Finding("edge margin", "stop", "PV1 is too near the edge by some millimetres.", ("PV1",), "A", Point(0, 0))
    stops = tuple(replace(one, sentence=f"Stop number {index}: {one.sentence}") for index in range(70))
    stopped = replace(trailer, findings=stops)
    contents = write_pack(Making(stopped, Printing(PAPERS["letter"])), tmp_path / "p", chosen=("cover",))
    pages = read_pages(tmp_path / "p" / "cover.pdf")
    assert len(pages) == contents["files"][0]["sheets"] > 1
    words = " ".join(text.words for page in pages for text in page.texts)
    assert all(f"Stop number {index}:" in words for index in range(70))
    assert all("NOT TO BE ISSUED: 70 findings stop" in page.words for page in pages)


def test_nothing_is_weighed_where_nobody_weighed_it(trailer):
    plan = trailer.plan
    board = replace(plan.boards["A"], material=replace(plan.boards["A"].material, mass_per_area=None))
    making = Making(replace(trailer, plan=replace(plan, boards={"A": board})), Printing(PAPERS["a4"]))
    words = "\n".join(page.words for page in cover_pages(making))
    assert "____ kg: weigh it" in words
    assert "at least" in words
    assert "not weighed: board A" in words


@pytest.mark.parametrize("corner", ["lower-left", "lower-right", "upper-left", "upper-right"])
def test_dimensions_run_from_any_corner(corner, trailer):
    plan = trailer.plan
    board = replace(plan.boards["A"], datum=replace(plan.boards["A"].datum, corner=corner))
    making = Making(replace(trailer, plan=replace(plan, boards={"A": board})), Printing(PAPERS["a4"]))
    told = [text.words for page in cover_pages(making) for text in page.texts]
    at = plan.fixings["BF-1"].position
    across = at.x if "left" in corner else board.box.right - at.x
    up = at.y if "lower" in corner else board.box.top - at.y
    assert f"{across:g}" in told
    assert f"{up:g}" in told


def test_the_largest_board_and_the_smallest_have_a_cover(trailer):
    plan = trailer.plan
    for size in (60.0, 6000.0):
        outline = tuple(Point(x * size, y * size) for x, y in ((0, 0), (1, 0), (1, 1), (0, 1)))
        board = replace(plan.boards["A"], outline=outline)
        alone = replace(
            plan,
            boards={"A": board},
            framing={},
            fixings={},
            exits={},
            components={},
            channels={},
            cables={},
            no_go_boxes={},
        )
        making = Making(review_of(alone), Printing(PAPERS["letter"]))
        (page,) = cover_pages(making)
        assert all(text.left > 0 and text.right < page.width for text in page.texts)


def test_the_cover_of_a_whole_pack_has_no_sheet_for_its_legend_alone(packs):
    """With all papers to name the words are the longest: the legend grows narrower before it takes a sheet."""
    (page,) = packs("library bus", "a4").pages["cover.pdf"]
    assert {"Cautions", "Papers of this pack", "Lines and signs"} <= set(page.words.split("\n"))
