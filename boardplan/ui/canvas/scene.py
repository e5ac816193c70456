"""Scene: keeps the items in step with the plan; on a new plan it touches only what has changed."""

from collections.abc import Iterable, Mapping
from typing import Any

from PySide6.QtCore import QObject, QRectF, Qt
from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QGraphicsItem, QGraphicsScene

from boardplan.checks.finding import Finding
from boardplan.checks.review import Review
from boardplan.drawing.palette import Theme
from boardplan.editing.selection import Selection
from boardplan.geometry.point import Box, Point, box_around
from boardplan.geometry.units import length_text
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.route import NoWay, Route
from boardplan.ui.canvas.gaps import gap_lines
from boardplan.ui.canvas.items import GapsItem, LineItem, ThingItem, route_shape
from boardplan.ui.canvas.plates import settled
from boardplan.ui.canvas.sights import BY_NAME, GUIDE_DEPTH, SELECTED_DEPTH, SIGHTS, Sight
from boardplan.ui.canvas.signs import SIGN_SIZE, SignItem

_AROUND = 700.0
MOST_KEPT_SCALE = 2.5
_PIN = 5.0
_ROUND = 3.0
"""How far outside a round mark it is set off, in mm."""


class BoardScene(QGraphicsScene):
    """All that is seen of a plan, in wall coordinates, y up."""

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.theme: Theme = theme
        self.plan: Plan | None = None
        self._review: Review | None = None
        self._items: dict[str, dict[str, ThingItem]] = {sight.name: {} for sight in SIGHTS}
        self._signs: list[SignItem] = []
        self._faded: frozenset[str] = frozenset()
        self._selection = Selection()
        self.every_zone = False
        self._kept = True
        self._scale = 0.0
        self._halo = LineItem(SELECTED_DEPTH, "accent", 2.0, fill=0.05)
        self._pins = LineItem(SELECTED_DEPTH + 1, "accent", 2.0, fill=1.0)
        self._guides = LineItem(GUIDE_DEPTH, "accent", 1.0)
        self._pointed = LineItem(GUIDE_DEPTH, "stop", 2.0, fill=0.10)
        self._loose = LineItem(SELECTED_DEPTH, "stop", 1.5)
        self._gaps = GapsItem(GUIDE_DEPTH)
        self.addItem(self._gaps)
        self._band = LineItem(GUIDE_DEPTH, "accent", 1.0, fill=0.10)
        for item in (self._halo, self._pins, self._guides, self._band, self._pointed, self._loose):
            self.addItem(item)

    # What is shown

    def show_plan(self, plan: Plan, review: Review) -> None:
        """Show a plan with its ways and findings."""
        for sight in SIGHTS:
            self._show_sight(sight, plan, review)
        if self.plan is None or plan.boards is not self.plan.boards:
            self.setSceneRect(_rect(wall_box(plan).grown(_AROUND)))
        old_review, self.plan, self._review = self._review, plan, review
        if old_review is None or review.findings is not old_review.findings:
            self._show_signs(plan, review.findings)
        self._show_loose(review)
        self._settle_plates()
        self.show_selection(self._selection)

    def show_theme(self, theme: Theme) -> None:
        """Draw everything anew in another theme."""
        self.theme = theme
        if self.plan is not None and self._review is not None:
            for item in (item for items in self._items.values() for item in items.values()):
                item.show_source(self.plan, item.source, theme)
            self._show_signs(self.plan, self._review.findings)
            self.show_selection(self._selection)

    def fade(self, names: Iterable[str]) -> None:
        """Let sights step back that are not what is worked on."""
        self._faded = frozenset(names)
        for name, items in self._items.items():
            for item in items.values():
                item.setOpacity(0.4 if name in self._faded else 1.0)

    def show_scale(self, scale: float) -> None:
        """Keep drawn pictures only up to a scale (px to the mm) where they are not too big."""
        if scale != self._scale:
            self._scale = scale
            self._settle_plates()
        kept = scale <= MOST_KEPT_SCALE
        if kept != self._kept:
            self._kept = kept
            for item in (item for items in self._items.values() for item in items.values()):
                item.keep_drawn(kept=kept)

    def _settle_plates(self) -> None:
        """Keep the references of small components clear of each other and of the signs."""
        scale, half = self._scale, SIGN_SIZE / 2
        items = self._items["component"]
        plates = [plate for plate in (item.plate(scale) for item in items.values()) if plate is not None]
        places = [each.pos() * scale for each in self._signs if each.isVisible()]
        signs = [Box(at.x() - half, at.y() - half, at.x() + half, at.y() + half) for at in places]
        for key, shift in settled(plates, signs).items():
            items[key].settle_plate(shift)

    def _show_sight(self, sight: Sight, plan: Plan, review: Review) -> None:
        things: Mapping[str, Any] = getattr(plan, sight.collection)
        items = self._items[sight.name]
        for gone in [key for key in items if key not in things]:
            self.removeItem(items.pop(gone))
        for thing_id, thing in things.items():
            source = sight.source(plan, review, thing)
            item = items.get(thing_id)
            if source is None:
                if item is not None:
                    self.removeItem(items.pop(thing_id))
                continue
            if item is None:
                item = items[thing_id] = self._new_item(thing_id, sight)
            if len(item.source) != len(source) or any(a is not b for a, b in zip(item.source, source, strict=True)):
                item.show_source(plan, source, self.theme)

    def _new_item(self, thing_id: str, sight: Sight) -> ThingItem:
        item = ThingItem(thing_id, sight)
        item.setOpacity(0.4 if sight.name in self._faded else 1.0)
        item.keep_drawn(kept=self._kept)
        item.setVisible(sight.name != "keep-clear" or self.every_zone)
        self.addItem(item)
        return item

    def _show_signs(self, plan: Plan, findings: Iterable[Finding]) -> None:
        placed = [each for each in findings if each.open and each.board in plan.boards]
        while len(self._signs) < len(placed):
            sign = SignItem()
            self._signs.append(sign)
            self.addItem(sign)
        for sign, finding in zip(self._signs, placed, strict=False):
            sign.show_finding(finding, plan.on_wall(finding.board, finding.place), self.theme)
        for index, sign in enumerate(self._signs):
            sign.setVisible(index < len(placed))

    def _show_loose(self, review: Review) -> None:
        """Mark where cables without a way are stuck."""
        path = QPainterPath()
        for way in review.ways.values():
            if isinstance(way, NoWay):
                path.addEllipse(_rect(Box(way.near.x - 6, way.near.y - 6, way.near.x + 6, way.near.y + 6)))
        self._loose.show_path(path, self.theme, dashes=(3, 3))

    # Over the board

    @property
    def selection(self) -> Selection:
        """What is set off as selected, also while a gesture is under way."""
        return self._selection

    def show_selection(self, selection: Selection) -> None:
        """Set off what is selected, and show its keep-clear zones and pins."""
        self._selection = selection
        halo, pins = QPainterPath(), QPainterPath()
        for thing_id in selection.ids:
            for item in self.items_of(thing_id):
                halo.addPath(item.sceneTransform().map(_set_off(item)))
                break
            cable = self.plan.cables.get(thing_id) if self.plan else None
            for pin in _pins_of(cable, self._review):
                pins.addEllipse(_rect(Box(pin.x - _PIN, pin.y - _PIN, pin.x + _PIN, pin.y + _PIN)))
        halo.setFillRule(Qt.FillRule.WindingFill)
        self._halo.show_path(halo, self.theme)
        self._pins.show_path(pins, self.theme)
        for thing_id, zone in self._items["keep-clear"].items():
            zone.setVisible(self.every_zone or thing_id in selection)

    def show_guides(self, guides: Iterable[tuple[Point, Point]]) -> None:
        """Draw the guide lines of a tool."""
        path = QPainterPath()
        for start, end in guides:
            path.moveTo(*start)
            path.lineTo(*end)
        self._guides.show_path(path, self.theme, dashes=(4, 3))

    def show_gaps(self, component_id: str | None) -> None:
        """Draw the gaps round a component that is carried, or none."""
        plan = self.plan
        if plan is None or component_id is None or component_id not in plan.components:
            self._gaps.show_lines((), self.theme)
            return
        lines = gap_lines(plan, component_id)
        units = plan.job.units
        self._gaps.show_lines(((start, end, length_text(gap, units)) for start, end, gap in lines), self.theme)

    def show_band(self, band: tuple[Point, Point] | None) -> None:
        """Draw the box a tool is drawing up, or none."""
        path = QPainterPath()
        if band is not None:
            path.addRect(_rect(Box(*band[0], *band[1])))
        self._band.show_path(path, self.theme)

    def point_out(self, finding: Finding | None) -> None:
        """Frame the place of a finding, or none."""
        path = QPainterPath()
        if finding is not None and self.plan is not None and finding.board in self.plan.boards:
            origin = self.plan.boards[finding.board].position
            box = finding.area or Box(*finding.place, *finding.place).grown(20)
            path.addRect(_rect(box.moved(*origin)))
        self._pointed.show_path(path, self.theme, dashes=(4, 3))

    # Finding things

    def seen(self, sight: str) -> frozenset[str]:
        """Return the ids of the things that a sight shows."""
        return frozenset(self._items[sight])

    def items_of(self, thing_id: str) -> list[ThingItem]:
        """Return the items of a thing that can be picked."""
        found = (items.get(thing_id) for name, items in self._items.items() if BY_NAME[name].pickable)
        return [item for item in found if item is not None]

    def sign_at(self, item: QGraphicsItem | None) -> Finding | None:
        """Return the finding of a sign's item."""
        return item.finding if isinstance(item, SignItem) else None

    def box_of(self, ids: Iterable[str]) -> Box | None:
        """Return the box on the wall round things, none where there are none."""
        path = QPainterPath()
        for thing_id in ids:
            for item in self.items_of(thing_id)[:1]:
                path.addPath(item.sceneTransform().map(_set_off(item)))
        if path.isEmpty():
            return None
        box = path.boundingRect()
        return Box(box.left(), box.top(), box.right(), box.bottom())


def wall_box(plan: Plan) -> Box:
    """Return the box on the wall round all boards."""
    corners = [corner for board in plan.boards.values() for corner in board.box.moved(*board.position).corners()]
    return box_around(corners) if corners else Box(0, 0, 1000, 700)


def seen_box(plan: Plan) -> Box:
    """Return the box on the wall round all boards and what stands beside them."""
    boxes = [wall_box(plan), *(each.box.moved(*plan.boards[each.board].position) for each in plan.no_go_boxes.values())]
    return box_around(corner for box in boxes for corner in box.corners())


def _rect(box: Box) -> QRectF:
    return QRectF(box.left, box.bottom, box.width, box.height)


def _set_off(item: ThingItem) -> QPainterPath:
    path = QPainterPath()
    if item.sight.name == "component":
        kind = item.source[1]
        for index, corner in enumerate(kind.outline):
            path.lineTo(*corner) if index else path.moveTo(*corner)
        path.closeSubpath()
        return path
    if item.sight.name in {"board", "no-go box"}:
        path.addRect(_rect(item.source[0].box))
        return path
    if item.sight.name in {"exit", "fixing"}:
        box = item.boundingRect()
        path.addEllipse(box.center(), *(max(box.width(), box.height()) / 2 + _ROUND,) * 2)
        return path
    if item.sight.name.startswith("cable"):
        return route_shape(item.source[2], item.source[1].outside_diameter + 8)
    return item.shape().simplified()


def _pins_of(cable: Cable | None, review: Review | None) -> tuple[Point, ...]:
    if cable is None or review is None:
        return ()
    if cable.pins:
        return cable.pins
    way = review.ways.get(cable.id)
    return way.points[1:-1] if isinstance(way, Route) and way.source == "pinned" else ()
