"""The fuse schedule: what the job says and no more, cables up to the next fuse, distances as on the cut list."""

import csv
import io
import json
from dataclasses import replace

import pytest
from boards import SAMPLES, honey_trailer, library_bus

from boardplan.editing.cable_edits import connect
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.cable import TerminalEnd
from boardplan.model.fuse import Fuse
from boardplan.output.hand_over.fuse_rows import fuse_rows
from boardplan.output.hand_over.fuse_schedule import fuse_listing, fuse_records, fuse_tables, questions
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths

TRAILER = json.loads((SAMPLES / "honey-trailer.json").read_text(encoding="utf-8"))
GIVEN = {
    each["id"] + (f".{fuse['place']}" if "place" in fuse else ""): fuse
    for each in TRAILER["components"]
    for fuse in each.get("fuses", [])
}
"""What the file says of fuses, by place."""


def rows_of(plan):
    ways = find_routes(plan)
    return {row.place.name: row for row in fuse_rows(plan, cut_lengths(plan, ways), ways)}


@pytest.fixture(scope="module")
def trailer():
    plan = honey_trailer()
    return plan, rows_of(plan)


def rows_in(pack, name):
    return list(csv.DictReader(io.StringIO((pack.folder / name).read_text(encoding="utf-8-sig"))))


def test_the_schedule_says_what_the_file_says_and_leaves_the_rest_empty(packs):
    rows = {row["place"]: row for row in rows_in(packs("honey trailer", "a4"), "fuse-schedule.csv")}
    assert set(rows) == {"FT1", *(f"LP1.O{n}" for n in range(1, 7)), *(f"PB1.F{n}" for n in range(1, 5))}
    for place, row in rows.items():
        said = GIVEN.get(place, {})
        assert row["type"] == said.get("type", "")
        for head in ("rating_a", "voltage_v", "breaking_capacity_ka"):
            assert row[head] == ("" if head not in said else f"{said[head]:g}")


def test_a_fuse_protects_what_is_joined_to_it_up_to_the_next_fuse(trailer):
    """By hand from the wiring: FT1.LOAD - W02 - SW1 - W03 - PB1, where the branch fuses begin."""
    _, rows = trailer
    assert {
        name: [each.id for side in row.sides for each in side.cables] for name, row in rows.items() if not row.spare
    } == {
        "FT1": ["W02", "W03"], "LP1.O1": ["W19"], "LP1.O2": ["W20"], "PB1.F1": ["W08"], "PB1.F2": ["W10"],
        "PB1.F3": ["W12"], "PB1.F4": ["W04"],
    }  # fmt: skip
    assert [name for name, row in rows.items() if row.spare] == ["LP1.O3", "LP1.O4", "LP1.O5", "LP1.O6"]


def test_the_fuse_distance_is_the_path_of_the_cut_list(packs):
    pack = packs("honey trailer", "a4")
    (fed,) = (row for row in rows_in(pack, "fuse-schedule.csv") if row["fed_by"])
    (cable,) = (row for row in rows_in(pack, "cable-cut-list.csv") if row["cable"] == "W01")
    assert (fed["place"], fed["fed_by"], fed["fed_from"]) == ("FT1", "W01", "battery box +")
    assert float(fed["fuse_distance_mm"]) == pytest.approx(float(cable["path_mm"]))
    shown = pack.pages["fuse-schedule.pdf"][0].words.splitlines()
    assert f"{float(cable['path_mm']):.0f}" in shown


def test_nothing_is_asked_of_a_spare_place_and_everything_else_is(trailer):
    _, rows = trailer
    asked = dict(questions(list(rows.values())))
    used = [name for name, row in rows.items() if not row.spare]
    for question, field in (("which rating? The designer's to say", "rating_a"),):
        assert asked[question] == [name for name in used if field not in GIVEN[name]]
    breaks = next(names for question, names in asked.items() if question.startswith("which breaking capacity"))
    assert breaks == [name for name in used if "breaking_capacity_ka" not in GIVEN[name]]
    assert not any(question.startswith("which type") for question in asked)


def test_a_bare_job_has_a_box_for_every_figure():
    plan = library_bus()
    rows = rows_of(plan)
    schedule = fuse_tables(plan, list(rows.values()))[0]
    boxes = {row[0].text: [bool(cell.blank) for cell in row[1:5]] for row in schedule.rows}
    assert boxes == {name: [not row.spare] * 4 for name, row in rows.items()}
    figures = [cell.text for row in schedule.rows for cell in row[2:5]]
    assert set(figures) == {""}


def test_where_no_cable_tells_which_side_is_fed_both_are_named_and_it_is_asked():
    plan = honey_trailer()
    feed = plan.cables["W01"]
    plan = plan.with_things([replace(feed, start=replace(feed.start, name="tray"))])
    rows = rows_of(plan)
    assert rows["FT1"].side_unknown
    assert not rows["FT1"].feeds
    assert dict(questions(list(rows.values())))["which side is fed? The plan doesn't say"] == ["FT1"]
    cells = {row[0].text: row for row in fuse_tables(plan, list(rows.values()))[0].rows}
    assert "LINE: W01" in cells["FT1"][5].text
    assert "LOAD: W02" in cells["FT1"][5].text


def test_a_plain_bus_is_named_where_the_chain_ends():
    plan = honey_trailer()
    bar = replace(bundled_shelf().kinds["positive-busbar-5-stud"], id="plain")
    plan = replace(plan, kinds={**plan.kinds, "plain": bar})
    plan = plan.with_things([replace(plan.components["NB1"], id="MB1", kind="plain")])
    plan = plan.without(["W03"])
    conductor = plan.conductors["70"]
    plan, cable = connect(plan, TerminalEnd("SW1", "OUT"), TerminalEnd("MB1", "S1"), conductor, "red", "dc")
    (side,) = rows_of(plan)["FT1"].sides
    assert [each.id for each in side.cables] == ["W02", cable]
    assert side.buses == ("MB1",)


def test_a_breaker_is_listed_with_its_cables():
    plan = honey_trailer()
    kind = bundled_shelf().kinds["hydraulic-magnetic-breaker-250a"]
    plan = replace(plan, kinds={**plan.kinds, kind.id: kind})
    breaker = replace(plan.components["SW1"], id="CB1", kind=kind.id, fuses=(Fuse("", "hydraulic-magnetic"),))
    plan = plan.with_things([breaker])
    plan, cable = connect(
        plan, TerminalEnd("CB1", "LOAD"), TerminalEnd("PB1", "MAIN2"), plan.conductors["70"], "red", "dc"
    )
    row = rows_of(plan)["CB1"]
    assert row.place.breaker
    assert [each.id for side in row.sides for each in side.cables] == [cable]
    (record,) = (each for each in fuse_records(plan, [row])["places"])
    assert (record["sort"], record["type"], record["rating_a"]) == ("breaker", "hydraulic-magnetic", None)


def test_json_paper_and_spreadsheet_say_the_same(trailer):
    plan, rows = trailer
    records = fuse_records(plan, list(rows.values()))["places"]
    listed = list(csv.DictReader(io.StringIO(fuse_listing(plan, list(rows.values())).csv)))
    for record, row in zip(records, listed, strict=True):
        assert record["place"] == row["place"]
        assert "; ".join(each["cable"] for each in record["protects"]) == row["protects"]
        assert row["rating_a"] == ("" if record["rating_a"] is None else f"{record['rating_a']:g}")


def test_a_long_chain_is_cut_short_on_paper_only(trailer):
    plan, rows = trailer
    side = rows["FT1"].sides[0]
    long = replace(rows["FT1"], sides=(replace(side, cables=tuple(plan.cables.values())[:20]),))
    (row,) = fuse_tables(plan, [long])[0].rows
    assert row[5].text.splitlines()[-1] == "and 12 more joined to these: see fuse-schedule.csv"
    (listed,) = csv.DictReader(io.StringIO(fuse_listing(plan, [long]).csv))
    assert len(listed["protects"].split("; ")) == 20


def test_the_sheet_sizes_nothing_and_says_so(packs):
    for page in packs("lookout cabin", "letter").pages["fuse-schedule.pdf"]:
        assert "This sheet sizes no fuse and no cable" in page.words
        assert "Main fuse last" in page.words
