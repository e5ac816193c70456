"""Battery cables: the walk from a battery to its shut-off, on boards small enough to do it by hand."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, cable, plan_of, unit

from boardplan.geometry.point import Point
from boardplan.model.board import Exit
from boardplan.model.cable import Cable, ExitEnd, Leg, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Terminal
from boardplan.routing.currents.battery_cables import battery_cables, battery_end

TWO = (Terminal("A", Point(10, 50), 20, "stud", "M8"), Terminal("B", Point(90, 50), 20, "stud", "M8"))
KINDS = {
    "battery": replace(UNIT, id="battery", family="Batteries and trays", terminals=TWO),
    "fuse": replace(UNIT, id="fuse", family="Fuse blocks", terminals=TWO),
    "panel": replace(UNIT, id="panel", family="Fuse blocks", terminals=(*TWO, replace(TWO[0], id="C"))),
    "switch": replace(UNIT, id="switch", family="Shut-offs", terminals=TWO),
    "bus": replace(UNIT, id="bus", family="Busbars", terminals=TWO),
}


def chain(*kinds, **changes):
    """Return units in a row, each joined to the next by a cable W1, W2 and so on."""
    units = [unit(f"U{n}", 100 + 150 * n, 100, kind=kind) for n, kind in enumerate(kinds)]
    cables = [cable(f"W{n}", (f"U{n - 1}", "B"), (f"U{n}", "A"), **changes) for n in range(1, len(kinds))]
    return plan_of(*units, *cables, kinds=KINDS.values())


@pytest.mark.parametrize(
    ("kinds", "expected"),
    [
        (("battery", "fuse", "switch", "bus"), {"W1", "W2"}),
        (("bus", "switch", "fuse", "battery"), {"W2", "W3"}),
        (("battery", "bus", "switch"), {"W1"}),  # a bus belongs to several circuits
        (("battery", "panel", "switch"), {"W1"}),  # and so does a block with several fuses
        (("battery", "switch", "battery"), {"W1", "W2"}),
        (("fuse", "switch"), set()),
    ],
)
def test_the_walk_ends_at_the_shut_off(kinds, expected):
    assert battery_cables(chain(*kinds)) == expected


def test_only_direct_current_counts():
    assert battery_cables(chain("battery", "switch", cable_class="signal")) == set()


@pytest.mark.parametrize(("name", "there"), [("House battery +", True), ("BATTERIES", True), ("batteryless", False)])
def test_a_battery_off_the_board_is_known_by_its_name(name, there):
    leaving = Exit("X1", "A", name, Point(0, 400))
    away = OffBoardEnd("X1", name, (Leg(700, "measured"),))
    plan = chain("fuse", "switch").with_things(
        [
            leaving,
            Cable("B1", away, TerminalEnd("U0", "A"), "16", "red", "dc"),
            Cable("B2", ExitEnd("X1"), TerminalEnd("U0", "A"), "16", "red", "dc"),
        ]
    )
    assert battery_cables(plan) == ({"B1", "B2", "W1"} if there else set())
    assert battery_end(plan, plan.cables["B1"]) == (away if there else None)
    assert battery_end(plan, plan.cables["W1"]) is None
