"""Room look: while a piece is carried, where it may lie is worked out beside the window, kept, and shown."""

from collections.abc import Sequence
from functools import partial
from typing import TypeAlias

from PySide6.QtCore import QObject, Signal

from boardplan.editing.room_in_hand import Room, middle_of, room_of
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind
from boardplan.model.plan import Plan
from boardplan.ui.aside import Aside
from boardplan.ui.canvas.room_item import MiddleItem, RoomItem
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr

_Key: TypeAlias = tuple[str, str, float, str]
_REMEMBERED = "room in hand"


class RoomLook(QObject):
    """Shows the room of the one component that a gesture carries; says so where there is none as it is turned."""

    told = Signal(str)
    """That nothing fits as it is turned, and which turns do; nothing where there is room, or no piece in hand."""

    def __init__(self, desk: Desk, items: tuple[RoomItem, MiddleItem], parent: QObject) -> None:
        super().__init__(parent)
        self._desk = desk
        self._item, self._middle = items
        self._plan: Plan | None = None
        self._kept: dict[_Key, tuple[ComponentKind, Room]] = {}
        self._carried = ""
        self._working = False
        self.on = desk.preferences.text(_REMEMBERED, "on") == "on"
        desk.themes.changed.connect(self.look)

    def toggle(self) -> bool:
        """Show rooms from now on, or no longer; say which."""
        self.on = not self.on
        self._desk.preferences.remember_text(_REMEMBERED, "on" if self.on else "off")
        self.look()
        return self.on

    def carry(self, component_id: str) -> None:
        """Show the room of a component that is carried as the desk's plan has it, or of none."""
        self._carried = component_id
        self.look()

    def look(self) -> None:
        """Show the room of what is carried, once it is known; what was shown for another turn or board is not."""
        component = self._desk.plan.components.get(self._carried) if self.on else None
        if component is None:
            self._show(None, "")
            self._middle.show_middle(None, self._desk.themes.theme)
            return
        room = self._known(component)
        if room is None:
            self._show(None, "")
            self._work(component)
        else:
            self._show(room, self._words(component, room) if room.middles.is_empty else "")
        middle = middle_of(self._desk.plan, component)
        self._middle.show_middle(middle, self._desk.themes.theme, fits=self._item.holds(middle))

    def _show(self, room: Room | None, words: str) -> None:
        self._item.show_room(None if room is None else room.middles, self._desk.themes.theme)
        self.told.emit(words)

    def _known(self, component: Component) -> Room | None:
        """Return a room that was worked out before, among the same things and for the same kind."""
        committed = self._desk.session.committed_plan
        if committed is not self._plan:
            self._plan, self._kept = committed, {}
        kind, room = self._kept.get(_key(component), (None, None))
        return room if kind is self._desk.plan.kind_of(component) else None

    def _work(self, component: Component) -> None:
        """Work out a room beside the window, one at a time; the newest is asked for again when it is done."""
        if not self._working:
            self._working = True
            plan, among = self._desk.plan, self._plan
            Aside(partial(room_of, plan, component), partial(self._take, plan, among, component), self._desk).start()

    def _take(self, plan: Plan, among: Plan | None, component: Component, room: Room) -> None:
        self._working = False
        if among is self._plan:
            self._kept[_key(component)] = plan.kind_of(component), room
        self.look()

    def _words(self, component: Component, room: Room) -> str:
        several = len(self._desk.plan.boards) > 1
        place = tr("No room on board {}").format(component.board) if several else tr("No room")
        if not room.turns:
            return tr("{} however it is turned").format(place)
        return tr("{} {}; {} there is").format(place, turn_words((component.turn,)), turn_words(room.turns))


def _key(component: Component) -> _Key:
    return component.id, component.kind, component.turn % 360.0, component.board


def turn_words(turns: Sequence[float]) -> str:
    """Return turns in words.

    >>> turn_words((0.0, 90.0, 270.0))
    'upright or turned by 90° or 270°'
    """
    degrees = [f"{each % 360.0:g}°" for each in turns if each % 360.0]
    upright = [tr("upright")] if len(degrees) < len(turns) else []
    return tr(" or ").join([*upright, *([tr("turned by {}").format(tr(" or ").join(degrees))] if degrees else [])])
