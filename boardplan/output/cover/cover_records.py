"""Cover records: weights, depths and cautions of a cover, as plain values for JSON; all in mm and kg."""

from typing import Any

from boardplan.checks.review import Review
from boardplan.geometry.point import Point
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.model.weights import weights_of
from boardplan.output.cover.cautions import cautions_of
from boardplan.output.cover.side_view import depths_of
from boardplan.output.holes.datum import running

_PLACES = 6


def cover_records(review: Review) -> dict[str, Any]:
    """Return what the cover says of each board, and the cautions that the job asks for."""
    plan = review.plan
    return {
        "boards": [_board(plan, board) for board in plan.boards.values()],
        "cautions": [{"key": each.key, "words": each.words} for each in cautions_of(review, template=True)],
    }


def _board(plan: Plan, board: Board) -> dict[str, Any]:
    weights, depths = weights_of(plan, board), depths_of(plan, board)
    return {
        "board": board.id,
        "bare": None if board.mass is None else round(weights.bare, _PLACES),
        "carried": round(weights.carried, _PLACES),
        "carried_centre": _place(board, weights.carried_centre),
        "finished": round(weights.finished, _PLACES),
        "finished_centre": _place(board, weights.finished_centre),
        "not_weighed": list(weights.unknown),
        "depth_carried": depths.thickness + depths.in_shop,
        "depth_finished": depths.thickness + depths.finished,
        "gap_behind": depths.stand_off,
    }


def _place(board: Board, at: Point) -> list[float]:
    """Return a place by its running dimensions from the board's datum."""
    return [round(each, _PLACES) for each in running(board, at)]
