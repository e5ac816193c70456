"""Marks of supply and lugs at far ends in a job file: kept as they are, slips told by their place."""

import json

import pytest
from boards import SAMPLES

from boardplan.files.faults import BadFile
from boardplan.files.plan_file import plan_of_data, plan_of_text, plan_text
from boardplan.model.cable import Lug
from boardplan.model.supply import Supply

CABIN = json.loads((SAMPLES / "lookout-cabin.json").read_text(encoding="utf-8"))


def test_marks_are_kept():
    marks = [
        {"part": "unit shunt-500a", "source": "ordered", "date": "2026-11-20", "note": "asked"},
        {"part": "cable 95 red", "source": "stock", "count": 2.5, "substitute": "none"},
    ]
    plan = plan_of_data({**CABIN, "supply": marks})
    assert plan.supply == {
        "unit shunt-500a": Supply("unit shunt-500a", "ordered", None, "2026-11-20", "asked"),
        "cable 95 red": Supply("cable 95 red", "stock", 2.5, substitute="none"),
    }
    text = plan_text(plan)
    assert plan_of_text(text) == plan
    assert json.loads(text)["supply"] == marks


def test_a_job_without_marks_says_nothing_of_them():
    plan = plan_of_data(CABIN)
    assert plan.supply == {}
    assert "supply" not in json.loads(plan_text(plan))


@pytest.mark.parametrize(
    ("supply", "place"),
    [
        ([{"part": "x", "source": "borrowed"}], "supply[0].source"),
        ([{"part": "", "source": "stock"}], "supply[0].part"),
        ([{"part": "x", "source": "stock", "count": -1}], "supply[0].count"),
        ([{"part": "x", "source": "ordered", "date": "soon"}], "supply[0].date"),
        ([{"part": "x", "source": "stock"}, {"part": "x", "source": "bought"}], "supply[1].part"),
    ],
)
def test_a_slip_is_told_by_its_place(supply, place):
    with pytest.raises(BadFile) as told:
        plan_of_data({**CABIN, "supply": supply})
    assert place in str(told.value)


def test_the_lug_of_a_far_end_is_kept(bus_plan):
    assert bus_plan.cables["W01"].start.lug == Lug("M10")
    assert plan_of_text(plan_text(bus_plan)) == bus_plan
