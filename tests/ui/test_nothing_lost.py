"""Nothing lost: what is not saved is kept aside, offered again, and no window writes over another's work."""

import pytest
from boards import library_bus
from PySide6.QtWidgets import QMessageBox

from boardplan.editing.component_edits import set_label
from boardplan.editing.session import Session
from boardplan.files.hold import hold_for, take_hold
from boardplan.files.own_folders import state_folder
from boardplan.files.plan_file import before_of, load_plan, save_plan
from boardplan.files.rescue import left_behind, rescued_plan
from boardplan.ui import app
from boardplan.ui.safety import keeping
from boardplan.ui.safety.rescue_dialog import RescueDialog


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "bus.json"
    save_plan(library_bus(), path)
    return path


@pytest.fixture
def soon(monkeypatch):
    monkeypatch.setattr(keeping, "AFTER", 30)


def relabel(hands, words):
    hands.window.desk.edit("Name it", lambda plan: set_label(plan, "INV1", words))


def press(words):
    """Press the button of a question by its words."""

    def fill(box):
        next(each for each in box.buttons() if words in each.text()).click()

    return fill


def kept(own_state):
    return list((own_state / "rescue").glob("*.rescue.json"))


@pytest.mark.usefixtures("soon")
def test_a_change_is_kept_aside_until_it_is_saved(hands, file, own_state, qtbot):
    hands.window.files.open_file(file)
    assert kept(own_state) == []
    relabel(hands, "first")
    qtbot.waitUntil(lambda: bool(kept(own_state)), timeout=30_000)
    assert left_behind(own_state / "rescue") == ()
    hands.act("save")
    qtbot.waitUntil(lambda: not kept(own_state), timeout=30_000)
    assert load_plan(file).components["INV1"].label == "first"
    assert load_plan(before_of(file)) == library_bus()


@pytest.mark.usefixtures("soon")
def test_leaving_without_saving_keeps_nothing(hands, file, own_state, qtbot):
    hands.window.files.open_file(file)
    relabel(hands, "first")
    qtbot.waitUntil(lambda: bool(kept(own_state)), timeout=30_000)
    hands.when_dialog(QMessageBox, press("Leave without saving"))
    hands.act("close")
    assert kept(own_state) == []
    assert load_plan(file) == library_bus()


def leave_behind(hands, file, own_state):
    """End as a program does that is killed: nothing is tidied up, the system lets go of what was held."""
    hands.window.files.open_file(file)
    relabel(hands, "in the last hour")
    hands.window.keep_at_once()
    rescue = hands.window._keeping._rescue  # noqa: SLF001
    rescue.close()
    hands.window._keeping._rescue = None  # noqa: SLF001
    hands.window.files._hold.keep(None, None)  # noqa: SLF001
    hands.window.clear_bench()
    (left,) = left_behind(own_state / "rescue")
    return left


def test_work_left_behind_is_offered_and_gone_on_with(hands, file, own_state, qtbot):
    left = leave_behind(hands, file, own_state)
    told = []

    def fill(dialog):
        told.append((dialog.list.rows[0].title, dialog._told.text(), dialog._picture._ready is not None))  # noqa: SLF001
        dialog.go_on.click()

    hands.when_dialog(RescueDialog, fill)
    hands.window.files.offer_rescued()
    (title, words, pictured) = told[0]
    assert title == "Library bus"
    assert str(file) in words
    assert "was saved" in words
    assert pictured
    assert hands.plan.components["INV1"].label == "in the last hour"
    assert hands.session.path == file
    assert hands.session.dirty
    assert not left.kept.exists()
    qtbot.waitUntil(lambda: len(kept(own_state)) == 1, timeout=30_000)
    hands.act("save")
    assert load_plan(file).components["INV1"].label == "in the last hour"
    assert load_plan(before_of(file)) == library_bus()


def test_work_left_behind_can_be_thrown_away_or_left_for_later(hands, file, own_state):
    left = leave_behind(hands, file, own_state)
    hands.when_dialog(RescueDialog, lambda dialog: dialog.reject())
    hands.window.files.offer_rescued()
    assert left.kept.exists()
    hands.when_dialog(RescueDialog, lambda dialog: dialog.away.click())
    hands.window.files.offer_rescued()
    assert not left.kept.exists()
    assert hands.window.desk is None


@pytest.mark.parametrize(("words", "looking"), [("Look at it", True), ("Work on a copy", False)])
def test_a_second_window_looks_or_copies(words, looking, hands, file, monkeypatch):
    other = take_hold(hold_for(file, state_folder() / "open"))
    hands.when_dialog(QMessageBox, press(words))
    assert hands.window.files.open_file(file)
    assert hands.session.looking is looking
    relabel(hands, "mine")
    wanted = file.with_name("copy.json")
    monkeypatch.setattr(
        "boardplan.ui.job_files.QFileDialog.getSaveFileName", lambda *_args, **_named: (str(wanted), "")
    )
    hands.act("save")
    assert load_plan(wanted).components["INV1"].label == "mine"
    assert load_plan(file) == library_bus()
    assert (hands.session.path, hands.session.looking) == (wanted, False)
    other.release()


def test_a_second_window_may_not_save_over_the_first(hands, file, own_state):
    other = take_hold(hold_for(file, own_state / "open"))
    hands.window.show_session(Session(library_bus()))
    hands.when_dialog(QMessageBox, press("OK"))
    assert not hands.window.files.save_to(file)
    assert hands.session.path is None
    other.release()
    assert hands.window.files.save_to(file)
    assert take_hold(hold_for(file, own_state / "open")) is None
    hands.act("close")
    free = take_hold(hold_for(file, own_state / "open"))
    assert free is not None
    free.release()


@pytest.mark.parametrize(("words", "mine"), [("Write over it", True), ("Don't save", False)])
def test_a_file_that_somebody_else_has_written_is_noticed(words, mine, hands, file):
    hands.window.files.open_file(file)
    relabel(hands, "mine")
    theirs = set_label(library_bus(), "INV1", "theirs")
    save_plan(theirs, file)
    assert hands.session.changed_on_disk
    hands.when_dialog(QMessageBox, press(words))
    hands.act("save")
    assert load_plan(file).components["INV1"].label == ("mine" if mine else "theirs")
    assert hands.session.dirty is not mine
    if mine:
        assert load_plan(before_of(file)) == theirs
        assert not hands.session.changed_on_disk


def test_the_same_file_can_be_opened_again_in_its_own_window(hands, file, own_state):
    assert hands.window.files.open_file(file)
    assert hands.window.files.open_file(file)
    assert not hands.session.looking
    assert take_hold(hold_for(file, own_state / "open")) is None


def test_a_fault_of_the_program_keeps_the_work(hands, file, own_state, monkeypatch):
    hands.window.files.open_file(file)
    relabel(hands, "just now")
    said = []
    monkeypatch.setattr(app, "show_program_fault", lambda _details, _parent, *, kept: said.append(kept))
    app.Hook(hands.window)(RuntimeError, RuntimeError("boom"), None)
    assert said == [True]
    (path,) = kept(own_state)
    assert "just now" in path.read_text()


def test_where_nothing_can_be_kept_the_window_says_so(hands, file, own_state, qtbot):
    own_state.mkdir(parents=True)
    (own_state / "rescue").write_text("in the way")
    said = []
    hands.window.files.open_file(file)
    hands.window.desk.said.connect(said.append)
    qtbot.waitUntil(lambda: bool(said), timeout=30_000)
    assert said[0].startswith("Unsaved work can't be kept aside (")
    relabel(hands, "first")
    assert hands.session.dirty


def test_what_is_rescued_equals_what_was_on_the_bench(hands, file, own_state):
    left = leave_behind(hands, file, own_state)
    assert rescued_plan(left) == set_label(library_bus(), "INV1", "in the last hour")
