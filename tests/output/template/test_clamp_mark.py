"""Clamp marks on the template: where the clamps are, no hole, off every hole mark, and how deep their screws may go."""

from dataclasses import replace

import pytest
from boards import library_bus, lookout_cabin

from boardplan.checks.review import review_of
from boardplan.drawing.picture import Disc
from boardplan.geometry.point import Box
from boardplan.model.holes import holes_of
from boardplan.output.holes.hole_mark import mark_boxes
from boardplan.output.template.clamp_mark import clamp_box, clamp_mark, clamp_note, placed_clamps
from boardplan.output.template.mark_box import mark_box

WHERE_EVER = Box(-9999, -9999, 9999, 9999)


@pytest.fixture(scope="module", params=[library_bus, lookout_cabin], ids=["library bus", "lookout cabin"])
def review(request):
    return review_of(request.param())


def test_marks_keep_off_hole_marks_and_are_no_circles(review):
    plan = review.plan
    for board in plan.boards.values():
        clamps = list(placed_clamps(plan, review.clamps, board))
        assert clamps
        taken = [
            box
            for hole in holes_of(plan)
            if hole.board == board.id
            for box in mark_boxes(hole, plan.fasteners.get(hole.fastener))
        ]
        for clamp in clamps:
            assert not any(isinstance(mark, Disc) for mark in clamp_mark(clamp))
            assert not any(mark_box(mark).touches(box) for mark in clamp_mark(clamp) for box in taken), clamp
            assert all(clamp_box(clamp).holds(each) for each in (clamp.at, *clamp.screws))


def test_no_clamp_is_a_hole(review):
    owners = {hole.owner for hole in holes_of(review.plan)}
    assert owners.isdisjoint(review.plan.cables)


@pytest.mark.parametrize(
    # thickness less 3 mm under a pilot hole less 1 mm: common practice, no source
    ("thickness", "words"),
    [(18, "no deeper than 14 mm (18 board - 3 left - 1 by hand)"), (12.5, "no deeper than 8.5 mm"), (4, "ask")],
)
def test_the_depth_of_clamp_screws_comes_from_the_board_and_the_rules(review, thickness, words):
    plan = review.plan
    board = replace(next(iter(plan.boards.values())), thickness=thickness)
    clamps = tuple(placed_clamps(plan, review.clamps, board))
    assert words in clamp_note(plan, board, clamps, WHERE_EVER)
    assert clamp_note(plan, board, (), WHERE_EVER) == ""


@pytest.mark.parametrize("paper", ["a4", "roll-914"])
def test_each_sheet_with_a_clamp_says_so_once(paper, packs):
    pack = packs("library bus", paper)
    clamps = list(placed_clamps(pack.plan, review_of(pack.plan).clamps, pack.plan.boards["A"]))
    shown = 0
    for entry, page in pack.template_pages():
        there = any(clamp_box(each).touches(Box(*entry["rect"])) for each in clamps)
        assert page.words.count("drill freehand here, no deeper than 14 mm") == int(there), entry["tile"]
        shown += there
    assert shown
