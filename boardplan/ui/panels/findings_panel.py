"""Findings panel: what is wrong, the gravest first; going there, accepting it with a name and a reason."""

from collections.abc import Iterator

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.checks.finding import Finding
from boardplan.editing.acceptance_edits import accept_finding, withdraw_acceptance
from boardplan.model.job import Acceptance
from boardplan.model.plan import Plan
from boardplan.model.rule_set import RuleSet
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.accept_dialog import ask_acceptance
from boardplan.ui.panels.freeing import Freeing
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr

_HEADINGS = {
    "stop": "Stops the papers",
    "warn": "Clear it, or accept it with a reason",
    "note": "Worth knowing",
    "accepted": "Accepted",
}


def finding_rows(findings: tuple[Finding, ...]) -> Iterator[Row]:
    """Yield the rows of findings, each group under its heading."""
    for group, words in _HEADINGS.items():
        members = [each for each in findings if (each.severity if each.open else "accepted") == group]
        if members:
            yield Row(("heading", group), tr(words), figure=str(len(members)), heading=True)
        for each in members:
            yield _finding_row(each)


def _finding_row(finding: Finding) -> Row:
    detail = "" if finding.source in finding.sentence else finding.source
    if finding.accepted is not None:
        detail = tr("{}: {}").format(finding.accepted.name, finding.accepted.reason)
    key = (finding.name, finding.things, tuple(finding.place))
    sign = finding.severity if finding.open else "accept"
    return Row(key, finding.sentence, detail, sign=sign, wraps=True, quiet=not finding.open)


class FindingsPanel(QWidget):
    """The list of findings and what can be done about the one picked."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._shown: tuple[Finding, ...] | None = None
        self._title = QLabel(tr("Findings"))
        self._title.setProperty("part", "section")
        self._count = QLabel()
        self._count.setProperty("part", "small")
        self.list = RowList(tr("Findings"), desk.themes.theme)
        self.list.setWordWrap(True)
        self._empty = QLabel()
        self._empty.setWordWrap(True)
        self._empty.setProperty("part", "quiet")
        self._empty.setContentsMargins(8, 0, 8, 0)
        self._accept = QPushButton(tr("Accept..."))
        self._accept.clicked.connect(self.accept)
        self._withdraw = QPushButton(tr("Open it again"))
        self._withdraw.clicked.connect(self.withdraw)
        self.freeing = Freeing(desk)
        self._lay_out()
        self.list.picked.connect(self._picked)
        self.list.acted.connect(self._picked)
        desk.finding_pointed.connect(self._pointed)
        desk.signals.seen_changed.connect(self.refresh)
        self.refresh()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setContentsMargins(8, 0, 8, 0)
        head.addWidget(self._title)
        head.addStretch(1)
        head.addWidget(self._count)
        buttons = QHBoxLayout()
        buttons.setContentsMargins(8, 0, 8, 0)
        buttons.addStretch(1)
        buttons.addWidget(self._withdraw)
        buttons.addWidget(self._accept)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 12, 8, 12)
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(self._empty)
        column.addWidget(self.list, 1)
        column.addWidget(self.freeing)
        column.addLayout(buttons)
        column.addStretch(0)

    @property
    def finding(self) -> Finding | None:
        """The finding picked."""
        key = self.list.key
        if key is None:
            return None
        return next((each for each in self._desk.review.findings if _finding_row(each).key == key), None)

    def refresh(self) -> None:
        """Show the findings as they are now."""
        findings = self._desk.review.findings
        if findings is not self._shown:
            self._show_list(findings)
        self._empty.setText(no_finding_words(self._desk.plan.rules))
        self._show_buttons()

    def _show_list(self, findings: tuple[Finding, ...]) -> None:
        self._shown = findings
        self.list.show_rows(tuple(finding_rows(findings)))
        self._count.setText(_count_words(findings))
        self._empty.setVisible(not findings)
        self.list.setVisible(bool(findings))

    def _pointed(self, finding: Finding | None) -> None:
        """Pick the finding whose sign was clicked on the canvas."""
        if finding is not None:
            self.list.pick(_finding_row(finding).key)
            self._show_buttons()

    def _show_buttons(self) -> None:
        finding = self.finding
        self._accept.setVisible(finding is not None and finding.open and finding.severity != "note")
        self._withdraw.setVisible(finding is not None and not finding.open)
        self.freeing.show_finding(finding)

    def _picked(self, _key: object) -> None:
        self._desk.point_to(self.finding)
        self._show_buttons()

    def accept(self) -> None:
        """Ask who accepts the finding and why."""
        finding = self.finding
        if finding is None or not finding.open:
            return
        answer = ask_acceptance(self._desk, finding, self.window())
        if answer is None:
            return
        name, reason, date = answer

        def accepted(plan: Plan) -> Plan:
            return accept_finding(plan, Acceptance(finding.name, finding.things, name, reason, date, finding.measured))

        self._desk.edit(tr("Accept finding"), accepted)

    def withdraw(self) -> None:
        """Open an accepted finding again."""
        finding = self.finding
        if finding is not None:
            self._desk.edit(
                tr("Open finding again"), lambda plan: withdraw_acceptance(plan, finding.name, finding.things)
            )


def _count_words(findings: tuple[Finding, ...]) -> str:
    still_open = sum(each.open for each in findings)
    accepted = len(findings) - still_open
    return tr("{} open, {} accepted").format(still_open, accepted) if accepted else tr("{} open").format(still_open)


def no_finding_words(rules: RuleSet) -> str:
    """Return what is said where nothing was found: under which rules, never more than that."""
    return tr("No finding under {}, edition {}.").format(rules.name, rules.edition)
