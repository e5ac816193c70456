"""Clamp holes: the pilot holes for the screws of clamps, numbered by the cable they hold."""

from collections.abc import Mapping

from boardplan.model.board import Board
from boardplan.model.clamp_screw import clamp_screw_of
from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole
from boardplan.model.plan import Plan
from boardplan.routing.supports.clamp import Clamp, named_clamps

Clamps = Mapping[str, tuple[Clamp, ...]]


def screw_for(plan: Plan, board: Board) -> Fastener | None:
    """Return the screw for clamps on a board; none where nobody says which, or where its point would come through.

    What the clamp's foot and a fabric take of its length is not counted, for nobody measured it: the safe side.
    """
    screw = clamp_screw_of(plan)
    if screw is None or screw.length is None:
        return None
    deepest = board.thickness - plan.rules.value("screw-point-inside")
    drilled = board.thickness - plan.rules.value("pilot-depth-left")
    return screw if screw.length <= deepest and drilled > 0 else None


def clamp_holes(plan: Plan, clamps: Clamps) -> tuple[Hole, ...]:
    """Return the holes for the screws of all clamps whose screw is known; the others are drilled freehand.

    A clamp with one screw gives it its own name, W07-C1; two are W07-C1a and W07-C1b. The owner is the clamp's cable.
    """
    screws = {board.id: screw_for(plan, board) for board in plan.boards.values()}
    found = []
    for name, clamp in named_clamps(clamps):
        screw = screws.get(clamp.board)
        if screw is not None:
            depth = plan.boards[clamp.board].thickness - plan.rules.value("pilot-depth-left")
            letters = "ab" if len(clamp.screws) > 1 else ("",)
            found += [
                Hole(
                    id=f"{name}{letter}",
                    board=clamp.board,
                    owner=clamp.cables[0],
                    position=plan.off_wall(clamp.board, at),
                    bit=screw.bit,
                    depth=depth,
                    sort="pilot",
                    fastener=screw.id,
                    words=f"pilot {depth:g} deep, {screw.name}, clamp for {clamp.size} mm",
                    stage="shop",
                )
                for letter, at in zip(letters, clamp.screws, strict=True)
            ]
    return tuple(found)
