"""Findings list: what stops, what is to clear, what is worth knowing, and what somebody accepted and why."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.review import Review
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Table
from boardplan.output.verdict import verdict_words

FOOTER = (
    "Positions and lengths only: no finding is no proof that an installation is safe. Equipment instructions and "
    "local rules win; a competent, licensed person approves the electrical design."
)
_GROUPS = (
    ("stop", "Stops the papers"),
    ("warn", "To clear, or to accept by name and with a reason"),
    ("note", "Worth knowing"),
    ("accepted", "Accepted"),
)
_COLUMNS = (Column("seen", "middle"), Column("what"), Column("finding", grows=True), Column("accepted by", grows=True))


def findings_tables(review: Review) -> tuple[Table, ...]:
    """Return all findings as one table, grouped by what there is to do; accepted ones are never left out."""
    rows: list[Heading | tuple[Cell, ...]] = []
    for group, words in _GROUPS:
        members = [each for each in review.findings if _group(each) == group]
        if members:
            rows.append(Heading(words, str(len(members))))
            rows += [_row(each) for each in members]
    verdict = verdict_words(review)
    return (Table(_COLUMNS, tuple(rows), f"{verdict[0].upper()}{verdict[1:]}"),)


def _group(finding: Finding) -> str:
    return finding.severity if finding.open else "accepted"


def _row(finding: Finding) -> tuple[Cell, ...]:
    accepted = finding.accepted
    return (
        Cell(tick=True),
        Cell(", ".join(finding.things), bold=True, small=f"board {finding.board}" if finding.board else ""),
        Cell(finding.sentence, small=finding.name),
        Cell(f"{accepted.name} {accepted.date}".strip(), small=accepted.reason) if accepted else Cell(),
    )


def findings_listing(review: Review) -> Listing:
    """Return all findings, gravest first, accepted ones too; places are from the lower left of their board."""
    heads = (
        "state", "severity", "finding", "sentence", "things", "board", "x_mm", "y_mm",
        "measured", "limit", "unit", "source", "accepted_by", "accepted_on", "reason",
    )  # fmt: skip
    return Listing("Findings", heads, tuple(tuple(_listed(each)) for each in review.findings))


def _listed(finding: Finding) -> Iterator[str | float | None]:
    accepted = finding.accepted
    yield from ("open" if finding.open else "accepted", finding.severity, finding.name, finding.sentence)
    yield from (", ".join(finding.things), finding.board, finding.place.x, finding.place.y)
    yield from (finding.measured, finding.limit, finding.unit, finding.source)
    yield from (accepted.name, accepted.date, accepted.reason) if accepted else (None, None, None)
