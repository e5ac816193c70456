"""Records hold what the papers show, and go into JSON as they are."""

import json

import pytest
from output.expected_holes import BITS, LIBRARY_BUS, LOOKOUT_CABIN

from boardplan.checks.review import review_of
from boardplan.output.findings.finding_records import finding_records
from boardplan.output.records import cable_records, hole_records


@pytest.fixture(scope="module")
def review():
    from boards import library_bus  # noqa: PLC0415

    return review_of(library_bus())


@pytest.mark.parametrize(("sample", "expected"), [("library bus", LIBRARY_BUS), ("lookout cabin", LOOKOUT_CABIN)])
def test_hole_records(sample, expected, packs):
    found = json.loads(json.dumps(hole_records(packs(sample, "a4").plan)))
    by_id = {each["id"]: each for each in found["holes"]}
    assert len(by_id) == len(expected)
    for name, board, x, y, bit, sort, *inches in expected:
        hole = by_id[name]
        assert (hole["board"], hole["bit"], hole["sort"]) == (board, bit, sort)
        assert (hole["x"], hole["y"]) == pytest.approx((x, y), abs=0.05)
        if inches:
            assert hole["from_datum_inch"] == inches
    assert {each["bit"]: each["count"] for each in found["by_bit"]} == BITS[sample]


def test_cable_records_add_up(review):
    found = json.loads(json.dumps(cable_records(review.plan, review.ways, review.lengths, review.fills)))
    assert [each["id"] for each in found["cables"]] == list(review.plan.cables)
    for cable in found["cables"]:
        if cable["cut"] is not None:
            assert sum(part["mm"] for part in cable["parts"]) == pytest.approx(cable["cut"], abs=1e-3)
    w07 = next(each for each in found["cables"] if each["id"] == "W07")
    assert (w07["cut"], w07["way"]["points_on_wall"][0]) == (410, [480, 168])


def test_cable_records_say_where_clamps_are(review):
    found = json.loads(json.dumps(cable_records(review.plan, review.ways, review.lengths, review.fills)))
    origin = review.plan.boards["A"].position
    for cable in found["cables"]:
        for clamp, known in zip(cable["clamps"], review.clamps[cable["id"]], strict=True):
            assert (clamp["board"], clamp["cables"]) == ("A", list(known.cables))
            assert (clamp["x"] + origin.x, clamp["y"] + origin.y) == pytest.approx(known.at, abs=1e-5)
    assert sum(found["clamps"].values()) == sum(len(each) for each in review.clamps.values())  # no pair on this board


def test_finding_records_never_say_more_than_the_rules_do(review):
    found = json.loads(json.dumps(finding_records(review)))
    assert len(found["findings"]) == len(review.findings)
    assert sum(found["open"].values()) + found["accepted"] == len(review.findings)
    assert "under rule set trade-practice, edition 2026.1" in found["verdict"]
    assert "complian" not in found["verdict"]


def test_hole_records_say_where_dimensions_run_from(review):
    assert hole_records(review.plan)["datum"] == {"A": "bare edges, lower left corner"}


def test_cable_records_hold_the_labels_of_every_end(review):
    found = json.loads(json.dumps(cable_records(review.plan, review.ways, review.lengths, review.fills)))["labels"]
    ends = {(each["cable"], each["end"]) for each in found["cable_ends"]}
    assert ends == {(cable, end) for cable in review.plan.cables for end in (1, 2)}
    assert all(each["length"] >= each["length_needed"] for each in found["cable_ends"])
    assert (found["stock"]["id"], found["too_small_for"]) == ("hand-cut", [])


def test_what_is_filled_in_by_hand_is_null_and_comes_with_a_question(review):
    """The bus says nothing of its fuses and no sheet of its units gave a torque."""
    found = json.loads(json.dumps(cable_records(review.plan, review.ways, review.lengths, review.fills)))
    assert {each[figure] for each in found["fuses"]["places"] for figure in ("rating_a", "voltage_v", "type")} == {None}
    asked = {name for each in found["fuses"]["questions"] for name in each["places"]}
    assert asked == {each["place"] for each in found["fuses"]["places"] if not each["spare_place"]}
    assert {each["torque"] for each in found["torque"]} == {None}
    assert found["shut_off"]["marked"] == ["SW1", "PV1"]
    assert {each["thing"] for each in found["re_measure"]["things"] if each["not_final"]} == {"W32"}
    assert set(found["tests"]["cables"]) < set(review.plan.cables)
