"""Session: the open plan with its history, selection, file and review; it tells listeners what changed."""

from collections.abc import Callable
from pathlib import Path

from boardplan.checks.review import Review, refreshed, review_of
from boardplan.editing.history import History
from boardplan.editing.known import Known, known_of
from boardplan.editing.selection import Selection
from boardplan.editing.stretched import drawn_along
from boardplan.files.plan_file import file_stamp, load_plan, save_plan
from boardplan.model.plan import Plan

Listener = Callable[[], None]


class Session:
    """The one place that holds what is open. A gesture previews as often as it likes and commits once.

    Where somebody else reviews (`review_elsewhere`), what is `known` of the plan is shown at once, with the cables
    drawn along; what the review finds is brought by `take`.
    """

    def __init__(self, plan: Plan, path: Path | None = None) -> None:
        """Open a plan, and say which file it came from."""
        self._history = History((plan,))
        self._saved: Plan | None = plan
        self._stamp = ""
        self._preview: Plan | None = None
        self._review = review_of(plan)
        self._settled = self._base = self._known = known_of(self._review)
        self._ask: Callable[[Plan], None] | None = None
        self.path = path
        self.looking = False
        """Whether the file belongs to another window, so that it is only looked at here."""
        self.selection = Selection()
        self._listeners: list[Listener] = []

    @classmethod
    def open(cls, path: Path) -> "Session":
        """Return a session on a job file. Raises BadFile."""
        stamp = file_stamp(path)
        session = cls(load_plan(path), path)
        session._stamp = stamp
        return session

    @classmethod
    def rescued(cls, plan: Plan, path: Path | None) -> "Session":
        """Return a session on a plan that was never saved as it is, to a file or to none."""
        session = cls(plan, path)
        session._saved = None
        session._stamp = file_stamp(path) if path else ""
        return session

    @property
    def changed_on_disk(self) -> bool:
        """Whether somebody else has written the file since it was read or saved here, or taken it away."""
        return self.path is not None and bool(self._stamp) and file_stamp(self.path) != self._stamp

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
        """Routes, lengths and findings of what is to be seen now; worked out now, where that is under way elsewhere."""
        self._review = refreshed(self._review, self.plan)
        return self._review

    @property
    def known(self) -> Known:
        """What is known of what is to be seen now."""
        return self._known

    @property
    def settled(self) -> Known:
        """What was known last of the committed plan, or one committed before it."""
        return self._settled

    @property
    def behind(self) -> bool:
        """Whether the review of what is to be seen is still under way."""
        return self._base.plan is not self.plan

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
        """Write the plan to its file or another one; what that held stays beside it, one version back.

        Raises OSError; the plan stays as it is.
        """
        target = path or self.path
        if target is None:
            raise ValueError("a new plan needs a file name")
        self._stamp = save_plan(self._history.plan, target, keep_before=True)
        self.path = target
        self._saved = self._history.plan
        self._tell()

    def review_elsewhere(self, ask: Callable[[Plan], None] | None) -> None:
        """Have plans reviewed by somebody else, who is asked here and answers by `take`; with none here again."""
        self._ask = ask
        if self.behind:
            self._show()

    def take(self, known: Known) -> None:
        """Take what is known of a plan that was asked for; if it was overtaken by now, the newer one is drawn along."""
        if self.behind or known.plan is self.plan:
            self._base = known
            self._know()
            self._tell()

    def _show(self) -> None:
        """Bring review and selection up to what is to be seen; a plan just previewed is not reviewed again."""
        if self._settled.plan is self.plan:
            self._base = self._settled
        elif self.behind and self._ask is not None:
            self._ask(self.plan)
        elif self.behind:
            self._base = known_of(self.review)
        self._know()
        self.selection = self.selection.kept_in(self.plan.things)
        self._tell()

    def _know(self) -> None:
        self._known = drawn_along(self._base, self.plan)
        if self._base.plan is self._history.plan:
            self._settled = self._base

    def _tell(self) -> None:
        for listener in tuple(self._listeners):
            listener()
