"""Parts on the command line: packed by box, bought by counter, as columns, CSV and JSON."""

import csv
import io
import json

import pytest
from boards import SAMPLES

from boardplan.cli.commands import run_command

BUS = str(SAMPLES / "library-bus.json")


def test_columns_end_with_whether_the_van_may_leave(capsys):
    assert run_command(["parts", BUS]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].split()[:2] == ["box", "n"]
    assert lines[-1].startswith("NOT READY TO LEAVE")


def test_what_to_buy_leaves_out_what_is_marked(capsys):
    assert run_command(["parts", BUS, "--buy"]) == 0
    out = capsys.readouterr().out
    assert "Shunt 500 A" in out
    assert "Monitoring hub" not in out  # from the customer


@pytest.mark.parametrize(("option", "heads"), [([], "box"), (["--buy"], "counter")])
def test_csv_has_a_row_for_every_line(option, heads, capsys):
    assert run_command(["parts", BUS, "--csv", *option]) == 0
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert heads in rows[0]
    assert any(row["key"] == "lug 70 mm² x M10 straight" for row in rows)


def test_json_holds_both_lists(capsys):
    assert run_command(["parts", BUS, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["load_out"]["ready_to_leave"] is False
    assert {each["counter"] for each in told["materials"]} == {"electrical", "marine", "timber", "fabric", "fasteners"}
