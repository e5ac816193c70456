"""Crowded plans: many units on one wall, made from a seed, for properties and for measuring how long routing takes."""

import random
from dataclasses import replace

from boardplan.geometry.point import Point
from boardplan.model.board import Board, Exit
from boardplan.model.cable import Cable, Leg, OffBoardEnd, TerminalEnd
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.placed import place
from boardplan.model.plan import Plan

_CONDUCTORS = {"stud": ("16", "70"), "clamp": ("16", "6 PV"), "gland": ("3x6",), "plug": ("signal",), "blade": ("2.5",)}


def crowded_plan(like: Plan, seed: int, columns: int = 4, rows: int = 3, cables: int = 20) -> Plan:
    """Return a plan with units in rows, a channel between rows, and cables between terminals of one sort."""
    chance = random.Random(seed)
    cell_x, cell_y = 300.0, 360.0
    width, height = columns * cell_x + 80, rows * cell_y + 80
    board = Board("A", "Wall", Point(0, 0) and _sheet(width, height))
    small = [kind for kind in like.kinds.values() if kind.box.width < 240 and kind.box.height < 260]
    components = {}
    for row in range(rows):
        for column in range(columns):
            kind = chance.choice(small)
            at = Point(60 + column * cell_x + chance.randrange(0, 30), 120 + row * cell_y + chance.randrange(0, 40))
            name = f"C{row:02}{column:02}"
            turn = chance.choice([0, 90, 180, 270]) if kind.box.height < 200 and kind.box.width < 200 else 0
            components[name] = Component(name, kind.id, "A", at, turn)
    channels = {
        f"RW{row}": Channel(
            f"RW{row}", "A", (Point(50, 70 + row * cell_y), Point(width - 50, 70 + row * cell_y)), 40, 60, 36, 56
        )
        for row in range(rows)
        if row % 2 == 0
    }
    exits = {"X1": Exit("X1", "A", "left edge", Point(0, 100.0)), "X2": Exit("X2", "A", "top edge", Point(200.0, height))}
    plan = replace(
        like,
        boards={"A": board},
        framing={},
        back_parts={},
        no_go_boxes={},
        fixings={},
        exits=exits,
        components=components,
        channels=channels,
        cables={},
    )
    return replace(plan, cables=_cables(plan, chance, cables))


def _sheet(width: float, height: float) -> tuple[Point, ...]:
    return Point(0, 0), Point(width, 0), Point(width, height), Point(0, height)


def _cables(plan: Plan, chance: random.Random, count: int) -> dict[str, Cable]:
    by_sort: dict[str, list[TerminalEnd]] = {}
    for component in plan.components.values():
        for name, terminal in place(plan.kind_of(component), component).terminals.items():
            by_sort.setdefault(terminal.terminal.sort, []).append(TerminalEnd(component.id, name))
    cables = {}
    sorts = sorted(sort for sort, ends in by_sort.items() if len(ends) > 3)
    for index in range(count):
        sort = chance.choice(sorts)
        conductor = chance.choice([each for each in _CONDUCTORS[sort] if each in plan.conductors])
        start, end = chance.sample(by_sort[sort], 2)
        name = f"W{index:03}"
        if chance.random() < 0.1:
            end = OffBoardEnd(chance.choice(["X1", "X2"]), "far away", (Leg(1000, "measured"),))
        way = chance.choice(["outside", "choose", "channel" if conductor in ("16", "2.5", "signal") else "choose"])
        cable_class = "signal" if conductor == "signal" else "dc"
        cables[name] = Cable(name, start, end, conductor, "red", cable_class, way)
    return cables
