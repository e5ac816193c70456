"""The torque list: every stud and clamp in use, what lies on it, a torque only where a sheet gave it."""

import csv
import io
import json
from dataclasses import replace

import pytest
from boards import SAMPLES, honey_trailer, library_bus, lookout_cabin
from output.read_back import read_pages

from boardplan.output.hand_over.torque_list import (
    POUND_INCHES,
    missing_words,
    torque_listing,
    torque_records,
    torque_rows,
    torque_tables,
)
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.tables.list_sheets import ListPaper, list_sheets

FILES = {"library bus": "library-bus", "lookout cabin": "lookout-cabin", "honey trailer": "honey-trailer"}


def in_use(name):
    """Studs and clamps that a cable of the file ends on, straight from its JSON."""
    data = json.loads((SAMPLES / f"{FILES[name]}.json").read_text(encoding="utf-8"))
    sorts = {
        (component["id"], terminal["id"]): terminal["sort"]
        for component in data["components"]
        for kind in data["kinds"]
        if kind["id"] == component["kind"]
        for terminal in kind.get("terminals", [])
    }
    ends = [cable[side] for cable in data["cables"] for side in ("from", "to")]
    used = {(each["component"], each["terminal"]) for each in ends if "component" in each}
    return {f"{one}.{other}" for one, other in used if sorts[one, other] in ("stud", "clamp")}


def with_torque(plan, component, terminal, torque):
    kind = plan.kind_of(plan.components[component])
    terminals = tuple(replace(each, torque=torque) if each.id == terminal else each for each in kind.terminals)
    return replace(plan, kinds={**plan.kinds, kind.id: replace(kind, terminals=terminals)})


def words_on_paper(plan, fonts):
    shared = ListPaper(plan, "Torque list", PAPERS["a4"], landscape=True, footer="", stops=0, measure=fonts.width)
    sheets = list_sheets(torque_tables(plan, torque_rows(plan)), shared)
    return [text.words for page in read_pages(pdf_of(sheets, fonts, "t")) for text in page.texts]


@pytest.mark.parametrize("name", FILES)
def test_every_stud_and_clamp_in_use_is_listed_once(packs, name):
    pack = packs(name, "a4")
    text = (pack.folder / "torque-list.csv").read_text(encoding="utf-8-sig")
    places = [f"{row['component']}.{row['terminal']}" for row in csv.DictReader(io.StringIO(text))]
    assert len(set(places)) == len(places)
    assert set(places) == in_use(name)
    words = [text.words for page in pack.pages["torque-list.pdf"] for text in page.texts]
    terminals = [each.partition(".")[2] for each in places]
    assert all(words.count(each) >= terminals.count(each) for each in terminals)


@pytest.mark.parametrize("plan", [library_bus(), lookout_cabin(), honey_trailer()], ids=lambda plan: plan.job.title)
def test_no_torque_is_made_up(plan, fonts):
    """No kind of the samples has a torque, so there is a box at every terminal, and no number stands in that column."""
    rows = torque_rows(plan)
    assert {each.terminal.torque for each in rows} == {None}
    assert {each["torque"] for each in torque_records(rows)} == {None}
    table = torque_tables(plan, rows)[0]
    cells = [row[3] for row in table.rows if isinstance(row, tuple)]
    assert len(cells) == len(rows)
    assert all(cell.blank and not cell.text for cell in cells)
    told = f"the torque of {len(rows)} of {len(rows)} terminals is not known"
    assert any(told in each for each in words_on_paper(plan, fonts))
    assert not any("Nm" in each and each[:1].isdigit() for each in words_on_paper(plan, fonts))


def test_a_torque_of_the_sheet_is_printed_and_no_longer_asked_for(fonts):
    plan = with_torque(honey_trailer(), "SW1", "IN", 17.5)
    words = words_on_paper(plan, fonts)
    assert words.count("17.5") == 1
    count = len(torque_rows(plan))
    assert missing_words(torque_rows(plan)).startswith(f"To ask: the torque of {count - 1} of {count} ")
    (row,) = (row for row in csv.DictReader(io.StringIO(torque_listing(torque_rows(plan)).csv)) if row["torque_nm"])
    assert (row["component"], row["terminal"], row["torque_nm"]) == ("SW1", "IN", "17.5")


def test_an_inch_job_also_has_pound_inches(fonts):
    """NIST SP 811, appendix B.8: 1 lbf in = 1.129 848 E-01 N m, so that 10 N m are 88.5 lbf in."""
    assert pytest.approx(1 / 0.1129848, rel=1e-6) == POUND_INCHES
    assert "88.5 lbf in" in words_on_paper(with_torque(lookout_cabin(), "FT1", "LINE", 10), fonts)
    assert not any("lbf" in each for each in words_on_paper(with_torque(honey_trailer(), "FT1", "LINE", 10), fonts))


def test_lugs_lie_in_the_order_of_the_stack(bus_plan):
    """Two cables on one stud: the larger one against the contact face."""
    moved = bus_plan.cables["W11"]  # 16 mm², from LP1.NEG to NB1.S2
    end = replace(moved.end, terminal="S5")  # where W07, 70 mm², lies already
    rows = {each.place: each for each in torque_rows(bus_plan.with_things([replace(moved, end=end)]))}
    assert rows["NB1.S5"].lying == "1. W07 70 mm², 2. W11 16 mm²"
    assert rows["NB1.S5"].count == 2
    assert "NB1.S2" not in rows


def test_every_sheet_says_where_a_torque_comes_from(packs):
    for page in packs("honey trailer", "a4").pages["torque-list.pdf"]:
        assert "Torque from the sheet. Mark after tightening." in page.words
