"""A whole job with the mouse, and again with nothing but the keyboard: from an empty sheet to the papers."""

import json
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.editing.session import Session
from boardplan.files.plan_file import load_plan
from boardplan.ui.dialogs.join_dialog import JoinDialog
from boardplan.ui.dialogs.new_board_dialog import NewBoardDialog

NONE, SHIFT, CONTROL = (
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)
SHUT_OFF, FUSE = "battery-shut-off-1-pole", "class-t-fuse-block"


def fill_join_by_keys(start, end, conductor):
    def fill(dialog):
        for choice, text in ((dialog.start, start), (dialog.end, end), (dialog.conductor, conductor)):
            choice.setFocus()
            choice.lineEdit().selectAll()
            QTest.keyClicks(choice.lineEdit(), text)
            QTest.keyClick(choice.lineEdit(), Qt.Key.Key_Tab)
        QTest.keyClick(dialog.conductor.lineEdit(), Qt.Key.Key_Return)

    return fill


def take_from_shelf(hands, kind):
    rows = hands.bench.shelf.list
    index = next(number for number, row in enumerate(rows.rows) if row.key == kind)
    rows.scrollTo(rows.model().index(index))
    middle = rows.visualRect(rows.model().index(index)).center()
    QTest.mouseClick(rows.viewport(), Qt.MouseButton.LeftButton, NONE, middle)


def write_pack(hands, qtbot, folder):
    hands.act("step-pack")
    panel = hands.bench.pack
    panel.write_to(folder)
    qtbot.waitUntil(lambda: not panel.writing, timeout=30_000)
    return json.loads((folder / "pack.json").read_text())


def test_whole_job_with_the_mouse(hands, qtbot, tmp_path):  # noqa: PLR0915 - one job, step by step
    hands.when_dialog(NewBoardDialog, hands.fill_new_board)
    QTest.mouseClick(hands.window.welcome.new, Qt.MouseButton.LeftButton)
    assert hands.plan.job.title == "Test board"
    assert hands.window.isWindowModified()

    hands.act("step-place")
    take_from_shelf(hands, SHUT_OFF)
    hands.click(300, 400)
    take_from_shelf(hands, FUSE)
    hands.click(330, 420)
    assert len(hands.plan.components) == 2
    first, second = hands.plan.components
    assert any({first, second} <= set(each.things) for each in hands.session.review.stops), "two bodies in one place"

    hands.click(900, 700)  # the board itself: nothing in the way of the drag
    before = hands.plan.components[second].position
    at = hands.centre(second).moved(-25, 60)  # where the other body is not
    hands.drag(at, (700, 480))
    assert hands.plan.components[second].position != before
    assert not any({first, second} <= set(each.things) for each in hands.session.review.stops)

    hands.act("step-wire")
    hands.act("tool-join")
    hands.when_dialog(JoinDialog, hands.fill_conductor("70 mm"))
    hands.drag(hands.terminal(first, "OUT"), hands.terminal(second, "LINE"))
    assert list(hands.plan.cables) == ["W01"]
    hands.window.desk.select("W01")
    cut = hands.session.review.lengths["W01"].cut
    assert cut
    assert any(row.key == "W01" and row.figure.startswith(f"{cut:.0f}") for row in hands.bench.wire.cables.rows)

    hands.act("tool-pin_way")
    points = hands.session.review.ways["W01"].points
    longest = max(pairwise(points), key=lambda leg: leg[0].distance_to(leg[1]))
    middle = ((longest[0].x + longest[1].x) / 2, (longest[0].y + longest[1].y) / 2)
    hands.drag(middle, (middle[0] + 30, middle[1] + 40))
    assert hands.plan.cables["W01"].pins

    hands.act("tool-select")
    hands.window.desk.select("W01")
    hands.act("remove")
    assert not hands.plan.cables
    steps = 0
    while hands.window.actions_by_name["undo"].isEnabled():
        hands.act("undo")
        steps += 1
    assert steps >= 5
    assert not hands.plan.components
    for _ in range(steps - 1):  # all but the removal
        hands.act("redo")
    assert list(hands.plan.cables) == ["W01"]

    path = tmp_path / "job.json"
    assert hands.window.files.save_to(path)
    assert not hands.window.isWindowModified()
    assert load_plan(path) == hands.plan
    assert Session.open(path).plan == hands.plan

    contents = write_pack(hands, qtbot, tmp_path / "papers")
    assert {each["file"] for each in contents["files"]} >= {"hole-schedule.pdf", "cable-cut-list.pdf"}


def test_whole_job_with_the_keyboard_alone(hands, qtbot, tmp_path):  # noqa: PLR0915 - one job, step by step
    hands.when_dialog(NewBoardDialog, hands.fill_new_board)
    hands.key(Qt.Key.Key_N, CONTROL)
    assert hands.plan.job.title == "Test board"

    hands.key(Qt.Key.Key_2, CONTROL)
    assert hands.window.desk.step == "place"
    shelf = hands.bench.shelf
    for words in ("shut-off", "class t"):
        shelf.search.setFocus()
        shelf.search.selectAll()
        hands.type(words, shelf.search)
        hands.key(Qt.Key.Key_Down, target=shelf.search)
        assert shelf.list.hasFocus()
        hands.key(Qt.Key.Key_Return, target=shelf.list)
    first, second = hands.plan.components
    view = hands.bench.canvas.view
    assert view.hasFocus()
    assert hands.session.selection.ids == (second,)

    at = hands.plan.components[second].position
    hands.key(Qt.Key.Key_Right, target=view)
    hands.key(Qt.Key.Key_Up, SHIFT, target=view)
    assert hands.plan.components[second].position == (at.x + 1, at.y + 10)
    hands.key(Qt.Key.Key_R, target=view)
    assert hands.plan.components[second].turn == 90
    hands.key(Qt.Key.Key_Tab, target=view)
    assert hands.session.selection.active == first

    hands.key(Qt.Key.Key_F4)
    x_field = hands.bench.properties.form.editor("Position x")
    x_field.setFocus()
    x_field.selectAll()
    hands.type("120.5", x_field)
    hands.key(Qt.Key.Key_Return, target=x_field)
    assert hands.plan.components[first].position.x == 120.5

    hands.when_dialog(JoinDialog, fill_join_by_keys(f"{first} OUT", f"{second} LINE", "70 mm"))
    hands.key(Qt.Key.Key_J, CONTROL)
    assert list(hands.plan.cables) == ["W01"]
    assert hands.window.desk.step == "wire"
    assert hands.session.review.lengths["W01"].cut

    hands.key(Qt.Key.Key_Delete, target=view)
    assert not hands.plan.cables
    hands.key(Qt.Key.Key_Z, CONTROL)
    assert list(hands.plan.cables) == ["W01"]
    path = tmp_path / "job.json"
    assert hands.window.files.save_to(path)
    assert load_plan(path) == hands.plan
    hands.key(Qt.Key.Key_4, CONTROL)
    assert write_pack(hands, qtbot, tmp_path / "papers")["format"] == "boardplan-pack"


def test_channel_drawn_by_keys(hands):
    hands.when_dialog(NewBoardDialog, hands.fill_new_board)
    hands.act("new")
    view = hands.bench.canvas.view
    hands.act("step-wire")
    hands.key(Qt.Key.Key_C, target=view)
    assert hands.window.desk.tool == "draw_channel"
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Up):
        for _ in range(3):
            hands.key(key, CONTROL, target=view)
        hands.key(Qt.Key.Key_Return, target=view)
    for _ in range(4):
        hands.key(Qt.Key.Key_Right, CONTROL, target=view)
    hands.key(Qt.Key.Key_Return, CONTROL, target=view)
    assert len(hands.plan.channels) == 1
