"""Battery trays are said in the window: added, filled in, measured back, removed; all of it one step."""

from dataclasses import replace

import pytest
from boards import honey_trailer
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.geometry.point import Point
from boardplan.model.tray import Battery, Tray, TrayBuilt, TrayExit, TrayFixing, TrayGaps
from boardplan.ui.dialogs.tray_questions import BUILT, SECTIONS
from boardplan.ui.dialogs.trays_dialog import TraysDialog

LEFT = Qt.MouseButton.LeftButton
FULL = Tray(
    "T1", "house bank", "port locker", "boat", "inch", Battery(390, 190, 240.25, 26.125, "back", "front-left"), 4, 1,
    "width", TrayGaps(10, 20, 60), 30, "front corner", "rubber", "plywood", "epoxy", 118.5, "as the rule asks",
    (TrayFixing(Point(-15, 60), "M10", "a bearer"), TrayFixing(None, "M8", "")), "two straps", (210, 630.5),
    (TrayExit("plus", "left", 120, 200, 40, "bushing", "the board"),), "within 100", "in the tray", "up and out",
    "on the middle one", "by the hatch", "2026-12-01", "yes", TrayBuilt(841, 400, None, "2026-11-20", "the owner"),
)  # fmt: skip


def with_tray(*trays):
    return replace(honey_trailer(), trays=trays)


def type_over(field, text):
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)


def choose(box, words):
    box.setFocus()
    QTest.keyClicks(box, words)


def click(button):
    QTest.mouseClick(button, LEFT)


def test_a_first_tray_is_added_filled_in_and_undone(open_plan):
    hands = open_plan(honey_trailer(), "survey")

    def fill(dialog):
        assert dialog.form is None
        assert not dialog.remove.isEnabled()
        click(dialog.add)
        form = dialog.form
        for path, text in (
            ("name", "house bank"), ("battery.length", "390"), ("battery.width", "190"), ("columns", "4"),
            ("rows", "1"), ("gaps.side", "10"), ("gaps.between", "20"), ("finished_by", "2026-12-01"),
        ):  # fmt: skip
            type_over(form.control(path), text)
        choose(form.control("along"), "short")
        click(form.exits.add)
        type_over(form.exits.lines[0][0], "plus")
        click(dialog.take)

    hands.when_dialog(TraysDialog, fill)
    click(hands.bench.survey.trays.ask)
    assert hands.plan.trays == (
        Tray(
            "T1", "house bank", battery=Battery(390, 190), columns=4, rows=1, along="width", gaps=TrayGaps(10, 20),
            exits=(TrayExit("plus"),), finished_by="2026-12-01",
        ),
    )  # fmt: skip
    assert hands.bench.survey.trays.names.text() == "T1 house bank"
    assert hands.session.history.undo_words == "Change the battery trays"
    hands.act("undo")
    assert hands.plan.trays == ()
    assert hands.bench.survey.trays.names.text() == "none to build"


def test_taking_what_is_there_changes_nothing_and_every_field_is_asked(open_plan):
    hands = open_plan(with_tray(FULL, Tray("T2")), "survey")
    before = hands.plan
    asked = []

    def fill(dialog):
        asked.extend(path for _, questions in (*SECTIONS, BUILT) for path, _ in questions)
        QTest.keyClick(dialog.choice, Qt.Key.Key_Down)
        assert dialog.form.control("id").text() == "T2"
        QTest.keyClick(dialog.choice, Qt.Key.Key_Up)
        assert dialog.form.tray() == FULL
        click(dialog.take)

    hands.when_dialog(TraysDialog, fill)
    hands.act("trays")
    assert hands.plan is before
    held = set(Tray.__dataclass_fields__) - {"battery", "gaps", "built", "exits", "fixings", "straps"}
    parts = {"battery": Battery, "gaps": TrayGaps, "built": TrayBuilt}
    held |= {f"{part}.{name}" for part, sort in parts.items() for name in sort.__dataclass_fields__}
    assert set(asked) == held


def test_what_it_must_be_inside_and_what_was_built_are_compared(open_plan):
    hands = open_plan(with_tray(FULL), "survey")
    said = []

    def fill(dialog):
        said.append((dialog.form.inside.text().splitlines(), dialog.form.off.text().splitlines()))
        width = dialog.form.control("built.width")
        for _ in range(2):
            QTest.keyClick(width, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
        said.append(dialog.form.off.text().splitlines())

    hands.when_dialog(TraysDialog, fill)
    hands.act("trays")
    # 4 batteries of 190 across, 3 gaps of 20, 10 on both sides; 390 and twice 10 deep; 240.25 and 60 high
    assert said[0][0] == [
        "Inside length: 840 mm needed.", "Inside width: 410 mm needed.", "Inside free height: 300.3 mm needed.",
    ]  # fmt: skip
    assert said[0][1] == ["Inside length: as needed.", "Inside width: 10 mm TOO SMALL."]
    assert said[1] == ["Inside length: as needed.", "Inside width: 10 mm larger than needed."]


@pytest.mark.parametrize(
    ("path", "typed", "words"),
    [
        ("columns", "four", "Across: 'four' is not a whole number."),
        ("battery.mass", "-3", "Tray T1, battery mass: "),
        ("battery.length", "long", "Length: "),
        ("finished_by", "soon", "Tray T1, finished by: "),
        ("id", "T2", "Two trays are called T2."),
    ],
)
def test_what_can_not_be_keeps_the_dialog_open_and_says_why(open_plan, path, typed, words):
    hands = open_plan(with_tray(FULL, Tray("T2")), "survey")
    before, said = hands.plan, []

    def fill(dialog):
        type_over(dialog.form.control(path), typed)
        click(dialog.take)
        said.append((dialog.isVisible(), dialog.fault.text()))

    hands.when_dialog(TraysDialog, fill)
    hands.act("trays")
    assert said[0][0]
    assert said[0][1].startswith(words)
    assert hands.plan is before


def test_another_tray_is_shown_only_once_this_one_can_be(open_plan):
    hands = open_plan(with_tray(FULL, Tray("T2")), "survey")
    seen = []

    def fill(dialog):
        type_over(dialog.form.control("rows"), "0")
        QTest.keyClick(dialog.choice, Qt.Key.Key_Down)
        seen.append((dialog.choice.currentIndex(), dialog.form.control("id").text(), dialog.fault.isVisible()))
        type_over(dialog.form.control("rows"), "2")
        QTest.keyClick(dialog.choice, Qt.Key.Key_Down)
        seen.append((dialog.choice.currentIndex(), dialog.form.control("id").text(), dialog.fault.isVisible()))
        click(dialog.remove)
        click(dialog.take)

    hands.when_dialog(TraysDialog, fill)
    hands.act("trays")
    assert seen == [(0, "T1", True), (1, "T2", False)]
    assert hands.plan.trays == (replace(FULL, rows=2),)


def test_half_a_place_of_a_fixing_is_refused(open_plan):
    hands = open_plan(with_tray(Tray("T1")), "survey")
    said = []

    def fill(dialog):
        click(dialog.form.fixings.add)
        type_over(dialog.form.fixings.lines[0][0], "40")
        click(dialog.take)
        said.append(dialog.fault.text())

    hands.when_dialog(TraysDialog, fill)
    hands.act("trays")
    assert said == ["A fixing has only one of its two measures. Fill in both, or leave both blank."]
