from dataclasses import replace

import pytest

from boardplan.checks.review import review_of
from boardplan.editing.component_edits import move_components
from boardplan.editing.known import known_of
from boardplan.editing.length_changes import LengthChange, change_words, length_changes, total_words, with_pushed
from boardplan.geometry.point import Point


@pytest.fixture
def known(bus_plan):
    return known_of(review_of(bus_plan))


def test_changes_are_the_differences_of_the_cuts(known, bus_plan):
    after = known_of(review_of(move_components(bus_plan, ["LP1"], Point(0, -40))))
    changes = length_changes(known, after)
    assert changes
    for each in changes:
        assert each.by == after.lengths[each.cable].cut - known.lengths[each.cable].cut
        assert each.cut == after.lengths[each.cable].cut
    named = {each.cable for each in changes}
    assert all(known.lengths[name].cut == length.cut for name, length in after.lengths.items() if name not in named)


def test_nothing_changed_says_nothing(known, bus_plan):
    assert length_changes(known, known) == ()
    assert total_words(bus_plan, ()) == ""


def test_a_total_is_by_sort_the_greatest_first_and_counts_alike_cables(bus_plan):
    twice = bus_plan.with_things([replace(bus_plan.cables["W08"], count=2)])
    sort = f"{twice.conductors[twice.cables['W08'].conductor].name} {twice.cables['W08'].colour}"
    words = total_words(twice, [LengthChange("W08", 900.0, 12.0), LengthChange("W01", 1500.0, -5.0)])
    assert words.startswith(f"2 cables change: +24 mm of {sort}, ")
    assert "−5 mm of" in words


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (LengthChange("W12", 1240.0, 12.0), "W12  1240 mm  +12"),
        (LengthChange("W12", 1240.0, 12.0, certain=False), "W12  ≈ 1240 mm  +12"),
        (LengthChange("W12", 1240.0, 0.0), "W12  1240 mm"),
        (LengthChange("W12", None, None), "W12  no length"),
    ],
)
def test_what_stands_beside_a_cable(change, words):
    assert change_words(change, "mm") == words


def test_inches_are_said_in_inches():
    assert change_words(LengthChange("W12", 254.0, 25.4), "inch").endswith("+1 in")


def test_a_pushed_cable_is_always_among_them(known):
    assert [each.cable for each in with_pushed((), known, {"W08": Point(0, 0)})] == ["W08"]
