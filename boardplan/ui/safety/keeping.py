"""Keeping: what is not saved is kept aside within seconds of each change, beside the window."""

from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QObject, QThread, QTimer, Signal

from boardplan.editing.session import Session
from boardplan.files.rescue import Rescue, rescue_folder
from boardplan.model.plan import Plan

AFTER = 3000
"""ms from a change to its being kept: less than the ten seconds that a person may lose at most."""


class _KeepWork(QThread):
    """Writes one plan; values that nobody changes need no lock."""

    failed = Signal(str)

    def __init__(self, rescue: Rescue, plan: Plan, file: Path | None, parent: QObject) -> None:
        super().__init__(parent)
        self._rescue, self._plan, self._file = rescue, plan, file

    def run(self) -> None:
        """Write."""
        try:
            self._rescue.keep(self._plan, self._file, datetime.now(UTC))
        except OSError as error:
            self.failed.emit(error.strerror or str(error))


class Keeping(QObject):
    """Follows a session; says so once where work can't be kept."""

    failed = Signal(str)

    def __init__(self, session: Session, parent: QObject, folder: Path | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._kept: Plan | None = None
        self._work: _KeepWork | None = None
        self._said = False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(AFTER)
        self._timer.timeout.connect(self.keep)
        self._rescue = self._place(folder or rescue_folder())
        self._stop = session.listen(self._heard)
        self._heard()

    def _place(self, folder: Path) -> Rescue | None:
        try:
            return Rescue(folder)
        except OSError as error:
            reason = error.strerror or str(error)
            QTimer.singleShot(0, self, lambda: self._fail(reason))  # once somebody listens
            return None

    def _heard(self) -> None:
        """Begin to count when there is something new to keep; forget what was kept once it is saved."""
        if self._rescue is None:
            return
        if not self._session.dirty:
            if self._kept is not None:
                self.forget()
        elif self._session.committed_plan is not self._kept and not self._timer.isActive():
            self._timer.start()

    def keep(self) -> None:
        """Keep the plan as it is, beside the window; if one is being written, this one after it."""
        if self._rescue is None or not self._session.dirty:
            return
        if self._work is not None:
            self._timer.start()
            return
        self._kept = self._session.committed_plan
        work = _KeepWork(self._rescue, self._kept, self._session.path, self)
        work.failed.connect(self._fail)
        work.finished.connect(self._end)
        self._work = work
        work.start()

    def keep_at_once(self) -> None:
        """Keep the plan and wait for it: the program is in trouble. Raises OSError."""
        self._wait()
        if self._rescue is not None and self._session.dirty:
            self._kept = self._session.committed_plan
            self._rescue.keep(self._kept, self._session.path, datetime.now(UTC))

    def _end(self) -> None:
        work, self._work = self._work, None
        if work is not None:
            work.deleteLater()
        self._heard()

    def _fail(self, reason: str) -> None:
        if not self._said:
            self._said = True
            self.failed.emit(reason)

    def _wait(self) -> None:
        if self._work is not None:
            self._work.wait()

    def forget(self) -> None:
        """Throw away what was kept."""
        self._timer.stop()
        self._wait()
        self._kept = None
        if self._rescue is not None:
            try:
                self._rescue.clear()
            except OSError as error:
                self._fail(error.strerror or str(error))

    def close(self) -> None:
        """Leave the job on purpose: nothing of it is kept."""
        self._stop()
        self.forget()
        if self._rescue is not None:
            self._rescue.close()
