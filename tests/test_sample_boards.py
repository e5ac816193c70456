"""Every sample board: loads, saves the same bytes, has no finding that stops, prints."""

import json

import pytest
from boards import SAMPLES

from boardplan.checks.review import review_of
from boardplan.files.plan_file import load_plan, plan_text
from boardplan.model.holes import holes_of
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing

NAMES = sorted(path.name for path in SAMPLES.glob("*.json"))


def test_there_are_three():
    assert NAMES == ["honey-trailer.json", "library-bus.json", "lookout-cabin.json"]


@pytest.mark.parametrize("name", NAMES)
def test_saves_as_it_was_loaded(name):
    assert plan_text(load_plan(SAMPLES / name)) == (SAMPLES / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", NAMES)
def test_opens_without_a_stop(name):
    assert [each.sentence for each in review_of(load_plan(SAMPLES / name)).stops] == []


@pytest.mark.parametrize("name", NAMES)
def test_prints(name, tmp_path):
    plan = load_plan(SAMPLES / name)
    write_pack(Making(review_of(plan), Printing(PAPERS["letter"])), tmp_path / "pack")
    written = json.loads((tmp_path / "pack" / "pack.json").read_text())
    assert {page["board"] for page in written["template_pages"]} == set(plan.boards)
    assert holes_of(plan)
