"""The papers looked at in the window, chosen, and written, with the mouse and with keys."""

import json
from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from boardplan.output.papers import ALL_PAPERS


@pytest.fixture
def hands(open_plan, preferences):
    preferences.remember_text("paper", "a4")
    return open_plan(library_bus(), "pack")


def wait_for(qtbot, pages, number):
    qtbot.waitUntil(lambda: pages.number.text().startswith(f"sheet {number} of "), timeout=60_000)


def tick(hands, key):
    rows = hands.bench.pack.papers
    number = next(number for number, row in enumerate(rows.rows) if row.key == key)
    box = rows.visualRect(rows.model().index(number, 0))
    QTest.mouseClick(
        rows.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, box.topLeft() + QPoint(16, 13)
    )


def test_a_paper_is_leafed_through_and_the_board_comes_back(hands, qtbot):
    bench = hands.bench
    bench.pack.papers.setFocus()
    row = next(number for number, each in enumerate(bench.pack.papers.rows) if each.key == "holes")
    bench.pack.papers.setCurrentIndex(bench.pack.papers.model().index(row, 0))
    pages = bench.pages
    assert bench.middle is pages
    wait_for(qtbot, pages, 1)
    first = pages.drawn.page
    assert first.height() > first.width() > 300
    assert not pages.before.isEnabled()
    pages.setFocus()
    hands.key(Qt.Key.Key_PageDown)
    wait_for(qtbot, pages, 2)
    assert pages.drawn.page != first
    hands.key(Qt.Key.Key_Plus)
    qtbot.waitUntil(lambda: pages.drawn.page.width() > first.width(), timeout=60_000)
    hands.key(Qt.Key.Key_Escape)
    assert bench.middle is bench.canvas
    assert bench.pack.papers.key is None
    assert bench.canvas.view.hasFocus()


def test_a_page_is_drawn_sharp_for_the_size_it_is_shown_at(hands, qtbot):
    pages = hands.bench.pages
    hands.bench.show_pages("cables")
    wait_for(qtbot, pages, 1)
    shown = pages.findChild(type(pages._page)).width() - 48  # noqa: SLF001
    qtbot.waitUntil(lambda: pages.drawn.page.width() >= shown - 1, timeout=60_000)
    assert pages.drawn.page.width() > pages.drawn.page.height()


def test_a_job_without_work_from_behind_says_it_needs_no_back_template(open_plan, qtbot):
    plan = library_bus()
    bare = replace(plan, components={}, cables={}, accepted=())
    bench = open_plan(bare, "pack").bench
    bench.show_pages("back")
    qtbot.waitUntil(lambda: bench.pages.drawn is not None, timeout=60_000)
    assert bench.pages.drawn.count == 0
    assert "needs no such paper" in bench.pages.findChild(type(bench.pages._page)).words  # noqa: SLF001


def test_pages_follow_the_paper_that_is_chosen(hands, qtbot):
    bench = hands.bench
    bench.pack.papers.pick("template")
    bench.show_pages("template")
    wait_for(qtbot, bench.pages, 1)
    sheets = bench.pages.drawn.count
    bench.pack.choose_paper("a3")
    qtbot.waitUntil(lambda: bench.pages.drawn.count < sheets, timeout=60_000)
    assert {round(bench.pages.drawn.width), round(bench.pages.drawn.height)} == {297, 420}


def test_only_the_papers_ticked_are_written(hands, qtbot, tmp_path):
    panel = hands.bench.pack
    assert panel.papers.all_chosen
    assert panel.write.text() == "Write the job pack..."
    hands.bench.pack.papers.tick_all()
    assert not panel.write.isEnabled()
    tick(hands, "holes")
    assert panel.write.text() == "Write 1 paper..."
    tick(hands, "findings")
    assert panel.write.text() == "Write 2 papers..."
    panel.write_to(tmp_path / "some")
    qtbot.waitUntil(lambda: not panel.writing, timeout=60_000)
    names = {each["file"] for each in json.loads((tmp_path / "some" / "pack.json").read_text())["files"]}
    assert "hole-schedule.pdf" in names
    assert "findings.pdf" in names
    assert not any(name.startswith("drilling-template") for name in names)


def test_the_space_bar_ticks_what_is_picked(hands):
    rows = hands.bench.pack.papers
    rows.setFocus()
    rows.pick("labels")
    hands.key(Qt.Key.Key_Space, target=rows)
    assert "labels" not in rows.chosen
    assert len(rows.chosen) == len(ALL_PAPERS) - 1
    hands.key(Qt.Key.Key_Space, target=rows)
    assert rows.all_chosen


def test_label_stock_is_remembered_and_a_bad_file_is_named(hands, open_plan, tmp_path, preferences):
    labels = hands.bench.pack.labels
    stock = labels.choice.itemData(1)
    labels.choice.setCurrentIndex(1)
    labels.choice.activated.emit(1)
    assert labels.stock is not None
    assert preferences.text("label-stock") == stock
    broken = tmp_path / "mine.toml"
    broken.write_text("id = 3\n")
    preferences.remember_text("label-stock", str(broken))
    again = open_plan(honey_trailer(), "pack").bench.pack.labels
    assert again.stock is None
    assert str(broken) in again.told.text()
    assert again.choice.currentText() == "mine.toml"
