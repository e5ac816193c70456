"""The window: files that are bad, changes that are not saved, faults of the program, themes, what is remembered."""

import pytest
from boards import library_bus
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QApplication, QMessageBox

from boardplan.editing.thing_edits import move_things
from boardplan.files.plan_file import save_plan
from boardplan.geometry.point import Point
from boardplan.ui import app, job_files
from boardplan.ui.welcome import SampleCard, sample_files


def test_a_bad_file_is_named_with_its_fault(window, tmp_path, monkeypatch):
    shown = []
    monkeypatch.setattr(job_files, "show_bad_file", lambda bad, _parent: shown.append(bad))
    path = tmp_path / "bad.json"
    path.write_text('{"format": "boardplan-job", "version": 1}')
    assert not window.files.open_file(path)
    assert shown[0].file == str(path)
    assert shown[0].faults
    assert window.desk is None


def test_a_full_disk_leaves_the_job_open(open_plan, tmp_path, monkeypatch):
    hands = open_plan(library_bus())
    shown = []
    monkeypatch.setattr(job_files, "show_disk_fault", lambda *fault: shown.append(fault))
    assert not hands.window.files.save_to(tmp_path / "no folder" / "job.json")
    assert shown
    assert hands.plan == library_bus()


@pytest.mark.parametrize(("answer", "leaves"), [("Stay", False), ("Leave without saving", True)])
def test_leaving_asks_about_changes(open_plan, monkeypatch, answer, leaves):
    hands = open_plan(library_bus())
    assert hands.window.files.may_leave(), "nothing has changed yet"
    hands.session.commit(move_things(hands.plan, ["EB1"], Point(1, 0)), "Move EB1")
    assert hands.window.isWindowModified()

    def click(box):
        next(each for each in box.buttons() if each.text() == answer).click()

    monkeypatch.setattr(QMessageBox, "exec", click)
    assert hands.window.files.may_leave() is leaves
    monkeypatch.setattr(hands.window.files, "may_leave", lambda: True)


def test_a_dropped_file_is_opened(window, tmp_path):
    path = tmp_path / "job.json"
    save_plan(library_bus(), path)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    window.dropEvent(
        QDropEvent(
            QPointF(5, 5),
            Qt.DropAction.CopyAction,
            data,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )
    )
    assert window.desk.session.path == path
    assert window.preferences.recent == [path.resolve()]


def test_a_fault_of_the_program_is_shown_and_the_window_stays(window, monkeypatch, capsys):
    shown = []
    monkeypatch.setattr(app, "show_program_fault", lambda details, _parent, *, kept: shown.append((details, kept)))
    hook = app.Hook(window)
    hook(ValueError, ValueError("torn"), None)
    assert "torn" in shown[0][0]
    assert "torn" in capsys.readouterr().err
    assert window.isVisible()


def test_every_sample_has_a_card_and_opens(window):
    assert len(window.welcome.findChildren(SampleCard)) == len(sample_files())
    for path in sample_files():
        window.files.open_sample(path)
        assert window.desk.session.path is None, "a sample is not written over"


def test_themes_change_by_hand_and_are_remembered(open_plan):
    hands = open_plan(library_bus())
    for choice in ("dark", "light"):
        hands.window.choose_theme(choice)
        assert hands.window.themes.theme == choice
        assert hands.window.preferences.theme == choice
        assert hands.bench.canvas.scene.theme == choice
        QApplication.processEvents()
        assert not hands.window.grab().isNull()


def test_undo_names_what_it_takes_back(open_plan):
    hands = open_plan(library_bus())
    hands.session.commit(move_things(hands.plan, ["EB1"], Point(1, 0)), "Move EB1")
    assert hands.window.actions_by_name["undo"].text() == "&Undo: Move EB1"
    hands.act("undo")
    assert hands.plan == library_bus()
    assert not hands.window.isWindowModified() or hands.session.path is None


def test_copy_and_paste_go_through_the_clipboard(open_plan):
    hands = open_plan(library_bus())
    hands.window.desk.select("EB1")
    hands.bench.canvas.view.setFocus()
    hands.act("copy")
    hands.act("paste")
    assert len(hands.plan.components) == len(library_bus().components) + 1
