"""Wiring by hand in the window: pushing legs, pins and their handles, lengths and fills where they are wanted."""

from dataclasses import replace
from itertools import pairwise

import pytest
from boards import library_bus, lookout_cabin
from PySide6.QtCore import Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QApplication, QLabel, QToolTip

from boardplan.geometry.point import Box, Point
from boardplan.routing.lengths.length_sum import explain
from boardplan.routing.together.crossings import crossings_of
from boardplan.ui.canvas.signs import glyph_of, glyph_path


@pytest.fixture
def cabin(open_plan):
    plan = lookout_cabin()
    return open_plan(plan.with_things([replace(each, pins=()) for each in plan.cables.values()]), "wire")


def middle_leg(hands, cable):
    points = hands.session.known.ways[cable].points
    number = max(range(1, len(points) - 2), key=lambda each: points[each].distance_to(points[each + 1]))
    a, b = points[number : number + 2]
    return Point((a.x + b.x) / 2, (a.y + b.y) / 2), a.y == b.y


def under_drag(hands, start, to):
    """Press, go there with the button down, and stay."""
    hands.move(*start)
    hands.press(*start)
    release, hands.release = hands.release, lambda *_: None
    hands.drag(start, to)
    hands.release = release
    hands.bench.canvas.host.flush()


def test_a_leg_is_grabbed_and_pushed_with_its_length_beside_the_pointer(cabin):
    start, level = middle_leg(cabin, "W30")
    to = (start.x, start.y + 20) if level else (start.x + 20, start.y)
    under_drag(cabin, tuple(start), to)
    plates = cabin.bench.canvas.scene.changes.plates
    assert [each.change.cable for each in plates][:1] == ["W30"]
    assert plates[0].at.distance_to(Point(*to)) * cabin.bench.canvas.view.scale_now < 150
    assert cabin.session.selection.ids == ("W30",)
    cabin.release(*to)
    assert cabin.session.words == ("Pin the way of W30",)
    assert cabin.plan.cables["W30"].pins
    assert cabin.bench.canvas.scene.changes.plates == ()


def test_where_it_can_not_lie_is_framed_and_said(cabin):
    start, level = middle_leg(cabin, "W30")
    body = cabin.centre("EB1")
    to = (start.x, body.y) if level else (body.x, start.y)
    under_drag(cabin, tuple(start), to)
    scene = cabin.bench.canvas.scene
    words = cabin.bench.canvas.status.words
    assert "too tight" in words or "over " in words
    assert not scene.over.stuck.isEmpty()
    cabin.key(Qt.Key.Key_Escape, target=cabin.bench.canvas.view)
    assert scene.over.stuck.isEmpty()
    assert not cabin.plan.cables["W30"].pins
    cabin.release(*to)


def push(hands, cable, by=20):
    start, level = middle_leg(hands, cable)
    hands.drag(tuple(start), (start.x, start.y + by) if level else (start.x + by, start.y))


def test_pins_are_small_handles_of_the_selected_cable_alone(cabin):
    push(cabin, "W30")
    handles = cabin.bench.canvas.scene.handles.handles
    corners = [each.at for each in handles if each.corner]
    assert corners == list(cabin.plan.cables["W30"].pins)
    cabin.window.desk.select("W22")
    assert not any(each.corner for each in cabin.bench.canvas.scene.handles.handles)


def test_del_takes_out_the_corner_that_was_clicked_and_undo_brings_it_back(cabin):
    push(cabin, "W30")
    before = cabin.plan.cables["W30"].pins
    corner = cabin.session.known.ways["W30"].points[2]
    cabin.click(*corner)
    assert any(each.chosen for each in cabin.bench.canvas.scene.handles.handles)
    cabin.key(Qt.Key.Key_Delete, target=cabin.bench.canvas.view)
    after = cabin.plan.cables["W30"].pins
    assert len(after) < len(before)
    assert "W30" in cabin.plan.cables, "the cable itself stays"
    cabin.act("undo")
    assert cabin.plan.cables["W30"].pins == before


def test_del_without_a_corner_removes_the_cable(cabin):
    push(cabin, "W30")
    cabin.window.desk.select("W30")
    cabin.key(Qt.Key.Key_Delete, target=cabin.bench.canvas.view)
    assert "W30" not in cabin.plan.cables


@pytest.mark.parametrize("way", ["key", "action"])
def test_one_key_lays_the_selected_cables_as_the_program_would(cabin, way):
    found = cabin.session.known.ways["W30"].points
    push(cabin, "W30")
    if way == "key":
        cabin.key(Qt.Key.Key_U, target=cabin.bench.canvas.view)
    else:
        cabin.act("unpin")
    assert cabin.plan.cables["W30"].pins == ()
    assert cabin.session.known.ways["W30"].points == found
    assert cabin.session.words[0] == "Lay W30 as the program would"
    cabin.act("undo")
    assert cabin.plan.cables["W30"].pins


def test_without_a_pin_the_key_says_so_and_leaves_no_step(cabin):
    cabin.window.desk.select("W30")
    cabin.key(Qt.Key.Key_U, target=cabin.bench.canvas.view)
    assert cabin.session.words == ()
    assert cabin.bench.canvas.status.words == "No selected cable is pinned."


def test_a_dragged_component_writes_what_its_cables_come_to(open_plan):
    hands = open_plan(library_bus())
    start = hands.centre("LP1")
    to = (start.x + 20, start.y + 12)
    under_drag(hands, tuple(start), to)
    known, before = hands.session.known, hands.session.settled
    changed = {name for name, length in known.lengths.items() if length.cut != before.lengths[name].cut}
    assert changed
    shown = {each.change.cable: each for each in hands.bench.canvas.scene.changes.plates}
    assert set(shown) <= changed
    assert shown
    for name, plate in shown.items():
        assert f"{known.lengths[name].cut:.0f} mm" in plate.words
    words = hands.bench.canvas.status.change_words
    assert words.startswith(f"{len(changed)} cable")
    hands.key(Qt.Key.Key_Escape, target=hands.bench.canvas.view)
    assert hands.bench.canvas.status.change_words == ""
    hands.release(*to)


def tip_at(hands, x, y):
    view = hands.bench.canvas.view
    at = hands.px(x, y)
    QToolTip.hideText()
    event = QHelpEvent(QHelpEvent.Type.ToolTip, at, view.viewport().mapToGlobal(at))
    QApplication.sendEvent(view.viewport(), event)
    return QToolTip.text()


def test_over_a_cable_its_length_is_explained_line_by_line(cabin):
    start, level = middle_leg(cabin, "W30")
    text = tip_at(cabin, *(start.moved(-45, 0) if level else start.moved(0, -45)))
    length = cabin.session.known.lengths["W30"]
    assert "W30" in text
    assert text.count("<tr>") == len(length.parts)
    assert 'align="right"' in text


def test_over_a_channel_its_section_is_told(open_plan):
    hands = open_plan(library_bus(), "wire")
    channel = hands.plan.channels["RW1"]
    fullest = hands.session.known.fills["RW1"].fullest
    at = hands.plan.on_wall("A", Point(channel.line[0].x + (fullest.start + fullest.end) / 2, channel.line[0].y))
    text = tip_at(hands, *at)
    assert f"{fullest.percent:.1f} % full" in text.replace(".0 %", " %") or f"{round(fullest.percent)} % full" in text
    assert all(name in text for name in fullest.cables)


def test_a_row_of_the_cable_table_explains_its_length(cabin):
    row = next(each for each in cabin.bench.wire.cables.rows if each.key == "W22")
    length = cabin.session.known.lengths["W22"]
    assert row.spoken == "\n".join(explain(length))
    assert row.tip.count("<tr>") == len(length.parts)


def test_the_inspector_says_why_a_cable_lies_so(cabin):
    cabin.window.desk.select("W22")
    labels = [each.text() for each in cabin.bench.properties.sum.findChildren(QLabel)]
    why = cabin.session.known.ways["W22"].why
    assert why
    assert any(why.rstrip(".") in each for each in labels)
    assert cabin.bench.properties.sum.accessibleDescription()


def test_a_loop_is_an_edit_of_its_own(cabin):
    cabin.window.desk.select("W22")
    form = cabin.bench.properties.form
    box = form.editor("Loop, first end")
    box.setCurrentIndex(box.findText("service loop"))
    box.activated.emit(box.currentIndex())
    assert cabin.plan.cables["W22"].start.loop.sort == "service"
    assert len(cabin.session.words) == 1
    cabin.act("undo")
    assert cabin.plan.cables["W22"].start.loop is None


def test_levels_are_seen_in_the_wire_step_alone(open_plan):
    hands = open_plan(library_bus(), "wire")
    level = hands.bench.canvas.scene.item("channel fill", "RW1")
    assert level.isVisible()
    hands.window.go_to("place")
    assert not level.isVisible()


def test_signs_about_cables_bear_what_they_are_about(cabin):
    plan = cabin.plan
    findings = [each for each in cabin.session.known.findings if any(name in plan.cables for name in each.things)]
    assert findings
    glyphs = {glyph_of(each, plan.cables) for each in findings}
    assert glyphs - {""}
    paths = [glyph_path(each) for each in ("bend", "leg", "lugs", "crossing", "way")]
    assert all(not path.isEmpty() for path in paths)
    assert all(a != b for a in paths for b in paths if a is not b), "each has a shape of its own"


def test_a_finding_that_is_clicked_brings_its_place_into_sight(cabin):
    finding = next(each for each in cabin.session.known.findings if each.board and glyph_of(each, cabin.plan.cables))
    view = cabin.bench.canvas.view
    cabin.bench.canvas.zoom(6)
    cabin.bench.findings.list.pick(None)
    cabin.window.desk.point_to(finding)
    at = view.px_at(cabin.plan.on_wall(finding.board, finding.place))
    assert view.viewport().rect().contains(at.toPoint())


@pytest.mark.parametrize("name", ["W22", "W24", "W30"])
def test_a_selected_cable_can_be_grabbed_by_the_middle_of_each_leg(cabin, name):
    cabin.window.desk.select(name)
    points = cabin.session.known.ways[name].points
    handles = cabin.bench.canvas.scene.handles.handles
    assert [each.leg for each in handles] == [a.distance_to(b) for a, b in pairwise(points)]


def test_crossings_are_marked_where_they_are_once_the_hand_rests(cabin, qtbot):
    marks = cabin.bench.canvas.scene.crossings
    found = crossings_of(cabin.plan, cabin.session.known.ways)
    assert found
    qtbot.waitUntil(lambda: marks.crossings == found, timeout=20000)
    askew = next((each for each in found if not each.square), found[0])
    cabin.bench.canvas.zoom(3)
    cabin.bench.canvas.view.show_place(Box(*askew.at, *askew.at))
    assert marks.crossing_at(askew.at, 1.0).at.distance_to(askew.at) < 8
    cabin.window.go_to("place")
    assert marks.crossings == ()


def test_a_mark_of_a_crossing_is_no_wider_than_the_cable_unless_the_cable_is_selected(cabin, qtbot):
    marks = cabin.bench.canvas.scene.crossings
    qtbot.waitUntil(lambda: bool(marks.crossings), timeout=20000)
    square = next(each for each in marks.crossings if each.square)
    assert marks.share_of(square, 6.0, 0.5) == 0
    assert marks.share_of(square, 8.0, 1.0) == 1
    cabin.window.desk.select(square.cables[0])
    assert marks.share_of(square, 6.0, 0.5) == 1
