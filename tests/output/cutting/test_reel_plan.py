"""The cutting plan of a job: what is cut from which reel, what is missing in exact words, and what has to be asked."""

import csv
import io
import json
import math
from collections import Counter
from dataclasses import replace

import pytest
from boards import honey_trailer
from output.read_back import read_pages

from boardplan.checks.review import review_of
from boardplan.model.stock import CableStock, ChannelStock, Stock
from boardplan.output.cutting.cutting_sheet import cutting_listing, cutting_records, cutting_tables
from boardplan.output.cutting.reel_plan import cut_groups, metres, proof_words, shortage_words
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing

STOCK = Stock(
    cables=(
        CableStock("70", "black", 25_000, name="reel A"),
        CableStock("70", "red", 1160, name="offcut R3"),
        CableStock("70", "red", 100, count=2, name="ends of old jumpers"),
        CableStock("16", "red", 1800, count=2, name="offcut"),
        CableStock("2.5", "red/black", 10_000, count=4, name="bundle"),
        CableStock("35", "blue", 3000),
    ),
    channels=(ChannelStock(60, 60, 2000),),
)


@pytest.fixture(scope="module")
def review():
    return review_of(replace(honey_trailer(), stock=STOCK))


@pytest.fixture(scope="module")
def groups(review):
    return {each.title: each for each in cut_groups(review.plan, review.lengths)}


def test_every_cable_that_is_cut_is_in_a_group_as_often_as_it_is_wanted(review, groups):
    plan = review.plan
    expected = Counter()
    for cable in plan.cables.values():
        if not plan.conductors[cable.conductor].stock_lengths and review.lengths[cable.id].cut is not None:
            expected[cable.id] += cable.count
    expected |= Counter({"RW1-1": 1, "RW1-2": 1, "RW1-C1": 1, "RW1-C2": 1})
    assert Counter(piece.name for each in groups.values() for piece in each.pieces) == expected
    for each in groups.values():
        assert all(review.lengths[piece.name].cut == piece.length for piece in each.pieces if not each.channel)
        if each.plan:
            dealt = [piece for bar in each.plan.bars for piece in bar.pieces] + list(each.plan.missing)
            assert Counter(dealt) == Counter(each.pieces)


def test_a_reel_says_what_is_gone_and_what_is_left(groups):
    (reel,) = groups["70 mm² (2/0 AWG) fine-strand, black"].plan.bars
    assert [(each.name, each.length) for each in reel.pieces] == [("W05", 1300), ("W06", 88)]
    assert (reel.totals, reel.left) == ((1303, 1394), 23_606)


def test_a_shortage_is_named_to_the_millimetre(groups):
    group = groups["16 mm² (6 AWG) fine-strand, red"]
    assert shortage_words(group) == (
        "5.05 m of 16 mm² (6 AWG) fine-strand, red are missing: W14 doesn't fit on what is left; "
        "longer than anything at hand: W14"
    )
    group = groups["2.5 mm² single, red/black"]
    assert group.plan.missing_length == 2 * 3600  # ten of 3.6 m, two from each bundle of 10 m
    assert shortage_words(group) == (
        "7.2 m of 2.5 mm² single, red/black are missing: W20 (2 pieces) don't fit on what is left; "
        "no other choice leaves out less"
    )


def test_two_cables_that_do_not_fit_are_both_named_and_a_long_channel_asks_for_a_joint(review):
    stock = Stock((CableStock("16", "red", 1000),), (ChannelStock(60, 60, 700),))
    plan = replace(review.plan, stock=stock)
    words = {each.title: shortage_words(each) for each in cut_groups(plan, review.lengths)}
    assert words["16 mm² (6 AWG) fine-strand, red"] == (  # of 760, 475 and 345, the last two fill a metre best
        "5.81 m of 16 mm² (6 AWG) fine-strand, red are missing: W14 and W08 don't fit on what is left; "
        "longer than anything at hand: W14"
    )
    assert words["Channel 60 x 60, bases"] == (
        "0.81 m of Channel 60 x 60, bases are missing: RW1-1 doesn't fit on what is left; "
        "longer than anything at hand: RW1-1: where may it be joined?"
    )


def test_what_has_no_stock_is_asked_for_and_never_made_up(groups):
    group = groups["50 mm² (1/0 AWG) fine-strand, black"]
    assert group.plan is None
    assert proof_words(group) == "no reel is given: what is at hand?"


def test_a_slanting_cut_takes_more_of_the_length(groups):
    bases = groups["Channel 60 x 60, bases"]
    assert bases.cut == pytest.approx(3 * math.sqrt(2), abs=0.1)
    assert bases.cut >= 3 * math.sqrt(2)
    assert proof_words(bases) == "1 length, proven least"


def test_a_matched_group_from_several_reels_is_told(review):
    plan = review.plan
    cables = {each: replace(plan.cables[each], group="G") for each in ("W01", "W02")}
    plan = plan.with_things(cables.values())
    group = next(each for each in cut_groups(plan, review.lengths) if each.title.endswith("fine-strand, red"))
    assert group.split == ("G",)


def test_a_length_that_may_not_be_cut_yet_says_so(review):
    lengths = {**review.lengths, "W05": replace(review.lengths["W05"], final=False)}
    summary, reels, *_ = cutting_tables(review.plan, lengths)
    row = next(row for row in reels.rows if isinstance(row, tuple) and row[1].text == "W05")
    assert row[2].alert == "NOT FINAL"
    without = {**lengths, "W05": replace(lengths["W05"], cut=None)}
    summary, *_ = cutting_tables(review.plan, without)
    assert any("still without a length: W05" in row[0].alert for row in summary.rows)


def test_lengths_in_metres():
    assert [metres(each) for each in (25_000, 2350, 88, 0.5)] == ["25 m", "2.35 m", "0.088 m", "0.0005 m"]


def test_csv_has_every_piece_once(review, groups):
    rows = list(csv.DictReader(io.StringIO(cutting_listing(review.plan, review.lengths).csv)))
    pieces = Counter(piece.name for each in groups.values() for piece in each.pieces)
    assert Counter(row["piece"] for row in rows) == pieces
    missing = [row["piece"] for row in rows if row["cut_from"] == "missing"]
    assert missing == ["W14", "W20", "W20"]
    assert [row["left_mm"] for row in rows if row["cut_from"] == "reel A"] == ["23697", "23606"]


def test_records_say_what_the_paper_says(review, groups):
    found = json.loads(json.dumps(cutting_records(review.plan, review.lengths)))
    assert [each["sort"] for each in found["cutting"]] == list(groups)
    for each in found["cutting"]:
        group = groups[each["sort"]]
        assert each["words"] == proof_words(group)
        assert (each["plan"] is None) == (group.plan is None)
        for bar in each["plan"]["bars"] if each["plan"] else ():
            assert bar["left"] == pytest.approx(max(0, bar["length"] - bar["pieces"][-1]["gone"]))
    assert found["stock_not_needed"] == ["35 blue 3 m"]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_paper_says_it_all_and_nothing_is_clipped(review, groups, paper, tmp_path):
    write_pack(Making(review, Printing(PAPERS[paper])), tmp_path / "pack", chosen=("cutting",))
    pages = read_pages(tmp_path / "pack" / "cutting-plan.pdf")
    for page in pages:
        for index, one in enumerate(page.texts):
            assert one.left >= 13.9
            assert one.right <= page.width - 13.9
            assert 4.5 <= one.bottom < one.top <= page.height - 10
            for other in page.texts[index + 1 :]:
                across = min(one.right, other.right) - max(one.left, other.left)
                assert min(across, min(one.top, other.top) - max(one.bottom, other.bottom)) < 0.1, (one, other)
    words = " ".join(page.words for page in pages).split()
    for group in groups.values():
        for bar in group.plan.bars if group.plan else ():
            assert {piece.name for piece in bar.pieces} <= set(words)
            assert {f"{each:g}" for each in bar.totals} <= set(words)
    text = " ".join(words)
    assert "5.05 m of 16 mm² (6 AWG) fine-strand, red are missing: W14" in text
    assert "NO REEL IS GIVEN" in text
    assert "35 blue 3 m" in text
