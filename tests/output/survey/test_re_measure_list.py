"""The re-measure list against the job files themselves: all that nobody of the crew measured, and nothing else."""

import csv
import io
import json
from collections import Counter
from dataclasses import replace

import pytest
from boards import SAMPLES, honey_trailer, library_bus, lookout_cabin

from boardplan.geometry.point import Point
from boardplan.output.survey.doubtful import doubtful_things, unsaid
from boardplan.output.survey.re_measure_list import re_measure_records, re_measure_tables, unsaid_words
from boardplan.output.tables.table import Heading
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths

FILES = {"library bus": "library-bus", "lookout cabin": "lookout-cabin", "honey trailer": "honey-trailer"}
DOUBTED = ("estimated", "photo", "customer")


def data_of(name):
    return json.loads((SAMPLES / f"{FILES[name]}.json").read_text(encoding="utf-8"))


def found_in(plan):
    return doubtful_things(plan, cut_lengths(plan, find_routes(plan)))


def rows_in(pack):
    text = (pack.folder / "re-measure-list.csv").read_text(encoding="utf-8-sig")
    return list(csv.DictReader(io.StringIO(text)))


@pytest.mark.parametrize("name", FILES)
def test_every_leg_that_the_crew_did_not_measure_is_listed_and_no_other(packs, name):
    asked = Counter(
        (cable["id"], f"{leg['length']:g}", leg["trust"])
        for cable in data_of(name)["cables"]
        for side in ("from", "to")
        for leg in cable[side].get("legs", [])
        if leg["trust"] in DOUBTED
    )
    rows = [row for row in rows_in(packs(name, "a4")) if row["sort"] == "leg"]
    assert Counter((row["thing"], row["now_mm"], row["trust"]) for row in rows) == asked


@pytest.mark.parametrize("name", FILES)
def test_every_other_thing_is_listed_by_the_trust_of_the_file(packs, name):
    data = data_of(name)
    things = [
        (each["id"], each.get("trust")) for group in ("framing", "no_go_boxes", "exits") for each in data.get(group, [])
    ]
    things += [(each["id"], each.get("trust")) for each in data["boards"]]
    rooms = [(each["id"], each["compartment"].get("trust")) for each in data["boards"]]
    asked = {each for each in (*things, *rooms) if each[1] in DOUBTED}
    rows = [row for row in rows_in(packs(name, "a4")) if row["sort"] != "leg"]
    assert {(row["thing"], row["trust"]) for row in rows} == asked


@pytest.mark.parametrize("name", FILES)
def test_the_paper_has_every_number_of_the_spreadsheet_and_a_box_beside_it(packs, name):
    pack = packs(name, "a4")
    words = Counter(text.words for page in pack.pages["re-measure-list.pdf"] for text in page.texts)
    for value, count in Counter(row["now_mm"] for row in rows_in(pack)).items():
        assert words[f"{float(value):g}"] >= count
    plan = pack.plan
    (table,) = re_measure_tables(plan, found_in(plan))
    rows = [row for row in table.rows if not isinstance(row, Heading)]
    assert len(rows) == len(rows_in(pack))
    assert all(row[4].blank and row[5].blank for row in rows)
    for page in pack.pages["re-measure-list.pdf"]:
        assert "Estimated dimension - verify on site." in page.words


def test_the_least_trusted_comes_first():
    order = [each.trust for each in found_in(honey_trailer())]
    assert order == sorted(order, key=DOUBTED.index)
    assert set(order) == set(DOUBTED)


def test_a_cable_with_an_estimated_leg_is_not_final_and_says_so(packs):
    """The bus: both doubtful legs of W32 are estimated, those of W01 and W05 were given by the customer."""
    told = {(each.thing, each.sort): each for each in found_in(library_bus())}
    assert told["W32", "leg"].not_final == ("W32",)
    assert told["W01", "leg"].not_final == ()
    assert "NOT FINAL: W32" in packs("library bus", "a4").pages["re-measure-list.pdf"][0].words


def test_a_matched_group_hangs_on_each_of_its_legs():
    plan = library_bus()
    pair = [replace(plan.cables[each], group="G") for each in ("W01", "W32")]
    told = [each for each in found_in(plan.with_things(pair)) if each.thing == "W01"]
    assert told
    assert all(each.hangs_on == "cut of W01, with matched group G: W01, W32" for each in told)
    assert all("W32" in each.not_final for each in told)


def test_fixings_in_a_member_hang_on_it():
    """From the file: the fixings of the trailer whose x is within 22.5 mm of rib-3 at 870."""
    near = [each["id"] for each in data_of("honey trailer")["fixings"] if abs(each["at"][0] - 870) <= 22.5]
    (rib,) = (each for each in found_in(honey_trailer()) if each.thing == "rib-3")
    assert near
    assert rib.hangs_on == f"fixings {', '.join(near)}"
    assert rib.dimensions == (("centre, x", 870), ("width", 45))


def test_an_exit_over_an_edge_is_measured_along_it_and_its_cables_hang_on_it():
    plan = honey_trailer()
    told = {each.thing: each for each in found_in(plan) if each.sort == "exit"}
    assert told["X4"].dimensions == (("x", 338),)
    assert told["X4"].hangs_on == "cut of W17"
    through = replace(plan.exits["X4"], through="hole", diameter=25.0, position=Point(338, 700))
    (moved,) = (each for each in found_in(plan.with_things([through])) if each.thing == "X4")
    assert moved.dimensions == (("x", 338), ("y", 700), ("diameter", 25))


def test_the_nearest_unit_to_a_no_go_box_is_named():
    """EB1 reaches to x 970 (its place 820 and 150 wide), the wheel arch begins at x 1000."""
    (arch,) = (each for each in found_in(honey_trailer()) if each.sort == "no-go box")
    assert arch.hangs_on == "what may stand there; nearest is EB1, 30 mm beside it"


def test_what_nobody_said_is_counted_in_one_sentence():
    plan = lookout_cabin()
    assert {words: (count, of) for words, count, of in unsaid(plan)} == {
        "the size of boards": (2, 2),
        "exits": (6, 6),
    }
    assert unsaid_words(plan) == ("Nobody said how these were measured: the size of boards (2 of 2), exits (6 of 6).")
    told = re_measure_records(plan, found_in(plan))
    assert {"what": "exits", "count": 6, "of": 6} in told["unsaid"]


def test_a_job_that_was_measured_throughout_says_so():
    plan = lookout_cabin()
    measured = [replace(each, trust="measured") for group in (plan.framing, plan.exits) for each in group.values()]
    measured += [
        replace(each, trust="measured", compartment=replace(each.compartment, trust="measured"))
        for each in plan.boards.values()
    ]
    measured += [
        replace(cable, end=replace(cable.end, legs=tuple(replace(leg, trust="measured") for leg in cable.end.legs)))
        for cable in plan.cables.values()
        if hasattr(cable.end, "legs")
    ]
    plan = plan.with_things(measured)
    assert found_in(plan) == ()
    (table,) = re_measure_tables(plan, ())
    assert table.rows == ()
    assert table.notes[0].startswith("Of nothing in this job it is said")
    assert unsaid_words(plan) == ""


def test_one_of_several_legs_is_told_from_the_others_or_asked_about():
    plan = library_bus()
    cable = plan.cables["W01"]
    bare = replace(cable.start, legs=tuple(replace(each, note="") for each in cable.start.legs))
    single = replace(bare, legs=bare.legs[1:2])

    def legs(start):
        changed = plan.with_things([replace(cable, start=start)])
        things = doubtful_things(changed, cut_lengths(changed, find_routes(changed)))
        return [each.where for each in things if (each.thing, each.sort) == ("W01", "leg")]

    assert all(each.note in where for each, where in zip(cable.start.legs[1:], legs(cable.start), strict=True))
    assert ["from where to where? ____" in each for each in legs(bare)] == [True, True]
    assert ["from where" in each for each in legs(single)] == [False]
