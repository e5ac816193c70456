"""Arrange: line components up by an edge or centre, and make the gaps between them equal."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Literal, TypeAlias

from boardplan.editing.lookup import components_of
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan

Edge: TypeAlias = Literal["left", "right", "bottom", "top", "centre-x", "centre-y"]
Axis: TypeAlias = Literal["x", "y"]

_SHIFTS: dict[Edge, Callable[[Box, Box], Point]] = {
    "left": lambda box, whole: Point(whole.left - box.left, 0),
    "right": lambda box, whole: Point(whole.right - box.right, 0),
    "bottom": lambda box, whole: Point(0, whole.bottom - box.bottom),
    "top": lambda box, whole: Point(0, whole.top - box.top),
    "centre-x": lambda box, whole: Point(whole.centre.x - box.centre.x, 0),
    "centre-y": lambda box, whole: Point(0, whole.centre.y - box.centre.y),
}


def align_components(plan: Plan, ids: Iterable[str], edge: Edge) -> Plan:
    """Return the plan with components in line by an edge of the box round them all, or by its middle.

    A locked one stays, and where there is one the others line up with it.
    """
    components = _of_one_board(plan, ids)
    anchors = [each for each in components if each.locked] or list(components)
    whole = box_around(corner for each in anchors for corner in placed(plan, each).box.corners())
    return _shifted(plan, [(each, _SHIFTS[edge](placed(plan, each).box, whole)) for each in components])


def space_evenly(plan: Plan, ids: Iterable[str], axis: Axis) -> Plan:
    """Return the plan with equal gaps between three or more components; the outermost two stay.

    Raises EditRefused where they are wider together than the room between the outermost.
    """
    components = _of_one_board(plan, ids)
    if len(components) < 3:  # noqa: PLR2004 - two have only one gap
        raise EditRefused("Select three or more components to space them evenly.")
    spans = sorted(((*_span(placed(plan, each).box, axis), each) for each in components), key=lambda row: row[:2])
    room = spans[-1][1] - spans[0][0] - sum(high - low for low, high, _ in spans)
    gap = room / (len(spans) - 1)
    if gap < 0:
        raise EditRefused("There is no room for gaps between these components. Move the outermost apart first.")
    shifts: list[tuple[Component, Point]] = []
    at = spans[0][0]
    for low, high, component in spans:
        shifts.append((component, Point(at - low, 0) if axis == "x" else Point(0, at - low)))
        at += high - low + gap
    return _shifted(plan, shifts[1:-1])


def _of_one_board(plan: Plan, ids: Iterable[str]) -> tuple[Component, ...]:
    components = components_of(plan, ids)
    if len({each.board for each in components}) > 1:
        raise EditRefused("These components hang on different boards. Select those of one board.")
    if not components:
        raise EditRefused("No component is selected.")
    return components


def _span(box: Box, axis: Axis) -> tuple[float, float]:
    return (box.left, box.right) if axis == "x" else (box.bottom, box.top)


def _shifted(plan: Plan, shifts: Iterable[tuple[Component, Point]]) -> Plan:
    return with_changed(
        plan, [replace(each, position=each.position.moved(*by)) for each, by in shifts if not each.locked]
    )
