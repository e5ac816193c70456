"""Sheets for the customer: read back from the PDF; one page a tray in his units, and the wall with its framing."""

import itertools
from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from output.read_back import read_pages

from boardplan.checks.review import review_of
from boardplan.geometry.point import Point
from boardplan.model.board import BoardFixing
from boardplan.model.tray import Battery, Tray, TrayBuilt, TrayExit, TrayFixing, TrayGaps
from boardplan.output.customer.tray_picture import poles
from boardplan.output.making import Making
from boardplan.output.papers import files_of
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.records import hole_records

PLANS = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}
TRAY = Tray(
    "T1",
    battery=Battery(390, 190, 240, 26, "front", "front-left"),
    columns=4,
    rows=1,
    along="width",
    gaps=TrayGaps(10, 20, 90),
)


@pytest.fixture(scope="module")
def review():
    return review_of(honey_trailer())


def pages_of(review, paper="a4", **changed):
    making = Making(replace(review, plan=replace(review.plan, **changed)), Printing(PAPERS[paper]))
    files = list(files_of(making, ("customer",)))
    return [page for file in files for page in read_pages(pdf_of(file.sheets, making.fonts, "sheets"))]


def flat(page):
    return " ".join(text.words for text in page.texts)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("sample", PLANS)
def test_a_page_a_tray_and_a_page_a_wall_with_nothing_over_anything(sample, paper, drawn):
    plan = PLANS[sample]()
    pages = drawn(sample, paper)["customer-sheets.pdf"]
    assert len(pages) == len(plan.trays) + len(plan.boards)
    for page in pages:
        assert all(text.left > 8 and text.right < page.width - 8 for text in page.texts)
        for a, b in itertools.combinations(page.texts, 2):
            over = min(a.right, b.right) - max(a.left, b.left)
            high = min(a.top, b.top) - max(a.bottom, b.bottom)
            assert over < 0.5 or high < 0.5, (a.words, b.words)


def test_the_sum_is_shown_and_no_conductor_is(drawn):
    words = flat(drawn("library bus", "a4")["customer-sheets.pdf"][0])
    assert "4 x 190 + 3 x 20 + 2 x 10 = 840" in words
    assert "390 + 2 x 10 = 410" in words
    assert "4 x 26 kg = 104 kg" in words
    assert "840 +3 / −0 inside" in words
    assert "into the structure, never into a floor skin only" in words
    for cable in library_bus().cables:
        assert cable not in words


def test_the_customers_units_win_over_the_jobs(review):
    words = flat(pages_of(review, trays=(replace(TRAY, units="inch"),))[0])
    assert "33-3/32" in words  # 840 mm are 33.07 in, and never smaller
    assert "(4 x 190 + 3 x 20 + 2 x 10 = 840 mm)" in words
    assert "57.3 lb (26 kg)" in words


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_what_nobody_knows_is_a_blank_and_a_question(review, paper):
    page, _ = pages_of(review, paper, trays=(Tray("T1"),))
    words = flat(page)
    assert "Not drawn: battery size, arrangement or gaps are not known yet" in words
    for question in (
        "What does one weigh?",
        "How high is the lip?",
        "What pull does the rule there ask?",
        "Which liner?",
    ):
        assert question in words
    assert "How many, and in how many rows?" in words
    assert "840" not in words
    assert "planning value" not in words
    level = [each for each in page.strokes if abs(each.y0 - each.y1) < 0.01 and each.x1 - each.x0 > 15]
    assert len(level) > 20


@pytest.mark.parametrize(
    ("craft", "asked"),
    [
        ("boat", "under 400 N (90 lb) or twice its weight, whichever is less: 400 N for this battery (33 CFR 183.420)"),
        ("boat", "10 mm under twice its weight where ISO 10133 holds (5.2)"),
        ("vehicle", "What pull does the local rule ask, braking and sideways?"),
        ("building", "What does the local rule ask, such as for earthquakes?"),
    ],
)
def test_the_pull_is_the_laws_or_asked_for(review, craft, asked):
    assert asked in flat(pages_of(review, trays=(replace(TRAY, craft=craft),))[0])


@pytest.mark.parametrize(
    ("length", "words"),
    [
        (840, "840 mm: holds the 840 mm needed"),
        (837.5, "837.5 mm: 2.5 mm TOO SMALL, ask before anything goes in"),
        (843, "843 mm: holds the 840 mm needed"),
        (852, "852 mm: 12 mm more than needed, pack it out and measure the cables' way again"),
    ],
)
def test_a_tray_that_is_built_is_held_against_what_is_needed(review, length, words):
    tray = replace(TRAY, built=TrayBuilt(length=length, width=410, height=500))
    said = flat(pages_of(review, trays=(tray,))[0])
    assert words in said
    assert "500 mm: holds the 330 mm needed" in said


def test_a_tray_is_drawn_to_the_scale_it_states(review):
    page = pages_of(review, trays=(TRAY,))[0]
    by = float(next(text.words for text in page.texts if text.words.startswith("1 : "))[4:])
    level = [each for each in page.strokes if abs(each.y0 - each.y1) < 0.01]
    assert any(abs(abs(each.x1 - each.x0) - 840 / by) < 0.05 for each in level)


def test_plus_and_minus_lie_on_the_side_of_the_posts():
    assert poles(TRAY) == ("front-left", "front-right")
    assert poles(replace(TRAY, battery=replace(TRAY.battery, terminals="left"))) == ("front-left", "back-left")
    assert poles(replace(TRAY, battery=replace(TRAY.battery, terminals="back"))) == ("front-left", None)
    assert poles(Tray("T2")) == (None, None)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_tray_with_all_and_long_words_is_told_whole(review, paper):
    long = "as long a text as anybody would write about such a thing, and then a little more of it, twice over"
    words = (
        "drain",
        "liner",
        "material",
        "coating",
        "pull",
        "hold_down",
        "first_clamp",
        "fuses",
        "ventilation",
        "sensor",
    )
    tray = replace(
        TRAY,
        place=long,
        fixings=tuple(TrayFixing(Point(20 * index, 20), "M10", long) for index in range(8)),
        exits=tuple(TrayExit(f"E{index}", "back", 80 * index, 100, 40, "gland", long) for index in range(8)),
        **{name: f"{name}: {long}" for name in words},
    )
    pages = pages_of(review, paper, trays=(tray,))[:-1]
    said = " ".join(flat(page) for page in pages)
    assert all(f"{name}: as long" in said for name in words)
    assert all(text.left > 0 and text.right < page.width for page in pages for text in page.texts)


def test_a_fixing_that_misses_asks_for_blocking(review):
    fixings = {**review.plan.fixings, "BF-13": BoardFixing("BF-13", "A", Point(650, 500), 7)}
    (page,) = pages_of(review, fixings=fixings)
    words = flat(page)
    assert "B1: blocking between rib-2 and rib-3, its middle at Y 560, for BF-13" in words
    assert "X 770 Y 560 misses rib-2 by 187.5 mm" in words
    assert "at least 8 mm on each side of a fixing's middle (rule set trade-practice, edition 2026.1)" in words
    records = hole_records(replace(review.plan, fixings=fixings))["blocking"]
    assert [each["fixing"] for each in records if each["blocking"]] == ["BF-13"]


def test_no_blocking_is_promised_for_fixings_that_are_not_there(review):
    (page,) = pages_of(review, fixings={})
    assert "No board fixings are placed yet" in flat(page)
    assert "No blocking is needed" not in flat(page)


def test_without_framing_the_members_are_asked_for(review):
    (page,) = pages_of(review, framing={})
    assert "Where are the members behind this board?" in flat(page)
    assert "No blocking is needed" not in flat(page)


def test_nothing_to_build_is_no_paper(review):
    assert pages_of(review, framing={}, fixings={}) == []
