"""A pack is whole or not there, and never takes the place of anything that is not a pack."""

import gc
import json
from dataclasses import replace

import pytest
from output.read_back import print_scaling, read_pages

from boardplan.checks.finding import Finding
from boardplan.checks.review import review_of
from boardplan.geometry.point import Point
from boardplan.output.making import Making
from boardplan.output.pack import PackRefused, write_pack
from boardplan.output.papers import ALL_PAPERS, files_of
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing

FEW = ("template", "holes", "labels", "findings")
"""Enough for what is asked of a pack as a whole; all papers are written where they are the subject."""


@pytest.fixture(scope="module")
def review():
    from boards import library_bus  # noqa: PLC0415

    return review_of(library_bus())


def files_in(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_all_papers_are_there_and_named_in_the_contents(packs):
    pack = packs("lookout cabin", "letter")
    listed = {each["file"] for each in pack.contents["files"]}
    assert listed == {
        "cover.pdf",
        "customer-sheets.pdf",
        "drilling-template-A.pdf",
        "drilling-template-B.pdf",
        "back-template-B.pdf",
        "findings.pdf",
        "findings.csv",
        "board-A.dxf",
        "board-B.dxf",
        "board-A.svg",
        "board-B.svg",
        "board-A.png",
        "board-B.png",
        "lists.xlsx",
        "hole-schedule.pdf",
        "hole-schedule.csv",
        "cable-cut-list.pdf",
        "cable-cut-list.csv",
        "press-list.csv",
        "fit-list.csv",
        "cutting-plan.pdf",
        "cutting-plan.csv",
        "label-sheet.pdf",
        "label-sheet.csv",
        "re-measure-list.pdf",
        "re-measure-list.csv",
        "fuse-schedule.pdf",
        "fuse-schedule.csv",
        "torque-list.pdf",
        "torque-list.csv",
        "shut-off-card.pdf",
        "test-record.pdf",
        "test-record.csv",
        "bill-of-materials.pdf",
        "bill-of-materials.csv",
        "load-out-list.pdf",
        "load-out-list.csv",
    }
    assert set(files_in(pack.folder)) == listed | {"pack.json"}
    assert json.loads((pack.folder / "pack.json").read_text(encoding="utf-8")) == pack.contents
    for each in pack.contents["files"]:
        if each["file"].endswith(".pdf"):
            assert len(pack.pages[each["file"]]) == each["sheets"]


def test_no_paper_may_be_scaled_and_every_font_is_inside(packs):
    pack = packs("library bus", "a4")
    for path in pack.folder.glob("*.pdf"):
        assert not print_scaling(path)
        assert all(text.embedded for page in read_pages(path) for text in page.texts)


def test_the_same_plan_gives_the_same_bytes(review, tmp_path, packs):
    write_pack(Making(review, Printing(PAPERS["a4"])), tmp_path / "again")
    assert files_in(tmp_path / "again") == files_in(packs("library bus", "a4").folder)


def test_a_pack_replaces_an_older_one_whole(review, tmp_path):
    folder = tmp_path / "papers"
    write_pack(Making(review, Printing(PAPERS["a3"])), folder, chosen=FEW)
    write_pack(Making(review, Printing(PAPERS["roll-914"])), folder, chosen=FEW)
    assert json.loads((folder / "pack.json").read_text())["paper"]["id"] == "roll-914"
    assert [path.name for path in tmp_path.iterdir()] == ["papers"]


@pytest.mark.parametrize("name", ["notes.txt", "pack.json"])
def test_a_folder_with_other_things_is_left_alone(name, review, tmp_path):
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / name).write_text("{}")
    with pytest.raises(PackRefused, match="not empty"):
        write_pack(Making(review, Printing(PAPERS["a4"])), tmp_path / "mine")
    assert files_in(tmp_path / "mine") == {name: b"{}"}


def test_a_pack_with_something_of_somebody_elses_is_left_alone(review, tmp_path):
    folder = tmp_path / "papers"
    write_pack(Making(review, Printing(PAPERS["roll-914"])), folder, chosen=FEW)
    (folder / "notes.txt").write_text("mine")
    with pytest.raises(PackRefused):
        write_pack(Making(review, Printing(PAPERS["a4"])), folder, chosen=FEW)
    assert (folder / "notes.txt").read_text() == "mine"


def test_a_file_is_no_folder(review, tmp_path):
    (tmp_path / "papers").write_text("x")
    with pytest.raises(PackRefused, match="is a file"):
        write_pack(Making(review, Printing(PAPERS["a4"])), tmp_path / "papers")


def test_work_that_is_given_up_leaves_nothing_and_spares_the_old_pack(review, tmp_path):
    folder = tmp_path / "papers"
    write_pack(Making(review, Printing(PAPERS["roll-914"])), folder, chosen=FEW)
    before = files_in(folder)

    class Enough(Exception):  # noqa: N818
        pass

    def give_up(done, total, _words):
        if done > total / 2:
            raise Enough

    with pytest.raises(Enough):
        write_pack(Making(review, Printing(PAPERS["a4"])), folder, give_up, FEW)
    assert files_in(folder) == before
    assert [path.name for path in tmp_path.iterdir()] == ["papers"]


def test_progress_runs_to_the_end(review, tmp_path):
    told = []
    making = Making(review, Printing(PAPERS["roll-914"]))
    contents = write_pack(making, tmp_path / "p", lambda done, total, _: told.append((done, total)))
    sheets = sum(each.get("sheets", 1) for each in contents["files"])
    assert told[0] == (0, sheets)
    assert told[-1] == (sheets, sheets)
    assert told == sorted(told)


@pytest.mark.parametrize("swept", [True, False])
def test_unused_values_are_looked_for_afterwards_as_before(swept, review, tmp_path):
    during = []

    def given_up(*_):
        during.append(gc.isenabled())
        raise KeyboardInterrupt

    making, before = Making(review, Printing(PAPERS["a4"])), gc.isenabled()
    try:
        (gc.enable if swept else gc.disable)()
        with pytest.raises(KeyboardInterrupt):
            write_pack(making, tmp_path / "p", given_up, ("findings",))
        assert gc.isenabled() == swept
    finally:
        (gc.enable if before else gc.disable)()
    assert during == [False]


def test_findings_that_stop_are_on_every_sheet(review, tmp_path):
    stop = Finding("edge margin", "stop", "PV1 is too near the edge.", ("PV1",), "A", Point(0, 0))
    stopped = replace(review, findings=(stop, replace(stop, things=("MP1",))))
    contents = write_pack(Making(stopped, Printing(PAPERS["a3"])), tmp_path / "p")
    assert contents["issue"] == "NOT TO BE ISSUED: 2 findings stop"
    assert not contents["may_be_issued"]
    for path in (tmp_path / "p").glob("*.pdf"):
        for page in read_pages(path):
            assert "NOT TO BE ISSUED: 2 findings stop" in page.words


def test_the_contents_say_which_rules_were_asked(packs):
    words = packs("library bus", "a4").contents["findings"]["words"]
    assert "under rule set trade-practice, edition 2026.1" in words


def test_a_few_papers_can_be_had_alone(review, tmp_path):
    contents = write_pack(Making(review, Printing(PAPERS["a4"])), tmp_path / "p", chosen=("holes", "findings"))
    names = [each["file"] for each in contents["files"]]
    assert names == ["hole-schedule.pdf", "hole-schedule.csv", "findings.pdf", "findings.csv"]
    assert set(files_in(tmp_path / "p")) == {*names, "pack.json"}
    assert contents["holes_on_no_sheet"] == []


def test_a_few_papers_never_take_the_place_of_a_pack_with_others(review, tmp_path):
    making = Making(review, Printing(PAPERS["roll-914"]))
    write_pack(making, tmp_path / "p", chosen=("holes", "findings"))
    before = files_in(tmp_path / "p")
    with pytest.raises(PackRefused, match=r"papers that were not chosen, such as findings\.csv"):
        write_pack(making, tmp_path / "p", chosen=("holes",))
    assert files_in(tmp_path / "p") == before


def test_every_paper_has_a_key_of_its_own_and_makes_something(review):
    assert len({paper.key for paper in ALL_PAPERS}) == len(ALL_PAPERS)
    making = Making(review, Printing(PAPERS["a4"]))
    files = [file.name for paper in ALL_PAPERS for file in paper.files(making)]
    assert len(set(files)) == len(files)
    assert [file.name for file in files_of(making)] == files
