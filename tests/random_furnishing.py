"""Random boards with everything on them that can bar a place: holes, nuts, keep-clear zones, lips, walls, parts behind.

Made from the random plans of a seed, without their cables. Sizes and places are invented; where a furnished board has
findings already, so much the better.
"""

import random
from dataclasses import replace

from random_plans import random_plan

from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart, Board, BoardFixing, Compartment, Exit, Framing, Sides
from boardplan.model.component_kind import ComponentKind, Cooling, KeepClear, MountingHole
from boardplan.model.fastener import Fastener
from boardplan.model.plan import Plan

FASTENERS = {
    "screw": Fastener("screw", "made-up screw", "pilot", bit=3, thread=4, length=19, head_diameter=8),
    "nut": Fastener("nut", "made-up nut", "t-nut", bit=8, thread=6, flange_diameter=20),
}
SIDES = ("left", "bottom", "right", "top")
REASONS = ("air", "hands", "cover", "cover", "lift-off")


def furnished_plan(seed: int) -> Plan:
    """Return the furnished board of a seed; the same seed gives the same plan."""
    chance = random.Random(f"furnished board {seed}")
    plan = random_plan(seed)
    board = _board(chance, plan.boards["A"])
    kinds = {key: _kind(chance, kind) for key, kind in plan.kinds.items()}
    boards = {"A": board}
    if chance.random() < 0.4:
        across = board.position.x + board.box.right + chance.choice((0.0, 3.0, 60.0))
        boards["B"] = Board("B", "Beside", Box(0, 0, 300, 400).corners(), position=Point(across, board.position.y))
    plan = replace(plan, kinds=kinds, boards=boards, cables={}, fasteners=FASTENERS)
    gone = chance.sample(list(plan.components), max(0, len(plan.components) - 9))
    plan = replace(plan, components={key: each for key, each in plan.components.items() if key not in gone})
    moved = [replace(each, board="B", position=Point(20, 30)) for each in list(plan.components.values())[:1]]
    return plan.with_things([*_fittings(chance, board), *(moved if "B" in boards else [])])


def _board(chance: random.Random, board: Board) -> Board:
    compartment = None
    if chance.random() < 0.7:
        gaps = (chance.choice((0.0, 15.0, 80.0)) for _ in SIDES)
        compartment = Compartment(*gaps, depth=chance.choice((None, 90.0, 400.0)))
    return replace(
        board,
        position=chance.choice((Point(0, 0), Point(131.5, -40.25))),
        lip=Sides(*(chance.choice((0.0, 0.0, 12.0)) for _ in SIDES)),
        edge_margins=Sides(*(chance.choice((0.0, 10.0, 20.0, 33.0)) for _ in SIDES)),
        compartment=compartment,
    )


def _kind(chance: random.Random, kind: ComponentKind) -> ComponentKind:
    """Return a kind with holes, poles and zones; one in four is cut like an L or a wedge."""
    width, height = kind.box.right, kind.box.top
    outline = kind.outline
    if chance.random() < 0.25:
        x, y = width * chance.uniform(0.3, 0.7), height * chance.uniform(0.3, 0.7)
        cut = ((0, 0), (width, 0), (width, y), (x, y), (x, height), (0, height))
        wedge = ((0, 0), (width, 0), (x, height), (0, y))
        outline = tuple(Point(*each) for each in chance.choice((cut, wedge)))
    holes = tuple(
        MountingHole(Point(chance.uniform(5, width - 5), chance.uniform(5, height - 5)))
        for _ in range(chance.randint(0, 3))
    )
    zones = tuple(
        KeepClear(side, float(chance.randrange(5, 60)), chance.choice(REASONS), chance.random() < 0.6)
        for side in chance.sample(SIDES, chance.randint(0, 3))
    )
    cooling = Cooling((chance.choice(SIDES),), (chance.choice(SIDES),)) if chance.random() < 0.5 else Cooling()
    terminals = tuple(replace(each, pole=chance.choice(("", "+", "-"))) for each in kind.terminals)
    return replace(
        kind,
        outline=outline,
        depth=chance.choice((30.0, 50.0, 120.0)),
        flange=3.0,
        fastener=chance.choice(("screw", "nut", "nut", "")),
        holes=holes,
        keep_clear=zones,
        cooling=cooling,
        terminals=terminals,
        heat=chance.choice((None, 40.0)),
        heat_sensitive=chance.random() < 0.3,
    )


def _fittings(chance: random.Random, board: Board) -> list[BackPart | BoardFixing | Exit | Framing]:
    box = board.box

    def anywhere() -> Point:
        return Point(chance.uniform(30, box.right - 30), chance.uniform(30, box.top - 30))

    found: list[BackPart | BoardFixing | Exit | Framing] = [
        BoardFixing(f"F{number}", "A", anywhere(), 6.0) for number in range(chance.randint(0, 3))
    ]
    for number in range(chance.randint(0, 2)):
        x, y = anywhere()
        corners = ((x, y), (x + 90, y + 20), (x + 40, y + 70), (x + 30, y + 25))
        found.append(BackPart(f"P{number}", "A", "cleat", tuple(Point(*each) for each in corners)))
    wide = chance.choice((None, 30.0, 55.0))
    found.append(Exit("X8", "A", "hole", anywhere(), "hole", wide))
    found.append(Framing("M1", "A", "upright", chance.uniform(0, box.right), 40.0))
    return found
