"""Boards that are not a plain rectangle seen from its lower left: all papers still come out whole."""

from dataclasses import replace

import pytest
from output.read_back import read_pages

from boardplan.checks.review import review_of
from boardplan.geometry.point import Point
from boardplan.model.board import BackPart, Datum, Exit, NoGoBox
from boardplan.model.holes import holes_of
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.template.template_papers import file_endings

NOTCHED = (
    Point(0, 0), Point(1300, 0), Point(1300, 880), Point(700, 880),
    Point(700, 600), Point(450, 600), Point(450, 880), Point(0, 880),
)  # fmt: skip
CUTOUT = (Point(560, 380), Point(640, 380), Point(640, 440), Point(560, 440))


@pytest.fixture(scope="module")
def odd_plan():
    """A notched board with a cut-out, measured from its covered lower right corner; a unit without a fastener."""
    from boards import library_bus  # noqa: PLC0415

    plan = library_bus()
    cleat = (Point(100, 700), Point(430, 700), Point(430, 760), Point(100, 760))
    kind = replace(plan.kinds[plan.components["SH1"].kind], fastener="")
    board = replace(plan.boards["A"], outline=NOTCHED, cutouts=(CUTOUT,), datum=Datum("lower-right", "covered"))
    changed = [
        board,
        BackPart("cleat", "A", "cleat", cleat),
        NoGoBox("latch", "A", "window latch", 900, 760, 200, 100),
        Exit("XH", "A", "hole to the roof", Point(1150, 330), "hole", 38.0),
        replace(plan.components["EB1"], turn=90, position=Point(1150, 30)),
        replace(plan.components["HB1"], turn=180),
    ]
    return replace(plan.with_things(changed), kinds={**plan.kinds, kind.id: kind})


@pytest.fixture(scope="module")
def odd_pack(odd_plan, tmp_path_factory):
    folder = tmp_path_factory.mktemp("odd") / "pack"
    contents = write_pack(Making(review_of(odd_plan), Printing(PAPERS["a4"])), folder)
    return folder, contents


def test_all_words_stay_on_the_paper(odd_pack):
    folder, _ = odd_pack
    for path in folder.glob("*.pdf"):
        for page in read_pages(path):
            for text in page.texts:
                assert text.left >= 9.9, (path.name, text)
                assert text.right <= page.width - 9.9, (path.name, text)
                assert text.bottom >= 4.5, (path.name, text)
                assert text.top <= page.height - 4.5, (path.name, text)


def test_every_hole_with_a_bit_has_its_circle(odd_plan, odd_pack):
    folder, contents = odd_pack
    pages = read_pages(folder / "drilling-template-A.pdf")
    for hole in holes_of(odd_plan):
        if hole.bit is None:
            continue
        found = []
        for entry in contents["template_pages"]:
            left, bottom, right, top = entry["rect"]
            if left <= hole.position.x <= right and bottom <= hole.position.y <= top:
                x, y = hole.position.x - left + entry["at"][0], hole.position.y - bottom + entry["at"][1]
                circles = pages[entry["page"] - 1].circles
                found += [
                    each
                    for each in circles
                    if abs(each.x - x) < 0.02 and abs(each.y - y) < 0.02 and abs(each.diameter - hole.bit) < 0.02
                ]
        assert found, hole.id
    assert contents["holes_on_no_sheet"] == []


def test_words_name_the_edge_the_dimensions_run_from(odd_pack):
    folder, _ = odd_pack
    words = "\n".join(page.words for page in read_pages(folder / "drilling-template-A.pdf"))
    assert "A datum, covered edge" in words
    assert "B datum, covered edge" in words
    assert "cut-out" in words
    assert "no go: window latch" in words
    assert "behind: cleat" in words
    assert "Ø ? ?" in words


def test_a_hole_off_the_paper_is_named(odd_plan, tmp_path):
    far = odd_plan.with_things([replace(odd_plan.fixings["BF-1"], position=Point(-400, 30))])
    contents = write_pack(Making(review_of(far), Printing(PAPERS["roll-914"])), tmp_path / "p", chosen=("template",))
    assert contents["holes_on_no_sheet"] == ["BF-1"]


def test_a_job_with_nothing_on_its_board_has_papers_too(odd_plan, tmp_path):
    empty = replace(
        odd_plan, components={}, cables={}, channels={}, fixings={}, exits={}, back_parts={}, no_go_boxes={}
    )
    contents = write_pack(Making(review_of(empty), Printing(PAPERS["letter"])), tmp_path / "p")
    assert {each["file"]: each.get("sheets") for each in contents["files"]}["hole-schedule.pdf"] == 1


def test_no_two_boards_share_a_file(odd_plan):
    board = odd_plan.boards["A"]
    plan = replace(odd_plan, boards={each: replace(board, id=each) for each in ("a/b", "a_b", "A_B", "links")})
    names = [each.lower() for each in file_endings(plan).values()]
    assert len(set(names)) == 4
    assert all("/" not in each for each in names)
