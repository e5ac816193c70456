"""Board lines: what a thing being moved on a board can line up with, all of it in the coordinates of the wall."""

from collections.abc import Collection

from boardplan.editing.placing import OnBoard, reach_of
from boardplan.geometry.point import Box
from boardplan.geometry.snapping import SnapBox, SnapLine
from boardplan.model.board import Board
from boardplan.model.plan import Plan


def snap_boxes(plan: Plan, board_id: str, without: Collection[str] = ()) -> list[SnapBox]:
    """Return the boxes of components and channels on a board but for those being moved."""
    things: tuple[OnBoard, ...] = (*plan.components.values(), *plan.channels.values())
    origin = plan.boards[board_id].position
    return [
        SnapBox(reach_of(plan, each).moved(*origin), each.id)
        for each in things
        if each.board == board_id and each.id not in without
    ]


def snap_lines(plan: Plan, board_id: str) -> list[SnapLine]:
    """Return the lines of a board: its margins, its middle, and the centres of the framing behind it."""
    board = plan.boards[board_id]
    origin = board.position
    inner, middle = inside_margins(board).moved(*origin), board.box.centre.moved(*origin)
    lines = [
        SnapLine("x", inner.left, "the left margin", "low"),
        SnapLine("x", inner.right, "the right margin", "high"),
        SnapLine("y", inner.bottom, "the bottom margin", "low"),
        SnapLine("y", inner.top, "the top margin", "high"),
        SnapLine("x", middle.x, f"board {board_id}", "centre"),
        SnapLine("y", middle.y, f"board {board_id}", "centre"),
    ]
    for each in plan.framing.values():
        if each.board == board_id and each.direction == "upright":
            lines.append(SnapLine("x", each.centre + origin.x, each.id, "centre"))
        elif each.board == board_id:
            lines.append(SnapLine("y", each.centre + origin.y, each.id, "centre"))
    return lines


def inside_margins(board: Board) -> Box:
    """Return the box inside the edge margins of a board."""
    box, margins = board.box, board.edge_margins
    return Box(box.left + margins.left, box.bottom + margins.bottom, box.right - margins.right, box.top - margins.top)
