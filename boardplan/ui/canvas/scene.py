"""Scene: keeps the items in step with the plan; on a new plan it touches only what has changed."""

from collections.abc import Iterable, Mapping
from typing import Any

from PySide6.QtCore import QObject, QRect, Qt, QTimer
from PySide6.QtGui import QPainterPath, QRegion
from PySide6.QtWidgets import QGraphicsItem, QGraphicsScene

from boardplan.checks.finding import Finding
from boardplan.drawing.palette import Theme
from boardplan.editing.known import Known
from boardplan.editing.selection import Selection
from boardplan.geometry.point import Box
from boardplan.model.plan import Plan
from boardplan.ui.canvas.apart import Apart
from boardplan.ui.canvas.change_plates import ChangePlatesItem
from boardplan.ui.canvas.crossing_marks import CrossingMarks
from boardplan.ui.canvas.handles import HandlesItem, handles_of
from boardplan.ui.canvas.items import ThingItem
from boardplan.ui.canvas.kept_signs import KeptSigns
from boardplan.ui.canvas.outlines import outline_of, rect_of, wall_box
from boardplan.ui.canvas.over_board import OverBoard
from boardplan.ui.canvas.over_lines import LineItem
from boardplan.ui.canvas.plates import settled
from boardplan.ui.canvas.redrawing import Redrawing
from boardplan.ui.canvas.room_item import MiddleItem, RoomItem
from boardplan.ui.canvas.sights import BY_NAME, PLATE_DEPTH, SELECTED_DEPTH, SIGHTS, Sight, Source
from boardplan.ui.canvas.signs import SIGN_SIZE, SignItem
from boardplan.ui.canvas.waiting_pictures import WaitingPictures

_AROUND = 700.0
MOST_KEPT_SCALE = 2.5
_FEW, _SETTLE_AFTER = 40, 150
"""Components up to which their plates are settled at once; with more, after so many ms without a change."""


_WAITS = frozenset({"cable inside", "cable", "clamps", "retainers", "channel fill"})
"""Sights that show what a review says: dear to draw, and as many may change as it likes."""


class BoardScene(QGraphicsScene):
    """All that is seen of a plan, in wall coordinates, y up."""

    def __init__(self, theme: Theme, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.theme: Theme = theme
        self.plan: Plan | None = None
        self._review: Known | None = None
        self._items: dict[str, dict[str, ThingItem]] = {sight.name: {} for sight in SIGHTS}
        self._signs = KeptSigns(self)
        self._redrawing = Redrawing(self.update, self)
        self._faded: frozenset[str] = frozenset()
        self._hidden: frozenset[str] = frozenset()
        self._selection = Selection()
        self.every_zone = False
        self.exposed: QRegion | None = None
        self._kept = True
        self.scale = 0.0
        """px to the mm."""
        self._waiting = WaitingPictures(self._show_again, self)
        self._settle = QTimer(self)
        self._settle.setSingleShot(True)
        self._settle.setInterval(_SETTLE_AFTER)
        self._settle.timeout.connect(self._settle_plates)
        self._lay_over()

    def _lay_over(self) -> None:
        """Lay what is drawn over the board: what is selected, what a tool shows, what is pointed out."""
        self._halo = LineItem(SELECTED_DEPTH, "accent", 2.0, fill=0.05)
        self.handles = HandlesItem(SELECTED_DEPTH + 1)
        self.addItem(self.handles)
        self._corner: tuple[str, int] | None = None
        self.changes = ChangePlatesItem(PLATE_DEPTH)
        self.addItem(self.changes)
        self.crossings = CrossingMarks(SELECTED_DEPTH - 1)
        self.addItem(self.crossings)
        self.room = RoomItem(SELECTED_DEPTH - 2)
        self.addItem(self.room)
        self.middle = MiddleItem(PLATE_DEPTH - 1)
        self.addItem(self.middle)
        self.addItem(self._halo)
        self.over = OverBoard(self, self.theme)

    # What is shown

    def show_plan(self, plan: Plan, review: Known) -> None:
        """Show a plan with its ways and findings."""
        apart = None if self.plan is None or self._review is None else Apart((self.plan, self._review), (plan, review))
        for sight in SIGHTS:
            self._show_sight(sight, plan, review, apart)
        if self.plan is None or plan.boards is not self.plan.boards:
            self.setSceneRect(rect_of(wall_box(plan).grown(_AROUND)))
        old_review, self.plan, self._review = self._review, plan, review
        self._waiting.begin(plan, self.theme, all_now=old_review is None)
        if old_review is None or review.findings is not old_review.findings:
            self._signs.show(plan, review.findings, self.theme)
        self.over.show_plan(plan, review.ways.values())
        if old_review is None or len(plan.components) <= _FEW:
            self._settle_plates()
        else:
            self._settle.start()
        self.show_selection(self._selection)

    def show_theme(self, theme: Theme) -> None:
        """Draw everything anew in another theme."""
        self.theme = self.over.theme = theme
        if self.plan is not None and self._review is not None:
            for item in (item for items in self._items.values() for item in items.values() if item.source):
                item.show_source(self.plan, item.source, theme)
            self._waiting.begin(self.plan, theme, all_now=True)
            self._signs.show(self.plan, self._review.findings, theme)
            self.show_selection(self._selection)

    def fade(self, names: Iterable[str]) -> None:
        """Let sights step back that are not what is worked on."""
        self._faded = frozenset(names)
        for name, items in self._items.items():
            for item in items.values():
                item.setOpacity(0.4 if name in self._faded else 1.0)

    def hide(self, names: Iterable[str]) -> None:
        """Leave out sights that belong to another step."""
        self._hidden = frozenset(names)
        for name, items in self._items.items():
            if name != "keep-clear":
                for item in items.values():
                    item.setVisible(name not in self._hidden)

    def show_scale(self, scale: float) -> None:
        """Keep drawn pictures only up to a scale (px to the mm) where they are not too big."""
        if scale != self.scale:
            self.scale = self._redrawing.scale = scale
            self._settle_plates()
        kept = scale <= MOST_KEPT_SCALE
        if kept != self._kept:
            self._kept = kept
            for item in (item for items in self._items.values() for item in items.values()):
                item.keep_drawn(kept=kept)

    def _settle_plates(self) -> None:
        """Keep the references of small components clear of each other and of the signs."""
        scale, half = self.scale, SIGN_SIZE / 2
        items = self._items["component"]
        plates = [plate for plate in (item.plate(scale) for item in items.values()) if plate is not None]
        places = [each * scale for each in self._signs.places()]
        signs = [Box(at.x() - half, at.y() - half, at.x() + half, at.y() + half) for at in places]
        for key, shift in settled(plates, signs).items():
            items[key].settle_plate(shift)

    def _show_sight(self, sight: Sight, plan: Plan, review: Known, apart: Apart | None) -> None:
        things: Mapping[str, Any] = getattr(plan, sight.collection)
        items = self._items[sight.name]
        for gone in [key for key in items if key not in things]:
            self._waiting.forget(items[gone])
            self.removeItem(items.pop(gone))
        for thing_id in things if apart is None else apart.ids(sight.collection):
            source = sight.source(plan, review, things[thing_id])
            item = items.get(thing_id)
            if source is None:
                if item is not None:
                    self._waiting.forget(item)
                    item.show_nothing()
                continue
            if item is None:
                item = items[thing_id] = self._new_item(thing_id, sight)
            self._waiting.forget(item)
            if len(item.source) != len(source) or any(a is not b for a, b in zip(item.source, source, strict=True)):
                self._draw(plan, item, source)

    def _draw(self, plan: Plan, item: ThingItem, source: Source) -> None:
        """Draw a thing anew: a body at once; a cable or a level that was there before when its turn comes."""
        if item.drawn_before and item.sight.name in _WAITS:
            self._waiting.owe(item, source)
        else:
            item.show_source(plan, source, self.theme)

    def _new_item(self, thing_id: str, sight: Sight) -> ThingItem:
        item = ThingItem(thing_id, sight)
        item.setOpacity(0.4 if sight.name in self._faded else 1.0)
        item.keep_drawn(kept=self._kept)
        item.setVisible(self.every_zone if sight.name == "keep-clear" else sight.name not in self._hidden)
        self.addItem(item)
        return item

    def redraw(self, boxes: Iterable[QRect]) -> None:
        """Draw boxes of the wall, in whole mm, again: at once, but in several slots where they reach far."""
        self._redrawing.owe(boxes)

    def _show_again(self) -> None:
        self.show_selection(self._selection)

    # Over the board

    @property
    def selection(self) -> Selection:
        """What is set off as selected, also while a gesture is under way."""
        return self._selection

    def show_selection(self, selection: Selection) -> None:
        """Set off what is selected, and show its keep-clear zones and handles."""
        self._selection = selection
        halo = QPainterPath()
        for thing_id in selection.ids:
            for item in self.items_of(thing_id):
                halo.addPath(item.sceneTransform().map(outline_of(item)))
                break
        halo.setFillRule(Qt.FillRule.WindingFill)
        self._halo.show_path(halo, self.theme)
        if self.plan is not None and self._review is not None:
            handles = handles_of(self.plan, self._review, selection.ids, self._corner)
            self.handles.show_handles(handles, self.theme)
        self.crossings.choose(selection.ids)
        for thing_id, zone in self._items["keep-clear"].items():
            zone.setVisible(self.every_zone or thing_id in selection)

    def choose_corner(self, corner: tuple[str, int] | None) -> None:
        """Fill the handle of a pinned corner that was clicked, or of none."""
        if corner != self._corner:
            self._corner = corner
            self.show_selection(self._selection)

    # Finding things

    def seen(self, sight: str) -> frozenset[str]:
        """Return the ids of the things that a sight shows."""
        return frozenset(key for key, item in self._items[sight].items() if item.source)

    def item(self, sight: str, thing_id: str) -> ThingItem:
        """Return the item that shows a thing in a sight."""
        return self._items[sight][thing_id]

    def items_of(self, thing_id: str) -> list[ThingItem]:
        """Return the items of a thing that can be picked."""
        found = (items.get(thing_id) for name, items in self._items.items() if BY_NAME[name].pickable)
        return [item for item in found if item is not None and item.source]

    def sign_at(self, item: QGraphicsItem | None) -> Finding | None:
        """Return the finding of a sign's item."""
        return item.finding if isinstance(item, SignItem) else None

    def box_of(self, ids: Iterable[str]) -> Box | None:
        """Return the box on the wall round things, none where there are none."""
        path = QPainterPath()
        for thing_id in ids:
            for item in self.items_of(thing_id)[:1]:
                path.addPath(item.sceneTransform().map(outline_of(item)))
        if path.isEmpty():
            return None
        box = path.boundingRect()
        return Box(box.left(), box.top(), box.right(), box.bottom())
