"""Keep-clear: neighbours, channels, walls and other boards in the zones of a unit; and any pair by brute force."""

from dataclasses import replace
from math import cos, radians, sin

import pytest
from checks.independent import convex_shared, turned_rectangle
from checks.plans import BOARD, UNIT, channel, named, plan_of, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Compartment, Sides
from boardplan.model.component_kind import Cooling, KeepClear

AIRY = replace(
    UNIT,
    id="airy",
    keep_clear=(KeepClear("top", 100, "air", demanded=True), KeepClear("left", 30, "hands")),
)
KINDS = (UNIT, AIRY)


@pytest.mark.parametrize(
    ("x", "y", "room", "severity"),
    [
        (300, 500, None, None),
        (300, 499.9, 99.9, "stop"),
        (400, 450, None, None),  # beside the zone
        (399.9, 450, 50, "stop"),
        (170, 300, None, None),
        (170.1, 300, 29.9, "warn"),
        (450, 300, None, None),  # its right asks for nothing
    ],
)
def test_unit_in_a_zone(x, y, room, severity):
    found = named(plan_of(unit("U1", 300, 300, kind="airy"), unit("U2", x, y), kinds=KINDS), "keep-clear-blocked")
    expected = [] if room is None else [(pytest.approx(room), severity, ("U1", "U2"))]
    assert [(each.measured, each.severity, each.things) for each in found] == expected


@pytest.mark.parametrize(
    ("turn", "words"), [(0, "above it"), (90, "to its left"), (180, "below it"), (270, "to its right")]
)
def test_zones_turn_with_the_unit(turn, words):
    x, y = {0: (300, 430), 90: (170, 300), 180: (300, 170), 270: (430, 300)}[turn]
    plan = plan_of(unit("U1", 300, 300, turn, kind="airy"), unit("U2", x, y), kinds=KINDS)
    (found,) = [each for each in named(plan, "keep-clear-blocked") if each.limit == 100]
    assert words in found.sentence
    assert found.measured == pytest.approx(30)
    assert "30 mm" in found.sentence
    assert "100 mm" in found.sentence
    assert "for air" in found.sentence


@pytest.mark.parametrize(
    ("y", "room"), [(BOARD.box.top - 200, None), (BOARD.box.top - 199.9, 99.9), (BOARD.box.top - 150, 50)]
)
def test_a_raised_edge_ends_the_room(y, room):
    lipped = replace(BOARD, lip=Sides(0, 0, 0, 12))
    plan = plan_of(unit("U1", 300, y, kind="airy"), kinds=KINDS, board=lipped)
    found = named(plan, "keep-clear-at-lip")
    assert [(each.measured, each.severity) for each in found] == (
        [] if room is None else [(pytest.approx(room), "stop")]
    )
    assert all("lip of board A" in each.sentence for each in found)
    level = named(plan_of(unit("U1", 300, y, kind="airy"), kinds=KINDS), "keep-clear-at-lip")
    assert level == []


@pytest.mark.parametrize(("y", "blocked"), [(530, False), (529.9, True)])
def test_channel_in_a_zone(y, blocked):
    plan = plan_of(unit("U1", 300, 300, kind="airy"), channel("RW", (100, y), (700, y)), kinds=KINDS)
    assert len(named(plan, "keep-clear-blocked")) == blocked


@pytest.mark.parametrize(
    ("top", "y", "room"),
    [
        (200, 700, None),  # 100 above the unit is the edge, 200 more to the ceiling
        (40, 640, None),
        (40, 640.1, 99.9),
        (0, 600, None),
        (0, 600.1, 99.9),
    ],
)
def test_ceiling_of_the_compartment(top, y, room):
    board = replace(BOARD, compartment=Compartment(200, 200, 200, top, 400))
    found = named(plan_of(unit("U1", 300, y, kind="airy"), kinds=KINDS, board=board), "keep-clear-walled")
    assert [each.measured for each in found] == ([] if room is None else [pytest.approx(room)])


def test_room_that_nobody_measured_is_a_question():
    board = replace(BOARD, compartment=None)
    plan = plan_of(unit("U1", 300, 690, kind="airy"), kinds=KINDS, board=board)
    (found,) = named(plan, "room-unknown")
    assert found.severity == "note"
    assert found.sentence.split(" (")[0].endswith("?")
    assert named(plan, "keep-clear-walled") == []


@pytest.mark.parametrize(("x", "blocked"), [(0, True), (9.9, True), (10, False)])
def test_thing_on_the_next_board_counts_where_the_boards_meet(x, blocked):
    # A zone of 30 to the left leaves board B by 10 and ends on board A, whose unit ends at its edge less x.
    left = replace(BOARD, compartment=Compartment(50, 200, 50, 200, 400))
    right = replace(left, id="B", position=Point(1000, 0))
    plan = plan_of(
        unit("U1", 20, 300, kind="airy", board="B"),
        unit("U2", 900 - x, 300),
        kinds=KINDS,
        boards={"A": left, "B": right},
    )
    assert len(named(plan, "keep-clear-blocked")) == blocked
    assert named(plan, "keep-clear-walled") == []


BLOWER = replace(
    UNIT, id="blower", keep_clear=(KeepClear("top", 60, "air"),), cooling=Cooling(intake=(), exhaust=("top",))
)
BREATHER = replace(
    UNIT, id="breather", keep_clear=(KeepClear("bottom", 40, "air"),), cooling=Cooling(intake=("bottom",), exhaust=())
)


@pytest.mark.parametrize(
    ("upper", "y", "name"),
    [
        ("breather", 500, None),  # 60 + 40
        ("breather", 499.9, "intake-fed"),
        ("airy", 460, None),  # doesn't take its air from below: 60 will do
        ("airy", 459.9, "keep-clear-blocked"),
    ],
)
def test_distances_add_where_one_blows_into_the_other(upper, y, name):
    kinds = (UNIT, AIRY, BLOWER, BREATHER)
    plan = plan_of(unit("U1", 300, 300, kind="blower"), unit("U2", 300, y, kind=upper), kinds=kinds)
    found = [each.name for each in (*named(plan, "intake-fed"), *named(plan, "keep-clear-blocked"))]
    assert found == ([name] if name else [])


def test_zones_of_neighbours_overlap():
    both = replace(UNIT, id="both", keep_clear=(KeepClear("left", 50, "air"), KeepClear("right", 50, "air")))
    plan = plan_of(unit("U1", 300, 300, kind="both"), unit("U2", 450, 300, kind="both"), kinds=[both])
    assert named(plan, "keep-clear-blocked") == []


@given(
    turn=st.sampled_from([0, 90, 180, 270, 20, 45, 110]),
    other=st.tuples(
        st.integers(20, 150),
        st.integers(20, 150),
        st.integers(100, 600),
        st.integers(100, 600),
        st.sampled_from([0, 30]),
    ),
)
def test_any_neighbour_as_brute_force_says(turn, other):
    width, height, distance = 120, 80, 90
    body = turned_rectangle(width, height, 300, 300, turn)
    # The zone above the upright unit, turned with it: from the upper corners of the body outwards.
    normal = (cos(radians(turn + 90)), sin(radians(turn + 90)))
    right, left = body[2], body[3]
    zone = [left, right, *((x + normal[0] * distance, y + normal[1] * distance) for x, y in (right, left))]
    shared = convex_shared(turned_rectangle(*other), zone)
    depths = [(x - left[0]) * normal[0] + (y - left[1]) * normal[1] for x, y in shared]
    area = abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(shared, [*shared[1:], *shared[:1]], strict=True))) / 2
    if 0 < area < 0.1:
        return  # a touch, which a rounding of floats may decide either way
    kinds = [
        replace(
            UNIT,
            id="one",
            outline=Box(0, 0, width, height).corners(),
            holes=(),
            terminals=(),
            keep_clear=(KeepClear("top", distance, "air"),),
        ),
        replace(UNIT, id="other", outline=Box(0, 0, other[0], other[1]).corners(), holes=(), terminals=()),
    ]
    plan = plan_of(unit("U1", 300, 300, turn, kind="one"), unit("U2", *other[2:], kind="other"), kinds=kinds)
    found = named(plan, "keep-clear-blocked")
    assert [each.measured for each in found] == ([pytest.approx(max(0.0, min(depths)), abs=1e-6)] if area else [])
