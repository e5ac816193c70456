"""Measured bars come back as they were kept; a file that is not right is named with the place."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.files.faults import BadFile
from boardplan.files.own_folders import settings_folder
from boardplan.files.printer_file import (
    bars_for,
    load_printers,
    save_printers,
    with_bars,
    without_bars,
)
from boardplan.model.printer_bars import PrintedBar, PrinterBars

lengths = st.floats(1, 1100)
bar = st.builds(PrintedBar, lengths, lengths, st.floats(0.97, 1.03))
names = st.text("abcdefgh ÄÖß0123", min_size=1, max_size=20).map(str.strip).filter(bool)
printers = st.lists(
    st.builds(PrinterBars, names, st.sampled_from(["a4", "letter", "roll-914"]), bar, bar, st.booleans()),
    unique_by=lambda each: (each.printer.casefold(), each.paper),
    max_size=6,
)


def one(printer="Hall laser", paper="a4", measured=149.5):
    return PrinterBars(printer, paper, PrintedBar(150, measured), PrintedBar(250, 250.25, 1.0021))


@given(printers)
def test_what_is_kept_comes_back(tmp_path_factory, kept):
    path = tmp_path_factory.getbasetemp() / "settings" / "printers.json"
    save_printers(path, kept)
    assert sorted(load_printers(path), key=repr) == sorted(kept, key=repr)
    content = path.read_bytes()
    save_printers(path, reversed(kept))
    assert path.read_bytes() == content
    assert [each.name for each in path.parent.iterdir()] == ["printers.json"]


def test_no_file_is_no_printer(tmp_path):
    assert load_printers(tmp_path / "none" / "printers.json") == ()


def test_newer_bars_take_the_place_of_older_whatever_the_capitals():
    kept = with_bars(with_bars((), one()), one(paper="a3"))
    kept = with_bars(kept, one("hall Laser", measured=150.0))
    assert len(kept) == 2
    assert bars_for(kept, "HALL LASER", "a4").short.measured == 150
    assert bars_for(kept, "Hall laser", "letter") is None
    assert bars_for(without_bars(kept, "Hall laser", "a4"), "Hall laser", "a4") is None


def spoiled(**changes):
    entry = {
        "printer": "Hall laser",
        "paper": "a4",
        "short": {"length": 150.0, "measured": 149.5, "drawn_at": 1.0},
        "long": {"length": 250.0, "measured": 250.5, "drawn_at": 1.0},
    }
    return {"format": "boardplan-printers", "version": 1, "printers": [{**entry, **changes}]}


TWICE = {**spoiled(), "printers": [spoiled()["printers"][0], spoiled(printer="hall LASER")["printers"][0]]}


@pytest.mark.parametrize(
    ("text", "place", "words"),
    [
        ("{", "line 1, column 2", "expected JSON"),
        ("[]", "", "expected a group of fields"),
        ('{"format": "boardplan-printers", "format": "x"}', "format", "given twice"),
        (json.dumps({**spoiled(), "format": "boardplan-job"}), "format", "expected 'boardplan-printers'"),
        (json.dumps({**spoiled(), "version": 2}), "version", "expected 1"),
        (json.dumps(spoiled(printer="a\nb")), "printers[0].printer", "without quotes"),
        (json.dumps(spoiled(printer="")), "printers[0].printer", "expected a text"),
        (json.dumps(spoiled(colour="red")), "printers[0].colour", "not a field"),
        (json.dumps(spoiled(long={"length": 250.0, "measured": 250.0})), "printers[0].long.drawn_at", "missing"),
        (
            json.dumps(spoiled(short={"length": 150.0, "measured": 0.0, "drawn_at": 1.0})),
            "printers[0].short.measured",
            "expected more than 0",
        ),
        (
            json.dumps(spoiled(short={"length": 150.0, "measured": "149", "drawn_at": 1.0})),
            "printers[0].short.measured",
            "expected a number",
        ),
        (
            json.dumps(spoiled(short={"length": 150.0, "measured": 149.0, "drawn_at": 1.04})),
            "printers[0].short.drawn_at",
            "expected at most 1.03",
        ),
        (json.dumps(TWICE), "printers[1]", "given before"),
    ],
)
def test_a_bad_file_is_named_with_the_place(text, place, words, tmp_path):
    path = tmp_path / "printers.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadFile) as bad:
        load_printers(path)
    assert bad.value.file == str(path)
    assert any(each.path == place and words in each.expected for each in bad.value.faults), bad.value.faults
    assert path.read_text(encoding="utf-8") == text


def test_a_file_that_is_no_text_is_named(tmp_path):
    path = tmp_path / "printers.json"
    path.write_bytes(b'{"format": "\xff"}')
    with pytest.raises(BadFile, match="byte 12: expected UTF-8"):
        load_printers(path)


@pytest.mark.parametrize(
    ("environment", "platform", "folder"),
    [
        ({}, "linux", "/home/me/.config/boardplan"),
        ({"XDG_CONFIG_HOME": "/cfg"}, "linux", "/cfg/boardplan"),
        ({"XDG_CONFIG_HOME": "cfg"}, "linux", "/home/me/.config/boardplan"),
        ({}, "darwin", "/home/me/Library/Application Support/boardplan"),
        ({"APPDATA": "/roaming"}, "win32", "/roaming/boardplan"),
        ({}, "win32", "/home/me/AppData/Roaming/boardplan"),
    ],
)
def test_the_folder_is_where_the_system_keeps_settings(environment, platform, folder):
    """XDG Base Directory Specification 0.8: $XDG_CONFIG_HOME, else ~/.config; a path not absolute is ignored."""
    assert settings_folder(environment, platform, Path("/home/me")) == Path(folder)
