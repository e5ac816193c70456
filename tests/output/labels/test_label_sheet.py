"""The label sheet read back: both ends of every cable exactly once, every word inside its label, no rating made up."""

import csv
import io
import re
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from output.read_back import read_pages

from boardplan.files.label_stock_file import bundled_label_stocks, read_label_stock
from boardplan.model.cable import OffBoardEnd
from boardplan.output.labels.label_list import label_listing, label_records, label_tables, too_small_for
from boardplan.output.labels.label_picture import ELLIPSIS, cable_picture, plate_picture, shortened_words
from boardplan.output.labels.label_sheet import label_set, label_sheets, plain_stock
from boardplan.output.labels.label_words import CableLabel, PlateLabel, fuse_labels
from boardplan.output.printing.lettering import FINE, TITLE, text_box
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.pdf import pdf_of
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths

STOCKS = ("a4", "letter", *bundled_label_stocks())
END = re.compile(r"end ([12])(?:, (\d+)/\d+)?")


texts = st.text(st.characters(min_codepoint=33, max_codepoint=255), min_size=1, max_size=60)
texts_of_a_plate = st.tuples(texts, texts)


def stock_named(name):
    return plain_stock(PAPERS[name]) if name in PAPERS else read_label_stock(bundled_label_stocks()[name])


@pytest.fixture(scope="module")
def jobs():
    from boards import honey_trailer, library_bus, lookout_cabin  # noqa: PLC0415

    plans = {"bus": library_bus(), "cabin": lookout_cabin(), "trailer": honey_trailer()}
    return {name: (plan, cut_lengths(plan, find_routes(plan))) for name, plan in plans.items()}


def labels_of(jobs, job, stock, fonts):
    plan, lengths = jobs[job]
    return plan, label_set(plan, lengths, stock_named(stock), fonts.width)


def read_cells(labels, plan, fonts):
    """Each label of the PDF: its grid and the texts whose middle lies in its box."""
    sheets = label_sheets(labels, plan, 0, fonts.width)
    pages = iter(read_pages(pdf_of(sheets, fonts, "labels")))
    for grid in dict.fromkeys((*labels.stock.cables, labels.stock.plates)):
        members = [each for each in labels.placed if each.grid == grid]
        for start in range(0, len(members), grid.count):
            page = next(pages)
            assert (page.width, page.height) == pytest.approx((grid.page_width, grid.page_height), abs=0.1)
            for index, member in enumerate(members[start : start + grid.count]):
                box = grid.box(index)
                middle = [(each, ((each.left + each.right) / 2, (each.bottom + each.top) / 2)) for each in page.texts]
                yield member, box, [each for each, place in middle if box.holds(place)]
    assert next(pages, None) is None


@pytest.mark.parametrize("stock", STOCKS)
@pytest.mark.parametrize("job", ["bus", "cabin", "trailer"])
def test_every_cable_has_both_ends_exactly_once_and_every_word_lies_inside_its_label(jobs, fonts, job, stock):
    plan, labels = labels_of(jobs, job, stock, fonts)
    found = Counter()
    for member, box, texts in read_cells(labels, plan, fonts):
        assert texts
        for text in texts:
            assert text.left >= box.left
            assert text.right <= box.right
            assert text.bottom >= box.bottom
            assert text.top <= box.top
        if isinstance(member.label, CableLabel):
            words = [each.words for each in texts]
            ends = {END.fullmatch(each).groups() for each in words if END.fullmatch(each)}
            names = {each for each in words if each in {cable.label or cable.id for cable in plan.cables.values()}}
            assert len(ends) == len(names) == 1
            ((end, copy),) = ends
            found[names.pop(), int(end), int(copy or 1)] += 1
    asked = {
        (cable.label or cable.id, end, copy)
        for cable in plan.cables.values()
        for end in (1, 2)
        for copy in range(1, cable.count + 1)
    }
    assert found == Counter(asked)


def test_a_label_says_this_end_first_and_the_same_name_on_both(jobs, fonts):
    """The wording of our own worked example: W07  NB1.S5 > INV1.DC- on end 1, turned round on end 2."""
    plan, labels = labels_of(jobs, "bus", "a4", fonts)
    words = {
        # PDFium hands a hyphen at the end of a line back as one that may go
        (member.label.cable, member.label.end): {re.sub("[\x02\ufffe\xad]$", "-", each.words) for each in texts}
        for member, _, texts in read_cells(labels, plan, fonts)
        if isinstance(member.label, CableLabel)
    }
    conductor = plan.conductors[plan.cables["W07"].conductor].name
    assert words["W07", 1] >= {"W07", "end 1", "NB1.S5 > INV1.DC-", conductor}
    assert words["W07", 2] >= {"W07", "end 2", "INV1.DC- > NB1.S5", conductor}


def test_words_stay_in_sight_once_round_and_are_said_as_often_as_they_go(jobs, fonts):
    """Once round 16 mm is 50.27 mm: below that lies what is stuck on first."""
    _, labels = labels_of(jobs, "bus", "a4", fonts)
    label, placed = next(each for each in labels.cables if each[0].cable == "W07")
    assert label.diameter == 16
    words = [each for each in placed.look.picture if hasattr(each, "text")]
    seen = [each for each in words if each.text != "stick this end first"]
    assert [each.text for each in words].count("W07") == 3
    assert min(text_box(each, fonts.width).bottom for each in seen) >= -50.27
    assert all(each.at.y < -50.27 for each in words if each not in seen)


def test_a_stock_too_small_names_its_cables_and_asks(jobs, fonts):
    plan, lengths = jobs["bus"]
    small = plain_stock(PAPERS["a4"])
    small = replace(small, cables=small.cables[:1])  # 36 mm go round (36 - 6) / 3.14159 = 9.54 mm
    labels = label_set(plan, lengths, small, fonts.width)
    thick = {each.id for each in plan.cables.values() if plan.conductors[each.conductor].outside_diameter > 9.54}
    assert set(too_small_for(labels)) == thick
    assert len(thick) > 5
    rows = [row for row in csv.DictReader(io.StringIO(label_listing(labels).csv)) if row["sort"] == "cable end"]
    assert {row["name"] for row in rows if row["goes_round"] == "no"} == thick
    questions = label_tables(labels)[1]
    assert "36 mm, goes round 9.5 mm at most" in questions.rows[0][1].text
    assert sum(cell.alert != "" for row in label_tables(labels)[-1].rows for cell in row) == len(thick)


def test_a_cable_thinner_than_its_words_are_high_is_asked_about(jobs, fonts):
    """Once round 1.8 mm is 5.65 mm; three lines of 7 points are 1.65 mm high each, with air between 7.4 mm."""
    plan, lengths = jobs["bus"]
    thin = replace(plan.conductors[plan.cables["W40"].conductor], outside_diameter=1.8)
    plan = replace(plan, conductors={**plan.conductors, thin.id: thin})
    labels = label_set(plan, lengths, stock_named("a4"), fonts.width)
    flags = {label.cable for label, placed in labels.cables if placed.look.flag}
    assert flags == {each.id for each in plan.cables.values() if each.conductor == thin.id}
    asked = {each["question"]: each["what"] for each in label_records(labels)["questions"]}
    assert asked["thinner than the words are high: folded round as a flag?"] == ", ".join(
        dict.fromkeys(label.cable for label, placed in labels.cables if placed.look.flag)
    )


def test_no_rating_is_made_up(jobs, fonts):
    plan, labels = labels_of(jobs, "bus", "a4", fonts)
    fuses = [each.name for each in fuse_labels(plan)]
    assert sorted(fuses) == sorted(["FT1", *(f"LP1.O{n}" for n in range(1, 7)), *(f"PB1.F{n}" for n in range(1, 6))])
    for member, _, texts in read_cells(labels, plan, fonts):
        if isinstance(member.label, PlateLabel) and member.label.fuse:
            words = [each.words for each in texts]
            assert words[-2:] == ["replace with", "A"]
            assert not any(re.search(r"\d\s*A\b", each) for each in words)
    plates = label_records(labels)["plates"]
    assert {each["rating"] for each in plates} == {None}
    asked = label_records(labels)["questions"][-1]
    spare = ["LP1.O3", "LP1.O4", "LP1.O5", "LP1.O6", "PB1.F4"]  # no cable of this job is on them
    assert [each for each in fuses if each not in asked["what"].split(", ")] == spare
    assert asked["question"].startswith("which rating?")


def test_a_rating_that_the_job_gives_stands_on_the_plate_and_is_not_asked_for(jobs, fonts):
    """Ours, in the sample: FT1 200 A, PB1.F3 of a type without a rating."""
    plan, labels = labels_of(jobs, "trailer", "a4", fonts)
    words = {member.label.name: [each.words for each in texts] for member, _, texts in read_cells(labels, plan, fonts)}
    assert words["FT1"][-2:] == ["replace with 200 A", "class T UL 248-15"]
    assert words["PB1.F3"][-3:] == ["strip fuse ISO 8820-5", "replace with", "A"]
    plates = {each["name"]: each["rating"] for each in label_records(labels)["plates"] if each["sort"] == "fuse"}
    assert (plates["FT1"], plates["PB1.F1"], plates["PB1.F3"]) == (200, 60, None)
    rows = {row["name"]: row for row in csv.DictReader(io.StringIO(label_listing(labels).csv)) if row["sort"] == "fuse"}
    assert (rows["FT1"]["rating_a"], rows["PB1.F3"]["rating_a"]) == ("200", "")
    asked = label_records(labels)["questions"][-1]
    assert asked["what"] == "LP1.O2, PB1.F3, PB1.F4"


@settings(max_examples=60)
@given(texts_of_a_plate, st.tuples(st.floats(8, 80), st.floats(8, 80)), st.floats(0.5, 9999).map(lambda a: round(a, 1)))
def test_a_rating_stands_whole_or_there_is_a_blank(fonts, words, sides, rating):
    (name, type_words), (along, high) = words, sides
    look = plate_picture(PlateLabel(name, "W1", fuse=True, rating=rating, type=type_words), along, high, fonts.width)
    said = [each.text for each in look.picture if hasattr(each, "text")]
    whole = f"{rating:g} A" in said or f"replace with {rating:g} A" in said
    assert whole or "A" in said
    assert not any(f"{rating:g} A".startswith(each[:-1]) for each in look.shortened if each[:1].isdigit())


def test_components_have_their_reference_and_name(jobs, fonts):
    plan, labels = labels_of(jobs, "cabin", "letter", fonts)
    plain = {label.name: label.words for label, _ in labels.plates if not label.fuse}
    assert plain == {each.id: each.label or plan.kind_of(each).name for each in plan.components.values()}


@settings(max_examples=40)
@given(st.tuples(texts, texts, texts), st.tuples(st.floats(12, 80), st.floats(12, 80)), st.floats(0.8, 40))
def test_words_of_any_length_stay_on_their_label(fonts, words, sides, diameter):
    (name, here, there), (along, wrap) = words, sides
    label = CableLabel("W1", 1, 3, 12, name, here, there, "70 mm² (2/0 AWG) fine-strand", diameter)
    plate = PlateLabel(name, here, fuse=True)
    for look in (
        cable_picture(label, along, wrap, 3.14159 * diameter, fonts.width),
        plate_picture(plate, along, wrap, fonts.width),
    ):
        for said in (each for each in look.picture if hasattr(each, "text")):
            box = text_box(said, fonts.width)
            assert box.left >= 0
            assert box.right <= along
            assert box.top <= 0
            assert box.bottom >= -wrap
            assert FINE <= said.height <= TITLE
        cut = [each for each in look.picture if hasattr(each, "text") and each.text.endswith(ELLIPSIS)]
        assert bool(look.shortened) >= bool([each for each in cut if ELLIPSIS not in (name + here + there)])


def test_words_are_cut_only_where_they_must_be(fonts):
    wide = fonts.width("roof gland", FINE)
    assert shortened_words("roof gland", wide, FINE, fonts.width) == "roof gland"
    shorter = shortened_words("roof gland", wide - 0.1, FINE, fonts.width)
    assert shorter.endswith(ELLIPSIS)
    assert fonts.width(shorter, FINE) <= wide - 0.1


def test_a_name_cut_short_is_reported(jobs, fonts):
    plan, _ = jobs["bus"]
    cable = next(each for each in plan.cables.values() if isinstance(each.end, OffBoardEnd))
    long = replace(cable, end=replace(cable.end, name="a very long name of a far end " * 12))
    plan = plan.with_things([long])
    labels = label_set(plan, cut_lengths(plan, find_routes(plan)), stock_named("a4"), fonts.width)
    asked = {each["what"]: each["question"] for each in label_records(labels)["questions"]}
    assert asked[cable.id].startswith("cut short on the label: ")


def test_the_same_plan_gives_the_same_bytes(jobs, fonts):
    plan, labels = labels_of(jobs, "bus", "letter-3x10", fonts)
    again = label_set(plan, jobs["bus"][1], stock_named("letter-3x10"), fonts.width)
    one, other = (pdf_of(label_sheets(each, plan, 0, fonts.width), fonts, "labels") for each in (labels, again))
    assert one == other
    assert label_listing(labels).csv == label_listing(again).csv


def test_findings_that_stop_stand_on_the_sheets(jobs, fonts):
    plan, labels = labels_of(jobs, "bus", "a4", fonts)
    for page in read_pages(pdf_of(label_sheets(labels, plan, 2, fonts.width), fonts, "labels")):
        assert "NOT TO BE ISSUED: 2 findings stop" in page.words


def test_the_pack_has_the_label_sheet_and_says_what_json_says(packs):
    pack = packs("library bus", "a4")
    contents = pack.contents["labels"]
    assert len(contents["cable_ends"]) == sum(2 * each.count for each in pack.plan.cables.values())
    assert contents["stock"]["id"] == "hand-cut"
    assert "Stock: A4 sticky paper" in pack.pages["label-sheet.pdf"][0].words
    rows = list(csv.DictReader(io.StringIO((pack.folder / "label-sheet.csv").read_text(encoding="utf-8-sig"))))
    assert len(rows) == len(contents["cable_ends"]) + len(contents["plates"])
