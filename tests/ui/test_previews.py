"""Previews: on a large job the bodies move at once, ways and findings catch up, and nothing of it stays behind."""

from time import perf_counter

import pytest
from boards import library_bus

from boardplan.editing.thing_edits import move_things
from boardplan.geometry.point import Point
from boardplan.ui.canvas.previews import Previews


@pytest.fixture
def slow(open_plan, monkeypatch):
    hands = open_plan(library_bus())
    scene = hands.bench.canvas.scene
    previews = Previews(hands.window.desk, scene, hands.window)
    monkeypatch.setattr(previews, "_cost", 10.0)
    monkeypatch.setattr(previews, "_shown_at", perf_counter())
    return hands, scene, previews


def test_bodies_move_at_once_and_the_rest_catches_up(slow, qtbot):
    hands, scene, previews = slow
    moved = move_things(hands.plan, ["EB1"], Point(5, 0))
    previews.show(moved)
    assert scene.plan is moved
    assert hands.session.plan is hands.plan, "not reviewed yet"
    qtbot.waitUntil(lambda: hands.session.plan is moved, timeout=2000)
    assert hands.session.review.plan is moved


def test_what_was_only_shown_is_forgotten(slow):
    hands, scene, previews = slow
    previews.show(move_things(hands.plan, ["EB1"], Point(5, 0)))
    previews.forget()
    assert scene.plan is hands.plan


def test_a_quick_job_is_previewed_whole(slow, monkeypatch):
    hands, scene, previews = slow
    monkeypatch.setattr(previews, "_cost", 0.0)
    moved = move_things(hands.plan, ["EB1"], Point(5, 0))
    previews.show(moved)
    assert hands.session.plan is moved
    assert scene.plan is moved
