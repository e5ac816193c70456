"""Waiting pictures: those of cables that changed, made a few at a time so that the hand on the mouse need not wait."""

import time
from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer

from boardplan.drawing.palette import Theme
from boardplan.model.plan import Plan
from boardplan.ui.canvas.items import ThingItem
from boardplan.ui.canvas.painter import Ready
from boardplan.ui.canvas.sights import Source

_AT_ONCE, _AT_A_TIME = 0.012, 0.008
"""Seconds in which pictures are made as soon as they are owed, and in each pause between two events after that."""


class WaitingPictures(QObject):
    """Holds what is owed; all pictures are shown at once when the last is made, so that the board is drawn once."""

    def __init__(self, paid: Callable[[], None], parent: QObject) -> None:
        super().__init__(parent)
        self._paid = paid
        self._owed: dict[ThingItem, Source] = {}
        self._made: dict[ThingItem, tuple[Source, Ready]] = {}
        self._ground: tuple[Plan, Theme] | None = None
        self._later = QTimer(self)
        self._later.setInterval(0)
        self._later.timeout.connect(self.pay)

    def owe(self, item: ThingItem, source: Source) -> None:
        """Have an item's picture made from a source a little later."""
        self._owed[item] = source

    def forget(self, item: ThingItem) -> None:
        """Leave a picture that is owed or made already: another one is wanted by now."""
        self._owed.pop(item, None)
        self._made.pop(item, None)

    def begin(self, plan: Plan, theme: Theme, *, all_now: bool = False) -> None:
        """Make some now, or all of them; the others in the pauses to come."""
        if self._ground is not None and self._ground[1] != theme:
            self._owed = {**{item: source for item, (source, _) in self._made.items()}, **self._owed}
            self._made = {}
        self._ground = plan, theme
        self.pay(float("inf") if all_now else _AT_ONCE)

    def pay(self, seconds: float = _AT_A_TIME) -> None:
        """Make some of the pictures that are owed; show all when none is owed any more."""
        if self._ground is not None:
            plan, theme = self._ground
            began = time.perf_counter()
            while self._owed and time.perf_counter() - began < seconds:
                item = next(iter(self._owed))
                source = self._owed.pop(item)
                self._made[item] = source, item.sight.ready(plan, source, theme)
        if self._owed:
            self._later.start()
            return
        self._later.stop()
        made, self._made = self._made, {}
        for item, (source, ready) in made.items():
            if item.scene() is not None:
                item.show_ready(source, ready)
        if made:
            self._paid()
