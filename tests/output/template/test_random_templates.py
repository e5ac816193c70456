"""Forty random boards on random papers for random printers, read back with PDFium: holes and joints to 0.01 mm."""

import math
from collections import Counter
from dataclasses import dataclass

from boards import library_bus
from hypothesis import given, settings
from hypothesis import strategies as st
from output.read_back import read_pages

from boardplan.bundled import data_dir
from boardplan.checks.review import review_of
from boardplan.editing.component_edits import place_component
from boardplan.editing.survey_edits import Sheet, add_fixing, new_plan
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.holes import holes_of
from boardplan.model.printer_bars import PrintedBar, PrinterBars
from boardplan.output.back.back_sheet import back_set_of, back_sheets
from boardplan.output.printing.joints import joints_of
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.pdf import Fonts, pdf_of
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.printing.printer_tiles import page_factors, tiles_for
from boardplan.output.template.template import template_of
from boardplan.output.template.template_set import TemplateSet
from boardplan.output.template.tile_sheet import tile_sheets

WITHIN = 0.01
FONTS = Fonts(data_dir("assets") / "fonts")
SHELF = bundled_shelf()

ASKED_FOR = {
    *("letter", "legal", "tabloid", "a4", "a3", "a2", "a1", "a0"),
    *("roll-610", "roll-914", "roll-1067"),
}


def test_every_paper_of_the_trade_is_there():
    """Office sheets, the A series down from A0, rolls of 24, 36 and 42 in: common practice, no source."""
    assert set(PAPERS) >= ASKED_FOR
    assert [round(PAPERS[each].width / 25.4) for each in ("roll-610", "roll-914", "roll-1067")] == [24, 36, 42]


@st.composite
def bare_plans(draw):
    """A board with some components and fixings on it, no cables."""
    width, height = draw(st.integers(250, 1300)), draw(st.integers(200, 900))
    plan = new_plan("Made up", Sheet(width=width, height=height, thickness=18.0), library_bus().rules)
    board = next(iter(plan.boards))

    def place(margin):
        x, y = (draw(st.floats(margin, each - margin)) for each in (width, height))
        return Point(round(x, 2), round(y, 2))

    for kind in draw(st.lists(st.sampled_from(list(SHELF.kinds.values())), min_size=1, max_size=4)):
        turn = draw(st.sampled_from((0.0, 90.0, 180.0, 270.0)))
        plan, _ = place_component(plan, kind, SHELF.fasteners, board, place(60), turn=turn)
    for _ in range(draw(st.integers(1, 6))):
        plan, _ = add_fixing(plan, board, place(12), 9.0)
    return plan


@st.composite
def printings(draw):
    paper = draw(st.sampled_from(sorted(PAPERS)))
    short, long = (round(draw(st.floats(0.97, 1.03)), 4) for _ in range(2))
    bars = PrinterBars("P", paper, PrintedBar(150, 150, short), PrintedBar(250, 250, long))
    return Printing(PAPERS[paper], "P", draw(st.sampled_from((None, bars))))


@dataclass(frozen=True)
class Read:
    """A tile's page as it was read back; `place` gives where a point of the page lies on the board."""

    tile: object
    factors: tuple[float, float]
    page: object

    def place(self, x, y):
        tile, (by_x, by_y) = self.tile, self.factors
        return tile.rect.left + (x - tile.at.x) / by_x, tile.rect.bottom + (y - tile.at.y) / by_y


def read(shared, sheets):
    pages = read_pages(pdf_of(tuple(sheets), FONTS, "template"))
    return [
        Read(tile, page_factors(shared.printing, tile), page) for tile, page in zip(shared.tiles, pages, strict=True)
    ]


def printed(plan, printing):
    """The one board's template, read back."""
    (board,) = plan.boards.values()
    review = review_of(plan)
    holes = holes_of(plan)
    tiles = tiles_for(board, printing, holes)
    template = template_of(plan, review, board, tiles, FONTS.width)
    shared = TemplateSet(plan.job, template, tiles, printing, 0, FONTS.width)
    return read(shared, tile_sheets(shared))


def check_holes(pages, holes):
    """Every hole that a tile shows is on its page with one circle of its bit; on one page alone outside overlaps."""
    seen = Counter()
    alike = Counter((hole.position, hole.bit) for hole in holes)
    for each in pages:
        for hole in holes:
            if not each.tile.rect.holds(hole.position):
                continue
            bit = 4.0 if hole.bit is None else hole.bit
            found = [
                circle
                for circle in each.page.circles
                if math.dist(each.place(circle.x, circle.y), hole.position) < WITHIN
                and abs(circle.diameter - bit * each.factors[0]) < WITHIN
            ]
            assert len(found) == alike[hole.position, hole.bit], (hole.id, each.tile.name)
            seen[hole.id] += 1
    rects = [each.tile.rect for each in pages]
    for hole in holes:
        if any(rect.holds(hole.position) for rect in rects):
            assert seen[hole.id] == sum(rect.holds(hole.position) for rect in rects)


def crosses(each, shared):
    """The middles of the register crosses that a page shows in a joint, in board coordinates."""
    found = []
    for stroke in each.page.strokes:
        (x0, y0), (x1, y1) = each.place(stroke.x0, stroke.y0), each.place(stroke.x1, stroke.y1)
        if abs(abs(x1 - x0) - abs(y1 - y0)) < WITHIN and abs(math.hypot(x1 - x0, y1 - y0) - 6) < WITHIN:
            middle = (x0 + x1) / 2, (y0 + y1) / 2
            if shared.grown(-3.1 / math.sqrt(2)).holds(middle):
                found.append(middle)
    return sorted(found)


def circles(each, shared):
    """The circles whose middle lies in a joint, in board coordinates."""
    found = [(each.place(one.x, one.y), one.diameter / each.factors[0]) for one in each.page.circles]
    return sorted((*at, wide) for at, wide in found if shared.grown(-WITHIN).holds(at))


def check_joints(pages):
    """What lies in a joint is at the same spot of the board on both its sheets."""
    by_name = {each.tile.name: each for each in pages}
    for joint in joints_of([each.tile for each in pages]):
        one, other = by_name[joint.first.name], by_name[joint.second.name]
        if joint.length >= 30:
            assert len(crosses(one, joint.shared)) >= 4, (joint.first.name, joint.second.name)  # two strokes a cross
        for marks in (crosses, circles):
            here, there = marks(one, joint.shared), marks(other, joint.shared)
            assert len(here) == len(there), (joint.first.name, joint.second.name)
            for a, b in zip(here, there, strict=True):
                assert math.dist(a, b) < WITHIN


@settings(max_examples=40)
@given(bare_plans(), printings())
def test_holes_and_joints_of_forty_boards(plan, printing):
    pages = printed(plan, printing)
    check_holes(pages, holes_of(plan))
    check_joints(pages)


@settings(max_examples=10)
@given(bare_plans(), printings())
def test_holes_and_joints_of_their_backs(plan, printing):
    """A hole at x on the front lies at width - x on the mirrored sheet."""
    (board,) = plan.boards.values()
    shared = back_set_of(review_of(plan), board, printing, FONTS.width)
    nuts = [hole for hole in holes_of(plan) if hole.sort == "t-nut"]
    assert (shared is None) == (not nuts)
    if shared is None:
        return
    pages = read(shared, back_sheets(shared))
    check_joints(pages)
    for hole in nuts:
        mirrored = board.box.width - hole.position.x, hole.position.y
        for each in pages:
            if each.tile.rect.holds(mirrored):
                assert any(
                    math.dist(each.place(one.x, one.y), mirrored) < WITHIN
                    and abs(one.diameter - hole.bit * each.factors[0]) < WITHIN
                    for one in each.page.circles
                ), (hole.id, each.tile.name)


def test_a_printer_that_needs_1_0060_and_0_9990():
    """Bars of 99.4 and 100.1 mm for 100: all holes move by those factors in the file."""
    bars = PrinterBars("P", "a3", PrintedBar(100, 99.4), PrintedBar(100, 100.1), finer=True)
    assert bars.factors == (1.0060, 0.9990)
    plan = library_bus()
    board = plan.boards["A"]
    printing = Printing(PAPERS["a3"], "P", bars)
    tiles = tiles_for(board, printing, holes_of(plan))
    template = template_of(plan, review_of(plan), board, tiles, FONTS.width)
    shared = TemplateSet(plan.job, template, tiles, printing, 0, FONTS.width)
    pages = read(shared, tile_sheets(shared))
    assert {each.factors for each in pages} <= {(1.0060, 0.9990), (0.9990, 1.0060)}
    check_holes(pages, holes_of(plan))
    check_joints(pages)
    for each in pages:
        here = [hole for hole in holes_of(plan) if each.tile.rect.holds(hole.position)]
        for hole in here:
            x = each.tile.at.x + (hole.position.x - each.tile.rect.left) * each.factors[0]
            y = each.tile.at.y + (hole.position.y - each.tile.rect.bottom) * each.factors[1]
            assert any(math.hypot(one.x - x, one.y - y) < WITHIN for one in each.page.circles), hole.id
