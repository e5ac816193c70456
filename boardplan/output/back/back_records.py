"""Back records: what the back template shows, as plain values for JSON."""

from typing import Any

from boardplan.model.board import Board
from boardplan.model.holes import Hole
from boardplan.model.plan import Plan
from boardplan.output.back.back_cover import covered_words
from boardplan.output.back.back_view import back_holes, board_from_behind
from boardplan.output.holes.datum import running

_PLACES = 6


def back_records(plan: Plan) -> dict[str, Any]:
    """Return the holes worked from the back: `x` and `y` are on the board seen from behind, from its lower left.

    `from_datum` are the running dimensions, the same from both sides; all in mm.
    """
    return {
        "from_back": [
            _back_hole(plan, board, hole) for board in plan.boards.values() for hole in back_holes(plan, board)
        ]
    }


def _back_hole(plan: Plan, board: Board, hole: Hole) -> dict[str, Any]:
    fastener = plan.fasteners.get(hole.fastener)
    return {
        "id": hole.id,
        "board": hole.board,
        "x": round(hole.position.x, _PLACES),
        "y": round(hole.position.y, _PLACES),
        "from_datum": [round(each, _PLACES) for each in running(board_from_behind(board), hole.position)],
        "bit": hole.bit,
        "fastener": hole.fastener,
        "flange": fastener.flange_diameter if fastener else None,
        "hidden": covered_words(plan, board, hole),
    }
