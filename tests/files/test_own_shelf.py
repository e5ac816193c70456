"""A person's own kinds: kept whole, read with every fault named, before those that come with the program."""

import json
import os
from dataclasses import replace

import pytest

from boardplan.files import own_shelf
from boardplan.files.faults import BadFile
from boardplan.files.own_shelf import (
    drop_kind,
    keep_kind,
    own_shelf_folder,
    read_kind,
    read_own_shelf,
    shelf_in_reach,
    unfit_words,
    whole_shelf,
)
from boardplan.files.shelf_file import bundled_shelf

KINDS = list(bundled_shelf().kinds.values())


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_every_kind_comes_back_as_it_was_kept(kind, tmp_path):
    assert unfit_words(kind) == ""
    path = keep_kind(kind, tmp_path / "shelf")
    assert read_kind(path) == kind


def test_one_file_that_is_broken_spoils_no_other(tmp_path):
    keep_kind(KINDS[0], tmp_path)
    (tmp_path / "a.kind.json").write_text('{"format": "boardplan-kind", "version": 1}')
    own = read_own_shelf(tmp_path)
    assert list(own.kinds) == [KINDS[0].id]
    (bad,) = own.bad
    assert str(tmp_path / "a.kind.json") in str(bad)
    assert (tmp_path / "a.kind.json").exists()


def changed(path, change):
    data = json.loads(path.read_text())
    change(data)
    path.write_text(json.dumps(data))


@pytest.mark.parametrize(
    ("change", "place"),
    [
        (lambda data: data.update(version=2), "version"),
        (lambda data: data.update(format="other"), "format"),
        (lambda data: data["kind"].update(depth=-1), "depth"),
        (lambda data: data["kind"].pop("name"), "name"),
        (lambda data: data["kind"]["terminals"].append(data["kind"]["terminals"][0]), "named twice"),
    ],
)
def test_a_fault_is_named_with_its_place(change, place, tmp_path):
    path = keep_kind(next(each for each in KINDS if each.terminals), tmp_path)
    changed(path, change)
    with pytest.raises(BadFile, match=place):
        read_kind(path)


@pytest.mark.parametrize("content", [b"", b"{", b"\xff\xfe", b"[]", b'{"a": 1, "a": 2}'])
def test_what_is_no_kind_is_refused(content, tmp_path):
    (tmp_path / "x.kind.json").write_bytes(content)
    with pytest.raises(BadFile):
        read_kind(tmp_path / "x.kind.json")


def test_own_kinds_come_first_and_win(tmp_path):
    mine = replace(KINDS[5], name="Mine")
    shelf = whole_shelf([mine])
    assert next(iter(shelf.kinds.values())) is mine
    assert len(shelf.kinds) == len(KINDS)
    assert shelf.conductors == bundled_shelf().conductors
    drop_kind(mine.id, tmp_path)


def test_the_shelf_in_reach_follows_its_files(tmp_path, monkeypatch):
    monkeypatch.setattr(own_shelf, "own_shelf_folder", lambda: tmp_path)
    assert shelf_in_reach() is bundled_shelf()
    path = keep_kind(replace(KINDS[0], id="mine", name="first"), tmp_path)
    assert shelf_in_reach().kinds["mine"].name == "first"
    assert shelf_in_reach() is shelf_in_reach()
    keep_kind(replace(KINDS[0], id="mine", name="second"), tmp_path)
    os.utime(path, ns=(1, 1))
    assert shelf_in_reach().kinds["mine"].name == "second"
    drop_kind("mine", tmp_path)
    assert shelf_in_reach() is bundled_shelf()


def test_it_is_kept_among_a_persons_settings(monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    assert own_shelf_folder().parts[-2:] == ("boardplan", "shelf")


def test_what_no_file_can_hold_is_named():
    assert "name" in unfit_words(replace(KINDS[0], name="x" * 121))
