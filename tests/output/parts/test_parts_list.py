"""All parts of a job against two boards reckoned by hand (our own worked example), and the shop's spare rules."""

import math
from dataclasses import replace
from fractions import Fraction

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from checks.plans import rules
from hypothesis import given
from hypothesis import strategies as st
from output.expected_holes import BITS, LIBRARY_BUS, LOOKOUT_CABIN
from routing.lengths.test_reels import REELS

from boardplan.checks.review import review_of
from boardplan.model.fuse import Fuse
from boardplan.model.load_out import SpareRule
from boardplan.model.supply import Supply
from boardplan.output.parts.parts_list import parts_list

SAMPLES = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}


@pytest.fixture(scope="module")
def lists():
    """A function from a sample's name to its parts, each reckoned once."""
    done = {}

    def parts(name):
        if name not in done:
            done[name] = parts_list(review_of(SAMPLES[name]()))
        return done[name]

    return parts


def of(parts, category):
    return [each for each in parts.parts if each.category == category]


def test_lugs_of_the_library_bus_as_packed_by_hand(lists):
    """Board ends and the far ends that the job describes, with their spares: our own worked example."""
    lugs = {each.key: (each.needed, each.spare) for each in of(lists("library bus"), "lugs") if each.stud}
    assert lugs == {
        "lug 70 mm² x M10 straight": (11, 2),
        "lug 70 mm² x M8 straight": (3, 2),
        "lug 16 mm² x M10 straight": (3, 2),
        "lug 16 mm² x M8 straight": (4, 2),
        "lug 16 mm² x M6 straight": (2, 2),
    }


def test_lugs_of_battery_leads_as_packed_by_hand():
    """Eight 35 mm² lugs for each of two studs, two spare of each: our own worked example."""
    assert library_bus().rules.load_out.spares["lugs"].spare(8) == 2


def test_lugs_of_the_cabin_by_hand(lists):
    lugs = {each.key: each.needed for each in of(lists("lookout cabin"), "lugs") if each.stud}
    assert lugs == {
        "lug 95 mm² x M10 straight": 6,
        "lug 50 mm² x M10 straight": 2,
        "lug 50 mm² x M8 straight": 6,
        "lug 16 mm² x M10 straight": 2,
        "lug 16 mm² x M8 straight": 2,
    }
    small = {each.key: (each.needed, each.spare) for each in of(lists("lookout cabin"), "small-terminals") if each.uses}
    assert small == {"lug 2 x 1.5 mm² x M8 straight": (1, 10)}


@pytest.mark.parametrize(
    ("sample", "expected"),
    [("library bus", {"1.5": 2, "16": 5, "6": 6}), ("lookout cabin", {"1.5": 2, "16": 4, "6": 12})],
)
def test_ferrules_by_hand_with_a_quarter_more_and_no_less_than_ten(sample, expected, lists):
    found = {each.key: (each.needed, each.spare) for each in of(lists(sample), "ferrules")}
    assert found == {f"ferrule {size} mm²": (count, 10) for size, count in expected.items()}


@pytest.mark.parametrize(("board", "rows"), REELS)
def test_cable_to_take_is_that_of_the_reels_reckoned_by_hand(board, rows):
    parts = parts_list(review_of(board())).parts
    reels = {each.key: each for each in parts if each.category == "raw-cable" and each.bought}
    packed = {each.key: each for each in parts if each.category == "raw-cable" and each.packed}
    assert {key: each.quantity for key, each in reels.items()} == {f"cable {r[0]} {r[1]}": r[5] for r in rows}
    assert {key: round(each.quantity * 1000, 3) for key, each in packed.items()} == {
        f"cable {r[0]} {r[1]}": r[4] for r in rows
    }


def test_boards_weigh_what_was_reckoned_by_hand(lists):
    """Carried without cables and channels: 26.7 kg; 22.1 and 8.8 kg: our own worked example."""
    (bus,) = of(lists("library bus"), "boards")
    assert "26.7 kg" in bus.note
    assert "123 mm carried" in bus.note
    assert bus.lift.startswith("two people while RW1, not weighed, is below")
    left, right = of(lists("lookout cabin"), "boards")
    assert ("22.1 kg" in left.note, "8.8 kg" in right.note) == (True, True)
    assert right.lift == "one person"
    assert left.lift.startswith("two people")  # with the cables that hang on it: over 23 kg for one, by hand
    fitted = [each for each in of(lists("library bus"), "made-cables") if each.on_board == "A"]
    assert bus.mass == pytest.approx(26.7 + sum(each.weight for each in fitted), abs=0.05)


def test_units_for_site_go_with_their_bolts_and_say_who_lifts_them(lists):
    """19.8 and 13.6 kg: one person; 27.4 kg: two: our own worked example."""
    bus = {each.words[:4].strip(): each for each in of(lists("library bus"), "units") if each.packed}
    assert {name: (each.mass, each.lift) for name, each in bus.items()} == {
        "INV1": (19.8, "one person"),
        "AT1": (13.6, "one person"),
    }
    assert "4 x M6 screw in T-nut" in bus["INV1"].note
    cabin = [each for each in of(lists("lookout cabin"), "units") if each.packed]
    assert [(each.mass, each.lift) for each in cabin] == [(27.4, "two people")] * 2


@pytest.mark.parametrize(("sample", "holes"), [("library bus", LIBRARY_BUS), ("lookout cabin", LOOKOUT_CABIN)])
def test_every_bit_of_the_hole_schedule_goes_along_with_spares(sample, holes, lists):
    bits = {each.size: each for each in of(lists(sample), "bits") if each.size}
    assert {float(size.split()[0]): int(each.note.split()[0]) for size, each in bits.items()} == BITS[sample]
    assert {size: each.spare for size, each in bits.items()} == {
        size: 2 if float(size.split()[0]) < 4 else 1 for size in bits
    }
    assert sum(int(each.note.split()[0]) for each in bits.values()) == len(holes)


def test_fasteners_are_those_of_the_hole_schedule(lists):
    """16 holes #8 x 19, 18 #10, 2 #6, 3 of the channel, 8 T-nuts, 9 board fixings: our own hole schedule by hand."""
    found = {each.key: (each.needed, each.spare) for each in of(lists("library bus"), "fasteners")}
    assert found["fastener #8x19"] == (16, 10)
    assert found["fastener #10x19"] == (18, 10)
    assert found["fastener #6x16"] == (2, 10)
    assert found["fastener #8x16 washer"] == (3, 10)
    assert found["fastener M6 T-nut"] == found["t-nut M6"] == found["washer M6"] == (8, 2)
    assert found["board fixing for holes of 9 mm"] == (9, 3)


def test_the_size_most_used_has_four_spares_from_the_second_edition_on():
    parts = parts_list(review_of(replace(library_bus(), rules=rules())))
    lugs = {each.key: each.spare for each in of(parts, "lugs") if each.stud}
    assert lugs.pop("lug 70 mm² x M10 straight") == 4
    assert set(lugs.values()) == {2}


def test_tube_is_metres_and_a_fifth_more_where_the_edition_gives_lengths(lists):
    """70 mm² red by hand: 7 ends on the board and 1 at the tray, 52 mm each: 0.416 m, and 0.1 m more."""
    parts = parts_list(review_of(replace(library_bus(), rules=rules())))
    tubes = {each.key: each for each in of(parts, "tubes")}
    red = tubes["tube 70 mm² red"]
    assert (red.needed, red.spare, red.unit) == (pytest.approx(8 * 0.052), 0.1, "m")
    (unknown,) = of(lists("library bus"), "tubes")
    assert (unknown.quantity, unknown.question.startswith("how many metres?")) == (None, True)


def test_no_fuse_has_a_rating_and_each_place_in_use_a_blank(lists):
    fuses = {each.key: each for each in of(lists("library bus"), "fuses")}
    assert {key: each.needed for key, each in fuses.items()} == {"fuse FT1": 1, "fuse PB1": 4, "fuse LP1": 2}
    assert all(each.spare is None and not each.rating and "which rating?" in each.question for each in fuses.values())
    assert {each.spare_words for each in fuses.values()} == {f"{n} spare of each rating" for n in (1, 2, 5)}
    assert fuses["fuse FT1"].standard == "UL 248-15, class T"


def test_fuses_of_one_rating_are_one_line_with_the_spares_of_that_rating():
    """Bolt-down: two spare of each rating; the way that nobody rated stays a blank."""
    plan = library_bus()
    fuses = (Fuse("F1", rating_a=60.0), Fuse("F3", rating_a=60.0), Fuse("F5", rating_a=200.0))
    plan = plan.with_things([replace(plan.components["PB1"], fuses=fuses)])
    found = {each.key: each for each in of(parts_list(review_of(plan)), "fuses")}
    assert [(found[key].needed, found[key].spare) for key in ("fuse 60 A", "fuse 200 A")] == [(2, 2), (1, 2)]
    assert found["fuse 60 A"].rating == "60 A"
    assert found["fuse PB1"].needed == 1
    assert "F2 ____ A" in found["fuse PB1"].question


def test_every_cable_is_made_once_and_goes_to_one_place(lists):
    for name in SAMPLES:
        parts = lists(name)
        plan = parts.shop.plan
        cut = [each.id for each in plan.cables.values() if not plan.conductors[each.conductor].stock_lengths]
        made = [each for each in of(parts, "made-cables") if each.key.startswith("made ")]
        assert sorted(each.key for each in made) == sorted(f"made {each}" for each in cut)
    places = {each.key: each.size for each in of(lists("lookout cabin"), "made-cables")}
    assert {places[f"made {each}"] for each in ("W21", "W22", "W23", "W24")} == {"between boards A and B"}
    assert places["made W03"] == "board A, fitted"
    assert places["made W33"].startswith("off board A")
    on_boards = {each.key: each.on_board for each in of(lists("lookout cabin"), "made-cables")}
    assert {on_boards[f"made {each}"] for each in ("W03", "W21", "W22", "W23", "W24")} == {"A"}
    assert on_boards["made W33"] == ""


def test_far_ends_that_nobody_described_are_asked_for(lists):
    (asked,) = [each for each in of(lists("library bus"), "lugs") if not each.stud]
    assert asked.quantity is None
    assert set(asked.things) == {"W17", "W18", "W20", "W31", "W32"}


def marked(*marks):
    return replace(library_bus(), supply={each.part: each for each in marks})


def test_an_ordered_part_keeps_the_van_in_the_yard():
    parts = parts_list(review_of(marked(Supply("unit shunt-500a", "ordered", date="2026-11-20"))))
    assert not parts.ready
    assert parts.ready_words == "NOT READY TO LEAVE: 1 part is ordered: Shunt 500 A (expected 2026-11-20)"


@pytest.mark.parametrize("mark", [Supply("unit shunt-500a", "stock"), Supply("unit nowhere", "ordered")])
def test_nothing_ordered_that_is_needed_and_the_van_may_leave(mark):
    parts = parts_list(review_of(marked(mark)))
    assert parts.ready
    assert parts.ready_words.startswith("ready to leave as far as this list knows")
    assert [each.part for each in parts.stray] == (["unit nowhere"] if mark.part == "unit nowhere" else [])


def test_a_rule_set_without_a_table_has_no_list(bus_plan):
    bare = replace(bus_plan, rules=replace(bus_plan.rules, load_out=None))
    assert parts_list(review_of(bare)) is None


@given(st.integers(0, 500), st.integers(0, 100), st.integers(0, 20))
def test_a_spare_is_a_share_rounded_up_and_no_less_than_the_least(needed, share, least):
    spare = SpareRule(share, least, "made up").spare(needed)
    exact = math.ceil(Fraction(needed * share, 100))
    assert spare == (max(exact, least) if needed else 0)
