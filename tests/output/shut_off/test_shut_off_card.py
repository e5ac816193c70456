"""The shut-off card: one page, only the steps of what a job has, the shut-offs marked where they are, to scale."""

import json
import re
from dataclasses import replace
from itertools import combinations

import pytest
from boards import SAMPLES, honey_trailer, library_bus, lookout_cabin
from hypothesis import given, settings
from output.read_back import read_pages
from strategies import plans

from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.cable import TerminalEnd
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.shut_off.shut_off_card import CardPaper, shut_off_card
from boardplan.output.shut_off.shut_off_papers import shut_off_records
from boardplan.output.shut_off.shut_off_steps import BLANK, off_steps, on_steps, shut_offs_of

FILES = {"library bus": "library-bus", "lookout cabin": "lookout-cabin", "honey trailer": "honey-trailer"}
PLANS = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}


def card(plan, fonts, paper="a4", stops=0):
    sheet = shut_off_card(CardPaper(plan, PAPERS[paper], stops, fonts.width))
    (page,) = read_pages(pdf_of((sheet,), fonts, "card"))
    return page


def without(plan, *families):
    gone = [each.id for each in plan.components.values() if plan.kind_of(each).family in families]
    cables = [
        cable.id for cable in plan.cables.values() if any(getattr(end, "component", None) in gone for end in cable.ends)
    ]
    return plan.without([*gone, *cables])


def test_off_and_on_in_our_default_order():
    """The order is common practice, no source; the references are the trailer's own."""
    job = shut_offs_of(honey_trailer())
    assert list(off_steps(job)) == [
        "AC loads off.",
        "Inverter off at its own switch: INV1.",
        "Shore or generator off: shore inlet (W31).",
        "Open the PV disconnect: PV1.",
        "Engine off, alternator charger disabled: DC1.",
        "Open the battery shut-off: SW1.",
        "Wait 5 minutes, or as long as the equipment says: capacitors hold charge.",
        "Prove dead: measure.",
    ]
    assert list(on_steps(job)) == [
        "Close the battery shut-off, through the pre-charge, if fitted: SW1.",
        "Monitor alive, polarity and voltage right: HB1.",
        "Close the PV disconnect: PV1.",
        "Alternator charger enabled: DC1.",
        "Inverter on: INV1.",
        "Shore or generator on: shore inlet (W31).",
        "Loads on.",
    ]


@pytest.mark.parametrize(
    ("families", "word"),
    [
        (("Alternator chargers",), "lternator"),
        (("Inverter/chargers",), "nverter"),
        (("Inverter/chargers",), "Shore"),
        (("PV disconnects", "Charge controllers"), "PV"),
        (("Monitoring",), "Monitor"),
    ],
)
def test_what_a_job_has_not_is_in_no_step(families, word):
    plan = honey_trailer()
    assert word in json.dumps(shut_off_records(plan))
    assert word not in json.dumps(shut_off_records(without(plan, *families)))


def test_what_belongs_to_no_board_is_a_blank_and_a_question():
    bare = without(honey_trailer(), "Shut-offs", "PV disconnects")
    told = shut_off_records(bare)
    assert f"Open the battery shut-off: {BLANK}." in told["off"]
    assert f"Open the PV disconnect: {BLANK}." in told["off"]
    assert [each["number"] for each in told["emergency"]] == [None, None]
    assert len(told["questions"]) == 2
    assert not shut_off_records(honey_trailer())["questions"]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", FILES)
def test_the_card_is_one_page_and_says_all_that_json_says(fonts, name, paper):
    plan = PLANS[name]()
    page = card(plan, fonts, paper)
    assert (page.width, page.height) == pytest.approx((PAPERS[paper].width, PAPERS[paper].height), abs=0.1)
    words = " ".join(page.words.split())
    told = shut_off_records(plan)
    for step in (*told["off"], *told["on"], *told["warnings"], *(each["words"] for each in told["emergency"])):
        assert " ".join(step.split()) in re.sub(r" \d+ (?=[A-Z])", " ", words) or step in words
    assert "Default order, to be replaced by the equipment instructions." in words
    assert "PV wires stay live in daylight." in words
    assert words.index("EMERGENCY") < words.index("OFF") < words.index("ON ")
    assert "sheet 1 of 1" in words


@pytest.mark.parametrize("name", FILES)
def test_numbers_stand_where_the_shut_offs_are_at_the_scale_that_is_named(fonts, name):
    """From the job file alone: middle of the unit = its place + half its turned size, on the wall."""
    data = json.loads((SAMPLES / f"{FILES[name]}.json").read_text(encoding="utf-8"))
    page = card(PLANS[name](), fonts)
    scale = float(re.search(r"scale 1 : (\d+)", page.words)[1])
    kinds = {each["id"]: each for each in data["kinds"]}
    walls = {each["id"]: each.get("position", [0, 0]) for each in data["boards"]}
    families = ("Shut-offs", "PV disconnects")
    middles = []
    for family in families:
        for each in data["components"]:
            kind = kinds[each["kind"]]
            if kind["family"] == family:
                wide, high = kind["size"] if each.get("turn", 0) % 180 == 0 else kind["size"][::-1]
                x, y = walls[each["board"]]
                middles.append((each["at"][0] + wide / 2 + x, each["at"][1] + high / 2 + y))
    picture = page.width * 0.4
    discs = [each for each in page.circles if each.x > picture]
    numbers = {text.words: ((text.left + text.right) / 2, text.bottom) for text in page.texts if text.words.isdigit()}
    assert len(discs) == len(middles) == len([each for each in page.circles if each.x <= picture])
    assert len(numbers) >= len(middles)
    for (one, first), (other, second) in combinations(zip(discs, middles, strict=True), 2):
        assert (other.x - one.x) * scale == pytest.approx(second[0] - first[0], abs=0.05 * scale)
        assert (other.y - one.y) * scale == pytest.approx(second[1] - first[1], abs=0.05 * scale)


def inside_and_apart(page):
    for text in page.texts:
        assert text.left >= 10
        assert text.right <= page.width - 10
        assert text.bottom >= 4
        assert text.top <= page.height - 8
    for one, other in combinations(page.texts, 2):
        across = min(one.right, other.right) - max(one.left, other.left)
        up = min(one.top, other.top) - max(one.bottom, other.bottom)
        both_discs = one.words.isdigit() and other.words.isdigit()  # of units that lie on each other
        assert both_discs or across <= 0.2 or up <= 0.2, (one, other)


@settings(max_examples=15, deadline=None)
@given(plans())
def test_whatever_is_on_the_boards_no_words_run_into_each_other(fonts, plan):
    inside_and_apart(card(plan, fonts))


def test_a_supply_on_the_board_is_shut_off_too():
    """Shore comes in through a box on the board, and from there to the inverter: its step must not be missing."""
    plan = honey_trailer()
    box = bundled_shelf().kinds["shore-inlet-box"]
    plan = replace(plan, kinds={**plan.kinds, box.id: box})
    plan = plan.with_things([replace(plan.components["SW1"], id="SB1", kind=box.id)])
    shore = plan.cables["W31"]  # from INV1.ACIN
    plan = plan.with_things([replace(shore, end=TerminalEnd("SB1", "AC2"))])
    assert "Shore or generator off: SB1." in shut_off_records(plan)["off"]
    unnamed = replace(plan, kinds={**plan.kinds, box.id: replace(box, name="Isolator")})
    assert "Shore or generator off: SB1." in shut_off_records(unnamed)["off"]


def test_many_shut_offs_are_named_together_and_still_fit(fonts):
    plan = library_bus()
    switch = plan.components["SW1"]
    more = [replace(switch, id=f"SW{n}", position=switch.position.moved(60 * (n - 10), 300)) for n in range(2, 21)]
    plan = plan.with_things(more)
    told = shut_off_records(plan)
    words = "Open all battery shut-offs, 1 to 20 in the picture: SW1, SW2,"
    assert told["emergency"][0]["words"].startswith(words)
    page = card(plan, fonts, "letter", stops=3)
    inside_and_apart(page)
    assert "NOT TO BE ISSUED: 3 findings stop" in page.words
    assert all(f"SW{n}" in page.words for n in range(1, 21))


def test_a_pre_charge_and_other_sources_are_named_where_there_are_any():
    shelf = bundled_shelf().kinds
    plan = lookout_cabin()
    kinds = [shelf["pre-charge-resistor"], shelf["wind-charge-controller-24v"]]
    plan = replace(plan, kinds={**plan.kinds, **{each.id: each for each in kinds}})
    model = plan.components["SW1"]
    plan = plan.with_things([replace(model, id="PC1", kind=kinds[0].id), replace(model, id="WC1", kind=kinds[1].id)])
    told = shut_off_records(plan)
    assert told["on"][0] == "Close the battery shut-off, through the pre-charge PC1: SW1."
    assert "Other sources off: WC1." in told["off"]
    assert "Other sources on: WC1." in told["on"]


def test_the_pack_has_the_card(packs, fonts):
    pack = packs("library bus", "a4")
    (page,) = pack.pages["shut-off-card.pdf"]
    assert page.words == card(pack.plan, fonts).words
