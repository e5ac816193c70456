"""Random plans, made from a seed: boards of all shapes, turned bodies, no-go boxes, channels, exits and cables.

Sizes and places are invented; conductors are those of the bundled shelf, with their lugs.
"""

import math
import random
from dataclasses import dataclass

from shapely.geometry import Polygon, box

from boardplan.files.rule_set_file import find_rule_set
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, Exit, NoGoBox
from boardplan.model.cable import Cable, ExitEnd, TerminalEnd
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, Terminal
from boardplan.model.job import Job
from boardplan.model.plan import Plan

LARGE = ("16", "25", "35", "50", "70", "95", "120")
SMALL = ("2.5", "4", "6")
SKEW = 0.2
"""How many of all bodies are turned to no quarter."""


@dataclass(frozen=True, slots=True)
class _End:
    """An end a cable can have, and the sort of terminal there."""

    end: TerminalEnd | ExitEnd
    sort: str


def random_plan(seed: int) -> Plan:
    """Return the plan of a seed; the same seed gives the same plan."""
    chance = random.Random(f"random board {seed}")
    rules = find_rule_set("trade-practice", "2026.2")
    assert rules is not None
    board = _board(chance)
    kinds = {each.id: each for each in (_kind(chance, f"k{number}") for number in range(5))}
    placed: list[Polygon] = []
    channels = _channels(chance, board, placed) if chance.random() < 0.4 else []
    no_go = _no_go(chance, board, placed)
    components = _components(chance, board, kinds, placed)
    exits = _exits(chance, board, placed)
    plan = Plan(
        job=Job(f"Random board {seed}"),
        rules=rules,
        kinds=kinds,
        conductors={name: bundled_shelf().conductors[name] for name in (*LARGE, *SMALL)},
        boards={"A": board},
    ).with_things([*channels, *no_go, *components, *exits])
    return plan.with_things(_cables(chance, plan))


def _board(chance: random.Random) -> Board:
    width, height = chance.randrange(500, 1300, 10), chance.randrange(450, 1000, 10)
    outline = Box(0, 0, width, height).corners()
    if chance.random() < 0.25:  # L-shaped
        x, y = round(width * chance.uniform(0.5, 0.7)), round(height * chance.uniform(0.5, 0.7))
        corners = ((0, 0), (width, 0), (width, y), (x, y), (x, height), (0, height))
        outline = tuple(Point(*each) for each in corners)
    cutouts = ()
    if chance.random() < 0.3:
        left, bottom = chance.randrange(100, width // 2), chance.randrange(100, height // 2)
        hole = Box(left, bottom, left + chance.randrange(40, 140), bottom + chance.randrange(40, 120))
        if Polygon(outline).buffer(-30).contains(box(*hole)):
            cutouts = (hole.corners(),)
    return Board("A", "Random board", outline, cutouts)


def _kind(chance: random.Random, name: str) -> ComponentKind:
    """Return a box with terminals on its sides, each looking out of its side or some in a direction of their own."""
    width, height = chance.randrange(40, 200, 5), chance.randrange(40, 180, 5)
    terminals = []
    for side in chance.sample(range(4), chance.randint(2, 4)):
        for number in range(chance.randint(1, 2)):
            share, inset = chance.uniform(0.25, 0.75), chance.choice((0.0, 5.0, 12.0))
            at = (
                Point(width - inset, height * share),
                Point(width * share, height - inset),
                Point(inset, height * share),
                Point(width * share, inset),
            )[side]
            leaves = None if chance.random() < 0.15 else 90.0 * side
            sort = chance.choice(("stud", "stud", "clamp", "clamp", "gland", "plug"))
            terminals.append(Terminal(f"T{side}{number}", at, 20, sort, "M8" if sort == "stud" else "", leaves))
    return ComponentKind(name, name, "Tests", "U", Box(0, 0, width, height).corners(), 50, terminals=tuple(terminals))


def _fits(board: Board, ring: Polygon, placed: list[Polygon], apart: float) -> bool:
    sheet = Polygon(board.outline, board.cutouts)
    return sheet.contains(ring) and all(ring.distance(each) >= apart for each in placed)


def _channels(chance: random.Random, board: Board, placed: list[Polygon]) -> list[Channel]:
    found = []
    width, height = board.box.right, board.box.top
    for number in range(chance.randint(1, 2)):
        size = chance.choice((25.0, 40.0, 60.0))
        if number == 0:
            y = chance.randrange(80, int(height * 0.5), 5)
            line = (Point(60, y), Point(width - 60, y))
        else:
            x = chance.randrange(80, int(width * 0.5), 5)
            line = (Point(x, 60), Point(x, height - 60))
        low, high = line
        ring = box(low.x - size / 2, low.y - size / 2, high.x + size / 2, high.y + size / 2)
        if _fits(board, ring, placed, 30.0):
            placed.append(ring)
            found.append(Channel(f"RW{number + 1}", "A", line, size, size, size - 4, size - 4))
    return found


def _no_go(chance: random.Random, board: Board, placed: list[Polygon]) -> list[NoGoBox]:
    found = []
    for number in range(chance.randint(0, 2)):
        width, height = chance.randrange(20, 120), chance.randrange(20, 120)
        x, y = chance.randrange(0, int(board.box.right) - width), chance.randrange(0, int(board.box.top) - height)
        ring = box(x, y, x + width, y + height)
        if all(ring.distance(each) >= 40 for each in placed):
            placed.append(ring)
            found.append(NoGoBox(f"N{number + 1}", "A", "pipe", x, y, width, height))
    return found


def _components(
    chance: random.Random, board: Board, kinds: dict[str, ComponentKind], placed: list[Polygon]
) -> list[Component]:
    found: list[Component] = []
    apart = chance.choice((20.0, 40.0, 70.0))
    wanted = chance.randint(3, 25)
    for _ in range(wanted * 6):
        if len(found) == wanted:
            break
        kind = chance.choice(list(kinds.values()))
        turn = chance.uniform(0, 360) if chance.random() < SKEW else chance.choice((0.0, 90.0, 180.0, 270.0))
        at = Point(chance.randrange(20, int(board.box.right)), chance.randrange(20, int(board.box.top)))
        component = Component(f"U{len(found) + 1:02d}", kind.id, "A", at, round(turn, 1))
        ring = Polygon(ring_of(kind.outline, component))
        if _fits(board, ring, placed, apart):
            placed.append(ring)
            found.append(component)
    return found


def ring_of(outline: tuple[Point, ...], component: Component) -> list[tuple[float, float]]:
    """Return a kind's outline turned, with the lower left of its box at the component's position."""
    cos, sin = math.cos(math.radians(component.turn)), math.sin(math.radians(component.turn))
    turned = [(x * cos - y * sin, x * sin + y * cos) for x, y in outline]
    left, bottom = min(x for x, _ in turned), min(y for _, y in turned)
    return [(x - left + component.position.x, y - bottom + component.position.y) for x, y in turned]


def _exits(chance: random.Random, board: Board, placed: list[Polygon]) -> list[Exit]:
    found = []
    for number in range(chance.randint(0, 2)):
        at = Point(chance.randrange(60, int(board.box.right * 0.5)), 0)
        found.append(Exit(f"X{number + 1}", "A", "edge", at))
    if chance.random() < 0.3:
        at = Point(chance.randrange(40, int(board.box.right) - 40), chance.randrange(40, int(board.box.top * 0.5)))
        hole = Polygon(Box(at.x - 15, at.y - 15, at.x + 15, at.y + 15).corners())
        if _fits(board, hole, placed, 15.0):
            found.append(Exit("X9", "A", "hole", at, "hole", 25.0))
    return found


def _cables(chance: random.Random, plan: Plan) -> list[Cable]:
    """Return cables between ends taken at random, each end once; what goes on a stud has a lug."""
    ends = [
        _End(TerminalEnd(component.id, terminal.id), terminal.sort)
        for component in plan.components.values()
        for terminal in plan.kind_of(component).terminals
    ]
    ends += [_End(ExitEnd(each), "exit") for each in plan.exits]
    chance.shuffle(ends)
    found: list[Cable] = []
    for _ in range(chance.randint(3, 8)):
        if len(ends) < 2:
            break
        one, other = ends.pop(), ends.pop()
        if one.sort == other.sort == "exit":
            continue
        small = "plug" in (one.sort, other.sort) or chance.random() < 0.4
        conductor = chance.choice(SMALL if small else LARGE)
        way = chance.choice(("choose", "choose", "outside"))
        found.append(Cable(f"W{len(found) + 1}", one.end, other.end, conductor, "red", "dc", way))
    return found
