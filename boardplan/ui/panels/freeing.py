"""Freeing: what would give a cable without a way one, or one that a channel is too shallow for another channel.

Asked for by a button, worked out beside the window.
"""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.checks.finding import Finding
from boardplan.editing.channel_edits import set_channel_section
from boardplan.editing.component_edits import move_components
from boardplan.model.plan import Plan
from boardplan.routing.what_frees import Freed, what_frees
from boardplan.ui.aside import Aside
from boardplan.ui.desk import Desk
from boardplan.ui.panels.thing_fields import sections_of
from boardplan.ui.words import tr

_NOTHING = {
    "cable-without-way": "Nothing that was tried gives it a way: move units farther apart, or draw a channel.",
    "cable-too-thick-for-channel": "No deeper section within reach has room there: lay it outside.",
}
"""The findings that something is offered for, and what is said where nothing helps."""


class Freeing(QWidget):
    """A button below the findings, and the answers with what can be done at once."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._about, self._cable, self._plan = "", "", desk.plan
        self.ask = QPushButton(tr("What would free it?"))
        self.ask.clicked.connect(self._begin)
        self._busy = QLabel(tr("Trying out what would give it a way ..."))
        self._busy.setProperty("part", "quiet")
        self._busy.setWordWrap(True)
        self.answers = QVBoxLayout()
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 0, 8, 0)
        column.addWidget(self.ask, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self._busy)
        column.addLayout(self.answers)
        self.show_finding(None)

    def show_finding(self, finding: Finding | None) -> None:
        """Offer the question for a finding of a cable without a way; take answers away that are about another plan."""
        plan = self._desk.session.committed_plan
        about = finding.name if finding is not None and finding.name in _NOTHING else ""
        cable = next((each for each in finding.things if each in plan.cables), "") if about and finding else ""
        if (about, cable) != (self._about, self._cable) or plan is not self._plan:
            self._about, self._cable, self._plan = about, cable, plan
            self._clear()
            self.ask.setVisible(bool(cable))
            self._busy.setVisible(False)
        self.setVisible(bool(cable))

    def _begin(self) -> None:
        plan, cable = self._plan, self._cable
        self.ask.setVisible(False)
        self._busy.setVisible(True)
        sections = sections_of(self._desk.shelf)
        Aside(partial(what_frees, plan, cable, sections), partial(self._answer, plan, cable), self._desk).start()

    def _answer(self, plan: Plan, cable: str, found: tuple[Freed, ...]) -> None:
        """Show what was found, unless something else is looked at by now."""
        if plan is not self._plan or cable != self._cable:
            return
        self._busy.setVisible(False)
        if not found:
            self._line(tr(_NOTHING[self._about]))
        for each in found:
            self._line(each.words, each)

    def _line(self, words: str, freed: Freed | None = None) -> None:
        row = QHBoxLayout()
        label = QLabel(words)
        label.setWordWrap(True)
        label.setProperty("part", "small")
        row.addWidget(label, 1)
        if freed is not None and (freed.component or freed.channel):
            button = QPushButton(tr("Do so"))
            button.setAccessibleName(tr("Do so: {}").format(words))
            button.clicked.connect(partial(self._do, freed))
            row.addWidget(button)
        holder = QWidget()
        row.setContentsMargins(0, 0, 0, 0)
        holder.setLayout(row)
        self.answers.addWidget(holder)

    def _do(self, freed: Freed) -> None:
        section = freed.section
        if section is not None:
            words = tr("Another section for {}").format(freed.channel)
            self._desk.edit(words, lambda plan: set_channel_section(plan, freed.channel, section))
            return
        self._desk.edit(
            tr("Move {} to free a cable").format(freed.component),
            lambda plan: move_components(plan, [freed.component], freed.by),
        )

    def _clear(self) -> None:
        while (held := self.answers.takeAt(0)) is not None:
            if (widget := held.widget()) is not None:
                widget.hide()
                widget.deleteLater()
