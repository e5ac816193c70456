"""Placing: where a thing on a board is, the box round it, and the same thing elsewhere."""

from dataclasses import replace
from typing import TypeAlias, TypeGuard

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import BackPart, Board, BoardFixing, Exit, Framing, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan, Thing

OnBoard: TypeAlias = Framing | BackPart | NoGoBox | Exit | BoardFixing | Component | Channel

_MARK = 8.0
"""Half the size of the mark that an exit or a board fixing is grasped by, in mm."""


def is_on_board(thing: Thing) -> TypeGuard[OnBoard]:
    """Say whether a thing hangs on a board, so that it moves and copies with others."""
    return not isinstance(thing, (Board, Cable))


def moved_thing(thing: Thing, by: Point) -> Thing:
    """Return a thing elsewhere on its board, or a board elsewhere on the wall; framing moves across itself."""
    match thing:
        case Component() | Exit() | BoardFixing() | Board():
            return replace(thing, position=thing.position.moved(*by))
        case Channel():
            return replace(thing, line=tuple(each.moved(*by) for each in thing.line))
        case NoGoBox():
            return replace(thing, x=thing.x + by.x, y=thing.y + by.y)
        case BackPart():
            return replace(thing, outline=tuple(each.moved(*by) for each in thing.outline))
        case Framing():
            return replace(thing, centre=thing.centre + (by.x if thing.direction == "upright" else by.y))
        case Cable():
            return thing


def reach_of(plan: Plan, thing: OnBoard) -> Box:
    """Return the box round a thing that hangs on a board, in the board's coordinates."""
    match thing:
        case Component():
            return placed(plan, thing).box
        case Channel():
            return box_around(thing.line).grown(thing.width / 2)
        case NoGoBox():
            return thing.box
        case BackPart():
            return box_around(thing.outline)
        case Exit() | BoardFixing():
            return Box(*thing.position, *thing.position).grown(max(thing.diameter or 0.0, 2 * _MARK) / 2)
        case Framing():
            return _member_box(plan, thing)


def _member_box(plan: Plan, member: Framing) -> Box:
    board = plan.boards[member.board].box
    low, high = member.centre - member.width / 2, member.centre + member.width / 2
    if member.direction == "upright":
        return Box(low, _or(member.start, board.bottom), high, _or(member.end, board.top))
    return Box(_or(member.start, board.left), low, _or(member.end, board.right), high)


def _or(value: float | None, default: float) -> float:
    return default if value is None else value
