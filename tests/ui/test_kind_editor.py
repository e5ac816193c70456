"""A unit measured in the window: drawn as it is typed, kept on the own shelf, put on the board."""

from dataclasses import replace

import pytest
from boards import library_bus
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMessageBox

from boardplan.editing.kind_edits import new_kind
from boardplan.files.own_shelf import keep_kind, own_shelf_folder, read_own_shelf
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.ui.dialogs.length_dialog import LengthDialog
from boardplan.ui.kinds.kind_editor import KindEditor


@pytest.fixture
def hands(open_plan):
    return open_plan(library_bus(), "place")


def put(edit, text):
    """Type into a field and end it with Enter, which must not end the dialog."""
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, text)
    QTest.keyClick(edit, Qt.Key.Key_Return)
    if hasattr(edit, "settle"):
        edit.settle()


def describe(editor):
    form = editor.form
    put(form.name, "Shelf heater")
    put(form.prefix, "H")
    put(form.width_edit, "120")
    put(form.height_edit, "4 in")
    put(form.depth_edit, "55,5 mm")
    QTest.mouseClick(form.holes.add, Qt.MouseButton.LeftButton)
    for edit, text in zip(form.holes.lines[0], ("10", "12.5"), strict=False):
        put(edit, text)
    QTest.mouseClick(form.terminals.add, Qt.MouseButton.LeftButton)
    name, left, below, off, sort, thread, leaves, _, torque, _ = form.terminals.lines[0]
    for edit, text in ((name, "DC+"), (left, "60"), (below, "6"), (off, "30"), (thread, "M6"), (torque, "4,5")):
        put(edit, text)
    sort.setCurrentIndex(sort.findData("stud"))
    leaves.setCurrentIndex(leaves.findData(270.0))


def test_a_unit_is_measured_kept_and_placed(hands):
    def fill(editor):
        describe(editor)
        assert editor.isVisible()
        editor.accept()

    hands.when_dialog(KindEditor, fill)
    hands.bench.shelf.own.measure()
    kind = read_own_shelf(own_shelf_folder()).kinds["shelf-heater"]
    assert (kind.name, kind.prefix, kind.data_state) == ("Shelf heater", "H", "checked")
    assert (kind.box.width, kind.box.height, kind.depth) == pytest.approx((120, 101.6, 55.5))
    assert [each.position for each in kind.holes] == [(10, 12.5)]
    (terminal,) = kind.terminals
    assert (terminal.id, terminal.position, terminal.z, terminal.size) == ("DC+", (60, 6), 30, "M6")
    assert (terminal.sort, terminal.exit, terminal.torque) == ("stud", 270.0, 4.5)
    assert (kind.mass, kind.heat, kind.non_combustible_backing) == (None, None, None)
    assert kind.id in [row.key for row in hands.bench.shelf.list.rows]
    hands.bench.place_by_name(hands.bench.shelf.kind(kind.id))
    assert hands.plan.components["H1"].kind == kind.id


def test_what_is_missing_is_asked_and_what_is_wrong_keeps_the_dialog_open(hands):
    seen = []

    def fill(editor):
        assert "How heavy is it?" in editor._asked.text()  # noqa: SLF001
        put(editor.form.width_edit, "0")
        editor.accept()
        seen.append((editor.isVisible(), editor._fault.text()))  # noqa: SLF001
        put(editor.form.width_edit, "100")
        put(editor.form.prefix, "h1")
        editor.accept()
        seen.append((editor.isVisible(), editor._fault.text()))  # noqa: SLF001

    hands.when_dialog(KindEditor, fill)
    hands.bench.shelf.own.measure()
    assert seen == [
        (True, "How wide is it? Expected more than 0 and at most 3000 mm."),
        (True, "Which letters begin its reference? Expected one to six capital letters."),
    ]
    assert read_own_shelf(own_shelf_folder()).kinds == {}


def test_a_kind_of_the_shelf_becomes_ones_own_under_another_id(hands):
    kind = bundled_shelf().kinds[hands.plan.components["NB1"].kind]

    def fill(editor):
        put(editor.form.name, "My busbar")
        editor.accept()

    hands.when_dialog(KindEditor, fill)
    hands.bench.shelf.own.change(kind)
    own = read_own_shelf(own_shelf_folder()).kinds
    assert list(own) == ["my-busbar"]
    assert own["my-busbar"] == replace(kind, id="my-busbar", name="My busbar")


def test_what_is_on_the_board_is_measured_anew_and_lost_cables_are_named(hands):
    kind = hands.plan.kinds[hands.plan.components["NB1"].kind]
    keep_kind(kind, own_shelf_folder())
    said = []

    def fill(editor):
        line = next(each for each in editor.form.terminals.lines if each[0].text() == "S5")
        QTest.mouseClick(line[-1], Qt.MouseButton.LeftButton)
        hands.when_dialog(QMessageBox, agree)
        editor.accept()

    def agree(box):
        said.append((box.text(), box.informativeText()))
        next(each for each in box.buttons() if "Change them" in each.text()).click()

    hands.when_dialog(KindEditor, fill)
    hands.bench.shelf.own.change(kind)
    assert said == [
        ("1 component here is of this kind: NB1.", "These cables lose their terminal and go: W07."),
    ]
    assert "W07" not in hands.plan.cables
    hands.act("undo")
    assert "W07" in hands.plan.cables


def test_a_photo_is_scaled_by_two_points(hands, tmp_path, qtbot):
    picture = QImage(200, 100, QImage.Format.Format_RGB32)
    picture.fill(0xFF8040)
    picture.save(str(tmp_path / "unit.png"))
    editor = KindEditor(new_kind(()), bundled_shelf(), "mm", hands.window.themes, hands.window)
    qtbot.addWidget(editor)
    editor.show()
    editor.show_photo(str(tmp_path / "unit.png"))
    under = editor.view.underlay
    assert under.scale == pytest.approx(0.5)
    QTest.mouseClick(editor.scale, Qt.MouseButton.LeftButton)
    hands.when_dialog(LengthDialog, lambda dialog: (put(dialog.edit, "160"), dialog.accept()))
    for x in (10, 90):
        at = editor.view.px_at(Point(x, 20))
        QTest.mouseClick(editor.view, Qt.MouseButton.LeftButton, pos=QPointF(at).toPoint())
    assert editor.view.underlay.scale == pytest.approx(1.0, rel=0.02)
    editor.show_photo(str(tmp_path / "none.png"))
    assert "no picture" in editor._fault.text()  # noqa: SLF001


def test_the_menu_offers_what_can_be_done_to_what_is_picked(hands):
    shelf = hands.bench.shelf
    shelf.list.pick(None)
    shelf._fill_menu()  # noqa: SLF001
    words = [action.text() for action in shelf._menu.actions() if action.text()]  # noqa: SLF001
    assert words == ["Measure a new unit...", "Bring in a file..."]
    (own_shelf_folder()).mkdir(parents=True)
    (own_shelf_folder() / "bad.kind.json").write_text("{")
    key = next(row.key for row in shelf.list.rows if isinstance(row.key, str))
    shelf.list.pick(key)
    shelf._fill_menu()  # noqa: SLF001
    words = [action.text() for action in shelf._menu.actions() if action.text()]  # noqa: SLF001
    assert words[1].startswith("Make ")
    assert words[-1] == "What is wrong with bad.kind.json?"
