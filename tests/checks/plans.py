"""Small plans for the checks: one kind of unit with everything known, a board with room on all sides."""

from collections.abc import Iterable
from dataclasses import replace
from functools import cache

from boardplan.checks.finding import Finding
from boardplan.checks.review import review_of
from boardplan.files.rule_set_file import find_rule_set
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, BoardFixing, Compartment, Framing
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.channel import Channel, ChannelScrews
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, MountingHole, Terminal
from boardplan.model.conductor import Conductor, LugMeasures
from boardplan.model.fastener import Fastener
from boardplan.model.job import Job
from boardplan.model.plan import Plan

BOARD = Board("A", "Test board", Box(0, 0, 1000, 800).corners(), compartment=Compartment(200, 200, 200, 200, 400))
UNIT = ComponentKind(
    id="unit",
    name="Test unit",
    family="Tests",
    prefix="U",
    outline=Box(0, 0, 100, 100).corners(),
    depth=50,
    mass=0.5,
    flange=3,
    fastener="screw",
    holes=(MountingHole(Point(50, 20)), MountingHole(Point(50, 80))),
    terminals=(
        Terminal("T", Point(50, 90), 20, "stud", "M8", 90.0),
        Terminal("B", Point(50, 10), 20, "stud", "M8", 270.0),
        Terminal("R", Point(90, 50), 20, "clamp", "", 0.0),
        Terminal("L", Point(10, 50), 20, "clamp", "", 180.0),
    ),
    data_state="checked",
)
SCREW = Fastener("screw", "test screw", "pilot", bit=3, thread=4, length=19, head_diameter=8, source="made up")
NUT = Fastener("nut", "test nut", "t-nut", bit=8, thread=6, flange_diameter=20, source="made up")
WIRE = Conductor("wire", "10 mm²", 10, 6.0, lug=LugMeasures(13, 15, 17, 15, 2))
LEAD = Conductor("lead", "test lead", None, 5.0, construction="data", stock_lengths=(300, 500))


@cache
def rules():
    found = find_rule_set("trade-practice", "2026.2")
    assert found is not None
    return found


def plan_of(*things, kinds: Iterable[ComponentKind] = (UNIT,), board: Board = BOARD, **fields) -> Plan:
    """Return a plan with one board and the things given."""
    plan = Plan(
        job=Job("Test"),
        rules=rules(),
        kinds={kind.id: kind for kind in kinds},
        conductors={each.id: each for each in (WIRE, LEAD, *bundled_shelf().conductors.values())},
        fasteners={each.id: each for each in (SCREW, NUT)},
        boards={board.id: board},
    )
    return replace(plan.with_things(things), **fields)


def unit(name: str, x: float, y: float, turn: float = 0.0, kind: str = "unit", board: str = "A") -> Component:
    return Component(name, kind, board, Point(x, y), turn)


def fixing(name: str, x: float, y: float, diameter: float = 7.0, board: str = "A") -> BoardFixing:
    return BoardFixing(name, board, Point(x, y), diameter)


def post(name: str, centre: float, width: float = 40, **along) -> Framing:
    return Framing(name, "A", "upright", centre, width, **along)


def channel(name: str, *line, size: float = 60, height: float = 60, **fields) -> Channel:
    screws = fields.pop("screws", ChannelScrews(fastener="screw"))
    points = tuple(Point(*each) for each in line)
    return Channel(name, "A", points, size, height, size - 4, height - 4, screws=screws, **fields)


def cable(name: str, start: tuple[str, str], end: tuple[str, str], *pins, conductor="wire", **fields) -> Cable:
    fields.setdefault("cable_class", "dc")
    ends = TerminalEnd(*start), TerminalEnd(*end)
    return Cable(name, *ends, conductor, "red", pins=tuple(Point(*pin) for pin in pins), **fields)


def named(plan: Plan, name: str) -> list[Finding]:
    """Return the findings of a name in a plan."""
    return [each for each in review_of(plan).findings if each.name == name]
