"""Marks of supply: put on, replaced, taken off; refused where no file could hold them."""

import pytest

from boardplan.editing.refused import EditRefused
from boardplan.editing.supply_edits import mark_supply, unmark_supply
from boardplan.files.plan_file import plan_of_text, plan_text
from boardplan.model.supply import Supply

MARK = Supply("unit shunt-500a", "ordered", 1, "2026-11-20", "asked twice", "none")


def test_a_mark_is_put_on_replaced_and_taken_off(cabin_plan):
    plan = mark_supply(cabin_plan, MARK)
    assert plan.supply == {MARK.part: MARK}
    assert plan_of_text(plan_text(plan)) == plan
    assert mark_supply(plan, MARK) is plan
    come = mark_supply(plan, Supply(MARK.part, "stock"))
    assert come.supply[MARK.part].state == "stock"
    assert unmark_supply(come, MARK.part).supply == {}
    assert unmark_supply(cabin_plan, "nowhere") is cabin_plan


@pytest.mark.parametrize(
    "mark",
    [
        Supply("", "stock"),
        Supply("x" * 201, "stock"),
        Supply("x", "stock", -1),
        Supply("x", "stock", float("nan")),
        Supply("x", "stock", 1e9),
        Supply("x", "ordered", date="tomorrow"),
        Supply("x", "ordered", note="x" * 2001),
    ],
)
def test_a_mark_no_file_could_hold_is_refused(mark, cabin_plan):
    with pytest.raises(EditRefused):
        mark_supply(cabin_plan, mark)
