"""Holes: every hole to drill in the boards of a plan, numbered as it is issued."""

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, TypeAlias

from boardplan.geometry.point import Point, bearing
from boardplan.model.board import BoardFixing, Exit
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
    found += [fixing_hole(each) for each in plan.fixings.values()]
    found += [_exit_hole(each) for each in plan.exits.values() if each.through == "hole"]
    return tuple(found)


def component_holes(plan: Plan, component: Component) -> list[Hole]:
    """Return the holes of one component, numbered in the order of its kind's pattern."""
    kind = plan.kind_of(component)
    fitted = _Fitted(component.id, component.board, plan.fasteners.get(kind.fastener), component.stage or kind.stage)
    return [_screw_hole(plan, fitted, n, at) for n, (_, at) in enumerate(placed(plan, component).holes, start=1)]


def channel_holes(plan: Plan, channel: Channel) -> list[Hole]:
    """Return the screw holes of a channel: near each end of each straight, then no further apart than the pitch."""
    fitted = _Fitted(channel.id, channel.board, plan.fasteners.get(channel.screws.fastener), "shop")
    return [_screw_hole(plan, fitted, n, at) for n, at in enumerate(screw_places(channel), start=1)]


def screw_places(channel: Channel) -> list[Point]:
    """Return where the screws of a channel go, along its line."""
    places: list[Point] = []
    for start, end in pairwise(channel.line):
        length, towards = start.distance_to(end), bearing(start, end)
        first = min(channel.screws.first, length / 2)
        span = length - 2 * first
        count = max(1, math.ceil(span / channel.screws.pitch - 1e-9))
        steps = range(count + 1) if span > 0 else range(1)
        places += [start.ahead(towards, first + span * step / count) for step in steps]
    return places


def fixing_hole(fixing: BoardFixing) -> Hole:
    """Return the hole of a board fixing."""
    return Hole(
        fixing.id,
        fixing.board,
        fixing.id,
        fixing.position,
        fixing.diameter,
        None,
        "fixing",
        fixing.fastener,
        "through, board fixing",
        "shop",
    )


def _exit_hole(place: Exit) -> Hole:
    words = f"through, exit: {place.name}"
    return Hole(place.id, place.board, place.id, place.position, place.diameter, None, "exit", "", words, "shop")


@dataclass(frozen=True, slots=True)
class _Fitted:
    """What is screwed down: its id, board, fastener if known, and stage."""

    owner: str
    board: str
    fastener: Fastener | None
    stage: Stage


def _screw_hole(plan: Plan, fitted: _Fitted, number: int, at: Point) -> Hole:
    fastener = fitted.fastener
    bit = depth = None
    sort: HoleSort = "pilot"
    words = "which fastener? none is given"
    if fastener is not None:
        bit, sort = fastener.bit, fastener.hole
        if fastener.hole == "pilot":
            depth = plan.boards[fitted.board].thickness - plan.rules.value("pilot-depth-left")
            words = f"pilot {depth:g} deep, {fastener.name}"
        elif fastener.hole == "t-nut":
            words = f"through, T-nut M{fastener.thread:g} from back"
        else:
            words = f"through, {fastener.name}"
    return Hole(
        id=f"{fitted.owner}-{number}",
        board=fitted.board,
        owner=fitted.owner,
        position=at,
        bit=bit,
        depth=depth,
        sort=sort,
        fastener=fastener.id if fastener else "",
        words=words,
        stage=fitted.stage,
    )
