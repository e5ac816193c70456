"""Handles: what of a selected cable can be grabbed - its pinned corners, and the middles of its legs."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.editing.known import Known
from boardplan.geometry.point import Point
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.ui.canvas.over_item import OverItem

_HALF, _SMALL = 4.5, 3.0
_LEAST_LEG = 44.0
"""px; on a shorter leg a handle would only hide the cable."""


@dataclass(frozen=True, slots=True)
class Handle:
    """A handle on the wall: a pinned corner (a square, full where it was clicked) or a leg's middle (a dot)."""

    at: Point
    corner: bool
    chosen: bool = False
    leg: float = 0.0


def handles_of(
    plan: Plan, known: Known, ids: Iterable[str], chosen: tuple[str, int] | None = None
) -> tuple[Handle, ...]:
    """Return the handles of the cables among the things selected."""
    found: list[Handle] = []
    for cable_id in ids:
        cable, way = plan.cables.get(cable_id), known.ways.get(cable_id)
        if cable is None or not isinstance(way, Route):
            continue
        found += [
            Handle(Point((a.x + b.x) / 2, (a.y + b.y) / 2), corner=False, leg=a.distance_to(b))
            for a, b in pairwise(way.points)
        ]
        if cable.pins:
            corners = enumerate(way.points[1:-1], start=1)
            found += [Handle(each, corner=True, chosen=(cable_id, number) == chosen) for number, each in corners]
    return tuple(found)


class HandlesItem(OverItem):
    """Draws handles of one size at every zoom."""

    def __init__(self, depth: float) -> None:
        super().__init__(depth)
        self.handles: tuple[Handle, ...] = ()
        self._theme: Theme = "light"

    def show_handles(self, handles: tuple[Handle, ...], theme: Theme) -> None:
        """Show other handles, or none."""
        if handles == self.handles and theme == self._theme:
            return
        self.handles, self._theme = handles, theme
        self.cover(QRectF(each.at.x - 60, each.at.y - 60, 120, 120) for each in handles)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        accent, ground = QColor(colour("accent", self._theme)), QColor(colour("panel", self._theme))
        for each in self.handles:
            if not each.corner and each.leg * scale < _LEAST_LEG:
                continue
            painter.save()
            painter.translate(QPointF(*each.at))
            painter.scale(1 / scale, -1 / scale)
            painter.setPen(QPen(accent if each.corner else ground, 2 if each.corner else 1.5))
            painter.setBrush(accent if each.chosen or not each.corner else ground)
            if each.corner:
                half = _HALF + (1.5 if each.chosen else 0.0)
                painter.drawRoundedRect(QRectF(-half, -half, 2 * half, 2 * half), 2, 2)
            else:
                painter.drawEllipse(QPointF(0, 0), _SMALL, _SMALL)
            painter.restore()
