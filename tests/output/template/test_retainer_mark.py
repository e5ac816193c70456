"""Retainers on paper: marked on the template without a hole, counted in the cut list, told in the records."""

import json
from dataclasses import replace

import pytest
from boards import honey_trailer
from checks.plans import rules
from output.read_back import read_pages
from shapely import LineString, box

from boardplan.checks.review import review_of
from boardplan.drawing.picture import Disc
from boardplan.geometry.point import Box, Point
from boardplan.model.holes import holes_of
from boardplan.output.cables.cut_list import cut_tables
from boardplan.output.holes.hole_mark import mark_boxes
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.records import cable_records
from boardplan.output.tables.table import Heading
from boardplan.output.template.mark_box import mark_box
from boardplan.output.template.retainer_mark import placed_retainers, retainer_box, retainer_mark, retainer_note
from boardplan.routing.supports.retainers import Retainer

NOTE = "Bar with two feet: retainer across a channel, clips in, no hole."


@pytest.fixture(scope="module")
def review():
    """A sample with a channel that runs up, under the later edition."""
    return review_of(replace(honey_trailer(), rules=rules()))


def test_the_mark_spans_the_channel_inside_and_is_no_hole(review):
    plan = review.plan
    (own,) = review.retainers.values()
    placed = list(placed_retainers(plan, review.retainers, plan.boards["A"]))
    assert len(placed) == len(own) == 2  # 310 mm upright, 300 mm apart at most
    for each in placed:
        marks = retainer_mark(each)
        assert not any(isinstance(mark, Disc) for mark in marks)
        across = marks[0].points
        assert across[0].distance_to(across[1]) == pytest.approx(plan.channels["RW1"].inner_width)
        assert all(retainer_box(each).holds(point) for mark in marks for point in mark.points)
    assert len(holes_of(plan)) == len(holes_of(honey_trailer()))


def test_the_mark_leaves_the_marks_of_holes_free(review):
    hole = next(each for each in holes_of(review.plan) if each.owner == "RW1")
    taken = list(mark_boxes(hole, review.plan.fasteners.get(hole.fastener)))
    over = Retainer("RW1", hole.position, 90, 56)
    assert any(mark_box(mark).touches(each) for mark in retainer_mark(over) for each in taken)
    parts = [LineString(mark.points) for mark in retainer_mark(over, taken)]
    assert parts
    assert not any(part.intersection(box(*each)).length > 1e-9 for part in parts for each in taken)
    assert sum(part.length for part in parts) < sum(LineString(mark.points).length for mark in retainer_mark(over))


def test_a_sheet_says_what_the_mark_is_only_where_it_shows_one():
    only = (Retainer("C", Point(100, 100), 90, 56),)
    assert retainer_note(only, Box(0, 0, 200, 200)) == NOTE
    assert retainer_note(only, Box(140, 0, 200, 200)) == ""
    assert retainer_note((), Box(0, 0, 200, 200)) == ""


def test_the_papers_show_and_count_them(review, tmp_path):
    write_pack(Making(review, Printing(PAPERS["roll-914"])), tmp_path / "pack", chosen=("template", "cables"))
    words = " ".join(page.words for page in read_pages(tmp_path / "pack" / "drilling-template-A.pdf"))
    assert words.count(NOTE) == 1
    listed = " ".join(page.words for page in read_pages(tmp_path / "pack" / "cable-cut-list.pdf"))
    assert "Retainers in channels that run up" in listed


def test_the_cut_list_counts_them_by_inside_width(review):
    _, _, counts, _ = cut_tables(review.plan, review.lengths, review.clamps, review.retainers)
    assert counts.title == "Lugs, ferrules, leads, clamps and retainers"
    head = next(at for at, row in enumerate(counts.rows) if isinstance(row, Heading) and "Retainers" in row.text)
    assert [(row[1].text, row[2].text) for row in counts.rows[head + 1 :]] == [("56 mm wide inside", "2")]


def test_records_say_where_they_are(review):
    found = json.loads(json.dumps(cable_records(review.plan, review.ways, review.lengths, review.fills)))
    assert found["retainers"] == {"56 mm wide inside": 2}
    (run,) = found["channels"]
    places = [(each["x"], each["y"], each["towards"], each["width"]) for each in run["retainers"]]
    assert [(x, towards, width) for x, _, towards, width in places] == [(820, 90, 56)] * 2
    # Evenly in what the cable takes of the 310 mm up from the corner: no end farther than half of 300 from one.
    heights = sorted(y for _, y, _, _ in places)
    assert heights[1] - heights[0] <= 300
    assert 330 < heights[0] <= 330 + 150
    assert 640 - 150 <= heights[1] < 640


def test_an_earlier_edition_has_none():
    review = review_of(honey_trailer())
    assert review.retainers == {}
    found = cable_records(review.plan, review.ways, review.lengths, review.fills)
    assert found["retainers"] == {}
    assert [run["retainers"] for run in found["channels"]] == [[]]
    _, _, counts, _ = cut_tables(review.plan, review.lengths, review.clamps, review.retainers)
    assert counts.title == "Lugs, ferrules, leads and clamps"
