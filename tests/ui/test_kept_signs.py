"""Signs on the board: one whose finding is there as before is left alone, a spare one is given to a new finding."""

from dataclasses import replace

import pytest
from boards import library_bus
from PySide6.QtWidgets import QGraphicsScene

from boardplan.checks.review import review_of
from boardplan.ui.canvas.kept_signs import KeptSigns
from boardplan.ui.canvas.signs import SignItem


@pytest.fixture
def shown(qapp):  # noqa: ARG001 - items need an application
    """Return a scene, the signs kept in it, a plan and three findings that lie on its boards."""
    plan = library_bus()
    some = [each for each in review_of(plan).findings if each.open and each.board in plan.boards]
    first = some[0]
    board = plan.boards[first.board].box
    made = [
        replace(first, place=type(first.place)(board.left + at, board.bottom + at), sentence=f"Finding {at}.")
        for at in (10, 20, 30)
    ]
    scene = QGraphicsScene()
    return scene, KeptSigns(scene), plan, made


def signs_of(scene):
    return {each.finding: each for each in scene.items() if isinstance(each, SignItem)}


def test_each_open_finding_has_a_sign_where_it_is_found(shown):
    scene, kept, plan, (one, other, _) = shown
    kept.show(plan, [one, other, one], "light")
    signs = signs_of(scene)
    assert set(signs) == {one, other}
    at = plan.on_wall(one.board, one.place)
    assert (signs[one].pos().x(), signs[one].pos().y()) == at
    assert sorted((each.x(), each.y()) for each in kept.places()) == sorted(
        tuple(plan.on_wall(each.board, each.place)) for each in (one, other)
    )


def test_the_sign_of_a_finding_that_stays_is_the_same_and_not_drawn_again(shown, monkeypatch):
    scene, kept, plan, (one, other, third) = shown
    kept.show(plan, [one, other], "light")
    before, drawn = signs_of(scene), []
    monkeypatch.setattr(SignItem, "update", lambda self: drawn.append(self.finding))
    kept.show(plan, [third, one], "light")
    after = signs_of(scene)
    assert after[one] is before[one]
    assert after[third] is before[other]
    assert drawn == [third]


def test_signs_without_a_finding_go(shown):
    scene, kept, plan, (one, other, third) = shown
    kept.show(plan, [one, other, third], "light")
    kept.show(plan, [other], "light")
    assert set(signs_of(scene)) == {other}
    kept.show(plan, [], "light")
    assert signs_of(scene) == {}
    assert kept.places() == []


def test_accepted_findings_and_those_beside_all_boards_have_no_sign(shown):
    scene, kept, plan, (one, _, _) = shown
    kept.show(plan, [replace(one, board="nowhere")], "light")
    assert signs_of(scene) == {}
