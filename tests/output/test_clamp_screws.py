"""Clamp screws on paper: a section of their own in the schedule, numbers on the template, no count of holes changed."""

import csv
import io
from dataclasses import replace

import pytest
from boards import library_bus, lookout_cabin
from checks.plans import rules
from output.read_back import read_pages

from boardplan.checks.review import review_of
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box
from boardplan.model.holes import holes_of
from boardplan.output.holes.hole_schedule import hole_listing, hole_tables
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.tables.table import Heading
from boardplan.output.template.clamp_mark import clamp_note, placed_clamps
from boardplan.routing.supports.clamp_holes import clamp_holes

SCREW = bundled_shelf().fasteners["#8x16 washer"]
HOLES = {"library bus": 56, "lookout cabin": 64}
SAMPLES = {"library bus": library_bus, "lookout cabin": lookout_cabin}


@pytest.fixture(scope="module", params=sorted(SAMPLES))
def later(request):
    """A sample under the later edition, with the screw for its clamps."""
    plan = SAMPLES[request.param]()
    plan = replace(plan, rules=rules(), fasteners={**plan.fasteners, SCREW.id: SCREW})
    return request.param, review_of(plan)


@pytest.mark.parametrize("name", sorted(SAMPLES))
def test_an_earlier_edition_counts_no_clamp_screw(name):
    review = review_of(SAMPLES[name]())
    assert len(holes_of(review.plan)) == HOLES[name]
    assert hole_tables(review.plan, review.clamps) == hole_tables(review.plan)
    assert hole_listing(review.plan, review.clamps).csv == hole_listing(review.plan).csv


def test_the_schedule_has_a_section_for_them_and_its_own_count(later):
    name, review = later
    plan, screws = review.plan, clamp_holes(review.plan, review.clamps)
    first, *others = hole_tables(plan, review.clamps)
    assert screws
    assert first.title == f"Bits: {HOLES[name]} holes in all and {len(screws)} clamp screws"
    own = [each for each in others if each.title.startswith("Clamp screws")]
    told = [row[1].text for table in own for row in table.rows if not isinstance(row, Heading)]
    assert sorted(told) == sorted(each.id for each in screws)
    rows = list(csv.DictReader(io.StringIO(hole_listing(plan, review.clamps).csv)))
    assert [row["hole"] for row in rows[HOLES[name] :]] == [each.id for each in screws]
    assert {(row["bit_mm"], row["depth_mm"], row["fastener"]) for row in rows[HOLES[name] :]} == {
        ("2.8", "15", "#8x16 washer")
    }


def test_the_template_shows_every_number_once_or_more_and_how_deep(later, tmp_path):
    _, review = later
    write_pack(Making(review, Printing(PAPERS["roll-914"])), tmp_path / "pack", chosen=("template",))
    for board in review.plan.boards:
        words = " ".join(page.words for page in read_pages(tmp_path / "pack" / f"drilling-template-{board}.pdf"))
        for hole in clamp_holes(review.plan, review.clamps):
            if hole.board == board:
                assert hole.id in words
        assert "15 deep by a depth stop, #8 x 16 washer head" in words
        assert "freehand" not in words


def test_the_note_asks_where_the_screw_is_too_long(later):
    _, review = later
    plan = review.plan
    thin = replace(next(iter(plan.boards.values())), thickness=15)  # 15 less 16 leaves nothing in front of the point
    clamps = tuple(placed_clamps(plan, review.clamps, thin))
    # 15 board less 3 left less 1 by hand: common practice, no source
    assert "drill freehand here, no deeper than 11 mm" in clamp_note(plan, thin, clamps, Box(-9999, -9999, 9999, 9999))
