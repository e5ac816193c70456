"""Column: the canvas with its rulers, its heading above and its status line below."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from boardplan.checks.finding import Finding
from boardplan.editing.length_changes import length_changes, total_words, with_pushed
from boardplan.editing.selection import Selection
from boardplan.editing.tools.hits import cable_at
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH, length_text, tidy_number
from boardplan.model.component import Component
from boardplan.ui.canvas.change_plates import change_plates
from boardplan.ui.canvas.channel_tip import channel_tip
from boardplan.ui.canvas.crossing_marks import crossing_words
from boardplan.ui.canvas.gaps import gap_words
from boardplan.ui.canvas.idle_look import IdleLook
from boardplan.ui.canvas.outlines import seen_box
from boardplan.ui.canvas.room_look import RoomLook
from boardplan.ui.canvas.rulers import BREADTH, Ruler
from boardplan.ui.canvas.scene import BoardScene
from boardplan.ui.canvas.status_line import StatusLine
from boardplan.ui.canvas.tool_host import REACH, ToolHost
from boardplan.ui.canvas.view import ZOOM_STEP, BoardView
from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.controls.small_parts import hairline, small_button
from boardplan.ui.desk import Desk, Step
from boardplan.ui.thing_words import title_of
from boardplan.ui.words import tr
from boardplan.ui.words_of_length import length_tip

_STEPS_BACK: dict[Step, tuple[str, ...]] = {
    "survey": ("cable", "cable inside"),
    "place": ("framing", "back part"),
    "wire": ("framing", "back part"),
    "pack": ("framing", "back part"),
}
"""What steps back a little in each step, because it is not what is worked on."""


class CanvasColumn(QWidget):
    """Keeps scene, view, rulers and tool host together, and in step with the desk."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.scene = BoardScene(desk.themes.theme, self)
        self.view = BoardView(self.scene)
        self.view.setAccessibleName(tr("Board"))
        self.view.setAccessibleDescription(tr("Tab goes from thing to thing, arrows move what is selected."))
        self.host = ToolHost(desk, self.view, self.scene)
        self.status = StatusLine(desk)
        self.view.on_rest = self._tip_at
        self.idle = IdleLook(desk, self.scene.crossings, self)
        self.rooms = RoomLook(desk, (self.scene.room, self.scene.middle), self)
        self._rulers = (Ruler("x", desk.themes.theme), Ruler("y", desk.themes.theme))
        self._title = QLabel()
        self._title.setProperty("part", "heading")
        self._detail = ShortLabel()
        self._detail.setProperty("part", "quiet")
        self._scale = QLabel()
        self._scale.setProperty("part", "unit")
        self._scale.setMinimumWidth(56)
        self._scale.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._scale.setToolTip(tr("How much smaller than the real board, roughly on this screen"))
        self.head = QHBoxLayout()
        self._lay_out()
        self._connect()
        self._show_plan()
        self._show_head()
        self._fade()
        self.host.begin()

    def _lay_out(self) -> None:
        self.head.setContentsMargins(16, 8, 12, 8)
        self.head.setSpacing(4)
        self.head.addWidget(self._title)
        self.head.addSpacing(8)
        self.head.addWidget(self._detail, 1)
        self.head.addWidget(
            small_button(self._desk.themes.theme, "zoom-out", tr("Smaller (Ctrl+-)"), partial(self.zoom, 1 / ZOOM_STEP))
        )
        self.head.addWidget(self._scale)
        self.head.addWidget(
            small_button(self._desk.themes.theme, "zoom-in", tr("Larger (Ctrl++)"), partial(self.zoom, ZOOM_STEP))
        )
        self.head.addWidget(small_button(self._desk.themes.theme, "fit", tr("Show all (Ctrl+0)"), self.fit))
        corner = QFrame()
        corner.setObjectName("ground")
        corner.setFixedSize(BREADTH, BREADTH)
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(0)
        grid.addWidget(corner, 0, 0)
        grid.addWidget(self._rulers[0], 0, 1)
        grid.addWidget(self._rulers[1], 1, 0)
        grid.addWidget(self.view, 1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(self.head)
        column.addWidget(hairline())
        column.addLayout(grid, 1)
        column.addWidget(hairline())
        column.addWidget(self.status)

    def _connect(self) -> None:
        desk, signals = self._desk, self._desk.signals
        signals.seen_changed.connect(self._show_plan)
        signals.plan_changed.connect(self._show_head)
        signals.plan_changed.connect(partial(self.scene.over.point_out, None))
        signals.selection_changed.connect(self._show_selection)
        desk.step_changed.connect(self._fade)
        desk.finding_pointed.connect(self._point_out)
        desk.place_asked.connect(self._show_selected_place)
        desk.themes.changed.connect(self._show_theme)
        self.view.moved.connect(self._show_rulers)
        self.view.pointed.connect(self._pointed)
        self.host.hinted.connect(self.status.hint)
        self.host.hinted.connect(self._show_band)
        self.host.carried.connect(self.rooms.carry)
        self.rooms.told.connect(self.status.warn)
        self.idle.counted.connect(self.status.count)

    # What the desk says

    def _show_plan(self) -> None:
        self.scene.show_plan(self._desk.plan, self._desk.review)
        self._show_changes()
        self._show_band()

    def _show_changes(self) -> None:
        """While a gesture is under way, write beside each cable it changes what it comes to."""
        session, view = self._desk.session, self.view
        under_way = session.plan is not session.committed_plan
        changes = length_changes(session.settled, session.known) if under_way else ()
        low, high = view.wall_at(view.viewport().rect().bottomLeft()), view.wall_at(view.viewport().rect().topRight())
        scale = view.scale_now
        seen = Box(low.x, low.y, high.x, high.y).grown(-60 / scale)
        changes = with_pushed(changes, session.known, self.host.held)
        plates = change_plates(session.known, changes, seen, scale, self.host.held)
        self.scene.changes.show_plates(plates, scale, self._desk.themes.theme)
        words = total_words(session.plan, [each for each in changes if each.by != 0])
        self.status.change(tr("Working out the ways ...") if session.behind and not changes else words)

    def _tip_at(self, at: Point) -> str:
        """Return what is said of the place where the pointer rests: how a length adds up, what lies in a channel."""
        plan, known, scale = self._desk.plan, self._desk.review, self.view.scale_now
        plate = self.scene.changes.plate_at(at, scale)
        crossing = self.scene.crossings.crossing_at(at, scale)
        if crossing is not None:
            return crossing_words(crossing)
        if plate is None and self._desk.step == "wire" and (words := channel_tip(plan, known, at)):
            return words
        return length_tip(known.lengths.get(plate or cable_at(plan, known.ways, at, REACH / scale) or ""))

    def _show_head(self) -> None:
        job = self._desk.plan.job
        self._title.setText(job.title)
        parts = [job.number, tr("revision {}").format(job.revision), job.place]
        self._detail.setText("   ".join(each for each in parts if each))
        self._show_rulers()

    def _show_selection(self) -> None:
        self.scene.show_selection(self._desk.session.selection)
        self._show_rulers()
        self._announce()

    def _announce(self) -> None:
        """Say what is selected to people who don't see it."""
        thing = self._desk.plan.things.get(self._desk.session.selection.active or "")
        if thing is not None and self.view.hasFocus() and QAccessible.isActive():
            words = f"{title_of(thing)} {thing.id}"
            if isinstance(thing, Component):
                units = self._desk.plan.job.units
                at = (length_text(each, units) for each in thing.position)
                words = tr("{}, x {}, y {}, {}").format(words, *at, gap_words(self._desk.plan, thing.id))
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.view, words))

    def _show_theme(self) -> None:
        theme = self._desk.themes.theme
        self.scene.show_theme(theme)
        for ruler in self._rulers:
            ruler.theme = theme
            ruler.update()
        self.view.viewport().update()

    def _fade(self) -> None:
        self.scene.fade(_STEPS_BACK[self._desk.step])
        self.scene.hide(() if self._desk.step == "wire" else ("channel fill",))

    def _point_out(self, finding: Finding | None) -> None:
        self.scene.over.point_out(finding)
        if finding is not None and finding.board in self._desk.plan.boards:
            at = self._desk.plan.on_wall(finding.board, finding.place)
            self.view.show_place(Box(*at, *at).grown(60))

    def _show_selected_place(self) -> None:
        box = self.scene.box_of(self._desk.session.selection.ids)
        if box is not None:
            self.view.show_place(box)

    # Rulers

    def _show_rulers(self) -> None:
        origin, scale = self._desk.board.position, self.view.scale_now
        self.scene.show_scale(scale)
        start = self.view.wall_at(self.view.viewport().rect().topLeft())
        for ruler, begin, nought in zip(self._rulers, start, origin, strict=True):
            ruler.units = self._desk.plan.job.units
            ruler.stand(scale, begin, nought)
        self._scale.setText(scale_words(scale, self.logicalDpiX()))
        self._show_band()

    def _show_band(self) -> None:
        shown = self.scene.selection.ids
        box = self.scene.box_of(shown) if shown else None
        self._rulers[0].scribe(None if box is None else (box.left, box.right))
        self._rulers[1].scribe(None if box is None else (box.bottom, box.top))

    def _pointed(self, at: Point | None) -> None:
        for ruler in self._rulers:
            ruler.point(at)
        self.status.point(at)

    # What actions ask for

    def zoom(self, factor: float) -> None:
        """Zoom about the middle."""
        self.view.zoom(factor)

    def fit(self) -> None:
        """Show all boards."""
        self.view.fit(seen_box(self._desk.plan))

    def fit_selected(self) -> None:
        """Show what is selected as large as it goes."""
        box = self.scene.box_of(self._desk.session.selection.ids)
        self.view.fit(box.grown(40) if box is not None else seen_box(self._desk.plan))

    def toggle_zones(self) -> None:
        """Show the keep-clear room of all components, or only of those selected."""
        self.scene.every_zone = not self.scene.every_zone
        self.scene.show_selection(self._desk.session.selection)

    def toggle_room(self) -> None:
        """Show where the piece in hand may lie, or no longer."""
        shown = self.rooms.toggle()
        self.status.say(
            tr("Where the piece in hand may lie is shown.") if shown else tr("Where it may lie is no longer shown.")
        )

    def select_all(self) -> None:
        """Select all components."""
        self._desk.session.select(Selection(tuple(self._desk.plan.components)))


def scale_words(scale: float, dots_per_inch: float) -> str:
    """Return a scale of px to the mm as a drawing says it, for a screen of so many px to the inch."""
    ratio = dots_per_inch / INCH / scale
    return f"1 : {tidy_number(ratio, 0 if ratio >= 10 else 1)}" if ratio >= 1 else f"{tidy_number(1 / ratio)} : 1"  # noqa: PLR2004
