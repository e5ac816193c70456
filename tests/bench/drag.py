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
from PySide6.QtCore import QEvent, QPointF, QSettings, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from boardplan.editing.session import Session
from boardplan.files.plan_file import load_plan
from boardplan.model.placed import placed
from boardplan.ui.app import dress
from boardplan.ui.main_window import MainWindow
from boardplan.ui.preferences import Preferences

MOVES = 60


def main() -> None:
    """Drag a few components and print what each mouse event took."""
    app = QApplication(["boardplan"])
    dress(app)
    plan = load_plan(Path(sys.argv[1])) if len(sys.argv) > 1 else crowded_plan()
    window = MainWindow(Preferences(QSettings(os.devnull, QSettings.Format.IniFormat)))
    window.resize(1920, 1080)
    window.show()
    window.show_session(Session(plan), "place")
    QTest.qWait(200)
    events: list[float] = []
    paints: list[float] = []
    chosen = list(plan.components.values())
    for component in chosen[:: max(1, len(chosen) // 5)][:5]:
        canvas = window.workbench.canvas
        start = canvas.view.px_at(plan.on_wall(component.board, placed(plan, component).centre))
        port = canvas.view.viewport()
        QTest.mousePress(port, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start.toPoint())
        for step in range(MOVES):
            at = start + QPointF(step * 1.5, step * 0.7)
            began = time.perf_counter()
            app.sendEvent(port, _moved(port, at))
            handled = time.perf_counter()
            app.processEvents()
            events.append(handled - began)
            paints.append(time.perf_counter() - handled)
        QTest.mouseRelease(port, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at.toPoint())
    print(f"{plan.job.title}: {len(plan.components)} components, {len(plan.cables)} cables, {len(events)} events")
    for words, times in (("handle a mouse event", events), ("paint and catch up", paints)):
        print(f"{words:<22} median {statistics.median(times) * 1000:6.1f} ms   worst {max(times) * 1000:6.1f} ms")


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
