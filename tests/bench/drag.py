"""Drag components over the crowded board with real mouse events; prints times per event, asserts nothing.

python tests/bench/drag.py [JOB FILE]
"""

import os
import statistics
import sys
import time
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from crowded_board import crowded_plan
from PySide6.QtCore import QEvent, QObject, QPointF, QSettings, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from boardplan.editing.session import Session
from boardplan.files.plan_file import load_plan
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.ui.app import dress
from boardplan.ui.main_window import MainWindow
from boardplan.ui.preferences import Preferences

MOVES = 60
LONG = 0.05
WAIT = 10.0
BETWEEN = 0.012
"""Seconds between two events of a hand on the mouse: a common mouse tells where it is 125 times a second (USB HID,
polling every 8 ms); two in three of them come while the window has something else to do."""


class Timed(QApplication):
    """An application that keeps how long each of its events held up the window.

    Time of the processor is kept beside that of the clock, for on a shared machine others hold it up as well.
    """

    def __init__(self) -> None:
        super().__init__(["boardplan"])
        self.slots: list[tuple[float, float, str]] = []
        self._deep = 0

    def notify(self, receiver: QObject, event: QEvent) -> bool:
        """Handle an event; the outermost one is timed."""
        began, worked, self._deep = time.perf_counter(), time.thread_time(), self._deep + 1
        try:
            return bool(super().notify(receiver, event))
        finally:
            self._deep -= 1
            if not self._deep:
                words = f"{event.type().name} to {type(receiver).__name__}"
                self.slots.append((time.thread_time() - worked, time.perf_counter() - began, words))


def main() -> None:
    """Drag a few components and print what each mouse event took."""
    app = Timed()
    dress(app)
    plan = load_plan(Path(sys.argv[1])) if len(sys.argv) > 1 else crowded_plan()
    window = MainWindow(Preferences(QSettings(os.devnull, QSettings.Format.IniFormat)))
    window.resize(1920, 1080)
    window.show()
    window.show_session(Session(plan), "place")
    QTest.qWait(200)
    if window.desk is not None and window.desk.reviewing.elsewhere:
        QTest.qWait(6000)  # the other process begins
    app.slots.clear()
    events, paints, worked = _dragged(app, window, plan)
    print(f"{plan.job.title}: {len(plan.components)} components, {len(plan.cables)} cables, {len(events)} events")
    rows = (("handle a mouse event", events), ("paint and catch up", paints), ("both, of the processor", worked))
    for words, times in rows:
        print(f"{words:<22} median {statistics.median(times) * 1000:6.1f} ms   worst {max(times) * 1000:6.1f} ms")
    _print_slots(app)


def _print_slots(app: Timed) -> None:
    """Print which events held up the window longest."""
    slots = sorted(app.slots, reverse=True)
    long = sum(took > LONG for took, _, _ in slots)
    print(f"{len(slots)} slots, {long} of them longer than {LONG * 1000:.0f} ms of the processor; the longest:")
    for took, held, words in slots[:5]:
        print(f"  {took * 1000:6.1f} ms of the processor, {held * 1000:6.1f} ms by the clock: {words}")


def _dragged(app: Timed, window: MainWindow, plan: Plan) -> tuple[list[float], list[float], list[float]]:
    """Drag a few components; return the seconds that mouse events took, what had to be done after each, and both.

    Both together are of the processor alone.
    """
    events: list[float] = []
    paints: list[float] = []
    worked: list[float] = []
    chosen = list(plan.components.values())
    for component in chosen[:: max(1, len(chosen) // 5)][:5]:
        canvas = window.workbench.canvas
        start = canvas.view.px_at(plan.on_wall(component.board, placed(plan, component).centre))
        port = canvas.view.viewport()
        QTest.mousePress(port, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start.toPoint())
        for step in range(MOVES):
            at = start + QPointF(step * 1.5, step * 0.7)
            began, before = time.perf_counter(), time.thread_time()
            app.sendEvent(port, _moved(port, at))
            handled = time.perf_counter()
            app.processEvents()
            events.append(handled - began)
            paints.append(time.perf_counter() - handled)
            worked.append(time.thread_time() - before)
            while time.perf_counter() - began < BETWEEN:
                app.processEvents()
        _catch_up(app, window)
        QTest.mouseRelease(port, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at.toPoint())
        _catch_up(app, window)
    return events, paints, worked


def _catch_up(app: QApplication, window: MainWindow) -> None:
    """Wait until the review is that of what is seen."""
    began = time.perf_counter()
    while window.desk.session.behind and time.perf_counter() - began < WAIT:
        app.processEvents()
        time.sleep(0.002)
    app.processEvents()


def _moved(port: QWidget, at: QPointF) -> QMouseEvent:
    return QMouseEvent(
        QEvent.Type.MouseMove,
        at,
        QPointF(port.mapToGlobal(at.toPoint())),
        Qt.MouseButton.NoButton,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )


if __name__ == "__main__":
    main()
