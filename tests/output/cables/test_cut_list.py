"""The cut list in the order of cutting, and what it must say before anybody cuts."""

import csv
import io
from dataclasses import replace
from itertools import pairwise

import pytest
from boards import lookout_cabin
from checks.plans import rules

from boardplan.model.cable import Loop, Lug
from boardplan.output.cables.cut_list import cut_listing, cut_tables, cutting_order
from boardplan.output.cutting.cut_inches import cut_inches
from boardplan.output.tables.table import Heading
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.supports.clamps import clamps_of


def lengths_of(plan):
    return cut_lengths(plan, find_routes(plan))


def records(plan, lengths):
    return {row["cable"]: row for row in csv.DictReader(io.StringIO(cut_listing(plan, lengths).csv))}


def test_the_largest_first_by_reel_and_falling_length(bus_plan):
    lengths = lengths_of(bus_plan)
    order = cutting_order(bus_plan, lengths)
    reels = [(cable.conductor, cable.colour) for cable in order]
    assert len(dict.fromkeys(reels)) == 1 + sum(a != b for a, b in pairwise(reels))
    for first, second in pairwise(order):
        if (first.conductor, first.colour) == (second.conductor, second.colour):
            assert (lengths[first.id].cut or 0) >= (lengths[second.id].cut or 0)
    assert [cable.id for cable in order[:3]] == ["W05", "W07", "W06"]


def test_csv_says_what_goes_on_each_end(bus_plan):
    """W07 by hand: 427 path, 391 net, 410 cut; our own worked example."""
    row = records(bus_plan, lengths_of(bus_plan))["W07"]
    assert (row["cut_mm"], row["pieces"], row["final"]) == ("410", "1", "yes")
    assert (float(row["path_mm"]), float(row["net_mm"])) == pytest.approx((427, 391), abs=0.6)
    assert row["end_1_lug"].startswith("70 mm² x M10")
    assert row["end_2_lug"].startswith("70 mm² x M8")
    assert row["end_1_label"] == "W07  NB1.S5 > INV1.DC-"
    assert row["end_2_label"] == "W07  INV1.DC- > NB1.S5"
    assert (row["end_1_place"], row["end_2_place"]) == ("shop", "site")


def test_an_estimated_leg_is_not_final_wherever_it_is_shown(packs):
    pack = packs("library bus", "a4")
    row = records(pack.plan, lengths_of(pack.plan))["W32"]
    assert row["final"] == "no"
    assert row["why_not_final_and_notes"].startswith("not final")
    words = "\n".join(page.words for page in pack.pages["cable-cut-list.pdf"])
    assert words.count("NOT FINAL") == 1


def test_a_cable_without_a_way_is_in_the_list_and_not_final(bus_plan):
    lengths = cut_lengths(bus_plan, {})
    row = records(bus_plan, lengths)["W07"]
    assert (row["cut_mm"], row["final"]) == ("", "no")
    assert row["why_not_final_and_notes"].startswith("not final: no way")
    table = cut_tables(bus_plan, lengths)[0]
    cells = next(row for row in table.rows if not isinstance(row, Heading) and row[0].text == "W07")
    assert (cells[1].text, cells[1].alert) == ("?", "NOT FINAL")


@pytest.mark.parametrize("sample", ["library bus", "lookout cabin"])
def test_paper_shows_every_cable_and_how_its_length_came_about(sample, packs):
    pack = packs(sample, "letter")
    words = [text.words for page in pack.pages["cable-cut-list.pdf"] for text in page.texts]
    for cable in pack.plan.cables:
        assert words.count(cable) >= 2, cable


def test_every_sum_on_the_paper_adds_up(bus_plan):
    lengths = lengths_of(bus_plan)
    rows = cut_tables(bus_plan, lengths)[3].rows
    for row, length in zip(rows, (lengths[cable] for cable in bus_plan.cables), strict=True):
        legs, corners, off, path, lug_1, lug_2, net, slack, up, group, cut = (float(cell.text or 0) for cell in row[2:])
        assert legs + corners + off == pytest.approx(path, abs=0.21)
        assert path + lug_1 + lug_2 == pytest.approx(net, abs=0.21)
        assert net + slack + up + group == pytest.approx(cut, abs=0.21)
        assert cut == length.cut


def true(plan):
    return replace(plan, rules=rules())


def looped(plan):
    cable = plan.cables["W07"]
    return true(plan).with_things([replace(cable, end=replace(cable.end, loop=Loop("service", 80.0)))])


def test_every_true_sum_on_the_paper_adds_up(bus_plan):
    """With heights and loops in columns of their own."""
    plan = looped(bus_plan)
    lengths = lengths_of(plan)
    table = cut_tables(plan, lengths)[3]
    heads = [column.head for column in table.columns]
    for row, length in zip(table.rows, (lengths[cable] for cable in plan.cables), strict=True):
        of = {head: float(cell.text or 0) for head, cell in list(zip(heads, row, strict=True))[2:]}
        path = of["legs on the board"] + of["corners save"] + of["rises"] + of["off the board"]
        assert path == pytest.approx(of["= path"], abs=0.21)
        assert of["= path"] + of["lug 1"] + of["lug 2"] == pytest.approx(of["= net"], abs=0.21)
        cut = of["= net"] + of["loops, tails"] + of["slack"] + of["rounded up by"] + of["group adds"]
        assert cut == pytest.approx(of["= cut"], abs=0.31)
        assert of["= cut"] == length.cut
    assert "1 in 3" in table.notes[0]
    assert "flat" not in table.notes[0]


def test_flat_sums_have_no_columns_for_heights(bus_plan):
    table = cut_tables(bus_plan, lengths_of(bus_plan))[3]
    assert not {"rises", "loops, tails"} & {column.head for column in table.columns}
    assert "lengths are flat" in table.notes[0]


def test_ends_say_how_lugs_are_turned_and_what_tube_goes_on(bus_plan):
    plan = true(bus_plan)
    row = records(plan, lengths_of(plan))["W07"]
    assert (row["end_1_clock"], row["end_2_clock"]) == ("12 h", "12 h")
    assert (row["end_1_tube_mm"], row["end_2_tube_mm"]) == ("52", "52")
    assert float(row["rise_mm"]) == pytest.approx(11.3, abs=0.05)
    cells = next(
        row
        for row in cut_tables(plan, lengths_of(plan))[0].rows
        if not isinstance(row, Heading) and row[0].text == "W07"
    )
    assert "12 h, strip 24, tube 52" in cells[3].small
    assert "crimp on site" in cells[4].small


def test_a_turned_lug_of_a_long_cable_says_how_far_it_twists(cabin_plan):
    """W24 is 1070 mm of fine strand: over a metre it can be twisted about 30 degrees by hand (common practice)."""
    cable = cabin_plan.cables["W24"]
    plan = true(cabin_plan).with_things([replace(cable, end=replace(cable.end, lug=Lug("M8", clocking=90.0)))])
    row = next(
        row
        for row in cut_tables(plan, lengths_of(plan))[0].rows
        if not isinstance(row, Heading) and row[0].text == "W24"
    )
    assert "3 h (90°), can be twisted 30° by hand" in row[4].small
    assert "twisted" not in row[3].small


def test_an_id_that_looks_like_a_formula_is_no_formula(bus_plan):
    cable = replace(bus_plan.cables["W07"], id="=W07")
    plan = bus_plan.without(["W07"]).with_things([cable])
    assert "'=W07" in cut_listing(plan, lengths_of(plan)).csv


def test_a_lead_no_shop_sells_is_not_final_and_said_once(bus_plan):
    conductor = replace(bus_plan.conductors["signal"], stock_lengths=(100,))
    plan = replace(bus_plan, conductors={**bus_plan.conductors, "signal": conductor})
    row = records(plan, lengths_of(plan))["W40"]
    assert (row["cut_mm"], row["final"]) == ("", "no")
    assert row["why_not_final_and_notes"].count("no stock lead is long enough") == 1


@pytest.mark.parametrize(
    ("cut", "inches"), [(1055, "41-9/16"), (25.4, "1"), (100, "3-15/16"), (101.6, "4"), (99, "3-29/32")]
)
def test_inches_of_a_cut_are_never_short_of_it(cut, inches):
    """1055 mm is 41.535 in: 41-17/32 would be 0.1 mm short; 99 mm is 3.8976 in, 3-29/32 is 3.9063."""
    assert cut_inches(cut) == inches


def test_clamps_are_counted_by_cable_and_by_what_they_hold():
    """W21 and W22 lie side by side for a while and share two; a shared one is bought once."""
    plan = lookout_cabin()
    ways = find_routes(plan)
    clamps, lengths = clamps_of(plan, ways), lengths_of(plan)
    rows = csv.DictReader(io.StringIO(cut_listing(plan, lengths, clamps).csv))
    assert {row["cable"]: int(row["clamps"]) for row in rows} == {key: len(each) for key, each in clamps.items()}
    cables, _, counts, _ = cut_tables(plan, lengths, clamps)
    way = {row[0].text: row[5].small for row in cables.rows if not isinstance(row, Heading)}
    assert "3 clamps, 2 with W22" in way["W21"]
    assert "clamp" not in way["W03"]
    heads = [index for index, row in enumerate(counts.rows) if isinstance(row, Heading)]
    bought = {row[1].text: int(row[2].text) for row in counts.rows[heads[-1] + 1 :]}
    assert counts.rows[heads[-1]].text == "Cable clamps by jacket"
    singles = sum(len(each.cables) == 1 for those in clamps.values() for each in those)
    pairs = sum(len(each.cables) == 2 for those in clamps.values() for each in those)
    assert sum(bought.values()) == singles + pairs / 2
    assert bought["for 2 x 14 mm"] == 2


def test_slack_says_where_it_comes_from(packs):
    words = "\n".join(page.words for page in packs("library bus", "a4").pages["cable-cut-list.pdf"])
    assert "Slack, steps and tolerances: common practice, no source (rule set trade-practice, edition 2026.1)." in words
