"""The foot of a sheet: its caution whole, never smaller than the least type, on the sheet and clear of its number."""

from itertools import pairwise

import pytest
from boards import library_bus

from boardplan.drawing.picture import Words
from boardplan.output.printing.lettering import FINE, text_box
from boardplan.output.printing.paper import PAPERS
from boardplan.output.tables.list_sheets import ListPaper, sheet_footer

SHORT = "Measure before the first cut."
LONG = (
    "Equipment instructions and local rules win over every figure here; " * 2 + "ask before anything is cut or drilled."
)


@pytest.mark.parametrize("landscape", [False, True])
@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("caution", [SHORT, LONG])
def test_a_long_caution_takes_two_lines_instead_of_smaller_type(caution, paper, landscape, fonts):
    shared = ListPaper(library_bus(), "Any list", PAPERS[paper], landscape, caution, 0, fonts.width)
    words = [each for each in sheet_footer(shared, 10, 12) if isinstance(each, Words)]
    *lines, number = words
    assert number.text == "sheet 10 of 12"
    assert " ".join(each.text for each in lines) == caution.strip()
    assert len(lines) == (1 if caution == SHORT or landscape else 2)
    assert {each.height for each in words} == {FINE}
    boxes = [text_box(each, fonts.width) for each in words]
    assert all(box.bottom >= 4.5 for box in boxes)
    assert all(box.right < boxes[-1].left for box in boxes[:-1])
    assert all(above.bottom >= below.top - 0.1 for above, below in pairwise(boxes[:-1]))
