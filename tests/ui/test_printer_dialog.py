"""Measuring a printer from the window: the pack that follows is ready to drill, or says why not."""

import json

import pytest
from boards import honey_trailer

from boardplan.files.printer_file import load_printers, save_printers
from boardplan.model.printer_bars import PrintedBar, PrinterBars
from boardplan.output.printing.paper import PAPERS
from boardplan.ui.dialogs.printer_dialog import PrinterDialog


@pytest.fixture
def settings(tmp_path, monkeypatch):
    """A settings folder of the test's own."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "own"))
    monkeypatch.setattr("boardplan.files.own_folders.sys.platform", "linux")
    return tmp_path / "own" / "boardplan" / "printers.json"


def fill(dialog, name="Hall laser", x="150", y="250"):
    dialog.name.setText(name)
    dialog.bar_x.setText(x)
    dialog.bar_y.setText(y)


def test_a_printer_is_measured_corrected_and_checked(settings, open_plan, tmp_path):
    hands = open_plan(honey_trailer(), "pack")
    row = hands.bench.pack.printer
    row.show_paper(PAPERS["a4"])
    assert row.told.text() == "Not ready to drill: no printer named, no bars measured."

    def first(dialog):
        fill(dialog, x="149.4")
        assert "From now on drawn 100.40 % in x, 100.00 % in y" in dialog.told.text()
        dialog.keep.click()

    hands.when_dialog(PrinterDialog, first)
    row.measure.click()
    assert row.told.text() == "Not ready to drill: correction not yet checked by a print."
    assert row.choice.currentText() == "Hall laser"

    def second(dialog):
        assert dialog.name.text() == "Hall laser"
        offered = [dialog.drawn.itemText(each) for each in range(dialog.drawn.count())]
        assert offered == ["100.40 % in x, 100.00 % in y", "100.00 % in x, 100.00 % in y"]
        dialog.write_sheet(tmp_path / "sheet.pdf")
        fill(dialog, x="150,0", y="250.1")
        assert dialog.told.text() == "Both bars are true within 0.3 mm."
        dialog.keep.click()

    hands.when_dialog(PrinterDialog, second)
    row.measure.click()
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF")
    assert row.told.text().startswith("Bars true within 0.3 mm: printer Hall laser on A4; error left over")
    assert load_printers(settings)[0].factors == (1.004, 1.0)


def test_the_pack_is_written_for_the_printer_that_is_chosen(settings, open_plan, tmp_path, qtbot, preferences):
    bars = PrinterBars("Hall laser", "a4", PrintedBar(150, 150.1, 1.002), PrintedBar(250, 250))
    save_printers(settings, [bars])
    preferences.remember_text("printer", "Hall laser")
    panel = open_plan(honey_trailer(), "pack").bench.pack
    panel.printer.show_paper(PAPERS["a4"])
    panel.write_to(tmp_path / "papers")
    qtbot.waitUntil(lambda: not panel.writing, timeout=60_000)
    said = json.loads((tmp_path / "papers" / "pack.json").read_text())["printing"]
    assert said["bars_true"] is True
    assert said["words"] == panel.printer.told.text()
    panel.printer.show_paper(PAPERS["letter"])
    assert panel.printer.told.text() == "Not ready to drill: bars not measured on this printer and paper."


@pytest.mark.parametrize(
    ("typed", "words", "may_keep"),
    [
        ({"x": ""}, "", False),
        ({"x": "long"}, "'long' is not a length", False),
        ({"y": "-250"}, "is not what a bar measures", False),
        ({"y": "1000000"}, "is not what a bar measures", False),
        ({"name": "it's"}, "without quotes", False),
        ({"x": "140"}, "'shrink oversized' was most likely on", True),
        ({}, "Both bars are true", True),
    ],
)
def test_what_is_typed_is_answered_at_once(typed, words, may_keep, settings, qtbot):
    dialog = PrinterDialog(PAPERS["a4"], "mm", "")
    qtbot.addWidget(dialog)
    fill(dialog, **typed)
    assert words in dialog.told.text()
    assert dialog.keep.isEnabled() is may_keep
    if not may_keep:
        dialog.accept()
        assert not settings.exists()


def test_inch_people_measure_the_inch_bars(settings, qtbot):
    dialog = PrinterDialog(PAPERS["letter"], "inch", "P")
    qtbot.addWidget(dialog)
    fill(dialog, "P", "5", "9")
    dialog.accept()
    assert load_printers(settings)[0].short.length == 127.0
    assert load_printers(settings)[0].ready


def test_a_broken_file_of_printers_is_named(settings, open_plan):
    settings.parent.mkdir(parents=True)
    settings.write_text("{")
    row = open_plan(honey_trailer(), "pack").bench.pack.printer
    row.show_paper(PAPERS["a4"])
    assert str(settings) in row.told.text()
    assert not row.printing.ready
