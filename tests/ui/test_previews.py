"""A large job is reviewed in another process: bodies and their cables move at once, what is true follows."""

import pytest
from boards import library_bus
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.checks.review import review_of
from boardplan.editing.thing_edits import move_things
from boardplan.geometry.point import Point
from boardplan.model.cable import TerminalEnd
from boardplan.routing.together.crossings import crossings_of
from boardplan.ui import reviewing

PATIENCE = 120_000  # ms: a busy machine starts a process slowly


@pytest.fixture
def large(open_plan, monkeypatch):
    """A job that counts as large, with the other process running."""
    monkeypatch.setattr(reviewing, "MANY", 5)
    hands = open_plan(library_bus())
    assert hands.window.desk.reviewing.elsewhere
    return hands


def of(plan, component):
    return {
        name
        for name, cable in plan.cables.items()
        if any(isinstance(end, TerminalEnd) and end.component == component for end in cable.ends)
    }


def test_cables_are_drawn_along_at_once_and_the_review_follows(large, qtbot):
    session = large.session
    moved = move_things(large.plan, ["LP1"], Point(6, 0))
    session.preview(moved)
    assert session.plan is moved
    assert session.behind
    assert of(moved, "LP1") == session.known.stretched
    qtbot.waitUntil(lambda: not session.behind, timeout=PATIENCE)
    review = review_of(moved)
    assert session.known.stretched == frozenset()
    assert dict(session.known.ways) == dict(review.ways)
    assert session.known.findings == review.findings


def test_letting_go_commits_at_once(large, qtbot):
    start = large.centre("EB1")
    large.drag(tuple(start), (start.x + 40, start.y))
    assert large.session.words == ("Move EB1",)
    assert large.session.plan is large.session.committed_plan
    qtbot.waitUntil(lambda: not large.session.behind, timeout=PATIENCE)
    assert large.session.settled.plan is large.plan


def test_what_was_only_previewed_is_forgotten_at_once(large):
    large.session.preview(move_things(large.plan, ["EB1"], Point(5, 0)))
    large.session.preview(None)
    assert not large.session.behind
    assert large.session.known.plan is large.plan


def test_a_review_that_was_overtaken_is_drawn_along_to_what_is_seen(large, qtbot):
    first, second = (move_things(large.plan, ["LP1"], Point(by, 0)) for by in (4, 9))
    large.session.preview(first)
    large.session.preview(second)
    qtbot.waitUntil(lambda: not large.session.behind, timeout=PATIENCE)
    assert large.session.known.plan is second
    assert dict(large.session.known.ways) == dict(review_of(second).ways)


def test_while_it_is_behind_lengths_are_grey_and_the_status_says_so(large):
    large.window.go_to("wire")
    large.session.preview(move_things(large.plan, ["LP1"], Point(6, 0)))
    rows = {row.key: row for row in large.bench.wire.cables.rows}
    name = next(iter(of(large.plan, "LP1")))
    assert rows[name].quiet
    assert rows[name].figure.startswith("≈ ")
    assert not rows["W01"].quiet
    assert large.bench.canvas.status.change_words


def test_without_the_other_process_it_goes_on_here(large, qtbot):
    reviewing_ = large.window.desk.reviewing
    large.session.preview(move_things(large.plan, ["LP1"], Point(6, 0)))
    qtbot.waitUntil(lambda: not large.session.behind, timeout=PATIENCE)
    reviewing_.reviewer.process.kill()
    last = move_things(large.plan, ["LP1"], Point(9, 0))
    large.session.preview(last)
    qtbot.waitUntil(lambda: not reviewing_.elsewhere, timeout=PATIENCE)
    assert not large.session.behind
    assert dict(large.session.known.ways) == dict(review_of(last).ways)


def test_a_small_job_is_reviewed_here(open_plan):
    hands = open_plan(library_bus())
    assert not hands.window.desk.reviewing.elsewhere
    moved = move_things(hands.plan, ["EB1"], Point(5, 0))
    hands.session.preview(moved)
    assert hands.session.plan is moved
    assert not hands.session.behind
    assert hands.bench.canvas.scene.plan is moved


def test_a_slow_preview_sends_reviews_elsewhere(open_plan, monkeypatch):
    hands = open_plan(library_bus())
    monkeypatch.setattr(reviewing, "SLOW", 0.0)
    start = hands.centre("EB1")
    hands.move(*start)
    hands.press(*start)
    hands.drag(tuple(start), (start.x + 20, start.y))
    assert hands.window.desk.reviewing.elsewhere
    QTest.keyClick(hands.bench.canvas.view, Qt.Key.Key_Escape)


def test_crossings_are_told_once_the_hand_rests(large, qtbot):
    large.window.go_to("wire")
    session, marks = large.session, large.bench.canvas.scene.crossings
    session.commit(move_things(large.plan, ["LP1"], Point(6, 0)), "Move LP1")
    qtbot.waitUntil(lambda: session.known.crossings is not None, timeout=PATIENCE)
    expected = crossings_of(session.plan, session.known.ways)
    assert session.known.crossings == expected
    qtbot.waitUntil(lambda: marks.crossings == expected, timeout=PATIENCE)
