"""Pattern check: the one note for kinds that nobody compared with the unit."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, named, plan_of, unit


@pytest.mark.parametrize(("state", "notes"), [("typical", 1), ("from sheet", 1), ("checked", 0), ("used", 0)])
def test_one_note_for_the_job(state, notes):
    kinds = [replace(UNIT, data_state=state), replace(UNIT, id="other", data_state=state)]
    plan = plan_of(unit("U1", 300, 300), unit("U2", 500, 300), unit("U3", 700, 300, kind="other"), kinds=kinds)
    found = named(plan, "pattern-not-checked")
    assert [each.severity for each in found] == ["note"] * notes
    assert all("2 of 2" in each.sentence for each in found)
