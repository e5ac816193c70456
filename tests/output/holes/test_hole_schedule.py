"""The hole schedule against the holes worked out by hand."""

import csv
import io
from dataclasses import replace

import pytest
from output.expected_holes import BITS, LIBRARY_BUS, LOOKOUT_CABIN

from boardplan.geometry.point import Point
from boardplan.model.board import Datum, Exit
from boardplan.output.holes.hole_schedule import hole_listing, hole_rows, hole_tables
from boardplan.output.tables.table import Heading

EXPECTED = {"library bus": LIBRARY_BUS, "lookout cabin": LOOKOUT_CABIN}


def records(plan):
    return {row["hole"]: row for row in csv.DictReader(io.StringIO(hole_listing(plan).csv))}


@pytest.mark.parametrize("sample", EXPECTED)
def test_csv_holds_every_hole(sample, packs):
    found = records(packs(sample, "a4").plan)
    assert set(found) == {row[0] for row in EXPECTED[sample]}
    for name, board, x, y, bit, *_ in EXPECTED[sample]:
        row = found[name]
        assert (row["board"], float(row["x_mm"]), float(row["y_mm"]), float(row["bit_mm"])) == (
            board,
            pytest.approx(x, abs=0.05),
            pytest.approx(y, abs=0.05),
            bit,
        )


def test_inches_are_those_worked_out_by_hand(cabin_plan):
    found = records(cabin_plan)
    for name, _, _, _, _, _, x, y in LOOKOUT_CABIN:
        assert (found[name]["x_in_1/32"], found[name]["y_in_1/32"]) == (x, y), name


@pytest.mark.parametrize("sample", EXPECTED)
def test_paper_shows_every_hole_by_bit_and_by_unit(sample, packs):
    pack = packs(sample, "a4")
    words = [text.words for page in pack.pages["hole-schedule.pdf"] for text in page.texts]
    for name, *_ in EXPECTED[sample]:
        assert words.count(name) >= 2, name
    assert f"Bits: {len(EXPECTED[sample])} holes in all" in words
    for bit, count in BITS[sample].items():
        assert any(each.startswith(f"Bit {bit:.1f} mm") for each in words), bit
        assert sum(row.hole.bit == bit for row in hole_rows(pack.plan)) == count


def test_pitch_runs_from_the_first_hole_of_a_pattern(bus_plan):
    """The inverter's pattern is 160 by 406 mm: its holes are (54, 424) (214, 424) (54, 18) (214, 18)."""
    rows = {row.hole.id: row for row in hole_rows(bus_plan)}
    assert rows["INV1-1"].pitch is None
    assert rows["INV1-4"].pitch == pytest.approx((160, -406))
    assert rows["BF-2"].pitch is None


def test_dimensions_run_from_the_datum_corner(bus_plan):
    """EB1-1 lies at 1130, 80 on a board of 1300: 170 from its right edge."""
    turned = bus_plan.with_things([replace(bus_plan.boards["A"], datum=Datum("lower-right"))])
    row = next(row for row in hole_rows(turned) if row.hole.id == "EB1-1")
    assert row.place == pytest.approx((170, 80))


def test_a_hole_without_a_fastener_asks_and_invents_nothing(bus_plan):
    kind = replace(bus_plan.kinds[bus_plan.components["EB1"].kind], fastener="")
    plan = replace(bus_plan, kinds={**bus_plan.kinds, kind.id: kind})
    row = records(plan)["EB1-1"]
    assert (row["bit_mm"], row["nearest_drill_in"], row["depth_mm"]) == ("", "", "")
    assert "which fastener?" in row["note"]


def test_every_row_says_where_it_is_measured_from(bus_plan):
    board = replace(bus_plan.boards["A"], datum=Datum("lower-right", "covered"))
    row = records(bus_plan.with_things([board]))["EB1-1"]
    assert float(row["x_mm"]) == 172  # 170 from the bare edge, 2 mm of fabric
    assert row["x_and_y_from"] == "covered edges, lower right corner, 2 mm of fabric counted in"


def test_an_exit_hole_of_no_width_asks_how_wide(bus_plan):
    row = records(bus_plan.with_things([Exit("XH", "A", "roof", Point(1150, 330), "hole")]))["XH"]
    assert (row["bit_mm"], row["depth_mm"]) == ("", "")
    assert row["note"].startswith("how wide?")


@pytest.mark.parametrize("covered", [True, False])
def test_fabric_is_spoken_of_where_there_is_some(bus_plan, covered):
    board = bus_plan.boards["A"] if covered else replace(bus_plan.boards["A"], fabric=None)
    first, *_ = hole_tables(bus_plan.with_things([board]))
    assert any(note.startswith("Fabric") for note in first.notes) == covered
    assert any("nearest to the bit" in note for note in first.notes)


def rows_by_unit(plan):
    table = next(each for each in hole_tables(plan) if each.title.startswith("To check, by component"))
    heads = [column.head.split(" ")[0] for column in table.columns]
    return {row[1].text: dict(zip(heads, row, strict=True)) for row in table.rows if not isinstance(row, Heading)}


def test_by_unit_only_the_first_hole_counts_from_the_datum(cabin_plan):
    """Rounded one by one to 1/32 in, the holes of the cabin's patterns would move by up to 0.5 mm: by hand."""
    rows = rows_by_unit(cabin_plan)
    first, other = rows["MP1-1"], rows["MP1-2"]
    assert (first["X"].text, first["X"].bold, first["pitch"].text) == ("7-3/8", True, "")
    assert (other["X"].text, other["pitch"].text, other["pitch"].bold) == ("", "6-39/64 x 0", True)
    assert other["X"].small == "13-31/32\n355.0 mm"
    assert other["pitch"].small == "168 x 0 mm"


def test_fabric_is_opened_before_the_bit_comes_near_it(bus_plan):
    """A punch 2 mm over the screw: common practice, no source. M6 in a T-nut goes through a hole of 8 mm."""
    assert records(bus_plan)["EB1-1"]["note"] == "fabric: cut a cross, or punch 6.2"
    assert records(bus_plan)["INV1-1"]["note"].startswith("fabric: cut a cross, or punch 10;")
    hole = bus_plan.with_things([Exit("XH", "A", "roof", Point(1150, 330), "hole", 40.0)])
    assert "cut the disc out first" in records(hole)["XH"]["note"]


def test_on_every_sheet_of_two_boards_a_heading_says_which_one(cabin_plan):
    for table in hole_tables(cabin_plan)[1:]:
        board = table.title.partition(": board ")[2][0]
        asides = [row.aside for row in table.rows if isinstance(row, Heading)]
        assert asides
        assert all(f"board {board}" in aside for aside in asides)
