"""A few papers alone, named on the command line."""

import pytest

from boardplan.bundled import data_dir
from boardplan.cli.commands import run_command
from boardplan.output.papers import ALL_PAPERS


def sample():
    return str(data_dir("sample_boards") / "library-bus.json")


def test_the_papers_named_are_written_and_no_other(tmp_path, capsys):
    assert run_command(["pack", sample(), "--to", str(tmp_path / "p"), "--only", "findings, holes"]) == 0
    assert {path.name for path in (tmp_path / "p").iterdir()} == {
        "hole-schedule.pdf",
        "hole-schedule.csv",
        "findings.pdf",
        "findings.csv",
        "pack.json",
    }
    assert "findings.pdf" in capsys.readouterr().out


def test_one_file_for_machines_alone(tmp_path):
    assert run_command(["pack", sample(), "--to", str(tmp_path / "p"), "--only", "dxf"]) == 0
    assert {path.name for path in (tmp_path / "p").iterdir()} == {"board-A.dxf", "pack.json"}


@pytest.mark.parametrize("names", ["hole", "", "holes,,findings"])
def test_a_paper_that_is_none_is_named_with_what_there_is(names, tmp_path, capsys):
    assert run_command(["pack", sample(), "--to", str(tmp_path / "p"), "--only", names]) == 2
    told = capsys.readouterr().err
    assert told.startswith("--only: there is no paper '")
    assert "holes, cables" in told
    assert not (tmp_path / "p").exists()


def test_help_lists_every_paper(capsys):
    assert run_command(["help", "papers"]) == 0
    told = capsys.readouterr().out
    assert all(paper.key in told and paper.name in told for paper in ALL_PAPERS)
