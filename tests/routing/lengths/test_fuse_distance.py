"""Fuse distance: 7, 40 and 72 in along the conductor: 33 CFR 183.455(b), ABYC E-11 (7/2015) as summarised."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, cable, channel, named, plan_of

from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Exit
from boardplan.model.cable import Cable, Leg, OffBoardEnd, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, Terminal
from boardplan.model.conductor import Conductor

KINDS = bundled_shelf().kinds
INCH = 25.4
WIDE = replace(BOARD, outline=Box(0, 0, 3000, 800).corners())
BATTERY = ComponentKind(
    "battery", "Test battery", "Batteries and trays", "BT", Box(0, 0, 100, 100).corners(), 50,
    terminals=(Terminal("POS", Point(90, 50), 20, "clamp", "", 0.0, "+"),),
)  # fmt: skip
FUSE = ComponentKind(
    "fuse", "Test fuse", "Fuse blocks", "FT", Box(0, 0, 100, 100).corners(), 50,
    terminals=(Terminal("LINE", Point(10, 50), 20, "clamp", "", 180.0, "+"),),
)  # fmt: skip
BUS = replace(
    BATTERY,
    id="bus",
    family="Busbars",
    name="Positive busbar",
    terminals=(
        Terminal("S1", Point(90, 50), 20, "clamp", "", 0.0, "+"),
        Terminal("S2", Point(50, 90), 20, "clamp", "", 90.0, "+"),
    ),
)
SHEATHED = Conductor("sheathed", "sheathed", 10, 6.0, construction="sheathed")


def run(length, conductor="wire", source="battery", **fields):
    """A straight cable from x 190 to the fuse, both terminals at one height."""
    terminal = "POS" if source == "battery" else "S1"
    plan = plan_of(
        Component("BT", source, "A", Point(100, 300)),
        Component("FT", "fuse", "A", Point(180 + length, 300)),
        cable("W1", ("BT", terminal), ("FT", "LINE"), conductor=conductor),
        *fields.pop("things", ()),
        kinds=(BATTERY, FUSE, BUS, KINDS["converter-24-12-20a"]),
        board=WIDE,
    )
    return replace(plan, conductors={**plan.conductors, "sheathed": SHEATHED}, **fields)


@pytest.mark.parametrize(
    ("length", "conductor", "limit"),
    [
        (7 * INCH, "wire", None),
        (7 * INCH + 0.1, "wire", 7),
        (72 * INCH, "sheathed", None),
        (72 * INCH + 0.1, "sheathed", 72),
    ],
)
def test_from_a_battery(length, conductor, limit):
    found = named(run(length, conductor), "fuse-too-far")
    assert [(each.measured, each.limit) for each in found] == (
        [(pytest.approx(length), pytest.approx(limit * INCH))] if limit else []
    )
    assert all(each.severity == "warn" and "FT.LINE" in each.sentence for each in found)
    # 33 CFR 183.455 is a law for boats; elsewhere it is practice. No job says which it is.
    assert all("in a boat put it right" in each.sentence for each in found)


@pytest.mark.parametrize(("length", "far"), [(1016, 0), (1016.1, 1), (600, 0)])
def test_a_stretch_in_a_channel_is_enclosed(length, far):
    """All but the two ends lies in the channel: 100 and 77 mm are free."""
    inside = channel("RW", (290, 350), (190 + length - 77, 350))
    plan = run(length, things=(inside,))
    assert len(named(plan, "fuse-too-far")) == far


@pytest.mark.parametrize(("free", "limit"), [(177, 1016), (178, 177.8)])
def test_more_than_its_ends_in_the_open_is_not_enclosed(free, limit):
    inside = channel("RW", (290, 350), (190 + 1100 - (free - 100), 350))
    (found,) = named(run(1100, things=(inside,)), "fuse-too-far")
    assert found.limit == pytest.approx(limit)


@pytest.mark.parametrize(("feeds", "far"), [("70", 1), ("wire", 0), (None, 0)])
def test_a_bus_counts_where_a_thicker_cable_feeds_it(feeds, far):
    feed = Cable("W2", TerminalEnd("BT", "S2"), TerminalEnd("CV", "OUT+"), feeds or "wire", "red", cable_class="dc")
    things = (Component("CV", "converter-24-12-20a", "A", Point(100, 600)), feed) if feeds else ()
    assert len(named(run(300, source="bus", things=things), "fuse-too-far")) == far


@pytest.mark.parametrize(
    ("name", "leg", "far"),
    [
        ("battery box +", 77, 0),
        ("battery box +", 78, 1),
        ("Battery, with its fuse there", 900, 0),
        ("tow socket", 900, 0),
    ],
)
def test_a_far_end_that_is_called_a_battery(name, leg, far):
    """100 mm on the board from its left edge, the rest off it."""
    start = OffBoardEnd("X", name, (Leg(leg, "measured"),))
    plan = plan_of(
        Component("FT", "fuse", "A", Point(90, 300)),
        Exit("X", "A", "edge", Point(0, 350)),
        Cable("W1", start, TerminalEnd("FT", "LINE"), "wire", "red", cable_class="dc"),
        kinds=(FUSE,),
    )
    found = named(plan, "fuse-too-far")
    assert len(found) == far
    assert all(each.measured == pytest.approx(100 + leg, abs=1) and name in each.sentence for each in found)
