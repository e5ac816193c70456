"""Clocking of two lugs against a frame carried along the cable in small steps, and by hand."""

import math
from dataclasses import replace

import pytest
from boards import library_bus
from checks.plans import UNIT, cable, plan_of, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.bends import Bend, turn_between
from boardplan.geometry.point import bearing
from boardplan.model.cable import Lug
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.clocking import clock_words, clocking_of, twist_words
from boardplan.routing.lengths.cut_length import cut_lengths

FACES = ("front", "left", "right", "top", "bottom")
NORMALS = {"front": (0, 0, 1), "right": (1, 0, 0), "left": (-1, 0, 0), "top": (0, 1, 0), "bottom": (0, -1, 0)}


def facing(name, face):
    return replace(UNIT, id=name, terminals=tuple(replace(each, faces=face) for each in UNIT.terminals))


def joined(first, second, *pins, turns=(0.0, 0.0), **fields):
    """A 70 mm² cable up from U1.T, round some pins, to U2.B."""
    kinds = facing("unit", first), facing("other", second)
    fields.setdefault("conductor", "70")
    return plan_of(
        unit("U1", 100, 100, turns[0]),
        unit("U2", 600, 600, turns[1], kind="other"),
        cable("W1", ("U1", "T"), ("U2", "B"), *pins, way="outside", **fields),
        kinds=kinds,
    )


def clocking(plan):
    return clocking_of(plan, plan.cables["W1"], find_routes(plan)["W1"])


def carried(way, normal, steps=200):
    """Carry a direction along a way without twisting it: what it gains along the cable is taken off at every step."""
    headings = []
    for piece in way.pieces:
        if isinstance(piece, Bend):
            start = bearing(piece.centre, piece.start) + math.copysign(90, piece.turn)
            headings += [start + piece.turn * index / steps for index in range(steps + 1)]
        else:
            headings.append(bearing(piece.start, piece.end))
    x, y, z = normal
    for degrees in headings:
        tx, ty = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        along = x * tx + y * ty
        x, y = x - along * tx, y - along * ty
        size = math.sqrt(x * x + y * y + z * z)
        x, y, z = x / size, y / size, z / size
    return (x, y, z), (tx, ty, 0.0)


def turned_from(one, other, along):
    """Return the angle from one direction to another about an axis, clockwise seen along it."""
    cross = (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )
    sine = sum(a * b for a, b in zip(cross, along, strict=True))
    return math.degrees(math.atan2(sine, sum(a * b for a, b in zip(one, other, strict=True))))


WAYS = (
    ((150, 400), (650, 400)),
    ((150, 300), (400, 300), (400, 520), (650, 520)),
    ((150, 300), (300, 450), (650, 450)),
)


@pytest.mark.parametrize("pins", WAYS)
@pytest.mark.parametrize("first", ["front", "left", "right"])
@pytest.mark.parametrize("second", ["front", "left", "right"])
def test_palms_are_turned_as_a_frame_carried_along_the_cable_says(first, second, pins):
    """Seen along a cable a right-hand turn about it is clockwise."""
    plan = joined(first, second, *pins)
    way = find_routes(plan)["W1"]
    there, along = carried(way, NORMALS[first])
    wanted = turned_from(there, NORMALS[second], along)
    assert turn_between(wanted, clocking(plan)) == pytest.approx(0, abs=0.5)


@pytest.mark.parametrize(
    ("first", "second", "degrees"),
    [
        ("front", "front", 0),
        ("front", "right", 90),
        ("front", "left", -90),
        ("left", "right", 180),
        ("right", "right", 0),
    ],
)
def test_from_the_board_to_an_upright_face_is_a_quarter(first, second, degrees):
    # common practice, no source: flat on the board 0 degrees, to a face square to it 90. The cable comes up from below.
    assert abs(turn_between(clocking(joined(first, second, *WAYS[0])), degrees)) < 1e-6


def test_a_stud_that_points_along_its_cable_leaves_it_open():
    assert clocking(joined("top", "front", *WAYS[0])) is None


def test_a_turned_unit_turns_its_studs():
    """Upside down, a stud that faces left faces right. The cable comes down on it, so right is behind on the left."""
    plan = joined("front", "left", (150, 750), (650, 750), turns=(0, 180))
    assert clocking(plan) == pytest.approx(-90)


def ends_of(plan):
    return cut_lengths(plan, find_routes(plan))["W1"].ends


def test_a_stiff_cable_between_flat_studs_is_crimped_in_one_plane():
    assert [end.clock for end in ends_of(joined("front", "front", *WAYS[0]))] == ["12 h", "12 h"]


def test_to_an_upright_face_the_second_lug_is_turned():
    ends = ends_of(joined("front", "right", *WAYS[0]))
    assert [(end.clock, end.clocking) for end in ends] == [("12 h", 0), ("3 h", 90)]


def test_what_a_person_gave_wins():
    plan = joined("front", "right", *WAYS[0])
    given_by_hand = replace(plan.cables["W1"].end, lug=Lug("M8", clocking=-45.0))
    ends = ends_of(plan.with_things([replace(plan.cables["W1"], end=given_by_hand)]))
    assert [(end.clock, end.clocking) for end in ends] == [("12 h", 0), ("10 h 30", -45)]


def test_thin_cables_and_earlier_editions_say_nothing():
    plan = joined("front", "right", *WAYS[0])
    assert [end.clock for end in ends_of(joined("front", "right", *WAYS[0], conductor="wire"))] == ["", ""]
    assert [end.clock for end in ends_of(replace(plan, rules=library_bus().rules))] == ["", ""]


@pytest.mark.parametrize(
    ("degrees", "words"),
    [
        (0, "12 h"),
        (90, "3 h"),
        (180, "6 h"),
        (-90, "9 h"),
        (45, "1 h 30"),
        (14, "12 h 30"),
        (-7, "12 h"),
        (359, "12 h"),
    ],
)
def test_degrees_on_the_face_of_a_clock(degrees, words):
    # a twelfth of a turn an hour
    assert clock_words(degrees) == words


def test_only_a_long_fine_strand_cable_can_be_twisted_by_hand():
    # over a metre, about 30 degrees: common practice, no source
    plan = joined("front", "right", *WAYS[0])
    assert twist_words(plan, plan.cables["W1"], 1000.1) == "can be twisted 30° by hand"
    assert twist_words(plan, plan.cables["W1"], 1000) == ""
    stiff = replace(plan.conductors["70"], construction="stiff")
    plan = replace(plan, conductors={**plan.conductors, "70": stiff})
    assert twist_words(plan, plan.cables["W1"], 1500) == ""


@given(st.sampled_from(FACES), st.sampled_from(FACES), st.sampled_from(WAYS))
def test_seen_from_the_other_end_it_is_the_same_turn(first, second, pins):
    """A right-hand screw is one from both of its ends."""
    plan = joined(first, second, *pins)
    turned = plan.cables["W1"]
    back = plan.with_things([replace(turned, start=turned.end, end=turned.start, pins=tuple(reversed(turned.pins)))])
    there, here = clocking(plan), clocking(back)
    assert (there is None) == (here is None)
    if there is not None:
        assert abs(turn_between(there, here)) < 1e-6
