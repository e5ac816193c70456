"""Session: the open plan with its history, selection, file and review; it tells listeners what changed."""

from collections.abc import Callable
from pathlib import Path

from boardplan.checks.review import Review, refreshed, review_of
from boardplan.editing.history import History
from boardplan.editing.selection import Selection
from boardplan.files.plan_file import load_plan, save_plan
from boardplan.model.plan import Plan

Listener = Callable[[], None]


class Session:
    """The one place that holds what is open. A gesture previews as often as it likes and commits once."""

    def __init__(self, plan: Plan, path: Path | None = None) -> None:
        """Open a plan, and say which file it came from."""
        self._history = History((plan,))
        self._saved = plan
        self._preview: Plan | None = None
        self._review = review_of(plan)
        self.path = path
        self.selection = Selection()
        self._listeners: list[Listener] = []

    @classmethod
    def open(cls, path: Path) -> "Session":
        """Return a session on a job file. Raises BadFile."""
        return cls(load_plan(path), path)

    @property
    def plan(self) -> Plan:
        """What is to be seen now: the preview of a gesture, or the plan."""
        return self._preview or self._history.plan

    @property
    def committed_plan(self) -> Plan:
        """The plan without the preview of an unfinished gesture."""
        return self._history.plan

    @property
    def history(self) -> History:
        """All plans so far."""
        return self._history

    @property
    def review(self) -> Review:
        """Routes, lengths and findings of what is to be seen now."""
        return self._review

    @property
    def dirty(self) -> bool:
        """Whether the plan differs from its file."""
        return self._history.plan is not self._saved and self._history.plan != self._saved

    @property
    def title(self) -> str:
        """What the window is headed by: the job, its revision, the file, and whether it is saved."""
        job = self._history.plan.job
        file = self.path.name if self.path else "not saved yet"
        return f"{job.title}, revision {job.revision} ({file}{', changed' if self.dirty and self.path else ''})"

    @property
    def words(self) -> tuple[str, ...]:
        """What was done up to the present plan, the newest first."""
        return tuple(reversed(self._history.words[: self._history.at]))

    def listen(self, listener: Listener) -> Callable[[], None]:
        """Call a function after every change; returns one that stops it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    def preview(self, plan: Plan | None) -> None:
        """Show an unfinished plan, or with none go back to the committed one."""
        self._preview = None if plan is self._history.plan else plan
        self._show()

    def commit(self, plan: Plan, words: str, selection: Selection | None = None) -> None:
        """Make a plan the present one; words are for the Undo menu. An unchanged plan leaves no step behind.

        Things that come with the plan can be selected in the same breath.
        """
        self._preview = None
        if plan is not self._history.plan and plan != self._history.plan:
            self._history = self._history.committed(plan, words)
        if selection is not None:
            self.selection = selection
        self._show()

    def undo(self) -> None:
        """Go one step back."""
        self._preview = None
        self._history = self._history.undone()
        self._show()

    def redo(self) -> None:
        """Go one step on."""
        self._preview = None
        self._history = self._history.redone()
        self._show()

    def select(self, selection: Selection) -> None:
        """Change what is selected."""
        self.selection = selection.kept_in(self.plan.things)
        self._tell()

    def save(self, path: Path | None = None) -> None:
        """Write the plan to its file or another one. Raises OSError; the plan stays as it is."""
        target = path or self.path
        if target is None:
            raise ValueError("a new plan needs a file name")
        save_plan(self._history.plan, target)
        self.path = target
        self._saved = self._history.plan
        self._tell()

    def _show(self) -> None:
        """Bring review and selection up to what is to be seen; a plan just previewed is not reviewed again."""
        if self._review.plan is not self.plan:
            self._review = refreshed(self._review, self.plan)
        self.selection = self.selection.kept_in(self.plan.things)
        self._tell()

    def _tell(self) -> None:
        for listener in tuple(self._listeners):
            listener()
