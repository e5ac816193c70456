"""Fuses of a component are set as the designer gave them: blanks stay blank, wrong places and numbers are refused."""

import pytest
from boards import honey_trailer

from boardplan.editing.fuse_edits import set_fuses
from boardplan.editing.refused import EditRefused
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import places_on


def places(plan, component):
    return [each.place for each in places_on(plan.components[component], plan.kind_of(plan.components[component]))]


def test_what_nobody_said_is_not_kept():
    plan = honey_trailer()
    first, second = places(plan, "PB1")[:2]
    changed = set_fuses(plan, "PB1", [Fuse(first, rating_a=80.0), Fuse(second)])
    assert changed.components["PB1"].fuses == (Fuse(first, rating_a=80.0),)
    assert changed.components["PB1"].fuses[0].voltage_v is None
    assert set_fuses(changed, "PB1", []).components["PB1"].fuses == ()


def test_the_same_fuses_in_another_order_change_nothing():
    plan = honey_trailer()
    held = plan.components["LP1"].fuses
    assert len(held) > 1
    assert set_fuses(plan, "LP1", reversed(held)) is plan


@pytest.mark.parametrize(
    ("fuses", "words"),
    [
        ([Fuse("F99", "strip")], "no fuse place F99"),
        ([Fuse("F1", "strip"), Fuse("F1", "other")], "named twice"),
        ([Fuse("F1", rating_a=0.0)], "no rating is 0 A"),
        ([Fuse("F1", voltage_v=-12.0)], "no voltage is -12 V"),
        ([Fuse("F1", breaking_capacity_ka=float("nan"))], "no breaking capacity is nan kA"),
        ([Fuse("F1", rating_a=10_001.0)], "up to 10000"),
        ([Fuse("F1", note="x" * 2001)], "longer than 2000"),
    ],
)
def test_what_no_fuse_can_be_is_refused_in_a_sentence(fuses, words):
    plan = honey_trailer()
    assert "F1" in places(plan, "PB1")
    with pytest.raises(EditRefused, match=words):
        set_fuses(plan, "PB1", fuses)
