"""Main window: puts the pieces together and carries out what its actions ask; the work itself is done elsewhere."""

from pathlib import Path
from typing import Literal

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QMainWindow, QMenu, QStackedWidget, QWidget

from boardplan.editing.session import Session
from boardplan.ui.actions import ACTIONS, fill_menus, made_actions
from boardplan.ui.canvas.view import ZOOM_STEP
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.desk import Desk, Step
from boardplan.ui.dialogs.command_dialog import CommandDialog
from boardplan.ui.dialogs.fuses_dialog import ask_fuses
from boardplan.ui.dialogs.keys_dialog import KeysDialog
from boardplan.ui.dialogs.trays_dialog import ask_trays
from boardplan.ui.icons import retint
from boardplan.ui.job_files import JobFiles
from boardplan.ui.long_lived import settle
from boardplan.ui.preferences import Preferences
from boardplan.ui.safety.keeping import Keeping
from boardplan.ui.theme import Choice, Themes
from boardplan.ui.tool_table import TOOLS
from boardplan.ui.welcome import Welcome
from boardplan.ui.words import tr
from boardplan.ui.workbench import Workbench

_FILTER = "*.json"


class MainWindow(QMainWindow):
    """The window: the welcome page, or one open job."""

    samples_menu: QMenu
    recent_menu: QMenu

    def __init__(self, preferences: Preferences) -> None:
        super().__init__()
        self.preferences = preferences
        self.themes = Themes(preferences.theme, self)  # type: ignore[arg-type]
        self.workbench: Workbench | None = None
        self._keeping: Keeping | None = None
        self._pages = QStackedWidget()
        self.welcome = Welcome(self.themes, preferences)
        self._pages.addWidget(self.welcome)
        self.setCentralWidget(self._pages)
        self.setMinimumSize(1000, 640)
        self.resize(1280, 800)
        self.setAcceptDrops(True)
        self.menuBar().setNativeMenuBar(False)
        self.files = JobFiles(self)
        self.actions_by_name = made_actions(self)
        fill_menus(self, self.actions_by_name)
        self.files.fill_menus()
        self.welcome.new_asked.connect(self.files.new_board)
        self.welcome.open_asked.connect(self.files.ask_and_open)
        self.welcome.file_chosen.connect(self.files.open_file)
        self.welcome.sample_chosen.connect(self.files.open_sample)
        self.themes.changed.connect(self._retint)
        if preferences.window is not None:
            self.restoreGeometry(preferences.window)
        self.show_state()

    # What is open

    @property
    def desk(self) -> Desk | None:
        """The open job's desk, none on the welcome page."""
        return self.workbench.desk if self.workbench is not None else None

    def show_session(self, session: Session, step: Step = "survey") -> None:
        """Put a session on the bench in the place of what was there."""
        self.clear_bench()
        desk = Desk(session, self.themes, self.preferences, self)
        desk.step = step
        bench = Workbench(desk)
        self.workbench = bench
        self._keeping = Keeping(session, self)
        self._keeping.failed.connect(self._say_not_kept)
        head = bench.canvas.head
        for name in ("undo", "redo"):
            head.insertWidget(head.count() - 4, self._head_button(name))
        head.insertSpacing(head.count() - 4, 12)
        self._pages.addWidget(bench)
        self._pages.setCurrentWidget(bench)
        desk.signals.plan_changed.connect(self.show_state)
        desk.signals.selection_changed.connect(self.show_state)
        desk.signals.file_changed.connect(self.show_state)
        self.show_state()
        bench.canvas.fit()
        bench.canvas.view.setFocus()
        settle()

    def _head_button(self, name: str) -> QWidget:
        row = next(each for each in ACTIONS if each.name == name)
        button = small_button(
            self.themes.theme, row.icon, tr(row.words).replace("&", ""), self.actions_by_name[name].trigger
        )
        button.setEnabled(self.actions_by_name[name].isEnabled())
        self.actions_by_name[name].enabledChanged.connect(button.setEnabled)
        return button

    def clear_bench(self) -> None:
        """Take what is open off the bench, without asking."""
        if self._keeping is not None:
            self._keeping.close()
            self._keeping.deleteLater()
            self._keeping = None
        if self.workbench is not None:
            self.workbench.close_desk()
            self._pages.removeWidget(self.workbench)
            self.workbench.deleteLater()
            self.workbench = None

    def keep_at_once(self) -> None:
        """Keep aside what is not saved, now: the program is in trouble. Raises OSError."""
        if self._keeping is not None:
            self._keeping.keep_at_once()

    def _say_not_kept(self, reason: str) -> None:
        if self.desk is not None:
            words = tr("Unsaved work can't be kept aside ({}): save often.").format(reason)
            self.desk.said.emit(words)

    def show_welcome(self) -> None:
        """Take what is open off the bench and show the welcome page."""
        self.clear_bench()
        self.welcome.show_recent()
        self._pages.setCurrentWidget(self.welcome)
        self.show_state()

    def open_desk(self) -> Desk:
        """Return the open job's desk; that there is none is a fault of the program."""
        if self.workbench is None:
            raise RuntimeError("no job is open")
        return self.workbench.desk

    def show_state(self) -> None:
        """Show in title and menus what is open and what can be done."""
        desk = self.desk
        session = desk.session if desk else None
        if session is None:
            self.setWindowTitle("boardplan")
            self.setWindowModified(False)
        else:
            name = session.path.name if session.path else tr("not saved yet")
            name = tr("{}, only looked at").format(name) if session.looking else name
            self.setWindowTitle(tr("{}[*] - {} - boardplan").format(session.plan.job.title, name))
            self.setWindowModified(session.dirty or session.path is None)
        selected = len(session.selection.ids) if session else 0
        can = {
            "always": True,
            "open": session is not None,
            "undo": session is not None and session.history.undo_words is not None,
            "redo": session is not None and session.history.redo_words is not None,
            "selected": selected > 0,
            "several": selected > 1,
        }
        for row in ACTIONS:
            self.actions_by_name[row.name].setEnabled(can[row.when])
        history = session.history if session else None
        self._name_step("undo", tr("&Undo: {}"), history.undo_words if history else None)
        self._name_step("redo", tr("&Redo: {}"), history.redo_words if history else None)

    def _name_step(self, name: str, words: str, step: str | None) -> None:
        plain = next(row.words for row in ACTIONS if row.name == name)
        self.actions_by_name[name].setText(words.format(step) if step else tr(plain))

    def _retint(self) -> None:
        retint(self, self.themes.theme)

    # Edits that need what the workbench holds

    def undo(self) -> None:
        """Go one step back."""
        self.open_desk().session.undo()

    def redo(self) -> None:
        """Go one step on."""
        self.open_desk().session.redo()

    def turn(self) -> None:
        """Turn what is selected by a quarter."""
        if self.workbench is not None:
            self.workbench.properties.turn()

    def remove(self) -> None:
        """Remove what is selected."""
        if self.workbench is not None:
            self.workbench.properties.remove()

    def select_all(self) -> None:
        """Select all components."""
        if self.workbench is not None:
            self.workbench.canvas.select_all()

    def write_pack(self) -> None:
        """Go to the last step and write the papers."""
        self.go_to("pack")
        if self.workbench is not None:
            self.workbench.pack.ask_and_write()

    def ask_stock(self) -> None:
        """Ask which reels and lengths are at hand."""
        if self.workbench is not None:
            self.workbench.pack.ask_stock()

    def ask_supply(self) -> None:
        """Ask where the parts of the job come from."""
        if self.workbench is not None:
            self.workbench.pack.supply.ask_supply()

    def ask_fuses(self) -> None:
        """Ask for the fuses of what is selected."""
        ask_fuses(self.open_desk(), self)

    def ask_trays(self) -> None:
        """Ask for the battery trays."""
        ask_trays(self.open_desk(), self)

    # Steps, tools, sight

    def go_to(self, step: Step) -> None:
        """Go to a step of the job."""
        self.open_desk().go_to(step)

    def take_tool(self, tool: str, step: Step) -> None:
        """Take a tool in hand, in the first step that offers it unless the one in hand does."""
        desk = self.open_desk()
        offered = {each.step for each in TOOLS if each.name == tool}
        if desk.step not in offered:
            desk.go_to(step)
        desk.take(tool)
        if self.workbench is not None:
            self.workbench.canvas.view.setFocus()

    def join_by_name(self) -> None:
        """Ask for both ends of a cable."""
        self.go_to("wire")
        if self.workbench is not None:
            self.workbench.join_by_name()

    def accept_finding(self) -> None:
        """Accept the finding picked."""
        if self.workbench is not None:
            self.workbench.findings.accept()

    def fit(self) -> None:
        """Show all."""
        if self.workbench is not None:
            self.workbench.canvas.fit()

    def fit_selected(self) -> None:
        """Show what is selected."""
        if self.workbench is not None:
            self.workbench.canvas.fit_selected()

    def zoom(self, steps: int) -> None:
        """Zoom about the middle."""
        if self.workbench is not None:
            self.workbench.canvas.zoom(ZOOM_STEP**steps)

    def show_zones(self) -> None:
        """Show the keep-clear room of all components, or only of what is selected."""
        if self.workbench is not None:
            self.workbench.canvas.toggle_zones()

    def show_room(self) -> None:
        """Show where the piece in hand may lie, or no longer."""
        if self.workbench is not None:
            self.workbench.canvas.toggle_room()

    def choose_theme(self, choice: Literal["system", "light", "dark"]) -> None:
        """Follow the system's colours, or take some by hand."""
        self.preferences.theme = choice
        chosen: Choice = choice
        self.themes.choose(chosen)

    def focus_findings(self) -> None:
        """Go to the findings."""
        if self.workbench is not None:
            self.workbench.findings.list.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def focus_placed(self) -> None:
        """Go to the list of the components on the board."""
        self.go_to("place")
        if self.workbench is not None:
            self.workbench.place.show_placed()

    def focus_properties(self) -> None:
        """Go to the fields of what is selected."""
        if self.workbench is not None:
            self.workbench.properties.focus_form()

    def focus_next_part(self) -> None:
        """Go round the parts of the window."""
        if self.workbench is not None:
            self.workbench.focus_next_part()

    def find_command(self) -> None:
        """Search all actions and do the one that is picked."""
        rows = [(row.name, self.actions_by_name[row.name], row.icon) for row in ACTIONS]
        dialog = CommandDialog(rows, self.themes.theme, self)
        if dialog.exec() and dialog.chosen is not None:
            dialog.chosen.trigger()

    def show_keys(self) -> None:
        """Show all keys."""
        rows = [(row.words, self._keys_of(row.name) or row.canvas_key) for row in ACTIONS]
        KeysDialog([(words, keys) for words, keys in rows if keys], self.themes.theme, self).exec()

    def _keys_of(self, name: str) -> str:
        return self.actions_by_name[name].shortcut().toString(QKeySequence.SequenceFormat.NativeText)

    # Qt's own

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:  # noqa: D102
        if _dropped_jobs(event):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: D102
        files = _dropped_jobs(event)
        if files:
            event.acceptProposedAction()
            self.files.open_file(files[0])

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        focus = self.focusWidget()
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and isinstance(focus, QAbstractButton):
            focus.click()  # Qt does so in dialogs only
            return
        super().keyPressEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: D102
        if not self.files.may_leave():
            event.ignore()
            return
        self.preferences.window = self.saveGeometry()
        self.clear_bench()
        self.files.let_go()
        event.accept()

    def changeEvent(self, event: QEvent) -> None:  # noqa: D102
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow() and self.desk is not None:
            self._tell_changed_file(self.desk)

    def _tell_changed_file(self, desk: Desk) -> None:
        if desk.session.changed_on_disk:
            desk.said.emit(tr("The file was changed by somebody else since it was opened here."))


def _dropped_jobs(event: QDropEvent) -> list[Path]:
    """Return the job files that are dropped; anything else is none of the window's business."""
    files = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
    return [each for each in files if each.suffix.lower() == ".json"]
