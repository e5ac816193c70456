"""Where parts come from is said in the window: listed, searched, marked, refused, undone; the pack panel follows."""

import pytest
from boards import honey_trailer
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.checks.review import review_of
from boardplan.editing.supply_edits import mark_supply
from boardplan.model.supply import Supply
from boardplan.output.parts.parts_list import parts_list
from boardplan.ui.dialogs.supply_dialog import SupplyDialog, needed_parts

LEFT = Qt.MouseButton.LeftButton
ORDERED = Supply("fastener #8x19", "ordered", None, "2026-12-04")
STRAY = Supply("unit nowhere", "stock")


@pytest.fixture
def hands(open_plan):
    return open_plan(mark_supply(honey_trailer(), ORDERED), "pack")


def line_of(dialog, key):
    number = next(number for number, each in enumerate(dialog.parts) if each.key == key)
    return dialog.table.lines[number][2:]


def choose(box, words):
    box.setFocus()
    QTest.keyClicks(box, words)


def test_every_part_that_has_to_come_from_somewhere_is_listed_once_and_orders_first():
    plan = mark_supply(mark_supply(honey_trailer(), ORDERED), STRAY)
    parts = parts_list(review_of(plan))
    listed = needed_parts(parts)
    keys = [each.key for each in listed]
    assert keys[0] == ORDERED.part
    assert len(keys) == len(set(keys))
    assert set(keys) == {each.key for each in parts.parts if not each.own or each.mark} | {STRAY.part}
    assert (listed[-1].key, listed[-1].amount) == (STRAY.part, "not needed")


def test_a_part_is_found_marked_and_undone_in_one_step(hands):
    before = hands.plan

    def fill(dialog):
        QTest.keyClicks(dialog.search, "class t fuse block")
        assert [dialog.parts[number].words for number in dialog.found] == ["Class T fuse block"]
        QTest.keyClick(dialog.search, Qt.Key.Key_Return)
        state = dialog.focusWidget()
        assert state.accessibleName() == "comes from, Class T fuse block"
        choose(state, "orde")
        _, _, date, substitute, note = line_of(dialog, dialog.parts[dialog.found[0]].key)
        for field, text in ((date, "2026-12-01"), (substitute, "none"), (note, "by post")):
            QTest.keyClicks(field, text)
        QTest.keyClick(note, Qt.Key.Key_Return)

    hands.when_dialog(SupplyDialog, fill)
    hands.act("supply")
    (mark,) = (each for key, each in hands.plan.supply.items() if key != ORDERED.part)
    assert mark.part.startswith("unit ")
    assert (mark.state, mark.count, mark.date, mark.substitute, mark.note) == (
        "ordered", None, "2026-12-01", "none", "by post",
    )  # fmt: skip
    assert hands.session.history.undo_words == "Change where parts come from"
    assert hands.bench.pack.supply.word.text() == "2 parts are ordered."
    hands.act("undo")
    assert hands.plan.supply == before.supply
    assert hands.bench.pack.supply.word.text() == "1 part is ordered."


def test_the_word_on_leaving_once_nothing_is_on_order(hands):
    def fill(dialog):
        choose(line_of(dialog, ORDERED.part)[0], "in")
        QTest.mouseClick(dialog.take, LEFT)

    assert hands.bench.pack.supply.word.text() == "1 part is ordered."
    hands.when_dialog(SupplyDialog, fill)
    QTest.mouseClick(hands.bench.pack.supply.ask, LEFT)
    assert hands.plan.supply[ORDERED.part].state == "stock"
    unmarked = parts_list(hands.session.review).unmarked
    words = f"Ready to leave as far as the load-out list knows; {unmarked} parts have no mark."
    assert hands.bench.pack.supply.word.text() == words


def test_all_lines_shown_are_marked_and_hidden_ones_are_not(hands):
    shown = []

    def fill(dialog):
        QTest.keyClicks(dialog.search, "pan head")
        shown.extend(dialog.parts[number].key for number in dialog.found)
        visible = [number for number, line in enumerate(dialog.table.lines) if not line[0].isHidden()]
        assert visible == dialog.found
        choose(dialog.all_shown, "boug")
        QTest.mouseClick(dialog.take, LEFT)

    hands.when_dialog(SupplyDialog, fill)
    hands.act("supply")
    assert len(shown) > 1
    assert set(hands.plan.supply) == {*shown, ORDERED.part}
    assert all(hands.plan.supply[each].state == "bought" for each in shown)


@pytest.mark.parametrize(
    ("state", "date", "sentence"),
    [
        ("orde", "next week", "'next week' is not a date"),
        ("nobo", "2026-12-01", "#8 x 19 mm pan head: say where it comes from"),
    ],
)
def test_what_can_not_be_keeps_the_dialog_open_and_says_why(hands, state, date, sentence):
    said = []

    def fill(dialog):
        line = line_of(dialog, ORDERED.part)
        choose(line[0], state)
        line[2].selectAll()
        QTest.keyClicks(line[2], date)
        QTest.mouseClick(dialog.take, LEFT)
        said.append((dialog.isVisible(), dialog.fault.text()))

    before = hands.plan
    hands.when_dialog(SupplyDialog, fill)
    hands.act("supply")
    assert said[0][0]
    assert said[0][1].startswith(sentence)
    assert hands.plan is before


def test_a_mark_on_what_is_not_needed_can_be_taken_away(open_plan):
    hands = open_plan(mark_supply(honey_trailer(), STRAY), "pack")

    def fill(dialog):
        choose(line_of(dialog, STRAY.part)[0], "nobo")
        QTest.mouseClick(dialog.take, LEFT)

    hands.when_dialog(SupplyDialog, fill)
    hands.act("supply")
    assert hands.plan.supply == {}
