"""Why a cable has no way: what is in its way, and how much it lacks, reckoned by hand."""

from checks.plans import cable, plan_of, unit

from boardplan.geometry.point import Box
from boardplan.geometry.units import tidy_number
from boardplan.model.board import Board
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import NoWay, Route


def reason(plan):
    way = find_routes(plan)["W1"]
    assert isinstance(way, NoWay), way
    return way.reason


def facing(gap):
    """Studs that look at each other, each 10 mm inside its unit."""
    return plan_of(
        unit("U1", 300, 100), unit("U2", 300, 200 + gap), cable("W1", ("U1", "T"), ("U2", "B"), conductor="16")
    )


def test_lugs_too_near_each_other_are_said_to_the_mm():
    """Two mouths of 28 mm take 56: with 35 mm between the units the studs are 55 apart, with 36 it is enough."""
    assert reason(facing(35)) == "U1.T and U2.B are 55 mm apart, but their lugs take 56 mm"
    assert isinstance(find_routes(facing(36))["W1"], Route)


def test_a_unit_from_edge_to_edge_stands_in_the_way():
    board = Board("A", "Narrow", Box(0, 0, 120, 800).corners())
    plan = plan_of(
        unit("U1", 10, 50),
        unit("U3", 10, 350),
        unit("U2", 10, 650),
        cable("W1", ("U1", "T"), ("U2", "B"), conductor="70"),
        board=board,
    )
    assert reason(plan) == "U3 stands in the way from U1.T to U2.B, and there is no way round"


def test_a_leg_that_looks_into_a_unit_is_too_short_by_what_it_lacks():
    """16 mm²: a mouth of 28 mm and the least bend; 20 mm between units less half the jacket and its clearance."""
    other = unit("U3", 300, 220)
    plan = plan_of(
        unit("U1", 300, 100), other, unit("U2", 600, 500), cable("W1", ("U1", "T"), ("U2", "B"), conductor="16")
    )
    conductor = plan.conductors["16"]
    bend = plan.rules.bends[conductor.construction].least * conductor.outside_diameter
    left = 30 - conductor.outside_diameter / 2 - plan.rules.value("cable-to-body")
    lacks = conductor.lug.mouth + bend - left
    assert reason(plan).startswith(f"the leg out of U1.T is {tidy_number(lacks)} mm too short")
    assert "U3 leaves" in reason(plan)
