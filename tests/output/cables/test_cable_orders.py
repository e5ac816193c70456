"""The cut list in its other orders: to press and to fit. Every end is in each of them once."""

from collections import Counter
from dataclasses import replace
from itertools import groupby

import pytest
from checks.plans import rules

from boardplan.checks.review import review_of
from boardplan.files.load_out_file import bundled_load_out
from boardplan.model.stock import CableStock
from boardplan.output.cables.cut_list import cut_listing, cut_tables
from boardplan.output.cables.fit_list import fit_listing, fit_table, fitted_ends
from boardplan.output.cables.press_list import RAW, press_listing, press_table, pressed_ends
from boardplan.output.cutting.reel_plan import cut_from, cut_groups
from boardplan.output.hand_over.torque_list import torque_rows
from boardplan.output.parts.cable_ends import end_parts
from boardplan.output.parts.shop import Shop
from boardplan.output.tables.table import Heading
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.reels import blade_needs, ferrule_needs, lug_needs


@pytest.fixture(params=["library bus", "lookout cabin"])
def plan(request, bus_plan, cabin_plan):
    return {"library bus": bus_plan, "lookout cabin": cabin_plan}[request.param]


def lengths_of(plan):
    return cut_lengths(plan, find_routes(plan))


def rows_of(listing):
    return [dict(zip(listing.heads, row, strict=True)) for row in listing.rows]


def test_the_press_gets_every_lug_and_ferrule_that_is_counted(plan):
    """Held against the counts of lugs and ferrules, which come about another way."""
    lengths = lengths_of(plan)
    ends = pressed_ends(plan, lengths)
    pressed = Counter()
    for each in ends:
        if each.fitting != RAW:
            pressed[each.fitting.split(" ")[0]] += each.pieces
            pressed[each.fitting.removeprefix("Lug ")] += each.pieces
    for need in lug_needs(plan, lengths):
        assert pressed[need.name] == need.count
    assert pressed["Lug"] == sum(need.count for need in lug_needs(plan, lengths))
    assert pressed["Ferrule"] == sum(need.count for need in ferrule_needs(plan, lengths))
    assert pressed["Blade"] == sum(need.count for need in blade_needs(plan, lengths))


def test_every_paper_tells_of_the_same_blade_terminals(bus_plan):
    """The cut list, the press list, the counts and the bill of materials: ten ends of W20 and one of W19."""
    lengths = lengths_of(bus_plan)
    pressed = {each.cable.id: each for each in pressed_ends(bus_plan, lengths) if each.here.blade}
    assert {name: (each.fitting, each.pieces) for name, each in pressed.items()} == {
        "W20": ("Blade terminal 2.5 mm²", 10),
        "W19": ("Blade terminal 1.5 mm²", 1),
    }
    assert {need.name: need.count for need in blade_needs(bus_plan, lengths)} == {"2.5 mm²": 10, "1.5 mm²": 1}
    cells = {row[0].text: row for row in cut_tables(bus_plan, lengths)[0].rows if not isinstance(row, Heading)}
    assert cells["W20"][3].small.startswith("blade terminal, strip")
    parts = {
        each.words: each.needed for each in end_parts(Shop(review_of(bus_plan), bundled_load_out("common-practice")))
    }
    assert (parts["Blade terminal 2.5 mm²"], parts["Blade terminal 1.5 mm²"]) == (10, 1)


def test_whatever_the_torque_list_lists_is_ticked_as_torqued_where_it_is_fitted(plan):
    table = fit_table(plan, lengths_of(plan))
    wanted = {row.place for row in torque_rows(plan)}
    ticked, place = set(), ""
    for row in table.rows:
        if isinstance(row, Heading):
            place = row.text
        elif row[-2].tick and row[-1].tick:
            ticked.add(f"{place}.{row[0].text}")
    assert ticked == wanted


def test_a_die_is_set_up_once_and_the_shop_comes_before_the_site(plan):
    ends = pressed_ends(plan, lengths_of(plan))
    set_ups = [fitting for fitting, _ in groupby(each.fitting for each in ends)]
    assert len(set_ups) == len(set(set_ups))
    for _, members in groupby(ends, lambda each: each.fitting):
        stages = [each.here.stage for each in members]
        assert stages == sorted(stages)


def test_the_die_is_never_made_up(plan):
    table = press_table(plan, lengths_of(plan))
    lugs = [row for row in table.rows if isinstance(row, Heading) and row.text.startswith("Lug ")]
    assert lugs
    assert all("die ____" in row.aside and "presses ____" in row.aside for row in lugs)


def test_every_end_is_fitted_once(plan):
    ends = fitted_ends(plan, lengths_of(plan))
    assert Counter((each.cable.id, each.end) for each in ends) == Counter(
        (cable, end) for cable in plan.cables for end in (1, 2)
    )
    table = fit_table(plan, lengths_of(plan))
    headings = [row.text for row in table.rows if isinstance(row, Heading)]
    assert len(headings) == len(set(headings))
    assert headings[-1] == "Off the board"


def test_a_stud_is_filled_from_its_face_outwards(bus_plan):
    cable = bus_plan.cables["W13"]
    crowded = bus_plan.with_things([replace(cable, end=replace(cable.end, terminal="S5"))])
    rows = [each for each in rows_of(fit_listing(crowded, lengths_of(crowded))) if each["component"] == "NB1"]
    on_stud = [(each["cable"], each["lug_on_stud"], each["lugs_on_stud"]) for each in rows if each["terminal"] == "S5"]
    assert on_stud == [("W07", 1, 2), ("W13", 2, 2)]


def test_listings_say_what_the_papers_say(bus_plan):
    plan = replace(bus_plan, rules=rules())
    lengths = lengths_of(plan)
    row = next(each for each in rows_of(press_listing(plan, lengths)) if (each["cable"], each["end"]) == ("W07", 2))
    assert (row["fitting"], row["lands_on"], row["made"]) == ("Lug 70 mm² x M8 straight", "INV1.DC-", "site")
    assert (row["strip_mm"], row["tube_mm"], row["tube_colour"]) == (24, 52, "black")
    fitted = rows_of(fit_listing(plan, lengths))
    assert next(each for each in fitted if (each["cable"], each["end"]) == ("W07", 1))["comes_from"] == "INV1.DC-"
    assert sum(each["component"] == "" for each in fitted) == sum(end.here.raw for end in fitted_ends(plan, lengths))


def test_the_cut_list_names_the_reel_of_each_cable(bus_plan):
    conductor = bus_plan.cables["W07"].conductor
    black = (
        CableStock(conductor, "black", 1600.0, 1, "left from a cabin"),
        CableStock(conductor, "black", 25_000.0, 1, "new reel"),
    )
    plan = replace(bus_plan, stock=replace(bus_plan.stock, cables=black))
    lengths = lengths_of(plan)
    reels = cut_from(cut_groups(plan, lengths))
    assert set(reels) == {
        each.id for each in plan.cables.values() if (each.conductor, each.colour) == (conductor, "black")
    }
    rows = {row["cable"]: row for row in rows_of(cut_listing(plan, lengths, reels=reels))}
    assert rows["W05"]["cut_from"] in {"left from a cabin", "new reel"}
    assert rows["W01"]["cut_from"] == ""
    cells = {
        row[0].text: row[0] for row in cut_tables(plan, lengths, reels=reels)[0].rows if not isinstance(row, Heading)
    }
    assert f"from {rows['W05']['cut_from']}" in cells["W05"].small


def test_each_order_begins_on_a_sheet_of_its_own(packs):
    pages = packs("library bus", "letter").pages["cable-cut-list.pdf"]
    for title in ("To cut, by reel and falling length", "To press, by lug and die", "To fit, by place"):
        page, found = next((page, text) for page in pages for text in page.texts if text.words == title)
        assert page.height - found.top < 45
