"""Session signals: the session's news as Qt signals; the one adapter between the two."""

from PySide6.QtCore import QObject, Signal

from boardplan.editing.known import Known
from boardplan.editing.selection import Selection
from boardplan.editing.session import Session
from boardplan.model.plan import Plan


class SessionSignals(QObject):
    """Says what has changed: what is seen, what is committed, what is selected, how the file stands."""

    seen_changed = Signal()
    """Another plan is to be seen: a preview or a committed one."""
    plan_changed = Signal()
    """The committed plan is another one: panels and menus follow this, not every preview."""
    selection_changed = Signal()
    file_changed = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self._seen: tuple[Plan, Known] = (session.plan, session.known)
        self._plan = session.committed_plan
        self._selection: Selection = session.selection
        self._file = (session.path, session.dirty)
        self._stop = session.listen(self._heard)

    def close(self) -> None:
        """Stop listening."""
        self._stop()

    def _heard(self) -> None:
        session = self.session
        seen = (session.plan, session.known)
        if seen[0] is not self._seen[0] or seen[1] is not self._seen[1]:
            self._seen = seen
            self.seen_changed.emit()
        if session.committed_plan is not self._plan:
            self._plan = session.committed_plan
            self.plan_changed.emit()
        if session.selection != self._selection:
            self._selection = session.selection
            self.selection_changed.emit()
        file = (session.path, session.dirty)
        if file != self._file:
            self._file = file
            self.file_changed.emit()
