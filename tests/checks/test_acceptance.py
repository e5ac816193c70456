"""Acceptance: a finding accepted by name and things stays, and stops no longer; what matches nothing is a note."""

from dataclasses import replace

import pytest
from checks.plans import named, plan_of, unit

from boardplan.checks.review import review_of
from boardplan.model.job import Acceptance

CLOSE = plan_of(unit("U1", 300, 300), unit("U2", 403, 300))


@pytest.mark.parametrize("things", [("U1", "U2"), ("U2", "U1")])
def test_accepted_finding_stays_in_the_list(things):
    accepted = Acceptance("gap-too-small", things, "Lead", "both come off to the front")
    review = review_of(replace(CLOSE, accepted=(accepted,)))
    (found,) = [each for each in review.findings if each.name == "gap-too-small"]
    assert found.accepted == accepted
    assert not found.open
    assert review.stops == ()


@pytest.mark.parametrize(("name", "things"), [("gap-too-small", ("U1",)), ("bodies-overlap", ("U1", "U2"))])
def test_acceptance_that_matches_nothing(name, things):
    review = review_of(replace(CLOSE, accepted=(Acceptance(name, things, "Lead", "why not"),)))
    assert [each.name for each in review.stops] == ["gap-too-small"]
    (note,) = [each for each in review.findings if each.name == "acceptance-not-needed"]
    assert note.severity == "note"
    assert note.things == things
    assert "accepted by Lead" in note.sentence


def test_acceptance_of_things_that_are_gone():
    plan = plan_of(accepted=(Acceptance("gap-too-small", ("U8", "U9"), "Lead", "why not"),))
    assert len(named(plan, "acceptance-not-needed")) == 1


@pytest.mark.parametrize(
    ("accepted_at", "x", "still"), [(3, 403, True), (3, 404, True), (3, 402.9, False), (None, 401, True)]
)
def test_a_graver_finding_is_not_accepted_with_it(accepted_at, x, still):
    accepted = Acceptance("gap-too-small", ("U1", "U2"), "Lead", "both come off to the front", measured=accepted_at)
    plan = replace(plan_of(unit("U1", 300, 300), unit("U2", x, 300)), accepted=(accepted,))
    (found,) = named(plan, "gap-too-small")
    assert found.open != still
