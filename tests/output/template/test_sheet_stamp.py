"""The stamp of a template's sheet: why nothing may be drilled by it is read at arm's length, whole, in its bar."""

import pytest
from boards import library_bus

from boardplan.checks.review import review_of
from boardplan.drawing.picture import Words
from boardplan.geometry.point import Box
from boardplan.model.holes import holes_of
from boardplan.output.printing.lettering import FINE, PLAIN, text_box
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.printer_correction import Printing, not_ready_words
from boardplan.output.printing.printer_tiles import tiles_for
from boardplan.output.template.sheet_stamp import stamp, stamp_size
from boardplan.output.template.template import template_of
from boardplan.output.template.template_set import TemplateSet
from boardplan.output.verdict import stop_words


@pytest.mark.parametrize("stops", [0, 2])
@pytest.mark.parametrize("paper", ["a4", "roll-914"])
def test_a_warning_is_whole_in_plain_type_and_within_the_stamp(paper, stops, fonts):
    plan, printing = library_bus(), Printing(PAPERS[paper])
    board = plan.boards["A"]
    tiles = tiles_for(board, printing, holes_of(plan))
    template = template_of(plan, review_of(plan), board, tiles, fonts.width)
    shared = TemplateSet(plan.job, template, tiles, printing, stops, fonts.width)
    room = Box(0, 0, *stamp_size(shared, tiles[0]))
    words = [each for each in stamp(shared, tiles[0], room) if isinstance(each, Words)]
    white = [each for each in words if each.ink == "paper"]
    wanted = [stop_words(stops), not_ready_words(printing)] if stops else [not_ready_words(printing)]
    assert " ".join(each.text for each in white) == " ".join(wanted)
    assert {each.height for each in white} == {PLAIN}
    assert all(each.height >= FINE - 1e-9 for each in words)
    for each in words:
        box = text_box(each, fonts.width)
        assert room.left <= box.left
        assert box.right <= room.right
        assert room.bottom <= box.bottom
        assert box.top <= room.top
