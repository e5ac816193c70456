"""A folder that takes the place of another: with an exchange in one step, without, and after a kill at every stage."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from boardplan.output.taking_place import exchanged, new_folder, put_right


def cannot(_one, _other):
    """A system that has no exchange."""
    return False


WAYS = pytest.mark.parametrize("way", [exchanged, cannot])


def filled(folder, words):
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "words").write_text(words)
    return folder


def words_in(folder):
    return {path.name: path.read_text() for path in folder.iterdir()}


@WAYS
def test_a_new_folder_takes_the_place_of_an_old_one(way, tmp_path):
    target = filled(tmp_path / "papers", "old")
    (target / "more").write_text("old")
    with new_folder(target, way) as part:
        filled(part, "new")
        assert words_in(target) == {"words": "old", "more": "old"}
    assert words_in(target) == {"words": "new"}
    assert [path.name for path in tmp_path.iterdir()] == ["papers"]


@WAYS
def test_work_that_is_given_up_leaves_the_old_folder(way, tmp_path):
    target = filled(tmp_path / "papers", "old")

    def give_up():
        with new_folder(target, way) as part:
            filled(part, "half")
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        give_up()
    assert words_in(target) == {"words": "old"}
    assert [path.name for path in tmp_path.iterdir()] == ["papers"]


@pytest.mark.skipif(sys.platform != "linux", reason="renameat2 is a call of Linux")
def test_this_system_exchanges_folders_in_one_step(tmp_path):
    one, other = filled(tmp_path / "a", "one"), filled(tmp_path / "b", "other")
    if not exchanged(one, other):
        pytest.skip("this disk can't exchange folders")
    assert (words_in(one), words_in(other)) == ({"words": "other"}, {"words": "one"})


def test_an_old_folder_that_was_moved_aside_is_put_back(tmp_path):
    filled(tmp_path / ".papers.abc_1.old", "old")
    filled(tmp_path / ".papers.abc_1.part", "new")
    put_right(tmp_path / "papers")
    assert [path.name for path in tmp_path.iterdir()] == ["papers"]
    assert words_in(tmp_path / "papers") == {"words": "old"}


def test_what_is_left_over_is_cleared_away_but_nothing_of_others(tmp_path):
    filled(tmp_path / "papers", "whole")
    others = {".papers.part", ".papers-2.abc.part", ".papers.v2.abc.part", "papers.abc.part", ".other.abc.old"}
    for name in (*others, ".papers.abc.part", ".papers.def.old"):
        filled(tmp_path / name, name)
    put_right(tmp_path / "papers")
    assert {path.name for path in tmp_path.iterdir()} == {"papers", *others}
    assert words_in(tmp_path / "papers") == {"words": "whole"}


@pytest.mark.skipif(os.name != "posix", reason="no locks on folders")
def test_a_folder_that_another_process_still_fills_is_left_alone(tmp_path):
    target = filled(tmp_path / "papers", "old")
    with new_folder(target) as part:
        filled(part, "half")
        look = "import sys; from pathlib import Path; from boardplan.output.taking_place import put_right as go; "
        command = [sys.executable, "-c", look + "go(Path(sys.argv[1]))", str(target)]
        subprocess.run(command, check=True, env={**os.environ, "PYTHONPATH": str(Path.cwd())})
        assert words_in(part) == {"words": "half"}
    assert words_in(target) == {"words": "half"}
