"""Fuses and trust in a job file: kept as they are, left out where nobody said anything, slips told by their place."""

import json

import pytest
from boards import SAMPLES

from boardplan.files.faults import BadFile
from boardplan.files.plan_file import plan_of_data, plan_of_text, plan_text
from boardplan.model.fuse import Fuse

BUS = json.loads((SAMPLES / "library-bus.json").read_text(encoding="utf-8"))
TRUSTED = ("framing", "no_go_boxes", "exits")


def with_fuses(component, *fuses):
    others = [each for each in BUS["components"] if each["id"] != component]
    (own,) = (each for each in BUS["components"] if each["id"] == component)
    return plan_of_data({**BUS, "components": [*others, {**own, "fuses": list(fuses)}]})


def with_trust(trust):
    said = {name: [{**each, "trust": trust} for each in BUS[name]] for name in TRUSTED}
    boards = [
        {**each, "trust": trust, "compartment": {**each["compartment"], "trust": trust}} for each in BUS["boards"]
    ]
    return plan_of_data({**BUS, **said, "boards": boards})


def test_what_is_known_of_a_fuse_is_kept():
    given = {
        "type": "class T UL 248-15", "rating_a": 200, "voltage_v": 160, "breaking_capacity_ka": 20, "spare": "bag",
        "note": "as drawn",
    }  # fmt: skip
    plan = with_fuses("FT1", given)
    assert plan.components["FT1"].fuses == (Fuse("", "class T UL 248-15", 200, 160, 20, "bag", "as drawn"),)
    text = plan_text(plan)
    assert plan_of_text(text) == plan
    written = next(each for each in json.loads(text)["components"] if each["id"] == "FT1")
    assert written["fuses"] == [given]


def test_what_nobody_said_of_a_fuse_stays_unsaid():
    plan = with_fuses("PB1", {"place": "F2", "rating_a": 40.5})
    (fuse,) = plan.components["PB1"].fuses
    assert (fuse.type, fuse.voltage_v, fuse.breaking_capacity_ka) == ("", None, None)
    assert '"fuses": [{"place": "F2", "rating_a": 40.5}]' in " ".join(plan_text(plan).split())


@pytest.mark.parametrize(
    ("fuse", "told"),
    [
        ({"rating_a": 0}, "fuses[0].rating_a: expected more than 0"),
        ({"rating_a": "200"}, "fuses[0].rating_a: expected a number"),
        ({"voltage_v": -12}, "fuses[0].voltage_v: expected more than 0"),
        ({"breaking_capacity_ka": 20000}, "fuses[0].breaking_capacity_ka: expected at most 1000"),
        ({"amps": 3}, "fuses[0].amps: not a field of this format"),
        ({"place": "F1"}, "'FT1'.fuses[0].place: expected a fuse place of FT1 (''); there is no 'F1'"),
    ],
)
def test_a_slip_in_a_fuse_is_told_by_its_place(fuse, told):
    with pytest.raises(BadFile) as bad:
        with_fuses("FT1", fuse)
    assert told in str(bad.value)


@pytest.mark.parametrize("trust", ["measured", "customer", "photo", "estimated"])
def test_trust_is_kept(trust):
    plan = with_trust(trust)
    told = [each.trust for name in TRUSTED for each in getattr(plan, name).values()]
    told += [trust for board in plan.boards.values() for trust in (board.trust, board.compartment.trust)]
    assert set(told) == {trust}
    assert plan_of_text(plan_text(plan)) == plan


def test_trust_that_nobody_gave_is_not_written():
    plan = with_trust(None)
    assert '"trust": null' not in plan_text(plan)
    assert plan.boards["A"].trust is None


def test_another_word_for_trust_is_refused():
    with pytest.raises(BadFile) as bad:
        with_trust("guessed")
    assert "boards[0] 'A'.trust: expected" in str(bad.value)
