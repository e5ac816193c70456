"""Desk: what everything beside the window shares - the open session, the shelf, the theme, the step of the job."""

from collections.abc import Callable
from typing import Literal, TypeAlias

from PySide6.QtCore import QObject, QThread, Signal

from boardplan.checks.finding import Finding
from boardplan.editing.known import Known
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.session import Session
from boardplan.files.own_shelf import shelf_in_reach
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.ui.preferences import Preferences
from boardplan.ui.reviewing import Reviewing
from boardplan.ui.session_signals import SessionSignals
from boardplan.ui.theme import Themes

Step: TypeAlias = Literal["survey", "place", "wire", "pack"]
STEPS: tuple[Step, ...] = ("survey", "place", "wire", "pack")


class Desk(QObject):
    """One open job and how it is being worked on."""

    said = Signal(str)
    """A sentence for the status line: why an edit was refused."""
    step_changed = Signal()
    tool_asked = Signal(str)
    """A tool is about to be taken in hand."""
    tool_changed = Signal()
    finding_pointed = Signal(object)
    """Show a Finding on the canvas, or (none) no longer."""
    shelf_changed = Signal()
    """A person's own kinds are others now."""
    place_asked = Signal()
    """Bring what is selected into sight."""

    def __init__(self, session: Session, themes: Themes, preferences: Preferences, parent: QObject) -> None:
        super().__init__(parent)
        self.session = session
        self.signals = SessionSignals(session, self)
        self.reviewing = Reviewing(session, self)
        self.themes = themes
        self.preferences = preferences
        self.step: Step = "survey"
        self.tool = "select"
        self._board = ""

    def close(self) -> None:
        """Let go of the session, once what is worked out beside it is done."""
        for aside in self.findChildren(QThread):
            aside.wait()
        self.reviewing.close()
        self.signals.close()

    @property
    def shelf(self) -> Shelf:
        """All kinds, conductors and fasteners within reach."""
        return shelf_in_reach()

    @property
    def plan(self) -> Plan:
        """What is to be seen now."""
        return self.session.plan

    @property
    def review(self) -> Known:
        """What is known of it so far."""
        return self.session.known

    @property
    def board(self) -> Board:
        """The board in hand: that of what is selected last, otherwise the one before."""
        plan = self.plan
        active = plan.things.get(self.session.selection.active or "")
        held = active.id if isinstance(active, Board) else getattr(active, "board", self._board)
        if held not in plan.boards:
            held = next(iter(plan.boards))
        self._board = held
        return plan.boards[held]

    def edit(self, words: str, edit: Callable[[Plan], Plan], select: tuple[str, ...] | None = None) -> bool:
        """Commit an edit of the plan; say why where it is refused."""
        try:
            plan = edit(self.session.committed_plan)
        except EditRefused as refused:
            self.session.preview(None)
            self.said.emit(refused.sentence)
            return False
        self.said.emit("")
        self.session.commit(plan, words)
        if select is not None:
            self.session.select(Selection(select))
        return True

    def add(self, words: str, edit: Callable[[Plan], tuple[Plan, str]]) -> str | None:
        """Commit an edit that adds a thing, select the thing and return its reference."""
        added: list[str] = []

        def only_plan(plan: Plan) -> Plan:
            changed, reference = edit(plan)
            added.append(reference)
            return changed

        if not self.edit(words, only_plan):
            return None
        self.session.select(Selection((added[0],)))
        return added[0]

    def select(self, *ids: str) -> None:
        """Select things and bring them into sight."""
        self.session.select(Selection(ids))
        self.place_asked.emit()

    def go_to(self, step: Step) -> None:
        """Go to a step of the job."""
        if step != self.step:
            self.step = step
            self.take("select")
            self.step_changed.emit()

    def take(self, tool: str) -> None:
        """Take a tool in hand, once it has what it needs."""
        self.tool_asked.emit(tool)
        self.tool = tool
        self.tool_changed.emit()

    def point_to(self, finding: Finding | None) -> None:
        """Show where a finding is and select what it concerns."""
        if finding is not None:
            self.session.select(Selection(finding.things))
        self.finding_pointed.emit(finding)
