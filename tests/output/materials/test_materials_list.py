"""The bill of materials: nothing at hand is bought twice, and what nobody said is a blank."""

import csv
import io
from dataclasses import replace

import pytest
from boards import library_bus, lookout_cabin
from hypothesis import given
from hypothesis import strategies as st

from boardplan.checks.review import review_of
from boardplan.model.stock import CableStock, ChannelStock, Stock
from boardplan.model.supply import Supply
from boardplan.output.materials.buying import buyings_of
from boardplan.output.materials.materials_list import material_listing, material_tables
from boardplan.output.parts.parts_list import parts_list


@pytest.fixture(scope="module")
def review():
    return review_of(replace(library_bus(), supply={}))


def bought(review, *marks, **stock):
    supply = {each.part: each for each in marks}
    plan = replace(review.plan, supply=supply, stock=Stock(**stock))
    return {each.part.words: each for each in buyings_of(parts_list(replace(review, plan=plan)))}


RED = "70 mm² (2/0 AWG) fine-strand, red"


def test_without_marks_all_is_bought(review):
    """Cable by hand: 3.4 m of 70 mm² red, 14.4 m of 16 mm² red: our own worked example."""
    lines = bought(review)
    assert lines[RED].buy == 3.4
    assert lines["16 mm² (6 AWG) fine-strand, red"].buy == 14.4
    assert lines["PV charge controller 150 V 45 A"].buy == 1
    assert lines["Main fuse of FT1, Class T fuse block"].buy is None


@given(st.integers(0, 20))
def test_what_is_in_stock_is_taken_off(count):
    """13 lugs are wanted: 11 and 2 to spare, by hand."""
    line = bought(_review(), Supply("lug 70 mm² x M10 straight", "stock", count))["Lug 70 mm² x M10 straight"]
    assert line.buy == max(0, 13 - count)


_REVIEWS = []


def _review():
    if not _REVIEWS:
        _REVIEWS.append(review_of(replace(library_bus(), supply={})))
    return _REVIEWS[0]


@pytest.mark.parametrize("state", ["stock", "bought", "ordered", "customer"])
def test_what_is_marked_is_not_bought_again(state, review):
    line = bought(review, Supply("unit shunt-500a", state))["Shunt 500 A"]
    assert (line.buy, line.done) == (0, True)
    assert line.at_hand


def test_a_reel_at_hand_with_its_reserve_is_enough(review):
    """1500 + 142 + 114 + 100 mm and four cuts of 3 mm come from 4 m; 2132 mm are left, above the reserve of 1500."""
    line = bought(review, cables=(CableStock("70", "red", 4000),))[RED]
    assert (line.buy, line.at_hand) == (0, "cut from reel of 4 m; reserve is at hand")


def test_a_reel_that_is_just_enough_leaves_the_reserve_to_buy(review):
    line = bought(review, cables=(CableStock("70", "red", 1900),))[RED]
    assert line.buy == 1.5


def test_two_ends_do_not_make_a_long_piece(review):
    """Two ends of 1.2 m hold the three jumpers; W01 of 1500 mm and the reserve are bought: 3.1 m, by hand."""
    line = bought(review, cables=(CableStock("70", "red", 1200, 2),))[RED]
    assert line.buy == pytest.approx(3.1)


def test_reels_on_sale_are_bought_whole(review):
    line = bought(review, cables=(CableStock("70", "red", 10_000, None),))[RED]
    assert (line.buy, line.as_words) == (10, "1 x reel of 10 m")


def test_channel_is_bought_by_the_length_with_one_to_spare(review):
    """540 mm of base and of cover come from one length of 2 m; one length of the main section to spare."""
    line = bought(review, channels=(ChannelStock(60, 60, 2000),))["Slotted channel 60 x 60 with cover"]
    assert (line.buy, line.unit, line.as_words) == (2, "lengths", "1 x length of 2 m, 1 to spare")
    at_hand = bought(review, channels=(ChannelStock(60, 60, 2000, 1),))["Slotted channel 60 x 60 with cover"]
    assert (at_hand.buy, at_hand.at_hand) == (1, "cut from 1 x length of 2 m")
    short = bought(review, channels=(ChannelStock(60, 60, 300),))["Slotted channel 60 x 60 with cover"]
    assert short.buy is None


def test_two_boards_alike_are_one_line_of_two(cabin_plan):
    lines = {each.part.words: each for each in buyings_of(parts_list(review_of(cabin_plan)))}
    sheet, fabric = lines["fir plywood"], lines["Fabric, 2 mm"]
    assert (sheet.buy, sheet.part.size) == (2, "832 x 880 x 18 mm")
    assert (fabric.buy, fabric.part.size) == (2, "952 x 1000 mm")  # 60 mm round the back on each side


def test_a_substitute_is_named_only_where_the_job_says_it(review):
    plan = replace(
        review.plan,
        supply={
            "unit shunt-500a": Supply("unit shunt-500a", "stock", 0, substitute="none"),
            "Sealant": Supply("Sealant", "stock", 0, substitute="any neutral-cure one"),
        },
    )
    rows = list(csv.DictReader(io.StringIO(material_listing(parts_list(replace(review, plan=plan))).csv)))
    said = {row["description"]: row["substitute"] for row in rows if row["substitute"]}
    assert said == {"Shunt 500 A": "no substitute", "Sealant": "any neutral-cure one"}


def test_lugs_are_a_matrix_of_size_by_stud():
    parts = parts_list(review_of(lookout_cabin()))
    (matrix,) = [each for each in material_tables(parts) if each.title == "Lugs: size by stud"]
    assert [each.head for each in matrix.columns][2:] == ["M8", "M10"]
    assert {row[1].text: [cell.text for cell in row[2:]] for row in matrix.rows} == {
        "95 mm²": ["", "8"],
        "50 mm²": ["8", "4"],
        "16 mm²": ["4", "4"],
    }


@pytest.mark.parametrize("sample", ["library bus", "lookout cabin", "honey trailer"])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_paper_says_all_of_it(sample, paper, packs):
    pack = packs(sample, paper)
    pages = pack.pages["bill-of-materials.pdf"]
    words = " ".join(" ".join(page.words for page in pages).split())
    for line in pack.contents["materials"]:
        assert (line["size"] if line["stud"] and line["category"] == "lugs" else line["what"]) in words
    for page in pages:
        assert all(text.left > 0 and text.right < page.width for text in page.texts)
