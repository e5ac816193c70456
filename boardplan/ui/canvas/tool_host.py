"""Tool host: turns the mouse and the keys into pointer events for the tool in hand; shows and commits what it says."""

from dataclasses import replace

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent

from boardplan.checks.finding import Finding
from boardplan.editing.channel_edits import SECTIONS
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.push_way import without_pin
from boardplan.editing.tools.toolbox import tool
from boardplan.geometry.point import Point
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component_kind import ComponentKind
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.ui.canvas.previews import LatestWays, preview
from boardplan.ui.canvas.scene import BoardScene
from boardplan.ui.canvas.view import BoardView
from boardplan.ui.desk import Desk
from boardplan.ui.tool_table import tool_for_key
from boardplan.ui.words import tr

REACH = 2.0
"""px that count as one fingertip row; tools catch at a few of them."""
_KEYS = {
    Qt.Key.Key_Left: "left",
    Qt.Key.Key_Right: "right",
    Qt.Key.Key_Up: "up",
    Qt.Key.Key_Down: "down",
    Qt.Key.Key_Return: "enter",
    Qt.Key.Key_Enter: "enter",
    Qt.Key.Key_Escape: "escape",
    Qt.Key.Key_Backspace: "backspace",
    Qt.Key.Key_R: "r",
}
LEAVE_KEY = "U"
"""The key that takes the pins from the selected cables."""
_NOWHERE = Point(0, 0)
"""Where the pointer is before it has been anywhere."""
_STILL = 2 * REACH
"""A sign pressed and let go within so many px was clicked; farther, what lies below it is dragged."""
_ARROWS = {"left": Point(-1, 0), "right": Point(1, 0), "up": Point(0, 1), "down": Point(0, -1)}
_CARRIED_BY_KEYS = {"place", "draw_channel", "add_exit", "add_fixing", "add_no_go", "measure", "join"}


class ToolHost(QObject):
    """Sits between the view and the tools; filters the viewport's events."""

    hinted = Signal(str)
    carried = Signal(str)
    """The one component that a gesture carries, empty where there is none."""
    asked = Signal(object, object)
    """A cable's two ends, for which a person must choose the conductor."""
    turn_asked = Signal()
    leave_asked = Signal()
    """The selected cables are to lie as the program would lay them."""
    remove_asked = Signal()

    def __init__(self, desk: Desk, view: BoardView, scene: BoardScene) -> None:
        super().__init__(desk)
        self._desk, self._view, self._scene = desk, view, scene
        self._gesture: Gesture | None = None
        self._busy = False
        self._at = _NOWHERE
        self._under = QPointF(0, 0)
        self._by_keys = True
        self._set_at: Point | None = None
        self.kind: ComponentKind | None = None
        self.turn = 0.0
        self.section: ChannelSection = SECTIONS[3]
        self.conductor: Conductor | None = None
        self.diameter: float | None = None
        self._waiting: Pointer | None = None
        self.held: dict[str, Point] = {}
        """The cable whose leg is being dragged, and where the pointer is."""
        self._corner: tuple[str, int] | None = None
        self._pressed_sign: tuple[Finding, QPointF] | None = None
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self.flush)
        view.on_mouse, view.on_key = self.mouse, self.key
        desk.tool_changed.connect(self.begin)
        desk.signals.plan_changed.connect(self._plan_changed)
        desk.signals.selection_changed.connect(self._plan_changed)
        self.begin()

    # Gestures

    def take_kind(self, kind: ComponentKind) -> None:
        """Take a kind in hand, to be placed."""
        self.kind, self.turn = kind, 0.0
        self._desk.take("place")

    def begin(self) -> None:
        """Begin the tool in hand afresh."""
        self.cancel()
        session = self._desk.session
        hand = Hand(
            plan=session.committed_plan,
            selection=session.selection,
            ways=LatestWays(session),
            shelf=self._desk.shelf,
            kind=self.kind,
            turn=self.turn,
            section=self.section,
            conductor=self._conductor_in_use(),
            diameter=self.diameter,
        )
        self._start(hand)

    def _conductor_in_use(self) -> Conductor | None:
        """Return the conductor chosen last, while a cable of the job has it: after an undo it is asked for again."""
        used = {each.conductor for each in self._desk.session.committed_plan.cables.values()}
        return self.conductor if self.conductor is not None and self.conductor.id in used else None

    def cancel(self) -> None:
        """Leave the gesture, and what it showed."""
        gesture, self._gesture = self._gesture, None
        self._waiting = None
        self._set_at = None
        if gesture is not None:
            gesture.close()
        self._busy = False
        self._leave_shown()
        if self._desk.session.plan is not self._desk.session.committed_plan:
            self._desk.session.preview(None)

    def _leave_shown(self) -> None:
        """Take away what a gesture showed beside its plan."""
        self.held = {}
        self._scene.over.show_guides(())
        self._scene.over.show_band(None)
        self._scene.over.show_gaps(None)
        self._scene.over.show_stuck(None)
        self.carried.emit("")

    def _start(self, hand: Hand) -> None:
        self._gesture = tool(self._desk.tool).factory(hand)
        try:
            self._show(next(self._gesture))
        except StopIteration as stop:
            self._gesture = None
            self._finish(stop.value)

    def _plan_changed(self) -> None:
        """Begin afresh when the plan or the selection was changed from elsewhere."""
        if not self._busy:
            self.begin()

    def send(self, event: Pointer) -> None:
        """Send an event to the gesture, and do what comes of it."""
        if self._gesture is None:
            self.begin()
        if self._gesture is None:
            return
        was_busy, self._busy = self._busy, True
        try:
            shown = self._gesture.send(event)
        except StopIteration as stop:
            self._gesture = None
            self._finish(stop.value)
            self._busy = False
            return
        self._show(shown)
        self._busy = was_busy

    def _show(self, shown: Shown) -> None:
        session = self._desk.session
        was_busy, self._busy = self._busy, True
        self.held = {shown.pushed: self._at} if shown.pushed else {}
        if shown.pushed and shown.selection is not None and shown.selection != session.selection:
            session.select(shown.selection)
        self._scene.over.show_stuck(shown.stuck)
        if shown.plan is not None or session.plan is not session.committed_plan:
            preview(self._desk, shown.plan)
        self._scene.over.show_guides(shown.guides)
        self._scene.over.show_band(shown.band)
        selection = shown.selection or session.selection
        self._scene.show_selection(selection)
        carried = _carried(session.committed_plan, shown.plan, selection)
        self._scene.over.show_gaps(carried)
        self.carried.emit(carried or "")
        self.hinted.emit(shown.hint or (self._hint() if shown.plan is None else ""))
        self._busy = was_busy

    def _hint(self) -> str:
        return tr(tool(self._desk.tool).hint)

    def _finish(self, done: Done) -> None:
        session = self._desk.session
        was_busy, self._busy = self._busy, True
        self._leave_shown()
        if done.plan is not None:
            session.commit(done.plan, done.words)
        elif session.plan is not session.committed_plan:
            session.preview(None)
        if done.selection is not None:
            session.select(done.selection)
        self._choose_corner(done.corner)
        if done.hand is not None:
            self.kind, self.turn = done.hand.kind, done.hand.turn
            self.conductor = done.hand.conductor or self.conductor
        self._busy = was_busy
        self._desk.said.emit(done.said)
        self._next(done)

    def _choose_corner(self, corner: tuple[str, int] | None) -> None:
        self._corner = corner
        self._scene.choose_corner(corner)

    def _remove(self) -> None:
        """Take out the pinned corner that was clicked, or else ask for what is selected to be removed."""
        corner, plan = self._corner, self._desk.session.committed_plan
        way = self._desk.session.known.ways.get(corner[0]) if corner else None
        self._choose_corner(None)
        if corner is None or not isinstance(way, Route) or not plan.cables[corner[0]].pins:
            self.remove_asked.emit()
            return
        cable, number = corner
        self._desk.edit(
            tr("Take out a pinned corner of {}").format(cable), lambda plan: without_pin(plan, cable, way, number)
        )

    def _next(self, done: Done) -> None:
        if done.asks is not None:
            self.asked.emit(*done.asks)
        if done.again or self._desk.tool == "select":
            if not done.said or self._desk.tool == "select" or done.again:
                self._restart()
        else:
            self._desk.take("select")

    def _restart(self) -> None:
        self._gesture = None
        self.begin()

    # What the view hears

    def mouse(self, event: QMouseEvent) -> bool:
        """Take an event of the mouse; say whether it was one of those a tool wants."""
        kinds = {
            QEvent.Type.MouseButtonPress: self._press,
            QEvent.Type.MouseButtonDblClick: self._double,
            QEvent.Type.MouseMove: self._move,
            QEvent.Type.MouseButtonRelease: self._release,
        }
        handler = kinds.get(event.type())
        if handler is None:
            return False
        self._under = event.position()
        self._by_keys = False
        self._at = self._view.wall_at(event.position())
        self._view.pointed.emit(self._at)
        if handler == self._release and self._desk.session.plan is not self._desk.session.committed_plan:
            self._waiting = None  # letting go says where as well
        elif handler != self._move:
            self.flush()
        handler(event)
        return True

    def _press(self, event: QMouseEvent) -> None:
        self._view.setFocus(Qt.FocusReason.MouseFocusReason)
        if self._view.begins_pan(event):
            return
        finding = self._finding_under(event)
        if finding is not None and self._desk.tool == "select":
            self._pressed_sign = (finding, event.position())
        self._desk.finding_pointed.emit(None)
        self.send(self._pointer("press", event))

    def _double(self, event: QMouseEvent) -> None:
        self.send(self._pointer("double", event))

    def _move(self, event: QMouseEvent) -> None:
        """Remember the newest move; on a large job several come while one is worked on, and only the last counts."""
        if not self._view.pans(event):
            self._waiting = self._pointer("move", event)
            if not self._later.isActive():
                self._later.start()

    def flush(self) -> None:
        """Send the move that is still waiting."""
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            self.send(waiting)

    def _release(self, event: QMouseEvent) -> None:
        sign, self._pressed_sign = self._pressed_sign, None
        if self._view.ends_pan():
            return
        self.send(self._pointer("release", event))
        if sign is not None and (event.position() - sign[1]).manhattanLength() < _STILL:
            self._desk.point_to(sign[0])

    def _finding_under(self, event: QMouseEvent) -> Finding | None:
        return self._scene.sign_at(self._view.itemAt(event.position().toPoint()))

    def _pointer(self, kind: str, event: QMouseEvent) -> Pointer:
        button = event.button() if event.type() != QEvent.Type.MouseMove else Qt.MouseButton.NoButton
        if event.type() == QEvent.Type.MouseMove and event.buttons() & Qt.MouseButton.LeftButton:
            button = Qt.MouseButton.LeftButton
        names = {Qt.MouseButton.LeftButton: "left", Qt.MouseButton.RightButton: "right"}
        return self._bare(kind, event.modifiers(), button=names.get(button, "none"))

    def _bare(self, kind: str, modifiers: Qt.KeyboardModifier, *, button: str = "none", key: str = "") -> Pointer:
        return Pointer(
            kind=kind,  # type: ignore[arg-type]
            at=self._at,
            reach=REACH / self._view.scale_now,
            button=button,  # type: ignore[arg-type]
            shift=bool(modifiers & Qt.KeyboardModifier.ShiftModifier),
            control=bool(modifiers & Qt.KeyboardModifier.ControlModifier),
            alt=bool(modifiers & Qt.KeyboardModifier.AltModifier),
            key=key,
        )

    # Keys

    def key(self, event: QKeyEvent) -> bool:
        """Take a key; say whether it meant something here."""
        if self._view.hears_space(event, pressed=True):
            return True
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Tab, Qt.Key.Key_Backtab} and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            return self._cycle(-1 if key == Qt.Key.Key_Backtab else 1)
        if key == Qt.Key.Key_Delete or (key == Qt.Key.Key_Backspace and self._desk.tool == "select"):
            self._remove()
            return True
        name = _KEYS.get(key)
        if name is not None:
            self._named_key(name, event)
            return True
        if event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier):
            return False
        return self._letter(event.text())

    def _letter(self, text: str) -> bool:
        if text.upper() == LEAVE_KEY:
            self.leave_asked.emit()
            return True
        taken = tool_for_key(self._desk.step, text) if text else None
        if taken is None:
            return False
        self._by_keys = True
        if self._at is _NOWHERE:
            self._at = self._view.middle()
        self._desk.take(taken.name)
        return True

    def _named_key(self, name: str, event: QKeyEvent) -> None:
        carried = self._desk.tool in _CARRIED_BY_KEYS
        if name == "escape" and self._desk.tool != "select":
            self.cancel()
            self._desk.take("select")
        elif name == "r" and not carried:
            self.turn_asked.emit()
        elif name in _ARROWS and carried:
            self._carry(name, event)
        elif name == "enter" and carried:
            self.press_here(event.modifiers())
        else:
            self.send(self._bare("key", event.modifiers(), key=name))

    def _carry(self, name: str, event: QKeyEvent) -> None:
        """Move the pointer of a tool by keys: 1 mm, with Shift 10, with Ctrl 100."""
        step = 10.0 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1.0
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            step = 100.0
        self.point(self._at.moved(_ARROWS[name].x * step, _ARROWS[name].y * step))

    def point(self, at: Point) -> None:
        """Put the pointer of the tool somewhere, without the mouse."""
        self._by_keys = True
        self._at = Point(float(round(at.x)), float(round(at.y)))
        self._view.pointed.emit(self._at)
        self.send(replace(self._bare("move", Qt.KeyboardModifier.AltModifier), alt=True))

    def carry_to(self, at: Point) -> None:
        """Take what is in hand to a place, as a mouse would."""
        self._at = at
        self._view.pointed.emit(at)
        self.send(self._bare("move", Qt.KeyboardModifier.NoModifier))

    def drop(self) -> None:
        """Let go of what is in hand where it is."""
        self.send(self._bare("press", Qt.KeyboardModifier.NoModifier, button="left"))

    def press_here(self, modifiers: Qt.KeyboardModifier) -> None:
        """Press where the pointer is, without the mouse.

        A line ends there where the corner is set already, or its corners were set with the mouse; with Ctrl anywhere.
        """
        control = bool(modifiers & Qt.KeyboardModifier.ControlModifier)
        if self._desk.tool == "draw_channel" and (control or not self._by_keys or self._at == self._set_at):
            self.send(self._bare("key", modifiers, key="enter"))
            return
        self._set_at = self._at
        self.send(replace(self._bare("press", modifiers, button="left"), alt=True))
        if self._desk.tool in {"join", "add_no_go"} and self._gesture is not None:
            self.hinted.emit("")

    def _cycle(self, step: int) -> bool:
        """Select the next thing of the step in hand, or the one before."""
        things = self._things_in_turn()
        if not things:
            return True
        active = self._desk.session.selection.active
        number = (things.index(active) + step) % len(things) if active in things else (0 if step > 0 else -1)
        self._desk.session.select(Selection((things[number],)))
        self._desk.place_asked.emit()
        return True

    def _things_in_turn(self) -> list[str]:
        plan = self._desk.plan
        groups = {
            "survey": ("boards", "framing", "exits", "no_go_boxes", "fixings", "back_parts"),
            "place": ("components",),
            "wire": ("cables", "channels"),
            "pack": ("components", "cables"),
        }[self._desk.step]
        return [thing_id for group in groups for thing_id in getattr(plan, group)]


def _carried(before: Plan, now: Plan | None, selection: Selection) -> str | None:
    """Return the one component that a gesture carries; its gaps are shown meanwhile."""
    active = selection.active or ""
    if now is None or len(selection.ids) != 1 or active not in now.components:
        return None
    return active if before.components.get(active) is not now.components[active] else None
