"""At hand: what was clicked last hears the keys, what is shown is what is drawn, all can be reached."""

import pytest
from boards import library_bus
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit

from boardplan.ui.canvas.signs import SignItem
from boardplan.ui.dialogs.command_dialog import CommandDialog
from boardplan.ui.dialogs.join_dialog import JoinDialog
from boardplan.ui.dialogs.keys_dialog import KeysDialog
from boardplan.ui.dialogs.new_board_dialog import NewBoardDialog
from boardplan.ui.panels.course_strip import StepButton, ToolButton
from boardplan.ui.tables.row_list import RowList

NONE, LEFT = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.LeftButton


@pytest.fixture
def bus(open_plan):
    return open_plan(library_bus())


def test_keys_are_heard_at_once_after_a_step_or_a_tool_was_clicked(bus):
    steps = {each.step: each for each in bus.bench.strip.findChildren(StepButton)}
    QTest.mouseClick(steps["wire"], LEFT)
    bus.key(Qt.Key.Key_C)
    assert bus.window.desk.tool == "draw_channel"
    tools = {each.tool.name: each for each in bus.bench.strip.findChildren(ToolButton) if each.isVisible()}
    QTest.mouseClick(tools["join"], LEFT)
    bus.key(Qt.Key.Key_Escape)
    assert bus.window.desk.tool == "select"


def test_the_section_shown_is_the_one_drawn(hands):
    hands.when_dialog(NewBoardDialog, hands.fill_new_board)
    hands.act("new")
    hands.act("step-wire")
    hands.act("tool-draw_channel")
    hands.click(200, 500)
    hands.click(700, 500)
    hands.key(Qt.Key.Key_Return)
    (channel,) = hands.plan.channels.values()
    shown = hands.bench.wire.sections.currentData()
    assert (channel.width, channel.height) == (shown.width, shown.height)


def test_what_lies_below_a_sign_can_be_dragged_and_the_sign_still_be_clicked(bus):
    plan = bus.plan
    bus.window.desk.select("HB1")
    finding = next(each for each in bus.session.review.findings if each.open and each.board)
    signs = [each for each in bus.bench.canvas.scene.items() if isinstance(each, SignItem)]
    sign = next(each for each in signs if each.isVisible() and each.finding is finding)
    at = (sign.pos().x(), sign.pos().y())
    bus.click(*at)
    assert bus.bench.findings.finding is finding
    assert bus.plan is plan


def test_a_whole_number_can_be_read_and_typed(bus):
    bus.act("step-wire")
    bus.window.desk.select("W07")
    field = bus.bench.properties.form.editor("How many alike")
    assert isinstance(field, QLineEdit)
    assert field.text() == "1"
    for typed, count in (("2", 2), ("0", 2), ("x", 2)):
        field.selectAll()
        QTest.keyClicks(field, typed)
        QTest.keyClick(field, Qt.Key.Key_Return)
        assert bus.plan.cables["W07"].count == count
        assert field.text() == "2"


def test_a_conductor_is_asked_for_again_between_other_terminals(bus):
    plan = bus.plan
    bare = plan.without(plan.cables)
    bus.session.commit(bare, "Take all cables off")
    bus.act("step-wire")
    bus.act("tool-join")
    for ends, conductor in (((("PB1", "F4"), ("NB1", "S3")), "16 mm"), ((("SH1", "SYS"), ("MP1", "BAT-")), "70 mm")):
        bus.when_dialog(JoinDialog, bus.fill_conductor(conductor))
        bus.drag(*(bus.terminal(*each) for each in ends))
    assert [each.conductor for each in bus.plan.cables.values()] == ["16", "70"]


def test_a_leg_beyond_the_exit_keeps_the_keyboard(bus):
    bus.act("step-wire")
    cable = next(each.id for each in bus.plan.cables.values() if any(hasattr(end, "legs") for end in each.ends))
    bus.window.desk.select(cable)
    QTest.qWait(1)
    beyond = bus.bench.properties.beyond
    field = next(each for each in beyond.findChildren(QLineEdit) if each.accessibleName() == "Length of leg 1")
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, "1234")
    QTest.keyClick(field, Qt.Key.Key_Return)
    for _ in range(3):  # at once, and when everything has been shown anew
        focus = bus.window.focusWidget()
        assert (focus.accessibleName(), focus.text()) == ("Length of leg 1", "1234 mm")
        QTest.qWait(100)


def test_placed_components_are_found_without_the_canvas(bus):
    bus.key(Qt.Key.Key_F7)
    placed = bus.bench.placed
    assert bus.window.focusWidget() is placed.search
    assert [row.key for row in placed.list.rows] == list(bus.plan.components)
    bus.type("busbar", placed.search)
    bus.key(Qt.Key.Key_Down, target=placed.search)
    assert bus.session.selection.active == placed.list.key
    chosen, at = placed.list.key, bus.plan.components[placed.list.key].position
    bus.key(Qt.Key.Key_Return, target=placed.list)
    bus.key(Qt.Key.Key_Right)
    assert bus.plan.components[chosen].position == (at.x + 1, at.y)
    bus.key(Qt.Key.Key_F7)
    bus.key(Qt.Key.Key_Delete, target=placed.list)
    assert chosen not in bus.plan.components


def test_an_empty_board_says_how_to_begin(hands):
    hands.when_dialog(NewBoardDialog, hands.fill_new_board)
    hands.act("new")
    hands.act("placed")
    assert "shelf" in hands.bench.placed.empty.text()
    assert not hands.bench.placed.list.isVisible()


@pytest.mark.parametrize("words", ["duplicate", "paste"])
def test_copies_hang_where_there_is_room(bus, words):
    bus.window.desk.select("SW1")
    if words == "paste":
        bus.act("copy")
    for _ in range(2):
        bus.act(words)
    copies = [each for each in bus.plan.components if each.startswith("SW") and each != "SW1"]
    assert len(copies) == 2
    overlaps = [each for each in bus.session.review.findings if each.name == "bodies-overlap"]
    assert not any(set(copies) & set(each.things) for each in overlaps)


def test_enter_presses_the_button_in_focus(hands):
    hands.window.welcome.new.setFocus()
    hands.when_dialog(NewBoardDialog, hands.fill_new_board)
    hands.key(Qt.Key.Key_Return)
    assert hands.plan.job.title == "Test board"


def test_commands_and_keys_show_the_keys_of_tools_apart_from_their_words(bus):
    seen = {}

    def read(dialog):
        seen.update({row.title: row.figure for row in dialog.findChild(RowList).rows})

    for name, sort in (("commands", CommandDialog), ("keys", KeysDialog)):
        seen.clear()
        bus.when_dialog(sort, read)
        bus.act(name)
        assert seen["Draw a channel"] == "C"
        assert seen["Go to the components on the board"] == "F7"
