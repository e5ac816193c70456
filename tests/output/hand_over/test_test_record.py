"""The test record: a box for every value that is measured, none filled in, and who signs for it."""

import csv
import io
import re
from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus, lookout_cabin

from boardplan.checks.review import review_of
from boardplan.model.job import Acceptance
from boardplan.output.hand_over.closing_tables import closing_tables, services
from boardplan.output.hand_over.points_to_test import cables_to_test, sources, units_with_settings, watched_studs
from boardplan.output.hand_over.record_listing import record_listing, record_records
from boardplan.output.hand_over.record_tables import record_tables

SAMPLES = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}


def listed(plan):
    return list(csv.DictReader(io.StringIO(record_listing(plan).csv)))


@pytest.mark.parametrize("name", SAMPLES)
def test_every_cable_is_tested_and_every_lug_watched(packs, name):
    plan = SAMPLES[name]()
    words = [text.words for page in packs(name, "a4").pages["test-record.pdf"] for text in page.texts]
    for cable in plan.cables.values():
        lead = bool(plan.conductors[cable.conductor].stock_lengths)
        assert ((cable.label or cable.id) in words) is not lead
    rows = listed(plan)
    tested = [each for each in plan.cables.values() if not plan.conductors[each.conductor].stock_lengths]
    for test in ("continuity", "polarity", "insulation", "voltage drop at that current"):
        assert [row["cable"] for row in rows if row["test"] == test] == [each.id for each in tested]
    watched = {(row["of"], row["cable"]) for row in rows if row["test"] == "temperature after 30 min"}
    lugs = {
        (f"{end.component}.{end.terminal}", cable.id)
        for cable in tested
        for end in cable.ends
        if hasattr(end, "terminal")
        for terminal in [plan.kind_of(plan.components[end.component]).terminal(end.terminal)]
        if terminal.sort == "stud" and terminal.pole != "PE"
    }
    assert watched == lugs


@pytest.mark.parametrize("name", SAMPLES)
def test_no_value_is_filled_in(name):
    plan = SAMPLES[name]()
    assert {(row["value"], row["done_by"], row["date"]) for row in listed(plan)} == {("", "", "")}
    for table in record_tables(plan):
        for row in (each for each in table.rows if isinstance(each, tuple)):
            texts = [cell.text for cell in row if not cell.bold]
            assert not any(re.fullmatch(r"[\d.]+ ?(V|A|ohm|°C|mA|ms)?", each) for each in texts)


def test_what_charges_is_tried_from_each_source():
    """By hand: the trailer has PV, an alternator charger and shore; nothing feeds the cabin's inverters."""
    assert [each.id for each in sources(honey_trailer())] == ["MP1", "DC1", "INV1"]
    assert [each.id for each in sources(lookout_cabin())] == ["MP1", "MP2"]


def test_settings_have_lines_for_each_unit_of_the_list():
    plan = lookout_cabin()
    assert {each.id for each in units_with_settings(plan)} == {"MP1", "MP2", "HB1", "SH1", "INV1", "INV2"}
    assert record_records(plan)["settings"] == [each.id for each in units_with_settings(plan)]


def test_a_job_without_ac_has_no_residual_current_test_and_no_signature_for_it():
    plan = honey_trailer()
    bare = plan.without([each.id for each in plan.cables.values() if each.cable_class == "ac"])
    assert any(table.title.startswith("AC protection") for table in record_tables(plan))
    assert not any(table.title.startswith("AC protection") for table in record_tables(bare))
    assert any("RCD" in each.what for each in services(plan))
    assert not any("RCD" in each.what for each in services(bare))
    signed = [row[0].text for row in tuple(closing_tables(review_of(bare)))[-1].rows]
    assert signed == ["lead", "customer"]


def test_an_interval_that_nobody_gave_is_a_box_to_fill_in():
    plan = honey_trailer()
    (table,) = (each for each in closing_tables(review_of(plan)) if each.title == "Service plan")
    whens = {row[0].text: row[1] for row in table.rows}
    assert whens["Torque of every stud and clamp again"].text == "after 30 days, 1000 km or 50 h, whichever is first"
    assert whens["Torque of every stud and clamp again"].small == "common practice, no source"
    assert whens["Filters and air ways cleaned"].blank
    assert not whens["Filters and air ways cleaned"].text


def test_an_accepted_finding_is_on_the_list_of_deviations_with_name_and_reason(packs):
    plan = library_bus()
    review = review_of(plan)
    first = next(each for each in review.findings if each.open)
    accepted = Acceptance(first.name, first.things, "Lead", "seen on site", "2026-11-30", first.measured)
    told = review_of(replace(plan, accepted=(*plan.accepted, accepted)))
    (table,) = (each for each in closing_tables(told) if each.title.startswith("Deviations"))
    assert ("Lead 2026-11-30", "seen on site") in [(row[2].text, row[2].small) for row in table.rows]
    assert len(table.rows) == sum(not each.open for each in told.findings)
    words = " ".join(page.words for page in packs("library bus", "a4").pages["test-record.pdf"])
    assert plan.accepted[0].reason.split()[0] in words


def test_open_findings_are_the_first_open_point():
    review = review_of(honey_trailer())
    (table,) = (each for each in closing_tables(review) if each.title == "Open points")
    count = sum(each.open for each in review.findings)
    assert table.rows[0][0].text == f"{count} open findings: see the sheet of findings"
    assert all(row[0].blank for row in table.rows[1:])


def test_json_says_what_is_tested():
    plan = honey_trailer()
    told = record_records(plan)
    assert told["cables"] == [each.id for each in cables_to_test(plan)]
    assert [each["stud"] for each in told["studs"]] == [each.place for each in watched_studs(plan)]
    assert told["residual_current"] is True
