"""Holes: every hole to drill in the boards of a plan, numbered as it is issued."""

import math
from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.point import Point, bearing
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.component_kind import Stage
from boardplan.model.fastener import Fastener
from boardplan.model.placed import placed
from boardplan.model.plan import Plan

HoleSort: TypeAlias = Literal["pilot", "t-nut", "through", "fixing", "exit"]


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole: its number, board and centre in board coordinates, bit diameter in mm.

    `depth` is none for a hole through the board; `bit` is none where no fastener says how wide.
    """

    id: str
    board: str
    owner: str
    position: Point
    bit: float | None
    depth: float | None
    sort: HoleSort
    fastener: str
    words: str
    stage: Stage


def holes_of(plan: Plan) -> tuple[Hole, ...]:
    """Return all holes: of components in their order, of channels, board fixings, exits through the board."""
    found: list[Hole] = []
    for component in plan.components.values():
        found += component_holes(plan, component)
    for channel in plan.channels.values():
        found += channel_holes(plan, channel)
    found += [
        Hole(each.id, each.board, each.id, each.position, each.diameter, None, "fixing", each.fastener, "through, board fixing", "shop")
        for each in plan.fixings.values()
    ]
    found += [
        Hole(each.id, each.board, each.id, each.position, each.diameter, None, "exit", "", f"through, exit: {each.name}", "shop")
        for each in plan.exits.values()
        if each.through == "hole"
    ]
    return tuple(found)


def component_holes(plan: Plan, component: Component) -> list[Hole]:
    """Return the holes of one component, numbered in the order of its kind's pattern."""
    kind = plan.kind_of(component)
    fastener = plan.fasteners.get(kind.fastener)
    stage = component.stage or kind.stage
    return [
        _screw_hole(plan, f"{component.id}-{number}", component.board, component.id, at, fastener, stage)
        for number, (_, at) in enumerate(placed(plan, component).holes, start=1)
    ]


def channel_holes(plan: Plan, channel: Channel) -> list[Hole]:
    """Return the screw holes of a channel: near each end of each straight, then no further apart than the pitch."""
    fastener = plan.fasteners.get(channel.screws.fastener)
    return [
        _screw_hole(plan, f"{channel.id}-{number}", channel.board, channel.id, at, fastener, "shop")
        for number, at in enumerate(screw_places(channel), start=1)
    ]


def screw_places(channel: Channel) -> list[Point]:
    """Return where the screws of a channel go, along its line."""
    places: list[Point] = []
    for start, end in zip(channel.line, channel.line[1:], strict=False):
        length, towards = start.distance_to(end), bearing(start, end)
        first = min(channel.screws.first, length / 2)
        span = length - 2 * first
        count = max(1, math.ceil(span / channel.screws.pitch - 1e-9))
        steps = range(count + 1) if span > 0 else range(1)
        places += [start.ahead(towards, first + span * step / count) for step in steps]
    return places


def _screw_hole(
    plan: Plan, number: str, board: str, owner: str, at: Point, fastener: Fastener | None, stage: Stage
) -> Hole:
    if fastener is None:
        return Hole(number, board, owner, at, None, None, "pilot", "", "which fastener? none is given", stage)
    if fastener.hole != "pilot":
        words = f"through, T-nut M{fastener.thread:g} from back" if fastener.hole == "t-nut" else f"through, {fastener.name}"
        return Hole(number, board, owner, at, fastener.bit, None, fastener.hole, fastener.id, words, stage)
    depth = plan.boards[board].thickness - plan.rules.value("pilot-depth-left")
    words = f"pilot {depth:g} deep, {fastener.name}"
    return Hole(number, board, owner, at, fastener.bit, depth, "pilot", fastener.id, words, stage)
