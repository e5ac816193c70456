"""Idle look: what is only looked for once the hand rests and the review is done - where cables cross."""

from PySide6.QtCore import QObject, QTimer, Signal

from boardplan.model.plan import Plan
from boardplan.routing.together.crossings import Crossing, crossings_of
from boardplan.ui.canvas.crossing_marks import CrossingMarks, count_words
from boardplan.ui.desk import Desk

_REST = 250
"""Milliseconds without a change that count as rest."""


class IdleLook(QObject):
    """Marks crossings in the Wire step; takes the marks away as soon as ways change."""

    counted = Signal(str)
    """How many crossings are marked that are not square, in words; nothing while that isn't known."""

    def __init__(self, desk: Desk, marks: CrossingMarks, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._marks = desk, marks
        self._of: object = None
        self._found: tuple[Crossing, ...] = ()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_REST)
        self._timer.timeout.connect(self.look)
        desk.signals.seen_changed.connect(self.wait)
        desk.step_changed.connect(self.wait)
        desk.themes.changed.connect(self.look)
        self.wait()

    def wait(self) -> None:
        """Look again after a rest; marks of ways that are no more are taken away now."""
        if self._desk.review.ways is not self._of or self._desk.step != "wire":
            self._marks.show_crossings((), self._desk.themes.theme)
            self.counted.emit("")
            self._of = None
        if self._desk.step == "wire":
            self._timer.start()

    def look(self) -> None:
        """Mark the crossings of what is seen."""
        session = self._desk.session
        if self._desk.step != "wire" or session.behind or session.plan is not session.committed_plan:
            return
        known = session.known
        if known.crossings is None and self._desk.reviewing.elsewhere:
            return  # the other process tells them when it has found them
        if known.ways is not self._of:
            self._of = known.ways
            self._found = crossings_of(session.plan, known.ways) if known.crossings is None else known.crossings
        widths = [_thinner(session.plan, each) for each in self._found]
        self._marks.show_crossings(self._found, self._desk.themes.theme, widths)
        self.counted.emit(count_words(self._found))


def _thinner(plan: Plan, crossing: Crossing) -> float:
    """Return how thick the thinner of two cables that cross is, in mm."""
    return min(plan.conductors[plan.cables[each].conductor].outside_diameter for each in crossing.cables)
