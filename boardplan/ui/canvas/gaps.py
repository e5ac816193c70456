"""Gaps: how far a component is from its neighbours and from the edges of its board, as a tape would show."""

from collections.abc import Iterator

from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text
from boardplan.model.placed import placed
from boardplan.model.plan import Plan

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


def gap_lines(plan: Plan, component_id: str) -> Iterator[tuple[Point, Point, float]]:
    """Yield each gap as a line on the wall from the component to what stands there, and its length."""
    component = plan.components[component_id]
    box = placed(plan, component).box.moved(*plan.boards[component.board].position)
    gaps = {side: gap for side, (gap, _) in gaps_of(plan, component_id).items()}
    middle = box.centre
    starts = {
        "left": (Point(box.left, middle.y), Point(-1, 0)),
        "right": (Point(box.right, middle.y), Point(1, 0)),
        "below": (Point(middle.x, box.bottom), Point(0, -1)),
        "above": (Point(middle.x, box.top), Point(0, 1)),
    }
    for side, (start, towards) in starts.items():
        gap = gaps[side]
        if gap > 0:
            yield start, start.moved(towards.x * gap, towards.y * gap), gap


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


_ARROWS = {"left": "\u2190", "right": "\u2192", "below": "\u2193", "above": "\u2191"}


def gap_words(plan: Plan, component_id: str) -> str:
    """Return the four gaps in one short line."""
    gaps = gaps_of(plan, component_id)
    parts = []
    for side in _SIDES:
        gap, other = gaps[side]
        text = length_text(gap, plan.job.units).removesuffix(" mm").removesuffix(" in")
        parts.append(f"{_ARROWS[side]} {text}{f' {other}' if other else ''}")
    return "   ".join(parts)
