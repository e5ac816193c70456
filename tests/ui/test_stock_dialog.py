"""What is at hand, said in the window: the cut list names it, and it can be undone."""

import pytest
from boards import library_bus
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.ui.dialogs.stock_dialog import StockDialog


@pytest.fixture
def hands(open_plan):
    return open_plan(library_bus(), "pack")


def type_reel(line, length, count, name):
    _, how_long, how_many, written, _ = line
    how_long.setFocus()
    QTest.keyClicks(how_long, length)
    QTest.keyClick(how_long, Qt.Key.Key_Tab)
    how_many.setText(count)
    written.setText(name)


def test_a_reel_is_added_used_and_undone(hands):
    def fill(dialog):
        QTest.mouseClick(dialog.reels.table.add, Qt.MouseButton.LeftButton)
        line = dialog.reels.table.lines[0]
        assert line[0].currentText() == "70 mm² (2/0 AWG) fine-strand, black"
        type_reel(line, "25 m", "2", "drum 7")
        dialog.accept()

    hands.when_dialog(StockDialog, fill)
    hands.act("stock")
    (reel,) = hands.plan.stock.cables
    assert (reel.length, reel.count, reel.name, reel.colour) == (25_000.0, 2, "drum 7", "black")
    assert hands.session.history.undo_words == "Change what is at hand"
    hands.act("undo")
    assert hands.plan.stock.cables == ()


def test_a_line_without_a_length_keeps_the_dialog_open_and_says_why(hands):
    said = []

    def fill(dialog):
        QTest.mouseClick(dialog.reels.table.add, Qt.MouseButton.LeftButton)
        dialog.accept()
        said.append((dialog.isVisible(), dialog._fault.text()))  # noqa: SLF001
        type_reel(dialog.reels.table.lines[0], "3 m", "two", "")
        dialog.accept()
        said.append((dialog.isVisible(), dialog._fault.text()))  # noqa: SLF001
        QTest.mouseClick(dialog.reels.table.lines[0][-1], Qt.MouseButton.LeftButton)
        assert dialog.reels.table.lines == []
        dialog.accept()

    hands.when_dialog(StockDialog, fill)
    before = hands.plan
    hands.act("stock")
    assert said == [
        (True, "How long is a reel? A length is needed."),
        (True, "How many: 'two' is not a whole number."),
    ]
    assert hands.plan is before
