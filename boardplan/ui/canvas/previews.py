"""Previews: the unfinished plan of a gesture; ways and findings that take long catch up with the bodies."""

import time

from PySide6.QtCore import QObject, QTimer

from boardplan.model.plan import Plan
from boardplan.ui.canvas.scene import BoardScene
from boardplan.ui.desk import Desk

SLOW = 0.03
"""Seconds; where a preview takes longer, a drag would stutter."""
_LONGEST_WAIT = 0.3
"""Seconds after which ways and findings catch up even while the hand moves on."""
_REST = 70
"""Milliseconds without a move that count as rest."""


class Previews(QObject):
    """Previews through the session as long as that is quick enough for a hand on the mouse."""

    def __init__(self, desk: Desk, scene: BoardScene, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._scene = desk, scene
        self._owed: Plan | None = None
        self._cost, self._shown_at = 0.0, 0.0
        self.catching_up = False
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self._catch_up)

    def show(self, plan: Plan | None) -> None:
        """Show a plan: whole, or only its bodies until the hand rests; with none the committed one."""
        waited = time.perf_counter() - self._shown_at
        if plan is None or self._cost < SLOW or waited > max(_LONGEST_WAIT, 3 * self._cost):
            self._show_whole(plan)
            return
        self._owed = plan
        self._scene.show_plan(plan, self._desk.session.review)
        self._rest.start()

    def forget(self) -> None:
        """Show what the session holds, where bodies were moved ahead of it."""
        self._owed = None
        self._rest.stop()
        session = self._desk.session
        if self._scene.plan is not None and self._scene.plan is not session.plan:
            self._scene.show_plan(session.plan, session.review)

    def _show_whole(self, plan: Plan | None) -> None:
        began = time.perf_counter()
        self._owed = None
        self._rest.stop()
        self._desk.session.preview(plan)
        self._shown_at = time.perf_counter()
        self._cost = self._shown_at - began

    def _catch_up(self) -> None:
        """Work out ways and findings for what is seen, now that the hand rests."""
        if self._owed is not None:
            self.catching_up = True
            self._show_whole(self._owed)
            self.catching_up = False
