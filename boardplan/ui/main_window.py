"""Main window: puts the pieces together and carries out what its actions ask; the work itself is done elsewhere."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QGuiApplication, QKeySequence
from PySide6.QtWidgets import QFileDialog, QLineEdit, QMainWindow, QMenu, QMessageBox, QStackedWidget, QWidget

from boardplan.editing.arrange import Axis, Edge, align_components, space_evenly
from boardplan.editing.clipboard import clipping_of_text, clipping_text, copied, duplicate_things, pasted
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.session import Session
from boardplan.files.faults import BadFile
from boardplan.model.plan import Plan
from boardplan.ui.actions import ACTIONS, fill_menus, made_actions
from boardplan.ui.canvas.view import ZOOM_STEP
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.desk import Desk, Step
from boardplan.ui.dialogs.command_dialog import CommandDialog
from boardplan.ui.dialogs.fault_dialog import show_bad_file, show_disk_fault
from boardplan.ui.dialogs.keys_dialog import KeysDialog
from boardplan.ui.dialogs.new_board_dialog import NewBoardDialog
from boardplan.ui.icons import retint
from boardplan.ui.preferences import Preferences
from boardplan.ui.theme import Choice, Themes
from boardplan.ui.tool_table import TOOLS
from boardplan.ui.welcome import Welcome, sample_files
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
        self._pages = QStackedWidget()
        self.welcome = Welcome(self.themes, preferences)
        self._pages.addWidget(self.welcome)
        self.setCentralWidget(self._pages)
        self.setMinimumSize(1024, 640)
        self.resize(1280, 800)
        self.setAcceptDrops(True)
        self.menuBar().setNativeMenuBar(False)
        self.actions_by_name = made_actions(self)
        fill_menus(self, self.actions_by_name)
        self._fill_file_menus()
        self.welcome.new_asked.connect(self.new_board)
        self.welcome.open_asked.connect(self.ask_and_open)
        self.welcome.file_chosen.connect(self.open_file)
        self.welcome.sample_chosen.connect(self.open_sample)
        self.themes.changed.connect(self._retint)
        if preferences.window is not None:
            self.restoreGeometry(preferences.window)
        self._show_state()

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
        head = bench.canvas.head
        for name in ("undo", "redo"):
            head.insertWidget(head.count() - 4, self._head_button(name))
        head.insertSpacing(head.count() - 4, 12)
        self._pages.addWidget(bench)
        self._pages.setCurrentWidget(bench)
        desk.signals.plan_changed.connect(self._show_state)
        desk.signals.selection_changed.connect(self._show_state)
        desk.signals.file_changed.connect(self._show_state)
        self._show_state()
        bench.canvas.fit()
        bench.canvas.view.setFocus()

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
        if self.workbench is not None:
            self.workbench.close_desk()
            self._pages.removeWidget(self.workbench)
            self.workbench.deleteLater()
            self.workbench = None

    def _desk_or_fail(self) -> Desk:
        if self.workbench is None:
            raise RuntimeError("no job is open")
        return self.workbench.desk

    def _show_state(self) -> None:
        """Show in title and menus what is open and what can be done."""
        desk = self.desk
        session = desk.session if desk else None
        if session is None:
            self.setWindowTitle("boardplan")
            self.setWindowModified(False)
        else:
            name = session.path.name if session.path else tr("not saved yet")
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

    # Files

    def _fill_file_menus(self) -> None:
        self.samples_menu.clear()
        for path in sample_files():
            self._add_file(self.samples_menu, path, self.open_sample)
        self.recent_menu.clear()
        for path in self.preferences.recent:
            self._add_file(self.recent_menu, path, self.open_file)
        self.recent_menu.setEnabled(not self.recent_menu.isEmpty())

    def _add_file(self, menu: QMenu, path: Path, open_it: object) -> None:
        words = path.stem.replace("-", " ").capitalize() if menu is self.samples_menu else str(path)
        action = menu.addAction(words)
        action.triggered.connect(partial(_open_from_menu, open_it, path))

    def new_board(self) -> None:
        """Ask for a sheet and begin a job with it."""
        if not self.may_leave():
            return
        dialog = NewBoardDialog(self)
        if dialog.exec() and dialog.plan is not None:
            self.show_session(Session(dialog.plan))

    def ask_and_open(self) -> None:
        """Ask for a job file and open it."""
        chosen, _ = QFileDialog.getOpenFileName(
            self, tr("Open a job"), self._folder(), tr("Job files ({})").format(_FILTER)
        )
        if chosen:
            self.open_file(Path(chosen))

    def open_file(self, path: Path) -> bool:
        """Open a job file; say what is wrong with it where that fails."""
        if not self.may_leave():
            return False
        try:
            session = Session.open(path)
        except BadFile as bad:
            show_bad_file(bad, self)
            return False
        self.preferences.remember_file(path)
        self._fill_file_menus()
        self.show_session(session, "place" if session.plan.components else "survey")
        return True

    def open_sample(self, path: Path) -> None:
        """Open a copy of a sample: it can be changed, and is saved somewhere else."""
        if not self.may_leave():
            return
        try:
            session = Session.open(path)
        except BadFile as bad:
            show_bad_file(bad, self)
            return
        session.path = None
        self.show_session(session, "place")

    def save(self) -> bool:
        """Save the job; ask where, if it has no file yet."""
        session = self._desk_or_fail().session
        return self.save_to(session.path) if session.path else self.save_as()

    def save_as(self) -> bool:
        """Ask for a file and save the job to it."""
        session = self._desk_or_fail().session
        name = session.plan.job.title.strip().lower().replace(" ", "-").replace("/", "-") or "job"
        wanted = session.path or Path(self._folder()) / f"{name}.json"
        chosen, _ = QFileDialog.getSaveFileName(
            self, tr("Save the job"), str(wanted), tr("Job files ({})").format(_FILTER)
        )
        if not chosen:
            return False
        path = Path(chosen)
        return self.save_to(path if path.suffix else path.with_suffix(".json"))

    def save_to(self, path: Path) -> bool:
        """Save the job to a file; say what stands in the way where that fails."""
        try:
            self._desk_or_fail().session.save(path)
        except OSError as error:
            show_disk_fault(error, str(path), self)
            return False
        self.preferences.remember_file(path)
        self._fill_file_menus()
        self._show_state()
        return True

    def _folder(self) -> str:
        recent = self.preferences.recent
        return str(recent[0].parent) if recent else str(Path.home())

    def may_leave(self) -> bool:
        """Ask about unsaved changes; say whether the job may be left."""
        desk = self.desk
        if desk is None or not desk.session.dirty:
            return True
        box = QMessageBox(self)
        box.setWindowTitle(tr("Not saved"))
        box.setText(tr("{} has changes that are not saved.").format(desk.session.plan.job.title))
        keep = box.addButton(tr("Save"), QMessageBox.ButtonRole.AcceptRole)
        drop = box.addButton(tr("Leave without saving"), QMessageBox.ButtonRole.DestructiveRole)
        box.addButton(tr("Stay"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(keep)
        box.exec()
        if box.clickedButton() is keep:
            return self.save()
        return box.clickedButton() is drop

    def close_job(self) -> None:
        """Leave the job and go back to the welcome page."""
        if self.may_leave():
            self.clear_bench()
            self.welcome.show_recent()
            self._pages.setCurrentWidget(self.welcome)
            self._show_state()

    def write_pack(self) -> None:
        """Go to the last step and write the papers."""
        self.go_to("pack")
        if self.workbench is not None:
            self.workbench.pack.ask_and_write()

    # Edits

    def undo(self) -> None:
        """Go one step back."""
        self._desk_or_fail().session.undo()

    def redo(self) -> None:
        """Go one step on."""
        self._desk_or_fail().session.redo()

    def copy(self) -> None:
        """Put what is selected on the desktop's clipboard; in a field, the field's own text."""
        desk = self._desk_or_fail()
        focus = self.focusWidget()
        if isinstance(focus, QLineEdit) and focus.hasSelectedText():
            focus.copy()
            return
        try:
            clipping = copied(desk.session.committed_plan, desk.session.selection.ids)
        except EditRefused as refused:
            desk.said.emit(refused.sentence)
            return
        if clipping is not None:
            QGuiApplication.clipboard().setText(clipping_text(clipping))

    def paste(self) -> None:
        """Take what is on the clipboard onto the board in hand."""
        desk = self._desk_or_fail()
        focus = self.focusWidget()
        if isinstance(focus, QLineEdit):
            focus.paste()
            return
        clipping = clipping_of_text(QGuiApplication.clipboard().text())
        if clipping is None:
            desk.said.emit(tr("There is nothing on the clipboard that could hang on a board."))
            return
        self._add_several(tr("Paste"), lambda plan: pasted(plan, clipping, desk.board.id))

    def duplicate(self) -> None:
        """Put copies of what is selected beside it."""
        ids = self._desk_or_fail().session.selection.ids
        self._add_several(tr("Duplicate"), lambda plan: duplicate_things(plan, ids))

    def _add_several(self, words: str, edit: Callable[[Plan], tuple[Plan, tuple[str, ...]]]) -> None:
        desk = self._desk_or_fail()
        added: list[tuple[str, ...]] = []

        def only_plan(plan: Plan) -> Plan:
            changed, references = edit(plan)
            added.append(references)
            return changed

        if desk.edit(words, only_plan):
            desk.session.select(Selection(added[0]))

    def turn(self) -> None:
        """Turn what is selected by a quarter."""
        if self.workbench is not None:
            self.workbench.properties.turn()

    def remove(self) -> None:
        """Remove what is selected."""
        if self.workbench is not None:
            self.workbench.properties.remove()

    def align(self, edge: Edge) -> None:
        """Line the selected components up."""
        desk = self._desk_or_fail()
        desk.edit(tr("Line up"), lambda plan: align_components(plan, desk.session.selection.ids, edge))

    def space(self, axis: Axis) -> None:
        """Space the selected components evenly."""
        desk = self._desk_or_fail()
        desk.edit(tr("Space evenly"), lambda plan: space_evenly(plan, desk.session.selection.ids, axis))

    def select_all(self) -> None:
        """Select all components."""
        if self.workbench is not None:
            self.workbench.canvas.select_all()

    # Steps, tools, sight

    def go_to(self, step: Step) -> None:
        """Go to a step of the job."""
        self._desk_or_fail().go_to(step)

    def take_tool(self, tool: str, step: Step) -> None:
        """Take a tool in hand, in the first step that offers it unless the one in hand does."""
        desk = self._desk_or_fail()
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

    def choose_theme(self, choice: Literal["system", "light", "dark"]) -> None:
        """Follow the system's colours, or take some by hand."""
        self.preferences.theme = choice
        chosen: Choice = choice
        self.themes.choose(chosen)

    def focus_findings(self) -> None:
        """Go to the findings."""
        if self.workbench is not None:
            self.workbench.findings.list.setFocus(Qt.FocusReason.ShortcutFocusReason)

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
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:  # noqa: D102
        files = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        if files:
            event.acceptProposedAction()
            self.open_file(files[0])

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: D102
        if not self.may_leave():
            event.ignore()
            return
        self.preferences.window = self.saveGeometry()
        self.clear_bench()
        event.accept()


def _open_from_menu(open_it: object, path: Path, _checked: bool = False) -> None:  # noqa: FBT001, FBT002 - Qt's
    open_it(path)  # type: ignore[operator]
