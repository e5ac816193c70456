"""Panels: fields that can all be read, forms that write, findings that are accepted and opened again, names for all."""

import dataclasses

import pytest
from boards import library_bus, lookout_cabin
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLabel, QLineEdit, QListView

from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.desk import STEPS
from boardplan.ui.panels.survey_fields import JOB_FIELDS, ROOM_FIELDS
from boardplan.ui.panels.thing_fields import THING_FIELDS
from boardplan.ui.step_state import step_states

RESIZING = {"Width", "Height"}
"""A board's size also brings exits back to its edge, so putting it back may change those."""


@pytest.mark.parametrize("plan", [library_bus(), lookout_cabin()], ids=lambda plan: plan.job.title)
def test_putting_back_what_was_read_changes_nothing(plan):
    for sort, rows in THING_FIELDS.items():
        for thing in [each for each in plan.things.values() if type(each) is sort][:3]:
            for field in (field for row in rows for field in row if field.put and field.name not in RESIZING):
                assert field.put(plan, thing, field.get(plan, thing)) == plan, (thing.id, field)
    for field in (field for row in JOB_FIELDS for field in row):
        assert field.put(plan, plan.job, field.get(plan, plan.job)) == plan


def above(control):
    while (control := control.parent()) is not None:
        yield control


def test_every_control_has_a_name(open_plan):
    hands = open_plan(library_bus())
    for step in STEPS:
        hands.window.desk.go_to(step)
        for ids in (["INV1"], ["W07"], ["RW1"], ["A"], ["X1"]):
            hands.window.desk.select(*ids)
            for sort in (QAbstractButton, QLineEdit, QComboBox, QListView):
                for control in hands.window.workbench.findChildren(sort):
                    named = control.accessibleName() or getattr(control, "text", str)()
                    inner = any(isinstance(each, (QComboBox, QLineEdit)) for each in above(control))
                    assert named or inner, (step, ids, control)


def test_room_is_left_unknown_until_somebody_measures_it():
    plan = library_bus()
    board = dataclasses.replace(plan.boards["A"], compartment=None)
    fields = [field for row in ROOM_FIELDS for field in row]
    assert all(field.get(plan, board) is None for field in fields)


@pytest.mark.parametrize(
    ("units", "typed", "value"), [("mm", "44,5", 44.5), ("inch", "1 3/4", 44.45), ("mm", "2'-6 1/2\"", 774.7)]
)
def test_lengths_are_typed_as_people_write_them(qtbot, units, typed, value):
    edit = LengthEdit("Width")
    qtbot.addWidget(edit)
    edit.show_value(10.0, units)
    edit.selectAll()
    QTest.keyClicks(edit, typed)
    with qtbot.waitSignal(edit.changed) as caught:
        QTest.keyClick(edit, Qt.Key.Key_Return)
    assert caught.args[0] == pytest.approx(value)


def test_what_is_not_a_length_is_marked_and_kept(qtbot):
    edit = LengthEdit("Width")
    qtbot.addWidget(edit)
    edit.show_value(10.0, "mm")
    edit.selectAll()
    QTest.keyClicks(edit, "wide")
    QTest.keyClick(edit, Qt.Key.Key_Return)
    assert edit.property("faulty")
    assert edit.value == 10.0
    assert "not a length" in edit.toolTip()


def test_renaming_keeps_the_thing_selected(open_plan):
    hands = open_plan(library_bus())
    hands.window.desk.select("EB1")
    field = hands.bench.properties.findChildren(QLineEdit)[0]
    field.setFocus()
    field.selectAll()
    hands.type("EB9", field)
    hands.key(Qt.Key.Key_Return, target=field)
    assert "EB9" in hands.plan.components
    assert hands.session.selection.ids == ("EB9",)


def test_a_finding_is_accepted_and_opened_again(open_plan, monkeypatch):
    hands = open_plan(dataclasses.replace(library_bus(), accepted=()))
    panel = hands.bench.findings
    row = next(row for row in panel.list.rows if row.sign == "warn" and not row.quiet)
    panel.list.pick(row.key)
    monkeypatch.setattr("boardplan.ui.panels.findings_panel.ask_acceptance", lambda *_: ("Lead", "seen", "2026-11-25"))
    before = hands.plan.accepted
    hands.act("accept")
    assert hands.plan.accepted[-1].reason == "seen"
    assert next(each for each in panel.list.rows if each.key == row.key).quiet
    panel.list.pick(row.key)
    panel.withdraw()
    assert hands.plan.accepted == before


def test_steps_say_how_far_they_are(open_plan):
    hands = open_plan(library_bus())
    states = step_states(hands.session.plan, hands.session.review)
    assert states["place"].words.startswith("13 components")
    assert states["wire"].words.startswith("26 cables")
    assert states["survey"].words == "1 board, 3 members behind"


def test_a_cable_shows_how_its_length_adds_up(open_plan):
    hands = open_plan(library_bus(), "wire")
    hands.window.desk.select("W07")
    texts = [label.text() for label in hands.bench.properties.sum.findChildren(QLabel)]
    assert "cut" in texts
    assert "410 mm" in texts  # the worked example's 405.5 mm, rounded up to 5


def test_legs_beyond_an_exit_are_added_and_known_so_far_as_somebody_measured(open_plan):
    hands = open_plan(library_bus(), "wire")
    hands.window.desk.select("W32")
    before = hands.session.review.lengths["W32"].cut
    panel = hands.bench.properties.beyond
    next(each for each in panel.findChildren(QAbstractButton) if each.text() == "Add a leg").click()
    assert hands.plan.cables["W32"].end.legs[-1].trust == "estimated"
    QApplication.processEvents()
    edit = [each for each in panel.findChildren(LengthEdit) if each.isVisible()][-1]
    edit.setFocus()
    edit.selectAll()
    hands.type("1000", edit)
    hands.key(Qt.Key.Key_Return, target=edit)
    assert hands.plan.cables["W32"].end.legs[-1].length == 1000
    assert hands.session.review.lengths["W32"].cut > before


def test_a_measure_that_nobody_gave_is_asked_for(open_plan, monkeypatch):
    hands = open_plan(dataclasses.replace(library_bus(), fixings={}), "survey")
    asked = []
    monkeypatch.setattr("boardplan.ui.workbench.ask_length", lambda *question: asked.append(question) or 6.5)
    hands.act("tool-add_fixing")
    assert asked
    hands.click(500, 450)
    assert [each.diameter for each in hands.plan.fixings.values()] == [6.5]


def test_a_way_is_pinned_and_its_corners_typed(open_plan):
    hands = open_plan(library_bus(), "wire")
    hands.window.desk.select("W04")
    assert not hands.plan.cables["W04"].pins
    hands.act("pin")
    assert hands.plan.cables["W04"].pins == hands.session.review.ways["W04"].points[1:-1]
    hands.window.desk.select("W07")
    field = hands.bench.properties.form.editor("Pinned corners")
    assert field.text() == "800 168"
    field.setFocus()
    field.selectAll()
    hands.type("800 160", field)
    hands.key(Qt.Key.Key_Return, target=field)
    assert hands.plan.cables["W07"].pins == ((800, 160),)
    hands.act("unpin")
    assert not hands.plan.cables["W07"].pins
