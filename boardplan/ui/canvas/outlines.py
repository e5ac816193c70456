"""Outlines: boxes on the wall and the shapes by which things are set off as selected."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainterPath

from boardplan.geometry.point import Box, box_around
from boardplan.model.plan import Plan
from boardplan.ui.canvas.items import ThingItem, route_shape

_ROUND = 3.0
"""How far outside a round mark it is set off, in mm."""


def wall_box(plan: Plan) -> Box:
    """Return the box on the wall round all boards."""
    corners = [corner for board in plan.boards.values() for corner in board.box.moved(*board.position).corners()]
    return box_around(corners) if corners else Box(0, 0, 1000, 700)


def seen_box(plan: Plan) -> Box:
    """Return the box on the wall round all boards and what stands beside them."""
    boxes = [wall_box(plan), *(each.box.moved(*plan.boards[each.board].position) for each in plan.no_go_boxes.values())]
    return box_around(corner for box in boxes for corner in box.corners())


def rect_of(box: Box) -> QRectF:
    """Return a box as Qt has it."""
    return QRectF(box.left, box.bottom, box.width, box.height)


def outline_of(item: ThingItem) -> QPainterPath:
    """Return the shape round an item's thing, in the item's own coordinates."""
    path = QPainterPath()
    if item.sight.name == "component":
        kind = item.source[1]
        for index, corner in enumerate(kind.outline):
            path.lineTo(*corner) if index else path.moveTo(*corner)
        path.closeSubpath()
        return path
    if item.sight.name in {"board", "no-go box"}:
        path.addRect(rect_of(item.source[0].box))
        return path
    if item.sight.name in {"exit", "fixing"}:
        box = item.boundingRect()
        path.addEllipse(box.center(), *(max(box.width(), box.height()) / 2 + _ROUND,) * 2)
        return path
    if item.sight.name.startswith("cable"):
        return route_shape(item.source[2], item.source[1].outside_diameter + 8)
    return item.shape().simplified()
