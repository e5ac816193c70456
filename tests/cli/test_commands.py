"""The command line: exit codes, outputs, and input that can't be used."""

import contextlib
import io
import json
import re
from dataclasses import replace

import pytest
from boards import SAMPLES
from checks.plans import plan_of, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from mutations import mutated_job

from boardplan.bundled import data_dir
from boardplan.cli.commands import run_command
from boardplan.files.plan_file import load_plan, save_plan
from boardplan.files.rule_set_file import find_rule_set
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.cable import Cable, TerminalEnd

BUS = SAMPLES / "library-bus.json"


def moved(component, by_x, by_y, tmp_path):
    data = json.loads(BUS.read_text())
    for each in data["components"]:
        if each["id"] == component:
            each["at"] = [each["at"][0] + by_x, each["at"][1] + by_y]
    path = tmp_path / "moved.json"
    path.write_text(json.dumps(data))
    return path


@pytest.mark.parametrize("name", ["library-bus", "lookout-cabin", "honey-trailer"])
def test_samples_are_fine(name, capsys):
    assert run_command(["check", str(SAMPLES / f"{name}.json")]) == 0
    assert "under rule set trade-practice, edition 2026.1" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("component", "by_x", "by_y", "neighbour"),
    [("NB1", 30, 0, "PB1"), ("SW1", -110, 0, "FT1"), ("HB1", -95, 0, "LP1")],
)
def test_a_component_moved_into_its_neighbour_stops_and_names_both(component, by_x, by_y, neighbour, tmp_path, capsys):
    path = moved(component, by_x, by_y, tmp_path)
    assert run_command(["check", str(path), "--json"]) == 1
    told = json.loads(capsys.readouterr().out)
    stops = [each for each in told["findings"] if each["severity"] == "stop"]
    assert any({component, neighbour} <= set(each["things"]) for each in stops)
    assert any(component in each["sentence"] and neighbour in each["sentence"] for each in stops)


def test_cables_as_json_hold_every_cable(capsys):
    assert run_command(["cables", str(BUS), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert len(told["cables"]) == 26


def test_shelf_and_schema_are_json(capsys):
    assert run_command(["shelf", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)) >= 45
    assert run_command(["schema"]) == 0
    assert "cables" in json.loads(capsys.readouterr().out)["properties"]


@pytest.mark.parametrize("topic", ["json", "files", "exchange"])
def test_help_pages(topic, capsys):
    assert run_command(["help", topic]) == 0
    assert capsys.readouterr().out.startswith("# ")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["check", "nowhere.json"], "nowhere.json"),
        (["pack", str(BUS), "--to", "x", "--paper", "napkin"], "expected one of a4"),
        (["pack", str(BUS), "--to", "x", "--labels", "napkin"], "expected a4-3x8, letter-3x10, or a .toml file"),
        (["pack", str(BUS), "--to", "x", "--labels", "napkin.toml"], "napkin.toml"),
        (["check"], "FILE"),
        (["dance"], "invalid choice"),
        (["check", str(BUS), "--loud"], "--loud"),
    ],
    ids=["no file", "paper", "label stock", "label stock file", "no argument", "command", "option"],
)
def test_wrong_use_exits_2_with_the_reason(arguments, words, capsys):
    assert run_command(arguments) == 2
    told = capsys.readouterr()
    assert words.lower() in told.err.lower()
    assert "Traceback" not in told.err


@settings(max_examples=200)
@given(text=st.deferred(lambda: mutated_job(BUS.read_text())))
def test_broken_job_files_exit_2_with_a_path_and_stay_as_they_are(text, tmp_path_factory, capsys_once):
    path = tmp_path_factory.getbasetemp() / "broken.json"
    path.write_text(text, encoding="utf-8")
    code, told = capsys_once(["check", str(path)])
    assert code == 2, told
    assert all(line.startswith(str(path)) for line in told.splitlines())
    place = r"(line \d+, column \d+|[a-z_]+([.\[ ][^:]*)?)"
    assert all(re.match(rf"{re.escape(str(path))}: {place}: \S", line) for line in told.splitlines()), told
    assert "Traceback" not in told
    assert path.read_text(encoding="utf-8") == text


@pytest.fixture(scope="session")
def capsys_once():
    """Run a command and return its exit code and what it wrote to stderr; usable inside Hypothesis."""

    def run(arguments):
        heard = io.StringIO()
        with contextlib.redirect_stderr(heard), contextlib.redirect_stdout(io.StringIO()):
            code = run_command(arguments)
        return code, heard.getvalue()

    return run


def test_what_is_typed_is_shown_by_the_text_forms(capsys):
    assert run_command(["holes", str(BUS)]) == 0
    assert "INV1-1" in capsys.readouterr().out
    assert run_command(["holes", str(BUS), "--csv"]) == 0
    assert "mm" in capsys.readouterr().out
    assert run_command(["cables", str(BUS)]) == 0
    assert "W07" in capsys.readouterr().out


def test_text_says_where_holes_are_measured_from(capsys):
    assert run_command(["holes", str(BUS)]) == 0
    assert "board A: x and y from the bare edges, lower left corner" in capsys.readouterr().out


def test_text_says_why_a_cable_is_not_final(capsys):
    assert run_command(["cables", str(BUS)]) == 0
    (line,) = [line for line in capsys.readouterr().out.splitlines() if line.startswith("W32")]
    assert "not final: an off-board leg is estimated" in line


def test_the_sum_of_one_cable_is_printed_line_by_line(capsys):
    """W07 by hand: 454 less 27.5 at a corner and 18 at each lug, 15 of slack, 4.5 up to 410."""
    assert run_command(["cables", str(BUS), "--sum", "W07"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "W07: NB1.S5 > INV1.DC-"
    added = [float(match[1]) for line in lines if (match := re.fullmatch(r".*: ([+-][\d.]+) mm", line))]
    assert sum(added) == pytest.approx(410, abs=0.3)
    assert "cut 410 mm, +5 / -0" in lines
    assert lines[-1].startswith("end 2: INV1.DC-, lug 70 mm² x M8 straight")


def test_a_sum_of_a_cable_that_is_not_there_is_refused(capsys):
    assert run_command(["cables", str(BUS), "--sum", "W99"]) == 2
    assert "there is no cable 'W99'" in capsys.readouterr().err


def test_what_would_free_a_cable_is_told_on_demand(tmp_path, capsys):
    near = moved_apart(tmp_path, 20)
    assert run_command(["cables", str(near), "--free", "W1"]) == 0
    words = capsys.readouterr().out
    assert words.startswith("W1: U1.T and U2.B are 40 mm apart, but their lugs take 56 mm.")
    assert "Move U2 16 mm up." in words
    far = moved_apart(tmp_path, 200)
    assert run_command(["cables", str(far), "--free", "W1"]) == 0
    assert capsys.readouterr().out == "W1 has a way.\n"
    assert run_command(["cables", str(far), "--free", "W9"]) == 2
    assert "there is no cable 'W9'" in capsys.readouterr().err


def moved_apart(tmp_path, gap):
    """Return a job of two units one above the other, their studs 20 mm inside, with a cable between."""
    joined = Cable("W1", TerminalEnd("U1", "T"), TerminalEnd("U2", "B"), "16", "red", "dc", "outside")
    path = tmp_path / f"{gap}.json"
    save_plan(plan_of(unit("U1", 300, 200), unit("U2", 300, 300 + gap), joined), path)
    return path


def test_the_cables_end_with_what_sharing_channels_leaves(capsys):
    assert run_command(["cables", str(BUS)]) == 0
    assert capsys.readouterr().out.endswith("Channels: no cable can be saved by sharing channels otherwise.\n")


def test_screws_of_clamps_are_listed_besides_the_holes(tmp_path, capsys):
    plan = load_plan(BUS)
    screw = bundled_shelf().fasteners["#8x16 washer"]
    newer = replace(
        plan, rules=find_rule_set("trade-practice", "2026.2"), fasteners={**plan.fasteners, screw.id: screw}
    )
    save_plan(newer, tmp_path / "newer.json")
    assert run_command(["holes", str(tmp_path / "newer.json"), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert len(found["holes"]) == 56  # our own worked example: clamps are in no count of holes
    assert found["clamp_screws"]
    assert all(each["id"].split("-C")[0] in plan.cables for each in found["clamp_screws"])
    assert run_command(["holes", str(tmp_path / "newer.json")]) == 0
    assert found["clamp_screws"][0]["id"] in capsys.readouterr().out


@pytest.mark.parametrize("named", ["a4-3x8", "mine.toml"])
def test_a_pack_on_label_stock_by_its_measures(named, tmp_path, capsys, monkeypatch):
    monkeypatch.chdir(tmp_path)
    sheet = (data_dir("assets") / "labels" / "a4-3x8.toml").read_text(encoding="utf-8")
    (tmp_path / "mine.toml").write_text(sheet.replace('id = "a4-3x8"', 'id = "mine"'), encoding="utf-8")
    assert run_command(["pack", str(BUS), "--to", "pack", "--only", "labels", "--labels", named]) == 0
    assert "label-sheet.pdf" in capsys.readouterr().out
    stock = json.loads((tmp_path / "pack" / "pack.json").read_text(encoding="utf-8"))["labels"]["stock"]
    assert stock["id"] == named.removesuffix(".toml")
    assert stock["cables"][0]["size"] == [70, 37]
