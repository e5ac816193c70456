"""Back cover: which framing member or part of the back hides a hole, and on which side of it."""

from collections.abc import Iterator

from shapely import Point as Middle
from shapely import Polygon

from boardplan.model.board import Board, Ring
from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole
from boardplan.model.plan import Plan
from boardplan.output.back.back_view import ring_from_behind
from boardplan.output.template.template import member_box

_NOISE = 1e-6


def back_rings(plan: Plan, board: Board) -> Iterator[tuple[str, str, Ring]]:
    """Yield id, name and outline, seen from behind, of each framing member and each part of a board's back."""
    for member in plan.framing.values():
        if member.board == board.id:
            name = f"{member.id}: {member.material}".rstrip(": ")
            yield member.id, name, ring_from_behind(board, member_box(board, member).corners())
    for part in plan.back_parts.values():
        if part.board == board.id:
            yield part.id, f"{part.id}: {part.name}", ring_from_behind(board, part.outline)


def flange_words(fastener: Fastener | None) -> str:
    """Return the diameter that a nut or an insert takes on the back in mm, a question where nobody gave it."""
    flange = fastener.flange_diameter if fastener else None
    return f"flange Ø {flange:.1f}" if flange else "flange Ø ?"


def covered_words(plan: Plan, board: Board, hole: Hole) -> list[str]:
    """Return what hides a hole, or the flange of its nut: by what, and on which side as seen from behind.

    `board` is the board as the plan has it, `hole` is seen from behind. Where no flange is known the bit counts.
    """
    fastener = plan.fasteners.get(hole.fastener)
    wide = max(hole.bit or 0.0, (fastener.flange_diameter or 0.0) if fastener else 0.0)
    found = ((part, _hidden(ring, hole, wide / 2)) for part, _, ring in back_rings(plan, board))
    return [f"hidden on the back by {part}: {side}" for part, side in found if side]


def _hidden(ring: Ring, hole: Hole, radius: float) -> str:
    """Return which side of a disc about a hole an outline hides; nothing where it stays clear of it."""
    shape, middle = Polygon(ring), Middle(hole.position)
    if shape.distance(middle) >= radius - _NOISE:
        return ""
    if shape.contains(middle) and shape.exterior.distance(middle) >= radius - _NOISE:
        return "all of it"
    shared = shape.intersection(middle.buffer(radius)).centroid
    right, up = shared.x - hole.position.x, shared.y - hole.position.y
    if abs(right) >= abs(up):
        return "its right side" if right > 0 else "its left side"
    return "its upper side" if up > 0 else "its lower side"
