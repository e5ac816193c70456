"""Seams: held against every layout and every place of a small board, tried one by one with plain rectangles."""

import itertools
import math
import random

import pytest
from boards import honey_trailer, library_bus, lookout_cabin

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board
from boardplan.model.holes import holes_of
from boardplan.output.printing.pages import tiles_of
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.printing.printer_tiles import tiles_for
from boardplan.output.printing.seams import all_placings, best_first
from boardplan.output.printing.sheet_layouts import BORDER, OVERLAP, fewest_layouts

STEP = 30.0
A4 = (190.0, 277.0)


def near(rects, points):
    """Points that some sheet shows within 5 mm of its edge; in an overlap of 10 mm all of them."""
    return sum(any(rect.holds(at) and not rect.grown(-5 - 1e-6).holds(at) for rect in rects) for at in points)


def cut(rects, patterns):
    """Patterns that no sheet shows whole, each hole 5 mm or more from its edge."""
    return sum(not any(all(rect.grown(-5).holds(at) for at in each) for rect in rects) for each in patterns)


def shifts(sizes, length):
    """Where a row of tiles may start before the border does."""
    spare = sum(sizes) - OVERLAP * (len(sizes) - 1) - length - 2 * BORDER
    if len(sizes) == 1:
        return [spare / 2]
    count = max(1, math.ceil(spare / STEP - 1e-9))
    return [spare * index / count for index in range(count + 1)]


def row(sizes, shift):
    """Both ends of each tile of a row."""
    start, ends = -BORDER - shift, []
    for size in sizes:
        ends.append((start, start + size))
        start += size - OVERLAP
    return ends


def stacks(along, across, most):
    """Every stack of upright and lying strips that covers a board, on no more than so many sheets."""
    for count in range(1, 4):
        for turns in itertools.product((A4, A4[::-1]), repeat=count):
            depths = [depth for _, depth in turns]
            if sum(depths) - OVERLAP * (count - 1) < across + 2 * BORDER - 1e-9:
                continue
            strips = [
                [length] * max(1, math.ceil((along + 2 * BORDER - OVERLAP) / (length - OVERLAP) - 1e-9))
                for length, _ in turns
            ]
            if sum(map(len, strips)) <= most:
                yield depths, strips


def every_tiling(width, height, most):
    """Every tiling of a board on no more than so many sheets, as rectangles: each strip in every place."""
    for level in (True, False):
        along, across = (width, height) if level else (height, width)
        for depths, strips in stacks(along, across, most):
            for shift in shifts(depths, across):
                lows = row(depths, shift)
                for own in itertools.product(*(shifts(sizes, along) for sizes in strips)):
                    rects = []
                    for (low, high), sizes, each in zip(lows, strips, own, strict=True):
                        rects += [(start, low, end, high) for start, end in row(sizes, each)]
                    yield [Box(*r) if level else Box(r[1], r[0], r[3], r[2]) for r in rects]


def small_board(seed):
    """A board of two to six sheets and some patterns of four holes on it."""
    chance = random.Random(seed)
    width, height = round(chance.uniform(270, 420), 2), round(chance.uniform(200, 380), 2)
    patterns = []
    for _ in range(chance.randint(3, 8)):
        wide, high = chance.uniform(15, 130), chance.uniform(15, 130)
        left, low = chance.uniform(10, width - wide - 10), chance.uniform(10, height - high - 10)
        patterns.append(Box(left, low, left + wide, low + high).corners())
    return width, height, patterns


@pytest.mark.parametrize("seed", range(60))
def test_no_tiling_of_as_few_sheets_spares_more(seed):
    width, height, patterns = small_board(seed)
    box, points = Box(0, 0, width, height), [at for each in patterns for at in each]
    layouts = fewest_layouts(box, PAPERS["a4"])
    boxes = [box_around(each) for each in patterns]
    best = best_first(box, all_placings(box, layouts, points, boxes, STEP))[0]
    rects = [rect for _, _, rect in best.rects]
    found = near(rects, points), cut(rects, patterns)
    tilings = list(every_tiling(width, height, len(rects)))
    assert min(map(len, tilings)) == len(rects)
    assert found == min((near(each, points), cut(each, patterns)) for each in tilings)
    assert best.spared[:2] == (len(points) - found[0], len(patterns) - found[1])


@pytest.mark.parametrize("paper", ["a4", "letter", "legal", "a3", "tabloid", "a2", "roll-914", "roll-610"])
@pytest.mark.parametrize("sample", [library_bus, lookout_cabin, honey_trailer])
def test_no_drill_point_of_a_sample_lies_near_a_sheets_edge(sample, paper):
    plan = sample()
    for board in plan.boards.values():
        holes = [hole for hole in holes_of(plan) if hole.board == board.id]
        rects = [tile.rect for tile in tiles_for(board, Printing(PAPERS[paper]), holes)]
        assert near(rects, [hole.position for hole in holes]) == 0
        for hole in holes:
            assert sum(rect.holds(hole.position) for rect in rects) == 1


def test_where_seams_must_be_moved_one_by_one_they_are():
    """Holes every 6 mm but for gaps 14 mm wide, 518 apart, where even seams are 534: each finds its own gap."""
    gaps = ((241, 255), (492, 522), (759, 773))
    points = [
        Point(x, y) for x in range(24, 1000, 6) for y in (60, 120) if not any(low < x < high for low, high in gaps)
    ]
    board = Board("A", "", Box(0, 0, 1010, 140).corners())
    rects = [tile.rect for tile in tiles_of(board, PAPERS["a4"], points)]
    assert near(rects, points) == 0
