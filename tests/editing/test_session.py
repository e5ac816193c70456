import pytest
from boards import SAMPLES

from boardplan.checks.review import review_of
from boardplan.editing.component_edits import move_components, set_label
from boardplan.editing.selection import Selection
from boardplan.editing.session import Session
from boardplan.editing.thing_edits import remove_things
from boardplan.files.faults import BadFile
from boardplan.files.plan_file import load_plan
from boardplan.geometry.point import Point


@pytest.fixture
def session(bus_plan):
    return Session(bus_plan)


def moved(plan, dx):
    return move_components(plan, ["INV1"], Point(dx, 0))


def test_a_gesture_previews_and_commits_once(session, bus_plan):
    for dx in (1, 2, 3):
        session.preview(moved(bus_plan, dx))
        assert session.plan.components["INV1"].position == (730 + dx, 290)
        assert session.committed_plan is bus_plan
    session.commit(session.plan, "Move INV1")
    assert len(session.history.plans) == 2
    assert session.words == ("Move INV1",)
    session.undo()
    assert session.plan is bus_plan
    assert session.words == ()
    session.redo()
    assert session.plan.components["INV1"].position == (733, 290)


def test_an_abandoned_preview_leaves_nothing(session, bus_plan):
    session.preview(moved(bus_plan, 9))
    session.preview(None)
    assert session.plan is bus_plan
    assert not session.dirty


@pytest.mark.parametrize("same", [lambda plan: plan, lambda plan: moved(moved(plan, 5), -5)])
def test_an_unchanged_plan_leaves_no_step(session, bus_plan, same):
    session.commit(same(bus_plan), "Move INV1")
    assert session.words == ()
    assert session.plan is bus_plan


def test_a_previewed_plan_is_not_reviewed_again(session, bus_plan):
    session.preview(moved(bus_plan, 9))
    review = session.review
    session.commit(session.plan, "Move INV1")
    assert session.review is review
    assert session.review.plan is session.plan


def test_the_review_is_always_that_of_what_is_seen(session, bus_plan):
    session.preview(moved(bus_plan, -720))
    assert session.review.findings == review_of(session.plan).findings
    session.preview(None)
    assert session.review.findings == review_of(bus_plan).findings


def test_listeners_hear_every_change_until_they_stop(session, bus_plan):
    heard = []
    stop = session.listen(lambda: heard.append(session.plan))
    session.preview(moved(bus_plan, 1))
    session.select(Selection(("INV1",)))
    session.commit(moved(bus_plan, 2), "Move INV1")
    session.undo()
    assert len(heard) == 4
    stop()
    session.redo()
    assert len(heard) == 4


def test_what_is_gone_is_not_selected(session, bus_plan):
    session.select(Selection(("INV1", "PB1", "nothing")))
    assert session.selection.ids == ("INV1", "PB1")
    session.commit(remove_things(bus_plan, ["INV1"]), "Remove INV1")
    assert session.selection.ids == ("PB1",)


def test_what_comes_with_a_plan_can_be_selected_at_once(session, bus_plan):
    session.commit(set_label(bus_plan, "INV1", "x"), "Label INV1", Selection(("INV1",)))
    assert session.selection.ids == ("INV1",)


def test_saved_and_changed_and_saved(session, bus_plan, tmp_path):
    assert session.title == "Library bus, revision A (not saved yet)"
    with pytest.raises(ValueError, match="file name"):
        session.save()
    session.save(tmp_path / "bus.json")
    assert session.title == "Library bus, revision A (bus.json)"
    session.commit(moved(bus_plan, 1), "Move INV1")
    assert session.dirty
    assert session.title == "Library bus, revision A (bus.json, changed)"
    session.undo()
    assert not session.dirty
    session.redo()
    session.save()
    assert not session.dirty
    assert load_plan(tmp_path / "bus.json") == session.plan


def test_a_failed_save_leaves_it_changed(session, bus_plan, tmp_path):
    session.commit(moved(bus_plan, 1), "Move INV1")
    with pytest.raises(OSError, match="nowhere"):
        session.save(tmp_path / "nowhere" / "bus.json")
    assert session.dirty
    assert session.path is None


def test_opened_from_a_file(tmp_path):
    session = Session.open(SAMPLES / "library-bus.json")
    assert session.path.name == "library-bus.json"
    assert not session.dirty
    with pytest.raises(BadFile):
        Session.open(tmp_path / "none.json")
