"""From a printer nobody measured to a template that is ready to drill, from a shell."""

import json

import pytest
from boards import SAMPLES
from output.read_back import read_pages

from boardplan.cli.commands import run_command
from boardplan.files.plan_file import load_plan
from boardplan.model.holes import holes_of

TRAILER = SAMPLES / "honey-trailer.json"


@pytest.fixture(autouse=True)
def settings(tmp_path, monkeypatch):
    """A settings folder of the test's own."""
    folder = tmp_path / "settings"
    monkeypatch.setenv("XDG_CONFIG_HOME", str(folder))
    monkeypatch.setattr("sys.platform", "linux")
    return folder / "boardplan" / "printers.json"


def told(arguments, capsys, code=0):
    assert run_command([str(each) for each in arguments]) == code
    said = capsys.readouterr()
    return said.err if code == 2 else said.out


def measured(capsys, *more, x="150", y="250", paper="a4", code=0):
    named = ("--printer", "Hall laser", "--paper", paper)
    return told(["measured-bars", *named, "--x", x, "--y", y, *more], capsys, code)


def packed(folder, capsys, *more, paper="a4"):
    out = told(["pack", TRAILER, "--to", folder, "--only", "template", "--paper", paper, *more], capsys)
    return out, json.loads((folder / "pack.json").read_text(encoding="utf-8"))


def bar(page, axis, deep=5.0):
    """How long a bar of the calibration sheet is on the page: between its first and last end stroke."""
    if axis == "X":
        found = [each.x0 for each in page.strokes if abs(abs(each.y1 - each.y0) - deep) < 0.1 and each.x0 == each.x1]
    else:
        found = [each.y0 for each in page.strokes if abs(abs(each.x1 - each.x0) - deep) < 0.1 and each.y0 == each.y1]
    return max(found) - min(found)


def test_a_printer_that_stretches_is_measured_corrected_and_checked(tmp_path, capsys):
    """The printer is played: whatever is on a page comes out 0.4 % short across the paper and 0.3 % long along it."""
    across, along = 0.996, 1.003

    def printed_sheet():
        path = tmp_path / "sheet.pdf"
        told(["calibration-sheet", "--printer", "Hall laser", "--paper", "a4", "--to", path], capsys)
        (page,) = read_pages(path)
        return f"{bar(page, 'X') * across:.2f}", f"{bar(page, 'Y') * along:.2f}"

    x, y = printed_sheet()
    assert (x, y) == ("149.40", "250.75")
    assert "From now on drawn 100.40 % in x, 99.70 % in y" in measured(capsys, x=x, y=y)
    out, contents = packed(tmp_path / "pack", capsys, "--printer", "hall laser")
    assert "Not ready to drill: correction not yet checked by a print." in out
    x, y = printed_sheet()
    assert "Both bars are true within 0.3 mm." in measured(capsys, x=x, y=y)
    out, contents = packed(tmp_path / "pack", capsys, "--printer", "hall laser")
    assert "Bars true within 0.3 mm: printer Hall laser on A4; error left over" in out
    assert contents["ready_to_drill"] is True
    plan = load_plan(TRAILER)
    largest = max(max(board.box.width, board.box.height) for board in plan.boards.values())
    left = max(each["error_left_mm"] for each in contents["printing"]["boards"])
    seen = set()
    for entry in contents["template_pages"]:
        page = read_pages(tmp_path / "pack" / entry["file"])[entry["page"] - 1]
        by_x, by_y = (across, along) if entry["page_size"][0] < entry["page_size"][1] else (along, across)
        for hole in holes_of(plan):
            dx, dy = hole.position.x - entry["rect"][0], hole.position.y - entry["rect"][1]
            shown = hole.board == entry["board"] and 0 <= dx <= entry["rect"][2] - entry["rect"][0]
            if shown and 0 <= dy <= entry["rect"][3] - entry["rect"][1]:
                places = [((each.x - 10) * by_x, (each.y - 10) * by_y) for each in page.circles]
                assert any(abs(x - dx) < 0.02 and abs(y - dy) < 0.02 for x, y in places), hole.id
                seen.add(hole.id)
    assert seen == {hole.id for hole in holes_of(plan)}
    assert left < 0.02 / 150 * largest


def test_without_a_printer_nothing_is_ready_to_drill(tmp_path, capsys, settings):
    out, contents = packed(tmp_path / "pack", capsys)
    assert "Not ready to drill: no printer named, no bars measured." in out
    assert contents["ready_to_drill"] is False
    assert all(each["drawn"] == [1.0, 1.0] for each in contents["template_pages"])
    assert not settings.exists()


def test_bars_of_another_paper_or_printer_count_for_nothing(tmp_path, capsys):
    measured(capsys)
    for more, paper in ((("--printer", "Hall laser"), "letter"), (("--printer", "Other"), "a4")):
        out, _ = packed(tmp_path / "pack", capsys, *more, paper=paper)
        assert "Not ready to drill: bars not measured on this printer and paper." in out


@pytest.mark.parametrize(("x", "code"), [("145.64", 0), ("145.62", 1), ("154.63", 0), ("154.65", 1)])
def test_what_no_printer_is_out_by_is_refused(x, code, tmp_path, capsys):
    """150 / 1.03 = 145.631 and 150 / 0.97 = 154.639."""
    said = measured(capsys, x=x, code=code)
    assert ("Not corrected" in said) is bool(code)
    assert ("fit to page" in said) is bool(code)
    out, contents = packed(tmp_path / "pack", capsys, "--printer", "Hall laser")
    assert "Not ready to drill" in out
    assert (contents["printing"]["factors"]["short"] == 1) is bool(code)


def test_a_slip_of_the_pen_is_entered_again_for_the_same_sheet(capsys):
    measured(capsys, x="148")
    again = json.loads(measured(capsys, "--drawn-at", "100", "100", "--json", x="149.9"))
    assert again["bars_true"] is True
    assert again["factors"] == {"short": 1.0, "long": 1.0}


def test_inch_bars_are_read_as_an_inch_rule_reads(capsys):
    """5 in and 1/64 are 127.397 mm: 0.397 mm are too much, so 127 / 127.396875 = 0.9969."""
    said = json.loads(measured(capsys, "--inch-bars", "--json", x="5 1/64", y="9"))
    assert said["short"]["length_mm"] == 127.0
    assert said["factors"] == {"short": 0.9969, "long": 1.0}
    assert json.loads(measured(capsys, "--json", x="5 29/32 in", y="250"))["short"]["measured_mm"] == 150.01875


def test_finer_asks_for_another_print(capsys):
    said = json.loads(measured(capsys, "--finer", "--json", x="149.8"))
    assert said["factors"]["short"] == 1.0013
    assert said["bars_true"] is False


def test_printers_are_listed_and_forgotten(capsys):
    assert "No printer was measured yet." in told(["printers"], capsys)
    measured(capsys, x="148")
    measured(capsys, paper="letter")
    lines = told(["printers"], capsys).splitlines()
    assert [line.split()[:5] for line in lines[1:]] == [
        ["Hall", "laser", "a4", "101.35", "100.00"],
        ["Hall", "laser", "letter", "100.00", "100.00"],
    ]
    told(["printers", "--forget", "--printer", "Hall laser", "--paper", "a4"], capsys)
    assert [each["paper"] for each in json.loads(told(["printers", "--json"], capsys))["printers"]] == ["letter"]


def test_the_sheet_as_json(tmp_path, capsys):
    named = ("--printer", "P", "--paper", "letter")
    said = json.loads(told(["calibration-sheet", *named, "--to", tmp_path / "s.pdf", "--json"], capsys))
    assert said["bars_mm"] == {"short": 150.0, "long": 250.0}
    assert (tmp_path / "s.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["calibration-sheet", "--printer", "P", "--paper", "napkin", "--to", "x.pdf"], "expected one of a4"),
        (["calibration-sheet", "--printer", "P'", "--paper", "a4", "--to", "x.pdf"], "a name without quotes"),
        (["calibration-sheet", "--printer", " ", "--paper", "a4", "--to", "x.pdf"], "a name without quotes"),
        (["calibration-sheet", "--printer", "P" * 61, "--paper", "a4", "--to", "x.pdf"], "at most 60 letters"),
        (["calibration-sheet", "--printer", "P", "--paper", "a4", "--to", "job.json"], "the name of a PDF"),
        (["measured-bars", "--printer", "P", "--paper", "a4", "--x", "long", "--y", "250"], "--x: 'long' is not"),
        (["measured-bars", "--printer", "P", "--paper", "a4", "--x", "150", "--y", "0"], "--y: '0' is not what a bar"),
        (["measured-bars", "--printer", "P", "--paper", "a4", "--x", "150", "--y", "-250"], "--y"),
        (
            ["measured-bars", "--printer", "P", "--paper", "a4", "--x", "1", "--y", "1", "--drawn-at", "1", "1"],
            "percents from 97 to 103",
        ),
        (["printers", "--forget"], "expected --printer and --paper"),
        (["printers", "--forget", "--printer", "P", "--paper", "a4"], "nothing was measured of printer P on a4"),
    ],
)
def test_wrong_use_exits_2_with_the_reason_and_keeps_nothing(arguments, words, capsys, settings):
    assert words in told(arguments, capsys, 2)
    assert not settings.exists()


def test_a_broken_file_of_printers_is_named_and_stays(tmp_path, capsys, settings):
    settings.parent.mkdir(parents=True)
    settings.write_text('{"format": "boardplan-printers", "version": 1, "printers": [{"printer": "P"}]}')
    before = settings.read_bytes()
    said = measured(capsys, code=2)
    assert f"{settings}: printers[0].paper: missing" in said
    assert "Traceback" not in said
    assert settings.read_bytes() == before
    named = ("--printer", "P", "--paper", "a4", "--to", str(tmp_path / "pack"))
    assert "printers[0]" in told(["pack", TRAILER, *named], capsys, 2)
    assert not (tmp_path / "pack").exists()
