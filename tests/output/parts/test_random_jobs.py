"""Parts of made-up jobs: nothing is left out, nothing counted twice, and both papers can be laid out."""

from collections import Counter

import pytest
from hypothesis import HealthCheck, given, settings
from strategies import plans

from boardplan.bundled import data_dir
from boardplan.checks.review import review_of
from boardplan.model.holes import holes_of
from boardplan.output.load_out.boxes import boxes_of
from boardplan.output.load_out.load_out_list import load_out_tables
from boardplan.output.materials.buying import buyings_of
from boardplan.output.materials.materials_list import material_tables
from boardplan.output.parts.parts_list import parts_list
from boardplan.output.printing.pdf import Fonts
from boardplan.output.tables.table import laid
from boardplan.routing.lengths.reels import ferrule_needs, lug_needs, reel_needs


@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
@given(plans())
def test_parts_of_any_job_add_up(plan):
    review = review_of(plan)
    parts = parts_list(review)
    for each in parts.parts:
        assert each.needed is not None or each.question
        assert each.spare is not None or each.spare_words or each.question
        if each.uses and each.needed is not None and not each.key.startswith("made ") and each.category != "boards":
            assert each.needed == pytest.approx(sum(use.count for use in each.uses), abs=1e-5)
    _same_as_reels(review, parts)
    fastened = Counter(hole.fastener for hole in holes_of(plan) if hole.fastener)
    for name, count in fastened.items():
        (line,) = [each for each in parts.parts if each.key == f"fastener {name}"]
        assert line.needed >= count
    units = [each for each in parts.parts if each.category == "units" and each.bought]
    assert sum(each.needed for each in units) == len(plan.components)


def _same_as_reels(review, parts):
    """The cut list counts board ends; far ends are more of the same lugs."""
    plan, lengths = review.plan, review.lengths
    lugs = {each.key.removeprefix("lug "): each.needed for each in parts.parts if each.key.startswith("lug ")}
    for need in lug_needs(plan, lengths):
        assert lugs[need.name] >= need.count
    ferrules = {each.key.removeprefix("ferrule "): each.needed for each in parts.parts if each.category == "ferrules"}
    assert ferrules == {each.name: each.count for each in ferrule_needs(plan, lengths)}
    reels = {each.key: each.quantity for each in parts.parts if each.category == "raw-cable" and each.bought}
    assert reels == {
        f"cable {each.conductor} {each.colour}": pytest.approx(each.take) for each in reel_needs(plan, lengths)
    }


@settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow])
@given(plans())
def test_both_papers_of_any_job_can_be_laid_out(plan):
    parts = parts_list(review_of(plan))
    assert all(box.weight <= 20 or box.number == "loose" for box in boxes_of(parts))
    marked = {key for key, mark in plan.supply.items() if mark.count is None or mark.state != "stock"}
    assert all(line.done for line in buyings_of(parts) if line.part.key in marked)
    width = Fonts(data_dir("assets") / "fonts").width
    for table in (*load_out_tables(parts), *material_tables(parts)):
        assert max(strip.height for strip in laid(table, 182.0, width).strips) < 120
