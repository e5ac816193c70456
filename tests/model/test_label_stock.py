"""Labels lie on their page without sharing any of it, or the stock is refused in words."""

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from boardplan.model.label_stock import LabelGrid, grid_faults, hand_cut_stock

NOISE = 1e-5
PAGES = {"A4": (210, 297), "Letter": (215.9, 279.4)}  # ISO 216 and ASME Y14.1
sides = st.floats(12, 120)


@st.composite
def grids(draw):
    width, height = draw(sides), draw(sides)
    return LabelGrid(
        draw(st.floats(100, 450)),
        draw(st.floats(100, 450)),
        draw(st.integers(1, 5)),
        draw(st.integers(1, 8)),
        width,
        height,
        draw(st.floats(0, 30)),
        draw(st.floats(0, 30)),
        width + draw(st.floats(-5, 10)),
        height + draw(st.floats(-5, 10)),
    )


def shared(one, other):
    """How much of the page two boxes both take, in mm²."""
    wide = min(one.right, other.right) - max(one.left, other.left)
    high = min(one.top, other.top) - max(one.bottom, other.bottom)
    return max(0, wide) * max(0, high)


def lies_well(grid):
    boxes = [grid.box(index) for index in range(grid.count)]
    on_page = all(
        box.left >= -NOISE
        and box.bottom >= -NOISE
        and box.right <= grid.page_width + NOISE
        and box.top <= grid.page_height + NOISE
        for box in boxes
    )
    return on_page and all(shared(*pair) < 1e-3 for pair in combinations(boxes, 2))


@given(grids())
def test_a_grid_without_a_fault_shares_nothing_and_stays_on_its_page(grid):
    assume(not list(grid_faults(grid)))
    assert lies_well(grid)


@given(grids(), st.floats(0.5, 5))
def test_a_page_too_small_for_its_labels_is_a_fault(grid, short):
    assume(not list(grid_faults(grid)))
    right = max(grid.box(index).right for index in range(grid.count))
    lowest = min(grid.box(index).bottom for index in range(grid.count))
    narrow = replace(grid, page_width=right - short)
    low = replace(grid, page_height=grid.page_height - lowest - short)
    for smaller in (narrow, low):
        assert len(list(grid_faults(smaller))) == 1
        assert not lies_well(smaller)


@pytest.mark.parametrize("page", PAGES)
def test_paper_cut_by_hand_lies_well_inside_what_a_printer_reaches(page):
    stock = hand_cut_stock(page, *PAGES[page])
    for grid in (*stock.cables, stock.plates):
        assert not list(grid_faults(grid))
        assert lies_well(grid)
        boxes = [grid.box(index) for index in range(grid.count)]
        assert min(min(box.left, box.bottom) for box in boxes) >= 5  # common practice, no source
        assert max(box.right for box in boxes) <= grid.page_width - 5


def test_faults_say_what_is_too_wide():
    grid = LabelGrid(210, 297, 3, 8, 71, 37, 0, 0.5, 70, 37)
    assert list(grid_faults(grid)) == [
        "columns 70 mm apart overlap: a label is 71 mm wide",
        "3 columns reach 211 mm from the left; the page is 210 mm wide",
    ]
