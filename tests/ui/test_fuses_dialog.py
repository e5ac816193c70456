"""The fuses of a component are said in the window: one line a place, one step back, blanks that stay blank."""

from dataclasses import replace

import pytest
from boards import honey_trailer
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.model.fuse import Fuse
from boardplan.ui.dialogs.fuses_dialog import FusesDialog

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def hands(open_plan):
    return open_plan(honey_trailer(), "place")


def type_over(field, text):
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)


def controls(dialog, number):
    place, *fields = dialog.table.lines[number]
    return place.text(), fields


def test_a_rating_is_typed_saved_and_undone_in_one_step(hands):
    hands.window.desk.select("FT1")
    before = hands.plan

    def fill(dialog):
        assert dialog.windowTitle() == "Fuses of FT1"
        place, fields = controls(dialog, 0)
        assert place == "FT1"
        type_over(fields[1], "125")
        type_over(fields[4], "tray lid")
        QTest.keyClick(fields[4], Qt.Key.Key_Return)

    hands.when_dialog(FusesDialog, fill)
    QTest.mouseClick(hands.bench.properties.fuses.ask, LEFT)
    (old,), (fuse,) = before.components["FT1"].fuses, hands.plan.components["FT1"].fuses
    assert (fuse.rating_a, fuse.spare) == (125.0, "tray lid")
    assert (fuse.type, fuse.voltage_v, fuse.note) == (old.type, old.voltage_v, old.note)
    assert hands.session.history.undo_words == "Change the fuses of FT1"
    hands.act("undo")
    assert hands.plan == before


def test_blanks_stay_blank_and_taking_what_is_there_changes_nothing(hands):
    hands.window.desk.select("LP1")
    before = hands.plan
    seen = []

    def fill(dialog):
        place, fields = controls(dialog, 5)
        seen.append((place, [each.text() for each in fields]))
        dialog.accept()

    hands.when_dialog(FusesDialog, fill)
    hands.act("fuses")
    assert seen == [("LP1.O6", [""] * 6)]
    assert hands.plan is before
    assert hands.session.history.undo_words is None


def test_a_fraction_is_shown_whole(hands):
    hands.window.desk.select("FT1")
    numbers = Fuse("", "class T", 2.125, 48.25, 0.75)
    component = hands.plan.components["FT1"]
    hands.session.commit(hands.plan.with_things([replace(component, fuses=(numbers,))]), "Set")

    def fill(dialog):
        assert [each.text() for each in controls(dialog, 0)[1]][1:4] == ["2.125", "48.25", "0.75"]
        dialog.accept()

    hands.when_dialog(FusesDialog, fill)
    hands.act("fuses")
    assert hands.plan.components["FT1"].fuses == (numbers,)


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [("0", "FT1: no rating is 0 A."), ("many", "Rating A: 'many' is not a number.")],
)
def test_what_can_not_be_keeps_the_dialog_open_and_says_why(hands, typed, sentence):
    hands.window.desk.select("FT1")
    said = []

    def fill(dialog):
        type_over(controls(dialog, 0)[1][1], typed)
        QTest.mouseClick(dialog.take, LEFT)
        said.append((dialog.isVisible(), dialog.fault.text()))

    before = hands.plan
    hands.when_dialog(FusesDialog, fill)
    hands.act("fuses")
    assert said[0][0]
    assert said[0][1].startswith(sentence)
    assert hands.plan is before


def test_a_component_without_fuse_places_says_so(hands):
    said = []
    hands.window.desk.said.connect(said.append)
    hands.window.desk.select("NB1")
    assert not hands.bench.properties.fuses.isVisible()
    hands.act("fuses")
    assert said[-1] == "NB1 has no fuse places and is no breaker."


def test_the_row_follows_what_is_selected_and_counts(hands):
    hands.window.desk.select("NB1")
    hands.window.desk.select("LP1")
    row = hands.bench.properties.fuses
    rated = sum(each.rating_a is not None for each in hands.plan.components["LP1"].fuses)
    assert row.isVisible()
    assert row.known.text() == f"{rated} of 6 rated"
