"""A guard against Qt bindings that lose references to None: the process would die after a few thousand calls."""

import gc
import sys

import pytest
from PySide6.QtWidgets import QGraphicsScene, QLabel


@pytest.mark.usefixtures("qapp")
def test_void_calls_leave_the_count_of_none_alone():
    label, scene = QLabel("x"), QGraphicsScene()
    label.setText("warm")
    scene.setSceneRect(0, 0, 1, 1)
    gc.collect()
    before = sys.getrefcount(None)
    for _ in range(1000):
        label.setText("x")
        scene.setSceneRect(0, 0, 2, 2)
    drift = sys.getrefcount(None) - before
    label.deleteLater()
    assert abs(drift) < 100, f"{drift} in 2,000 calls"
