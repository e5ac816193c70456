"""Unsaved work kept aside: whole or not at all, offered only when nobody holds it, in the words it was kept with."""

import json
import os
import signal
import subprocess
import sys
import time
from datetime import UTC, datetime, timedelta

import pytest
from boards import library_bus

from boardplan.files.faults import BadFile
from boardplan.files.hold import hold_for, take_hold
from boardplan.files.rescue import Rescue, left_behind, rescued_plan, throw_away

NOW = datetime(2026, 11, 9, 7, 5, tzinfo=UTC)


@pytest.fixture(scope="module")
def plan():
    return library_bus()


def test_what_is_kept_is_offered_once_nobody_holds_it(plan, tmp_path):
    file = tmp_path / "bus.json"
    file.write_text("{}")
    rescue = Rescue(tmp_path / "rescue")
    rescue.keep(plan, file, NOW)
    assert left_behind(tmp_path / "rescue") == ()
    rescue.close()
    (left,) = left_behind(tmp_path / "rescue")
    assert (left.title, left.file, left.kept_at) == ("Library bus", file, NOW)
    assert left.file_saved_at == datetime.fromtimestamp(file.stat().st_mtime, UTC)
    assert rescued_plan(left) == plan
    throw_away(left)
    assert left_behind(tmp_path / "rescue") == ()
    assert list((tmp_path / "rescue").iterdir()) == []


def test_what_is_saved_is_not_offered(plan, tmp_path):
    rescue = Rescue(tmp_path)
    rescue.keep(plan, None, NOW)
    rescue.clear()
    rescue.clear()
    rescue.close()
    assert left_behind(tmp_path) == ()


def test_the_newest_comes_first_and_a_job_without_a_file_has_none(plan, tmp_path):
    for hours in (0, 2, 1):
        rescue = Rescue(tmp_path)
        rescue.keep(plan, None, NOW + timedelta(hours=hours))
        rescue.close()
    found = left_behind(tmp_path)
    assert [each.kept_at - NOW for each in found] == [timedelta(hours=hours) for hours in (2, 1, 0)]
    assert {each.file for each in found} == {None}


def test_a_folder_that_is_not_there_holds_nothing(tmp_path):
    assert left_behind(tmp_path / "none") == ()


@pytest.mark.parametrize("text", ["", "{", "[]", '{"format": "other"}', '{"format": "boardplan-rescue"}'])
def test_what_cannot_be_read_is_left_alone(text, tmp_path):
    (tmp_path / "a.rescue.json").write_text(text)
    assert left_behind(tmp_path) == ()
    assert (tmp_path / "a.rescue.json").read_text() == text


def test_a_broken_job_in_it_is_named_with_its_faults(plan, tmp_path):
    rescue = Rescue(tmp_path)
    rescue.keep(plan, None, NOW)
    rescue.close()
    (left,) = left_behind(tmp_path)
    data = json.loads(left.kept.read_text())
    data["job"]["boards"][0]["thickness"] = -1
    left.kept.write_text(json.dumps(data))
    with pytest.raises(BadFile, match="thickness") as bad:
        rescued_plan(left)
    assert bad.value.file == str(left.kept)
    data["version"] = 99
    left.kept.write_text(json.dumps(data))
    with pytest.raises(BadFile, match="another version"):
        rescued_plan(left)


HOLDER = """
import sys, time
from pathlib import Path
from boardplan.files.hold import take_hold
hold = take_hold(Path(sys.argv[1]))
print("held" if hold else "not", flush=True)
time.sleep(60)
"""


@pytest.mark.skipif(os.name != "posix", reason="kills a process the way POSIX does")
def test_a_hold_goes_with_the_program_even_when_it_is_killed(tmp_path):
    path = tmp_path / "x.held"
    holder = subprocess.Popen([sys.executable, "-c", HOLDER, str(path)], stdout=subprocess.PIPE, text=True)
    try:
        assert holder.stdout.readline().strip() == "held"
        assert take_hold(path) is None
        holder.send_signal(signal.SIGKILL)
        holder.wait()
        hold = None
        until = time.monotonic() + 30
        while hold is None and time.monotonic() < until:
            hold = take_hold(path)
        assert hold is not None
        assert take_hold(path) is None
        hold.release()
        hold.release()
        assert not path.exists()
    finally:
        holder.kill()
        holder.stdout.close()


def test_a_file_stands_for_itself_by_whatever_name_it_is_called(tmp_path):
    (tmp_path / "bus.json").write_text("{}")
    (tmp_path / "link.json").symlink_to(tmp_path / "bus.json")
    assert hold_for(tmp_path / "bus.json", tmp_path) == hold_for(tmp_path / "link.json", tmp_path)
    assert hold_for(tmp_path / "bus.json", tmp_path) != hold_for(tmp_path / "cabin.json", tmp_path)
