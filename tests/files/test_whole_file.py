import stat

import pytest

from boardplan.files.whole_file import write_whole


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_is_written_whole(tmp_path):
    write_whole(tmp_path / "job.json", b"new")
    assert (tmp_path / "job.json").read_bytes() == b"new"
    assert names(tmp_path) == ["job.json"]


def test_an_old_file_is_replaced_and_keeps_its_mode(tmp_path):
    path = tmp_path / "job.json"
    path.write_bytes(b"old")
    path.chmod(0o640)
    write_whole(path, b"new")
    assert path.read_bytes() == b"new"
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_link_stays_a_link(tmp_path):
    (tmp_path / "there.json").write_bytes(b"old")
    (tmp_path / "here.json").symlink_to(tmp_path / "there.json")
    write_whole(tmp_path / "here.json", b"new")
    assert (tmp_path / "here.json").is_symlink()
    assert (tmp_path / "there.json").read_bytes() == b"new"


def test_when_writing_breaks_off_the_old_file_is_still_there(tmp_path):
    path = tmp_path / "job.json"
    path.write_bytes(b"old")
    with pytest.raises(TypeError):
        write_whole(path, "text is no content")
    assert path.read_bytes() == b"old"
    assert names(tmp_path) == ["job.json"]


def test_when_the_new_file_can_not_take_its_place_nothing_is_left_behind(tmp_path):
    (tmp_path / "job.json").mkdir()
    with pytest.raises(OSError, match=r"job\.json"):
        write_whole(tmp_path / "job.json", b"new")
    assert names(tmp_path) == ["job.json"]


def test_a_folder_that_is_not_there(tmp_path):
    with pytest.raises(OSError, match="nowhere"):
        write_whole(tmp_path / "nowhere" / "job.json", b"new")
