"""Reviewing: has the plans of a large job reviewed in another process, and brings what comes of it to the session."""

from PySide6.QtCore import QObject, Signal

from boardplan.editing.known import Known
from boardplan.editing.reviewer import Reviewer
from boardplan.editing.session import Session

MANY = 60
"""Cables from which on a review after a move takes longer than a hand on the mouse waits."""
SLOW = 0.06
"""Seconds a preview may take before reviews go elsewhere whatever the number of cables: some computers are slow."""


class Reviewing(QObject):
    """Begins a reviewer when a job needs one; without it the session reviews by itself."""

    _told = Signal(object)
    _failed = Signal()

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self.reviewer: Reviewer | None = None
        self._told.connect(self._take)
        self._failed.connect(self.stop)
        if len(session.plan.cables) >= MANY:
            self.begin()

    @property
    def elsewhere(self) -> bool:
        """Whether another process reviews."""
        return self.reviewer is not None

    def begin(self) -> None:
        """Have plans reviewed elsewhere from now on."""
        if self.reviewer is None:
            self.reviewer = Reviewer(self._session.settled, self._told.emit, self._failed.emit)
            self._session.review_elsewhere(self.reviewer.ask)

    def _take(self, known: Known) -> None:
        if self.reviewer is not None:
            self._session.take(known)

    def stop(self) -> None:
        """Review here again: the other process is gone."""
        reviewer, self.reviewer = self.reviewer, None
        if reviewer is not None:
            reviewer.close()
            self._session.review_elsewhere(None)

    def close(self) -> None:
        """End the other process; what is open is let go of."""
        reviewer, self.reviewer = self.reviewer, None
        if reviewer is not None:
            reviewer.close()
