import pytest

from boardplan.checks.review import review_of
from boardplan.editing.acceptance_edits import accept_finding, withdraw_acceptance
from boardplan.editing.component_edits import put_component
from boardplan.editing.refused import EditRefused
from boardplan.geometry.point import Point
from boardplan.model.job import Acceptance


def test_an_accepted_finding_is_no_longer_open(bus_plan):
    plan = put_component(bus_plan, "INV1", Point(5, 290))
    finding = next(each for each in review_of(plan).findings if each.open and "INV1" in each.things)
    accepted = accept_finding(plan, Acceptance(finding.name, finding.things, " Lead ", " seen on site ", "2026-11-03"))
    again = [
        each for each in review_of(accepted).findings if (each.name, each.things) == (finding.name, finding.things)
    ]
    assert again
    assert not any(each.open for each in again)
    assert (again[0].accepted.name, again[0].accepted.reason) == ("Lead", "seen on site")
    assert withdraw_acceptance(accepted, finding.name, finding.things) == plan


def test_a_later_acceptance_takes_the_place_of_an_earlier_one(bus_plan):
    plan = accept_finding(bus_plan, Acceptance("edge-margin", ("A", "INV1"), "Lead", "first"))
    plan = accept_finding(plan, Acceptance("edge-margin", ("INV1", "A"), "Lead", "second"))
    assert [each.reason for each in plan.accepted if each.finding == "edge-margin"] == ["second"]
    assert accept_finding(plan, Acceptance("edge-margin", ("INV1", "A"), "Lead", "second")) is plan


def test_nothing_to_withdraw_is_the_same_plan(bus_plan):
    assert withdraw_acceptance(bus_plan, "edge-margin", ["INV1"]) is bus_plan


@pytest.mark.parametrize(
    ("name", "reason", "words"),
    [("", "why", "A name is needed"), ("Lead", "  ", "A reason is needed"), ("x" * 121, "why", "A name is needed")],
)
def test_a_name_and_a_reason_are_needed(bus_plan, name, reason, words):
    with pytest.raises(EditRefused) as refused:
        accept_finding(bus_plan, Acceptance("edge-margin", ("INV1",), name, reason))
    assert words in refused.value.sentence
