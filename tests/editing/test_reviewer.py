"""The reviewer is a real process here: what it says is what a review in this process says."""

import queue

import pytest

from boardplan.checks.review import review_of
from boardplan.editing.component_edits import move_components
from boardplan.editing.known import known_of
from boardplan.editing.reviewer import Reviewer
from boardplan.geometry.point import Point
from boardplan.routing.together.crossings import crossings_of

PATIENCE = 120  # s: a busy machine starts a process slowly


@pytest.fixture
def reviewer(bus_plan):
    told, failed = queue.Queue(), queue.Queue()
    made = Reviewer(known_of(review_of(bus_plan)), told.put, lambda: failed.put("failed"))
    yield made, told, failed
    made.close()


def test_it_says_what_a_review_says(reviewer, bus_plan):
    made, told, _ = reviewer
    for by in (6, 13):
        plan = move_components(bus_plan, ["LP1"], Point(by, 0))
        made.ask(plan)
        known, review = told.get(timeout=PATIENCE), review_of(plan)
        while known.plan is not plan:
            known = told.get(timeout=PATIENCE)
        assert dict(known.ways) == dict(review.ways)
        assert known.findings == review.findings
        assert dict(known.lengths) == dict(review.lengths)
        assert dict(known.clamps) == dict(review.clamps)


def test_only_the_newest_plan_counts(reviewer, bus_plan):
    made, told, _ = reviewer
    plans = [move_components(bus_plan, ["LP1"], Point(by, 0)) for by in range(1, 8)]
    for plan in plans:
        made.ask(plan)
    heard = told.get(timeout=PATIENCE)
    assert heard.plan in (bus_plan, plans[0], plans[-1]), "those in between were never reviewed"
    while heard.plan is not plans[-1]:
        heard = told.get(timeout=PATIENCE)
    rest = told.get(timeout=PATIENCE)
    assert rest.plan is plans[-1]
    assert rest.crossings == crossings_of(plans[-1], heard.ways)
    assert told.empty()


def test_a_process_that_dies_is_reported_once(reviewer, bus_plan):
    made, told, failed = reviewer
    made.ask(move_components(bus_plan, ["LP1"], Point(5, 0)))
    told.get(timeout=PATIENCE)
    made.process.kill()
    made.ask(move_components(bus_plan, ["LP1"], Point(9, 0)))
    assert failed.get(timeout=PATIENCE)
    assert failed.empty()


def test_closing_is_no_failure(bus_plan):
    failed = queue.Queue()
    made = Reviewer(known_of(review_of(bus_plan)), lambda _: None, lambda: failed.put("failed"))
    made.close()
    made.thread.join(PATIENCE)
    assert not made.thread.is_alive()
    assert failed.empty()
