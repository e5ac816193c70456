"""Where the piece in hand may lie: shown while it is carried, true for each turn, said in words where there is none."""

import pytest
from boards import library_bus
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QColor, QMouseEvent
from PySide6.QtWidgets import QApplication
from shapely import Point as Spike

from boardplan.drawing.palette import colour
from boardplan.editing.room_in_hand import room_of
from boardplan.editing.survey_edits import Sheet, new_plan
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.board import Material
from boardplan.ui.canvas import room_look
from boardplan.ui.canvas.room_item import RoomItem

SOCKET = bundled_shelf().kinds["socket-outlet-double"]


def canvas_of(hands):
    return hands.bench.canvas


def carried(hands, qtbot, kind, at):
    """Take a kind in hand and carry it to a place of the wall; wait for its room."""
    canvas = canvas_of(hands)
    canvas.host.take_kind(kind)
    canvas.host.carry_to(Point(*at))
    qtbot.waitUntil(lambda: canvas.scene.room.room is not None, timeout=10_000)
    return canvas


def low_board(width, height):
    return new_plan("Low", Sheet(width, height, 18.0, Material("plywood", 12.0), None), library_bus().rules)


def test_the_room_of_the_piece_in_hand_is_shown_and_true(open_plan, qtbot):
    hands = open_plan(library_bus())
    canvas = carried(hands, qtbot, SOCKET, (300, 200))
    assert not canvas.scene.middle.fits
    inside = canvas.scene.room.room.representative_point()
    canvas.host.point(Point(round(inside.x), round(inside.y)))
    assert canvas.scene.middle.fits
    placed = hands.session.plan.components["SO1"]
    found = [each for each in hands.session.review.findings if each.severity == "stop" and "SO1" in each.things]
    assert not found, placed
    canvas.host.drop()
    assert canvas.scene.room.room is None
    assert canvas.scene.middle.at is None


def test_it_is_drawn_with_lines_not_by_colour_alone(open_plan, qtbot):
    hands = open_plan(low_board(900, 600))
    canvas = carried(hands, qtbot, SOCKET, (450, 300))
    low = canvas.view.px_at(Point(150, 120)).toPoint()
    high = canvas.view.px_at(Point(330, 240)).toPoint()
    image = canvas.view.viewport().grab().toImage()
    tones = {image.pixelColor(x, y).lightness() for x in range(low.x(), high.x()) for y in range(high.y(), low.y())}
    assert max(tones) - min(tones) > 40
    assert QColor(colour("room", "light")).isValid()


def test_a_turn_that_fits_is_named_where_the_piece_has_no_room_as_it_is_turned(open_plan, qtbot):
    hands = open_plan(low_board(900, 150))
    tall = bundled_shelf().kinds["class-t-fuse-block"]
    canvas = carried(hands, qtbot, tall, (450, 75))
    qtbot.waitUntil(lambda: "No room" in canvas.status.words, timeout=10_000)
    assert "No room upright; turned by 90° or 270° there is" in canvas.status.words
    hands.key(Qt.Key.Key_R, target=canvas.view)
    qtbot.waitUntil(lambda: "No room" not in canvas.status.words, timeout=10_000)
    qtbot.waitUntil(lambda: canvas.scene.room.room is not None and not canvas.scene.room.room.is_empty)
    assert canvas.scene.middle.fits


def test_where_nothing_fits_however_it_is_turned_that_is_said(open_plan, qtbot):
    hands = open_plan(low_board(300, 60))
    canvas = carried(hands, qtbot, SOCKET, (150, 30))
    qtbot.waitUntil(lambda: "No room however it is turned" in canvas.status.words, timeout=10_000)
    canvas.host.cancel()
    assert "No room" not in canvas.status.words


def test_a_component_that_is_dragged_does_not_bar_its_own_place(open_plan, qtbot):
    hands = open_plan(library_bus())
    canvas = canvas_of(hands)
    start = hands.centre("HB1")
    hands.move(*start)
    hands.press(*start)
    for step in (5, 10, 15):
        at = QPointF(hands.px(start.x + step, start.y))
        moved = QMouseEvent(
            QEvent.Type.MouseMove,
            at,
            QPointF(hands.viewport.mapToGlobal(at.toPoint())),
            Qt.MouseButton.NoButton,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )
        QApplication.sendEvent(hands.viewport, moved)
        canvas.host.flush()
    qtbot.waitUntil(lambda: canvas.scene.room.room is not None, timeout=10_000)
    assert canvas.scene.room.room.covers(Spike(start))
    hands.release(start.x + 15, start.y)
    assert canvas.scene.room.room is None


def test_it_is_kept_for_each_turn_and_worked_out_anew_after_an_edit(open_plan, qtbot, monkeypatch):
    asked = []

    def counted(plan, component):
        asked.append(component.turn)
        return room_of(plan, component)

    monkeypatch.setattr(room_look, "room_of", counted)
    hands = open_plan(low_board(900, 600))
    canvas = carried(hands, qtbot, SOCKET, (450, 300))
    host = canvas.host
    for _ in range(4):
        hands.key(Qt.Key.Key_R, target=canvas.view)
        qtbot.waitUntil(lambda: canvas.scene.room.room is not None, timeout=10_000)
    host.carry_to(Point(300, 200))
    assert len(asked) == len(set(asked))
    first = canvas.scene.room.room
    host.drop()
    canvas = carried(hands, qtbot, SOCKET, (450, 300))
    assert canvas.scene.room.room.area < first.area


def test_it_can_be_switched_off_and_stays_so(open_plan, qtbot):
    hands = open_plan(library_bus())
    canvas = carried(hands, qtbot, SOCKET, (300, 200))
    hands.act("room")
    assert canvas.scene.room.room is None
    assert canvas.scene.middle.at is None
    canvas.host.carry_to(Point(320, 200))
    assert canvas.scene.room.room is None
    assert hands.window.preferences.text("room in hand") == "off"
    hands.act("room")
    qtbot.waitUntil(lambda: canvas.scene.room.room is not None, timeout=10_000)


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_the_item_shows_nothing_for_an_empty_room(theme):
    item = RoomItem(1)
    item.show_room(Spike(0, 0).buffer(0), theme)
    assert not item.holds(Point(0, 0))


def test_the_job_may_be_closed_while_a_room_is_worked_out(open_plan, qtbot):
    hands = open_plan(library_bus())
    canvas = canvas_of(hands)
    canvas.host.take_kind(SOCKET)
    canvas.host.carry_to(Point(300, 200))
    hands.window.clear_bench()
    qtbot.wait(300)
    assert hands.window.workbench is None
