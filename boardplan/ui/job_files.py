"""Job files: new, open, save, close - what the window does with files, and what it asks before it leaves a job."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog, QMenu, QMessageBox

from boardplan.editing.session import Session
from boardplan.files.faults import BadFile
from boardplan.ui.dialogs.fault_dialog import show_bad_file, show_disk_fault
from boardplan.ui.dialogs.new_board_dialog import NewBoardDialog
from boardplan.ui.welcome import sample_files
from boardplan.ui.words import tr

_FILTER = "*.json"


class JobFiles:
    """Carries out what is asked about files for a window, which is not named here because it holds this."""

    def __init__(self, window: Any) -> None:  # noqa: ANN401
        self._window = window

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
            self._window.show_session(Session(dialog.plan))

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
        try:
            session = Session.open(path)
        except BadFile as bad:
            show_bad_file(bad, self._window)
            return False
        self._window.preferences.remember_file(path)
        self.fill_menus()
        self._window.show_session(session, "place" if session.plan.components else "survey")
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
        self._window.show_session(session, "place")

    def save(self) -> bool:
        """Save the job; ask where, if it has no file yet."""
        session = self._window.open_desk().session
        return self.save_to(session.path) if session.path else self.save_as()

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
        try:
            self._window.open_desk().session.save(path)
        except OSError as error:
            show_disk_fault(error, str(path), self._window)
            return False
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


def _open_from_menu(open_it: Callable[[Path], object], path: Path, _checked: bool = False) -> None:  # noqa: FBT001, FBT002
    open_it(path)
