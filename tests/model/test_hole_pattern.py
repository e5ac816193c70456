"""Hole pattern: pitches and diagonal of a pattern as it is turned."""

from dataclasses import replace

import pytest
from boards import library_bus

from boardplan.geometry.point import Point
from boardplan.model.component import Component
from boardplan.model.component_kind import MountingHole
from boardplan.model.hole_pattern import PatternDimensions, pattern_dimensions
from boardplan.model.placed import place, placed


@pytest.mark.parametrize(
    ("component", "expected"),
    [
        # The invented inverter's holes are 160 and 406 apart; diagonal by Pythagoras 436.39.
        ("INV1", PatternDimensions(160, 406, pytest.approx(436.3897, abs=1e-3), (1, 4))),
        ("HB1", PatternDimensions(142, 0, 142, (1, 2))),
        ("FT1", PatternDimensions(0, pytest.approx(52), pytest.approx(52), (1, 2))),  # turned by 270
    ],
)
def test_pitches(component, expected):
    plan = library_bus()
    assert pattern_dimensions(placed(plan, plan.components[component])) == expected


def test_none_without_two_holes():
    kind = library_bus().kinds["shunt-500a"]
    single = replace(kind, holes=kind.holes[:1])
    assert pattern_dimensions(place(single, Component("SH1", kind.id, "A", Point(0, 0)))) is None


def test_the_longest_diagonal_joins_two_holes_that_are_there():
    kind = library_bus().kinds["shunt-500a"]
    holes = tuple(MountingHole(Point(x, y)) for x, y in ((10, 10), (50, 40), (90, 10)))
    pattern = pattern_dimensions(place(replace(kind, holes=holes), Component("SH1", kind.id, "A", Point(0, 0))))
    assert pattern == PatternDimensions(80, 30, 80, (1, 3))


@pytest.mark.parametrize(("turn", "pitches"), [(0, (78, 138)), (90, (138, 78)), (30, (78, 138)), (210.5, (78, 138))])
def test_a_unit_turned_freely_is_measured_along_its_own_edges(turn, pitches):
    """The invented disconnect's holes are 78 and 138 mm apart; by quarters they are as the board shows them."""
    kind = library_bus().kinds["pv-disconnect-2-pole"]
    pattern = pattern_dimensions(place(kind, Component("PV1", kind.id, "A", Point(0.1, 0.2), turn)))
    assert (pattern.pitch_x, pattern.pitch_y) == pytest.approx(pitches)
    assert pattern.diagonal == pytest.approx(158.5, abs=0.05)  # Pythagoras
