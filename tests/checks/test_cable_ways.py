"""Cable ways: cables that can't be laid, that leave the board, that pass over other units."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, WIRE, cable, named, plan_of, unit

from boardplan.checks.review import review_with_ways
from boardplan.geometry.point import Box, Point
from boardplan.model.component_kind import KeepClear
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import NoWay

TWO = unit("U1", 100, 300), unit("U2", 700, 300)


def test_no_way_is_a_stop_with_its_reason():
    plan = plan_of(*TWO, cable("W1", ("U1", "R"), ("U2", "L")))
    ways = {**find_routes(plan), "W1": NoWay("W1", "U9 stands in its way", Point(400, 350))}
    (found,) = [each for each in review_with_ways(plan, ways).findings if each.name == "cable-without-way"]
    assert found.severity == "stop"
    assert "U9 stands in its way" in found.sentence
    assert found.place == Point(400, 350)


@pytest.mark.parametrize(("y", "out"), [(800, None), (801.5, 560 + 3), (700, None)])
def test_pinned_beyond_the_edge(y, out):
    plan = plan_of(*TWO, cable("W1", ("U1", "T"), ("U2", "T"), (150, y), (750, y)))
    found = named(plan, "cable-off-board")
    assert [each.severity for each in found] == (["warn"] if out else [])
    assert [each.measured for each in found] == ([pytest.approx(600 + 2 * (y - 800), abs=0.1)] if out else [])


def test_over_a_cutout_is_off_the_board():
    board = replace(BOARD, cutouts=(Box(400, 300, 500, 400).corners(),))
    plan = plan_of(*TWO, cable("W1", ("U1", "R"), ("U2", "L"), (300, 350)), board=board)
    assert [each.measured for each in named(plan, "cable-off-board")] == [pytest.approx(100, abs=0.1)]


def test_step_from_board_to_board_does_not_count():
    right = replace(BOARD, id="B", position=Point(1010, 0))
    things = unit("U1", 100, 300), unit("U2", 300, 300, board="B"), cable("W1", ("U1", "R"), ("U2", "L"), (700, 350))
    plan = plan_of(*things, boards={"A": BOARD, "B": right})
    assert named(plan, "cable-off-board") == []


@pytest.mark.parametrize(("y", "room"), [(257.25, None), (257.15, 2.9), (250, 0), (200, 0)])
def test_past_another_unit(y, room):
    # The jacket reaches 4.25 to each side of the line, 3 more are asked.
    between = unit("U3", 400, 150)
    plan = plan_of(*TWO, between, cable("W1", ("U1", "B"), ("U2", "B"), (150, y), (750, y), conductor="16"))
    found = named(plan, "cable-over-component")
    expected = [] if room is None else [(pytest.approx(room), ("W1", "U3"), "warn")]
    assert [(each.measured, each.things, each.severity) for each in found] == expected


def test_the_units_it_ends_on_do_not_count():
    assert named(plan_of(*TWO, cable("W1", ("U1", "R"), ("U2", "L"), (400, 350))), "cable-over-component") == []


COVERED = replace(UNIT, id="covered", keep_clear=(KeepClear("front", 80, "fuse pull"),))
WARM = replace(UNIT, id="warm", heat=40.0)


@pytest.mark.parametrize(
    ("kind", "diameter", "word"),
    [
        ("unit", 7.9, None),
        ("unit", 8.0, "passes over U3;"),
        ("covered", 7.9, "opened or reached from the front"),
        ("warm", 7.9, "gets warm"),
    ],
)
def test_only_a_thin_cable_passes_over_a_plain_unit(kind, diameter, word):
    plan = plan_of(
        *TWO,
        unit("U3", 400, 150, kind=kind),
        cable("W1", ("U1", "B"), ("U2", "B"), (150, 200), (750, 200)),
        kinds=(UNIT, COVERED, WARM),
    )
    plan = replace(plan, conductors={"wire": replace(WIRE, outside_diameter=diameter)})
    found = named(plan, "cable-over-component")
    assert [word in each.sentence for each in found] == ([True] if word else [])
