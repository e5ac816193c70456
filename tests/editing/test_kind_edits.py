"""A kind put together of what was measured: taken as it is, or refused with what was expected."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.checks.kind_questions import kind_questions
from boardplan.editing.component_edits import renew_kind
from boardplan.editing.kind_edits import free_id, new_kind, sized, with_holes, with_room, with_terminals
from boardplan.editing.refused import EditRefused
from boardplan.files.own_shelf import unfit_words
from boardplan.files.plan_file import plan_of_text, plan_text
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.component_kind import KeepClear, MountingHole, Terminal

SHELF = bundled_shelf()
KINDS = st.sampled_from(list(SHELF.kinds.values()))
sizes = st.floats(1, 3000).map(lambda value: round(value, 1))


@given(KINDS, sizes, sizes, sizes)
def test_a_kind_of_any_size_can_be_kept(kind, width, height, depth):
    made = sized(kind, width, height, depth)
    assert (made.box.width, made.box.height, made.depth) == pytest.approx((width, height, depth))
    assert unfit_words(made) == ""
    assert (made.box.left, made.box.bottom) == pytest.approx((0, 0))


def test_the_same_size_keeps_the_drawing_and_another_leaves_a_plain_body():
    kind = next(each for each in SHELF.kinds.values() if each.art)
    assert sized(kind, kind.box.width, kind.box.height, kind.depth) == kind
    assert sized(kind, kind.box.width + 1, kind.box.height, kind.depth).art == ()


@pytest.mark.parametrize("size", [(0, 1, 1), (1, -1, 1), (1, 1, 3001)])
def test_a_body_without_a_size_is_refused(size):
    with pytest.raises(EditRefused, match="Expected more than 0"):
        sized(new_kind(()), *size)


def test_a_hole_that_stays_keeps_its_shape():
    kind = replace(new_kind(()), holes=(MountingHole(Point(10, 10), "keyhole", drop=8.0),))
    made = with_holes(kind, [(10, 10), (90, 10)])
    assert made.holes == (kind.holes[0], MountingHole(Point(90, 10)))
    with pytest.raises(EditRefused, match="Where is hole 2"):
        with_holes(kind, [(10, 10), (90, None)])


def test_terminals_need_names_of_their_own():
    one = Terminal("A", Point(0, 0), 30, "stud")
    assert with_terminals(new_kind(()), [one]).terminals == (one,)
    with pytest.raises(EditRefused, match="called A"):
        with_terminals(new_kind(()), [one, one])
    with pytest.raises(EditRefused, match="no name"):
        with_terminals(new_kind(()), [replace(one, id="")])


def test_room_of_nothing_is_no_room():
    assert with_room(new_kind(()), [KeepClear("top", 0, "air"), KeepClear("left", 20, "air")]).keep_clear == (
        KeepClear("left", 20, "air"),
    )


def test_ids_are_plain_and_free():
    assert free_id("Größer & schöner 2", ()) == "gr-er-sch-ner-2"
    assert free_id("---", {"unit"}) == "unit-2"
    assert len(free_id("x" * 200, ())) <= 60


def words(kind):
    return [each.words for each in kind_questions(kind)]


def test_what_nobody_said_is_asked_and_nothing_is_made_up():
    kind = new_kind(())
    asked = " ".join(words(kind))
    for part in ("How heavy", "mounting holes", "cables land", "room for air", "non-combustible", "heat"):
        assert part in asked
    stud = with_terminals(kind, [Terminal("S1", Point(10, 10), 30, "stud")])
    assert "What torque does its sheet give for S1?" in words(stud)
    assert all(each.torque is None for each in stud.terminals)


def test_slips_are_found():
    kind = with_holes(new_kind(()), [(10, 10), (10.2, 10), (150, 10)])
    kind = with_terminals(kind, [Terminal("A", Point(200, 0), 5, "stud"), Terminal("B", Point(30, -40), 5, "stud")])
    slips = [each.words for each in kind_questions(kind) if each.sort == "slip"]
    assert slips == [
        "Hole 3 lies outside the outline.",
        "Holes 1 and 2 are at the same place.",
        "Terminal A lies more than 60 mm off the outline.",
    ]


@pytest.mark.parametrize("kind", SHELF.kinds.values(), ids=lambda kind: kind.id)
def test_no_kind_that_comes_with_the_program_has_a_slip(kind):
    assert [each.words for each in kind_questions(kind) if each.sort == "slip"] == []


def test_a_kind_measured_anew_keeps_the_cables_whose_terminals_are_still_there(bus_plan):
    kind = bus_plan.kinds[bus_plan.components["NB1"].kind]
    fewer = replace(kind, terminals=tuple(each for each in kind.terminals if each.id != "S5"))
    plan, lost = renew_kind(bus_plan, fewer, SHELF.fasteners)
    assert lost == ("W07",)
    assert set(bus_plan.cables) - set(plan.cables) == {"W07"}
    assert plan.kinds[kind.id] == fewer
    assert plan_of_text(plan_text(plan)) == plan
    assert renew_kind(bus_plan, replace(kind, id="another"), SHELF.fasteners) == (bus_plan, ())
