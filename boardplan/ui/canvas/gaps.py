"""Gaps: how far a component is from its neighbours and from the edges of its board, as a tape would show."""

from collections.abc import Iterator

from boardplan.geometry.point import Box
from boardplan.geometry.units import length_text
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.ui.words import tr

_SIDES = ("left", "right", "below", "above")


def gaps_of(plan: Plan, component_id: str) -> dict[str, tuple[float, str]]:
    """Return for each side the gap in mm and what stands there: a component's reference, empty for the edge."""
    component = plan.components[component_id]
    box = placed(plan, component).box
    edge = plan.boards[component.board].box
    found = {
        "left": (box.left - edge.left, ""),
        "right": (edge.right - box.right, ""),
        "below": (box.bottom - edge.bottom, ""),
        "above": (edge.top - box.top, ""),
    }
    for other_id, other in _others(plan, component_id):
        for side, gap in _between(box, other):
            if gap < found[side][0]:
                found[side] = (gap, other_id)
    return found


def _others(plan: Plan, component_id: str) -> Iterator[tuple[str, Box]]:
    board = plan.components[component_id].board
    for other in plan.components.values():
        if other.board == board and other.id != component_id:
            yield other.id, placed(plan, other).box


def _between(box: Box, other: Box) -> Iterator[tuple[str, float]]:
    """Yield the sides on which another box stands across from a box, and the gap there."""
    if box.bottom < other.top and other.bottom < box.top:
        if other.right <= box.left:
            yield "left", box.left - other.right
        if other.left >= box.right:
            yield "right", other.left - box.right
    if box.left < other.right and other.left < box.right:
        if other.top <= box.bottom:
            yield "below", box.bottom - other.top
        if other.bottom >= box.top:
            yield "above", other.bottom - box.top


def gap_words(plan: Plan, component_id: str) -> str:
    """Return the four gaps in one line."""
    side_words = {"left": tr("left"), "right": tr("right"), "below": tr("below"), "above": tr("above")}
    gaps = gaps_of(plan, component_id)
    parts = []
    for side in _SIDES:
        gap, other = gaps[side]
        text = length_text(gap, plan.job.units)
        parts.append(f"{side_words[side]} {text}{f' ({other})' if other else ''}")
    return "   ".join(parts)
