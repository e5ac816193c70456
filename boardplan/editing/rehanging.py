"""Rehanging: what was dragged from one board onto another hangs on that one from then on."""

from collections.abc import Iterable
from dataclasses import replace

from boardplan.editing.placing import OnBoard, is_on_board, moved_thing, reach_of
from boardplan.editing.soundness import with_changed
from boardplan.geometry.point import Point
from boardplan.model.board import BoardFixing, Exit
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.plan import Plan, Thing


def rehung(plan: Plan, ids: Iterable[str]) -> Plan:
    """Return the plan with things on the board that their middle lies on; beside all boards they stay.

    What the survey found on a wall belongs to its board and stays with it, and so does an exit over its edge.
    """
    changed: list[Thing] = []
    for thing in (plan.things.get(each) for each in ids):
        if thing is None or not is_on_board(thing) or not _may_change(thing):
            continue
        board = _board_under(plan, thing)
        if board != thing.board:
            by = plan.boards[thing.board].position.minus(plan.boards[board].position)
            changed.append(moved_thing(replace(thing, board=board), by))
    return with_changed(plan, changed)


def _may_change(thing: OnBoard) -> bool:
    if isinstance(thing, Exit):
        return thing.through == "hole"
    return isinstance(thing, (Component, Channel, BoardFixing))


def _board_under(plan: Plan, thing: OnBoard) -> str:
    middle: Point = reach_of(plan, thing).centre
    if plan.boards[thing.board].box.holds(middle):
        return thing.board
    on_wall = plan.on_wall(thing.board, middle)
    others = (each.id for each in plan.boards.values() if each.box.holds(plan.off_wall(each.id, on_wall)))
    return next(others, thing.board)
