"""Stud stacks on paper: the order, what thread and fan it takes, the bars to make, and the same as records."""

from dataclasses import replace

from checks.plans import UNIT, cable, plan_of, unit

from boardplan.checks.review import review_of
from boardplan.output.cables.stud_stacks import stack_listings, stack_records, stack_tables


def tables_of(plan):
    return {each.title: each for each in stack_tables(plan, review_of(plan).lengths)}


def stacked():
    return plan_of(
        unit("U1", 100, 300),
        unit("U2", 600, 300),
        cable("W1", ("U1", "T"), ("U2", "R"), (150, 500), (800, 500), conductor="16"),
        cable("W2", ("U1", "T"), ("U2", "R"), (150, 520), (800, 520), conductor="70"),
    )


def joined():
    return plan_of(
        unit("U1", 100, 300), unit("U2", 100, 460), cable("W1", ("U1", "T"), ("U2", "B"), conductor="70", count=2)
    )


def test_a_stud_with_one_lug_has_no_row():
    plan = plan_of(unit("U1", 100, 300), unit("U2", 600, 300), cable("W1", ("U1", "T"), ("U2", "R"), (150, 500)))
    assert tables_of(plan) == {}
    assert stack_records(plan, review_of(plan).lengths) == {"stud_stacks": [], "link_bars": []}


def test_the_largest_is_named_first():
    (row,) = tables_of(stacked())["Stud stacks"].rows
    words = [each.text for each in row]
    assert words[:3] == ["U1.T", "M8", "1. W2 70 mm², 2. W1 16 mm²"]
    # palms 3.6 + 2.0, and 14.6 mm of washers, nut and two turns: common practice, no source
    assert words[3:5] == ["5.6", "20.2"]
    assert "the stud has ?" in row[4].small


def test_a_thread_that_is_too_short_is_marked():
    kind = replace(UNIT, terminals=tuple(replace(each, usable_thread=20.0) for each in UNIT.terminals))
    plan = replace(stacked(), kinds={"unit": kind})
    (row,) = tables_of(plan)["Stud stacks"].rows
    assert row[4].alert == "TOO SHORT"


def test_a_bar_is_listed_with_its_holes_and_its_question():
    plan = joined()
    (row,) = tables_of(plan)["Link bars"].rows
    assert [each.text for each in row[:5]] == ["W1", "2", "80", "9 mm", "9 mm"]  # ISO 273:1979, medium: M8 has 9.0
    assert "from the designer" in row[6].text
    (record,) = stack_records(plan, review_of(plan).lengths)["link_bars"]
    assert (record["cable"], record["centres"], record["step"]) == ("W1", 80, 0)
    assert [each["diameter"] for each in record["holes"]] == [9.0, 9.0]


def listed(plan):
    listings = {each.title: each for each in stack_listings(plan, review_of(plan).lengths)}
    return {title: [dict(zip(each.heads, row, strict=True)) for row in each.rows] for title, each in listings.items()}


def test_a_list_has_a_row_for_each_lug_from_the_contact_face_outwards():
    found = listed(stacked())
    assert list(found) == ["Stud stacks"]
    rows = found["Stud stacks"]
    assert [(row["stud"], row["place"], row["cable"], row["area_mm2"]) for row in rows] == [
        ("U1.T", 1, "W2", 70),
        ("U1.T", 2, "W1", 16),
    ]
    assert [row["usable_mm"] for row in rows] == [None, None]  # nobody measured the stud


def test_a_list_of_bars_says_what_the_table_says():
    (row,) = listed(joined())["Link bars"]
    assert (row["in_place_of"], row["pieces"], row["centres_mm"], row["hole_1_mm"]) == ("W1", 2, 80, 9.0)
    assert "from the designer" in row["question"]
