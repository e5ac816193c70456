"""What tests of the window find: no screen, their own settings, a window that is always closed."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from PySide6.QtCore import QEvent, QPointF, QSettings, Qt, QTimer
from PySide6.QtGui import QAction, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from boardplan.editing.session import Session
from boardplan.geometry.point import Point
from boardplan.model.placed import placed
from boardplan.ui import reviewing
from boardplan.ui.app import dress
from boardplan.ui.main_window import MainWindow
from boardplan.ui.preferences import Preferences


def pytest_collection_modifyitems(items):
    """The offscreen platform says so of dialogs and their lists; it is no fault of ours."""
    for item in items:
        item.add_marker(pytest.mark.qt_log_ignore("This plugin does not support", extend=True))


@pytest.fixture(scope="session")
def qapp_args():
    return ["boardplan", "-style", "Fusion"]


@pytest.fixture
def preferences(tmp_path):
    return Preferences(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))


@pytest.fixture(autouse=True)
def own_state(tmp_path, monkeypatch):
    """A folder of the test's own for what outlives the program."""
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    return tmp_path / "state" / "boardplan"


@pytest.fixture
def window(qapp, qtbot, preferences, monkeypatch):
    monkeypatch.setattr(reviewing, "SLOW", float("inf"))  # however busy the machine is, small jobs are reviewed here
    dress(qapp)
    made = MainWindow(preferences)
    made.choose_theme("light")
    made.resize(1280, 800)
    made.show()
    qtbot.waitExposed(made)
    yield made
    made.clear_bench()
    made.close()
    made.deleteLater()
    qapp.sendPostedEvents(None, 52)  # deferred deletes
    qapp.processEvents()


def when_dialog(sort, fill):
    """Fill a dialog as soon as it is up."""

    def attempt():
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, sort):
            fill(dialog)
            if dialog.isVisible():
                dialog.reject()  # what was typed did not do; the test goes on and says so
        else:
            QTimer.singleShot(10, attempt)

    QTimer.singleShot(0, attempt)


def fill_new_board(dialog):
    dialog.title.setText("Test board")
    QTest.keyClick(dialog.title, Qt.Key.Key_Return)


def fill_conductor(conductor):
    def fill(dialog):
        assert dialog.focusWidget() is dialog.conductor
        QTest.keyClicks(dialog.conductor.lineEdit(), conductor)
        QTest.keyClick(dialog.conductor.lineEdit(), Qt.Key.Key_Return)

    return fill


class Hands:
    """A person's hands on the window: the mouse in wall millimetres, the keys."""

    when_dialog = staticmethod(when_dialog)
    fill_new_board = staticmethod(fill_new_board)
    fill_conductor = staticmethod(fill_conductor)

    def __init__(self, window):
        self.window = window

    @property
    def bench(self):
        return self.window.workbench

    @property
    def session(self):
        return self.window.desk.session

    @property
    def plan(self):
        return self.session.committed_plan

    def px(self, x, y):
        return self.bench.canvas.view.px_at(Point(x, y)).toPoint()

    @property
    def viewport(self):
        return self.bench.canvas.view.viewport()

    def move(self, x, y):
        QTest.mouseMove(self.viewport, self.px(x, y))

    def press(self, x, y):
        QTest.mousePress(self.viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, self.px(x, y))

    def release(self, x, y):
        QTest.mouseRelease(self.viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, self.px(x, y))

    def click(self, x, y):
        self.move(x, y)
        self.press(x, y)
        self.release(x, y)

    def drag(self, start, end, steps=8):
        self.move(*start)
        self.press(*start)
        for step in range(1, steps + 1):
            x = start[0] + (end[0] - start[0]) * step / steps
            y = start[1] + (end[1] - start[1]) * step / steps
            at = QPointF(self.px(x, y))
            event = QMouseEvent(
                QEvent.Type.MouseMove,
                at,
                QPointF(self.viewport.mapToGlobal(at.toPoint())),
                Qt.MouseButton.NoButton,
                Qt.MouseButton.LeftButton,
                Qt.KeyboardModifier.NoModifier,
            )
            QApplication.sendEvent(self.viewport, event)
        self.release(*end)

    def key(self, key, modifiers=Qt.KeyboardModifier.NoModifier, target=None):
        if not self.window.isActiveWindow():
            self.window.activateWindow()
            QTest.qWaitForWindowActive(self.window, 2000)
        QTest.keyClick(target or self.window.focusWidget() or self.window, key, modifiers)

    def type(self, text, target=None):
        QTest.keyClicks(target or self.window.focusWidget(), text)

    def act(self, name):
        action = self.window.actions_by_name[name]
        assert isinstance(action, QAction)
        assert action.isEnabled(), name
        action.trigger()

    def terminal(self, component, terminal):
        thing = self.plan.components[component]
        return self.plan.on_wall(thing.board, placed(self.plan, thing).terminals[terminal].position)

    def centre(self, component):
        thing = self.plan.components[component]
        return self.plan.on_wall(thing.board, placed(self.plan, thing).centre)


@pytest.fixture
def hands(window):
    return Hands(window)


@pytest.fixture
def open_plan(window):
    def opened(plan, step="place"):
        window.show_session(Session(plan), step)
        return Hands(window)

    return opened
