"""The load-out list: everything packed once, no box too heavy, and the paper says what the list says."""

import csv
import io
from dataclasses import replace

import pytest
from boards import library_bus
from hypothesis import given
from hypothesis import strategies as st

from boardplan.bundled import data_dir
from boardplan.checks.review import review_of
from boardplan.model.supply import Supply
from boardplan.output.load_out.boxes import LOOSE, boxes_of, hazardous
from boardplan.output.load_out.load_out_list import load_out_listing, load_out_records, load_out_tables
from boardplan.output.parts.part import Part
from boardplan.output.parts.parts_list import PartsList, parts_list
from boardplan.output.printing.pdf import Fonts
from boardplan.output.tables.table import laid

NAMES = ("library bus", "lookout cabin", "honey trailer")


@pytest.fixture(scope="module")
def bus():
    return parts_list(review_of(library_bus()))


def test_every_packed_part_is_in_one_box(bus):
    packed = [each for box in boxes_of(bus) for each in box.parts]
    assert sorted(map(id, packed)) == sorted(id(each) for each in bus.parts if each.packed)


def test_loading_goes_the_other_way_round(bus):
    loads = [box.load for box in boxes_of(bus) if box.load]
    assert loads == list(range(len(loads), 0, -1))
    assert [box.name for box in boxes_of(bus) if not box.load] == ["From the customer"]


@given(st.lists(st.one_of(st.none(), st.integers(0, 30)), max_size=25), st.integers(1, 4))
def test_no_box_is_too_heavy_and_heavy_pieces_go_loose(masses, count):
    bus = parts_list(_review())
    made = tuple(Part(f"k{n}", "tools", f"thing {n}", count, mass=mass) for n, mass in enumerate(masses))
    boxes = boxes_of(PartsList(bus.shop, made, (), ()))
    assert [each.key for box in boxes for each in box.parts if box.number != LOOSE] == [
        f"k{n}" for n, mass in enumerate(masses) if mass is None or mass * count <= 20
    ]
    for box in boxes:
        assert box.weight <= 20 or box.number == LOOSE
        assert len(box.unweighed) == sum(each.mass is None for each in box.parts)
    assert sum(len(box.parts) for box in boxes) == len(made)


_REVIEWS = []


def _review():
    if not _REVIEWS:
        _REVIEWS.append(review_of(library_bus()))
    return _REVIEWS[0]


def test_a_board_carries_its_cables_and_they_count_once(bus):
    (boards,) = [box for box in boxes_of(bus) if box.name == "Boards"]
    board, *fitted = boards.parts
    assert [each.key for each in fitted] == [each.key for each in bus.parts if each.on_board]
    assert boards.weight == pytest.approx(board.weight)


def test_nobody_is_said_to_lift_what_is_not_weighed(bus):
    lifts = {box.name: (box.lift, len(box.unweighed)) for box in boxes_of(bus) if box.number != LOOSE}
    assert all(lift == f"? {count} not weighed" for lift, count in lifts.values() if count)
    assert lifts["Made cables"] == ("one person", 0)


def test_hazardous_goods_are_listed_with_a_note(bus):
    found = {part.words: part.hazard for _, part in hazardous(boxes_of(bus))}
    assert "UN 1133" in found["Contact adhesive for the fabric"]
    assert all(found.values())


def test_csv_and_json_say_the_same(bus):
    rows = list(csv.DictReader(io.StringIO(load_out_listing(bus).csv)))
    lines = [(box, line) for box in load_out_records(bus)["load_out"]["boxes"] for line in box["lines"]]
    assert len(rows) == len(lines)
    for row, (box, line) in zip(rows, lines, strict=True):
        assert (row["key"], row["description"], row["box_name"]) == (line["key"], line["what"], box["name"])
        assert row["quantity"] == (
            "" if line["quantity"] is None else f"{line['quantity']:.6f}".rstrip("0").rstrip(".")
        )


@pytest.mark.parametrize("sample", NAMES)
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_paper_says_all_of_it(sample, paper, packs):
    pack = packs(sample, paper)
    pages = pack.pages["load-out-list.pdf"]
    words = " ".join(" ".join(page.words for page in pages).split())
    told = pack.contents["load_out"]
    assert ("NOT READY TO LEAVE" in words) == (not told["ready_to_leave"])
    assert "Before we lock the shop" in pages[-1].words
    assert "Packed by" in pages[-1].words
    for box in told["boxes"]:
        for line in box["lines"]:
            assert (" ".join(line["what"].split()) if not line["on_board"] else line["key"].split()[1]) in words
    for page in pages:
        assert all(text.left > 0 and text.right < page.width for text in page.texts)


def test_the_sample_waits_for_what_is_ordered(packs):
    told = packs("library bus", "a4").contents["load_out"]
    assert told["ready_to_leave"] is False
    assert told["words"].startswith("NOT READY TO LEAVE: 1 part is ordered: AT1")
    assert packs("lookout cabin", "letter").contents["load_out"]["ready_to_leave"] is True


def test_marks_on_what_the_job_does_not_need_are_named():
    plan = replace(library_bus(), supply={"unit nowhere": Supply("unit nowhere", "ordered")})
    parts = parts_list(review_of(plan))
    assert any("unit nowhere" in note for note in load_out_tables(parts)[0].notes)
    assert load_out_records(parts)["load_out"]["marks_not_needed"] == ["unit nowhere"]


def test_no_row_outgrows_its_sheet_however_many_things_there_are():
    """600 cables fitted, 600 on order: names are shared out to rows, or counted."""
    shop = parts_list(_review()).shop
    fitted = tuple(
        Part(f"made W{n:03}", "made-cables", f"W{n:03}  cable", 1, on_board="A", mass=0.1) for n in range(600)
    )
    ordered = tuple(f"part {n}" for n in range(600))
    tables = load_out_tables(PartsList(shop, fitted, ordered, ()))
    rows = [row for table in tables for row in table.rows if isinstance(row, tuple)]
    fonts = Fonts(data_dir("assets") / "fonts")
    strips = [strip for table in tables for strip in laid(table, 182.0, fonts.width).strips]
    assert len(rows) > 15
    assert max(strip.height for strip in strips) < 60
    assert all(any(part.key.split()[1] in cell.small for row in rows for cell in row) for part in fitted)
