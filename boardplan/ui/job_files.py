"""Job files: new, open, save, close - what the window does with files, and what it asks before it leaves a job."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog, QMenu, QMessageBox

from boardplan.editing.session import Session
from boardplan.files.faults import BadFile
from boardplan.files.hold import Hold
from boardplan.files.rescue import left_behind, rescue_folder, throw_away
from boardplan.files.whole_file import sweep_parts
from boardplan.ui.desk import Step
from boardplan.ui.dialogs.fault_dialog import show_bad_file, show_disk_fault
from boardplan.ui.dialogs.new_board_dialog import NewBoardDialog
from boardplan.ui.safety.open_elsewhere import FileHold, ask_overwrite, ask_second_window, say_open_elsewhere
from boardplan.ui.safety.rescue_dialog import RescueDialog
from boardplan.ui.welcome import sample_files
from boardplan.ui.words import tr

_FILTER = "*.json"


class JobFiles:
    """Carries out what is asked about files for a window, which is not named here because it holds this."""

    def __init__(self, window: Any) -> None:  # noqa: ANN401
        self._window = window
        self._hold = FileHold()

    def fill_menus(self) -> None:
        """Fill the menus of the samples and of the files opened last."""
        self._window.samples_menu.clear()
        for path in sample_files():
            self._add_file(self._window.samples_menu, path, self.open_sample)
        self._window.recent_menu.clear()
        for path in self._window.preferences.recent:
            self._add_file(self._window.recent_menu, path, self.open_file)
        self._window.recent_menu.setEnabled(not self._window.recent_menu.isEmpty())

    def _add_file(self, menu: QMenu, path: Path, open_it: Callable[[Path], object]) -> None:
        words = path.stem.replace("-", " ").capitalize() if menu is self._window.samples_menu else str(path)
        action = menu.addAction(words)
        action.triggered.connect(partial(_open_from_menu, open_it, path))

    def new_board(self) -> None:
        """Ask for a sheet and begin a job with it."""
        if not self.may_leave():
            return
        dialog = NewBoardDialog(self._window)
        if dialog.exec() and dialog.plan is not None:
            self._show(Session(dialog.plan), None, "survey")

    def _show(self, session: Session, hold: Hold | None, step: Step) -> None:
        """Put a session on the bench, holding its file or none."""
        self._window.show_session(session, step)
        self._hold.keep(session.path if hold else None, hold)

    def offer_rescued(self) -> None:
        """Offer work that was left behind when the program ended without a goodbye."""
        found = left_behind(rescue_folder())
        if not found:
            return
        dialog = RescueDialog(found, self._window.themes, self._window)
        if not dialog.exec() or dialog.chosen is None or not self.may_leave():
            return
        left, plan = dialog.chosen
        hold = self._hold.take(left.file) if left.file else None
        session = Session.rescued(plan, left.file if hold else None)
        self._show(session, hold, "place")
        self._window.keep_at_once()
        throw_away(left)

    def ask_and_open(self) -> None:
        """Ask for a job file and open it."""
        chosen, _ = QFileDialog.getOpenFileName(
            self._window, tr("Open a job"), self._folder(), tr("Job files ({})").format(_FILTER)
        )
        if chosen:
            self.open_file(Path(chosen))

    def open_file(self, path: Path) -> bool:
        """Open a job file; say what is wrong with it where that fails."""
        if not self.may_leave():
            return False
        hold = self._hold.take(path) if path.exists() else None
        way = ask_second_window(path, self._window) if path.exists() and hold is None else "work"
        if way == "stay":
            return False
        try:
            session = Session.open(path)
        except BadFile as bad:
            self._hold.let_go(hold)
            show_bad_file(bad, self._window)
            return False
        if way == "copy":
            session.path = None
        session.looking = way == "look"
        if hold is not None:
            sweep_parts(path)
        self._window.preferences.remember_file(path)
        self.fill_menus()
        self._show(session, hold, "place" if session.plan.components else "survey")
        return True

    def open_sample(self, path: Path) -> None:
        """Open a copy of a sample: it can be changed, and is saved somewhere else."""
        if not self.may_leave():
            return
        try:
            session = Session.open(path)
        except BadFile as bad:
            show_bad_file(bad, self._window)
            return
        session.path = None
        self._show(session, None, "place")

    def save(self) -> bool:
        """Save the job; ask where, if it has no file yet."""
        session = self._window.open_desk().session
        if session.path is None or session.looking:
            return self.save_as()
        if session.changed_on_disk:
            way = ask_overwrite(session.path, self._window)
            if way != "write":
                return way == "elsewhere" and self.save_as()
        return self.save_to(session.path)

    def save_as(self) -> bool:
        """Ask for a file and save the job to it."""
        session = self._window.open_desk().session
        name = session.plan.job.title.strip().lower().replace(" ", "-").replace("/", "-") or "job"
        wanted = session.path or Path(self._folder()) / f"{name}.json"
        chosen, _ = QFileDialog.getSaveFileName(
            self._window, tr("Save the job"), str(wanted), tr("Job files ({})").format(_FILTER)
        )
        if not chosen:
            return False
        path = Path(chosen)
        return self.save_to(path if path.suffix else path.with_suffix(".json"))

    def save_to(self, path: Path) -> bool:
        """Save the job to a file; say what stands in the way where that fails."""
        hold = self._hold.take(path)
        if hold is None:
            say_open_elsewhere(path, self._window)
            return False
        session = self._window.open_desk().session
        try:
            session.save(path)
        except OSError as error:
            self._hold.let_go(hold)
            show_disk_fault(error, str(path), self._window)
            return False
        session.looking = False
        self._hold.keep(path, hold)
        self._window.preferences.remember_file(path)
        self.fill_menus()
        self._window.show_state()
        return True

    def _folder(self) -> str:
        recent = self._window.preferences.recent
        return str(recent[0].parent) if recent else str(Path.home())

    def may_leave(self) -> bool:
        """Ask about unsaved changes; say whether the job may be left."""
        desk = self._window.desk
        if desk is None or not desk.session.dirty:
            return True
        box = QMessageBox(self._window)
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
            self._window.show_welcome()
            self.let_go()

    def let_go(self) -> None:
        """Let another window have the file: no job is open here any more."""
        self._hold.keep(None, None)


def _open_from_menu(open_it: Callable[[Path], object], path: Path, _checked: bool = False) -> None:  # noqa: FBT001, FBT002
    open_it(path)
