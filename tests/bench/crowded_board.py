"""A crowded board, made from a seed: 120 components in eight rows, 300 cables, channels below each row.

Other numbers of rows and columns make a board that is smaller or larger, and as crowded.

Run it to write the job file: python tests/bench/crowded_board.py crowded.json
"""

import random
import sys
from dataclasses import dataclass
from pathlib import Path

from boardplan.files.plan_file import save_plan
from boardplan.files.rule_set_file import find_rule_set
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, Compartment, Fabric, Framing, Material
from boardplan.model.cable import Cable, CableClass, TerminalEnd
from boardplan.model.channel import Channel, ChannelScrews
from boardplan.model.component import Component
from boardplan.model.job import Job
from boardplan.model.plan import Plan

ROWS, COLUMNS = 8, 15
CABLES_EACH = 2.5
"""How many cables there are for each component."""
PITCH_X, PITCH_Y = 205.0, 340.0
LEFT, BOTTOM = 190.0, 190.0
ROW_OF_KINDS = (
    "blade-fuse-panel-6-way",
    "battery-shut-off-1-pole",
    "shunt-500a",
    "monitoring-hub",
    "pv-disconnect-2-pole",
    "class-t-fuse-block",
)
SCREW = "#8x16 washer"


@dataclass(frozen=True)
class Sort:
    """A sort of cable of the generator: share of all, terminals that may be joined, conductor, colour, class."""

    share: float
    terminals: tuple[tuple[str, str], ...]
    conductor: str
    colour: str
    cable_class: CableClass


STUDS = (
    ("battery-shut-off-1-pole", "IN"),
    ("shunt-500a", "SYS"),
    ("class-t-fuse-block", "LINE"),
    ("blade-fuse-panel-6-way", "MAIN+"),
)
SMALL = (
    *(("blade-fuse-panel-6-way", f"O{n}") for n in range(1, 7)),
    ("monitoring-hub", "PWR"),
    ("pv-disconnect-2-pole", "LOAD+"),
    ("pv-disconnect-2-pole", "LOAD-"),
)
LEADS = (("shunt-500a", "SENSE"), *(("monitoring-hub", f"C{n}") for n in range(1, 5)))
SORTS = (
    Sort(0.35, STUDS, "16", "red", "dc"),
    Sort(0.4, SMALL, "2.5", "black", "dc"),
    Sort(0.25, LEADS, "signal", "blue", "signal"),
)


def crowded_plan(seed: int = 7, rows: int = ROWS, columns: int = COLUMNS) -> Plan:
    """Return the crowded board of a seed; the same seed gives the same plan."""
    shelf, rules = bundled_shelf(), find_rule_set("trade-practice", "2026.2")
    assert rules is not None
    width, height = LEFT * 2 + columns * PITCH_X, BOTTOM + rows * PITCH_Y + 30
    board = Board(
        id="A",
        name="Crowded board",
        outline=Box(0, 0, width, height).corners(),
        material=Material("birch plywood", 12),
        fabric=Fabric(2),
        compartment=Compartment(200, 200, 200, 200, 500),
    )
    components = _components(rows, columns)
    plan = Plan(
        job=Job("Crowded board", date="2026-11-25"),
        rules=rules,
        kinds={name: shelf.kinds[name] for name in ROW_OF_KINDS},
        conductors={sort.conductor: shelf.conductors[sort.conductor] for sort in SORTS},
        fasteners={
            name: shelf.fasteners[name] for name in {SCREW, *(shelf.kinds[kind].fastener for kind in ROW_OF_KINDS)}
        },
        boards={"A": board},
        framing={
            f"post-{i}": Framing(f"post-{i}", "A", "upright", x, 45)
            for i, x in enumerate((40.0, width / 2, width - 40), start=1)
        },
        components={each.id: each for each in components},
        channels={each.id: each for each in _channels(width, rows)},
    )
    return plan.with_things(_cables(plan, random.Random(seed)))


def _components(rows: int, columns: int) -> list[Component]:
    found = []
    shelf = bundled_shelf()
    for number in range(rows * columns):
        row, column = divmod(number, columns)
        kind = shelf.kinds[ROW_OF_KINDS[(column + 2 * row) % len(ROW_OF_KINDS)]]
        at = Point(LEFT + 15 + column * PITCH_X, BOTTOM + row * PITCH_Y)
        count = 1 + sum(1 for each in found if each.kind == kind.id)
        found.append(Component(f"{kind.prefix}{count}", kind.id, "A", at))
    return found


def _channels(width: float, count: int) -> list[Channel]:
    screws = ChannelScrews(fastener=SCREW)
    rows = [BOTTOM - 90 + row * PITCH_Y for row in range(count)]
    lines = [((90.0, y), (width - 90, y)) for y in rows]
    lines += [((x, rows[0]), (x, rows[-1])) for x in (90.0, width - 90)]
    return [
        Channel(f"RW{i}", "A", tuple(Point(*end) for end in line), 80, 80, 76, 76, screws=screws)
        for i, line in enumerate(lines, start=1)
    ]


def _cables(plan: Plan, chance: random.Random) -> list[Cable]:
    found: list[Cable] = []
    for sort in SORTS:
        ends = [
            (component, terminal)
            for component in plan.components.values()
            for kind, terminal in sort.terminals
            if component.kind == kind
        ]
        for _ in range(round(CABLES_EACH * len(plan.components) * sort.share)):
            start, start_terminal = chance.choice(ends)
            near = [
                (other, terminal)
                for other, terminal in ends
                if other.id != start.id and start.position.distance_to(other.position) < 4 * PITCH_Y
            ]
            end, end_terminal = chance.choice(near)
            found.append(
                Cable(
                    f"W{len(found) + 1:03d}",
                    TerminalEnd(start.id, start_terminal),
                    TerminalEnd(end.id, end_terminal),
                    sort.conductor,
                    sort.colour,
                    sort.cable_class,
                )
            )
    return found


if __name__ == "__main__":
    save_plan(crowded_plan(), Path(sys.argv[1]))
