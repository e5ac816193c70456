"""Open elsewhere: a job file that another window has open, or that was written by somebody else meanwhile."""

from pathlib import Path
from typing import Literal, TypeAlias

from PySide6.QtWidgets import QMessageBox, QWidget

from boardplan.files.hold import Hold, hold_for, take_hold
from boardplan.files.own_folders import state_folder
from boardplan.ui.words import tr

Choice: TypeAlias = Literal["look", "copy", "stay"]
Overwrite: TypeAlias = Literal["write", "elsewhere", "stay"]


class FileHold:
    """Which job file this window has open, so that a second window does not write over it."""

    def __init__(self) -> None:
        self._hold: Hold | None = None
        self._file: Path | None = None

    def take(self, file: Path) -> Hold | None:
        """Return a hold on a file, that of this window where it has it already; none where another window has it.

        A disk on which nothing can be held stands in nobody's way: then the file is not held.
        """
        if self._hold is not None and self._file == file.resolve():
            return self._hold
        try:
            return take_hold(hold_for(file, state_folder() / "open"))
        except OSError:
            return _Free(file)

    def let_go(self, hold: Hold | None) -> None:
        """Let go of a hold that was taken for nothing; that of the open file stays."""
        if hold is not None and hold is not self._hold:
            hold.release()

    def keep(self, file: Path | None, hold: Hold | None) -> None:
        """Keep a hold in the place of the one before, or none."""
        if self._hold is not None and self._hold is not hold:
            self._hold.release()
        self._hold, self._file = hold, file.resolve() if file else None


class _Free(Hold):
    """A hold on nothing."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def release(self) -> None:
        """There is nothing to let go of."""


def ask_second_window(file: Path, parent: QWidget) -> Choice:
    """Ask what to do with a file that another window has open."""
    box = QMessageBox(parent)
    box.setWindowTitle(tr("Open in another window"))
    box.setText(tr("{} is open in another window.").format(file.name))
    box.setInformativeText(tr("Only one window at a time may save it, so that nobody's work is written over."))
    look = box.addButton(tr("Look at it"), QMessageBox.ButtonRole.AcceptRole)
    copy = box.addButton(tr("Work on a copy"), QMessageBox.ButtonRole.AcceptRole)
    box.addButton(tr("Leave it"), QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(look)
    box.exec()
    chosen = box.clickedButton()
    return "look" if chosen is look else "copy" if chosen is copy else "stay"


def ask_overwrite(file: Path, parent: QWidget) -> Overwrite:
    """Ask whether to write over a file that somebody else has changed since it was read."""
    box = QMessageBox(parent)
    box.setWindowTitle(tr("Changed by somebody else"))
    box.setText(tr("{} is not as it was when it was opened here.").format(file.name))
    box.setInformativeText(
        tr("Another program or another person has written it, or taken it away. What it holds now is kept beside it.")
    )
    elsewhere = box.addButton(tr("Save under another name..."), QMessageBox.ButtonRole.AcceptRole)
    write = box.addButton(tr("Write over it"), QMessageBox.ButtonRole.DestructiveRole)
    box.addButton(tr("Don't save"), QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(elsewhere)
    box.exec()
    chosen = box.clickedButton()
    return "write" if chosen is write else "elsewhere" if chosen is elsewhere else "stay"


def say_open_elsewhere(file: Path, parent: QWidget) -> None:
    """Say that a file can't be written because another window has it open."""
    text = tr("{} is open in another window. Choose another name.").format(file.name)
    QMessageBox.information(parent, tr("Open in another window"), text)
