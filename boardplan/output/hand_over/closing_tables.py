"""Closing tables: what stays open at hand-over, what was accepted, the service to come, and who signs."""

from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.checks.review import Review
from boardplan.model.plan import Plan
from boardplan.output.hand_over.points_to_test import family_of, has_ac
from boardplan.output.tables.table import Cell, Column, Row, Table
from boardplan.output.verdict import open_counts

_OPEN_LINES = 4
_PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Service:
    """Work to come: what, when; when is empty where the equipment's sheet or local rules have to say it."""

    what: str
    when: str
    source: str = ""


def services(plan: Plan) -> Iterator[Service]:
    """Yield the service plan of a job, only for what it has."""
    yield Service(
        "Torque of every stud and clamp again", "after 30 days, 1000 km or 50 h, whichever is first", _PRACTICE
    )
    yield Service("Torque of every stud and clamp", "every year after that", _PRACTICE)
    yield Service("Fuse holders: colour, warmth, seat of the fuse", "every year", _PRACTICE)
    if any(_blows(plan, each.id) for each in plan.components.values()):
        yield Service("Filters and air ways cleaned", "")
    if has_ac(plan):
        yield Service("RCD or GFCI: test button; trip time by a licensed person", "")
    yield Service("Battery shut-off worked once, pre-charge tried", "")


def _blows(plan: Plan, component: str) -> bool:
    kind = plan.kind_of(plan.components[component])
    return bool(kind.cooling.intake or kind.cooling.exhaust) or family_of(plan, plan.components[component]) == "fans"


def closing_tables(review: Review) -> Iterator[Table]:
    """Yield service plan, open points, accepted findings, signatures."""
    yield _service(review.plan)
    yield _open_points(review)
    if accepted := _accepted(review):
        yield accepted
    yield _signatures(review.plan)


def _service(plan: Plan) -> Table:
    columns = (
        Column("work", grows=True), Column("when", grows=True), Column("due", "middle"), Column("done by", "middle"),
        Column("date", "middle"),
    )  # fmt: skip
    rows = tuple(
        (
            Cell(each.what),
            Cell(each.when, small=each.source) if each.when else Cell(blank=30),
            Cell(blank=24),
            Cell(blank=24),
            Cell(blank=24),
        )
        for each in services(plan)
    )
    note = "The sheets of the equipment and local rules win over every interval here; an empty one is theirs to say."
    return Table(columns, rows, "Service plan", (note,))


def _open_points(review: Review) -> Table:
    columns = (
        Column("point", grows=True),
        Column("who", "middle"),
        Column("by when", "middle"),
        Column("done", "middle"),
    )
    counts = open_counts(review)
    total = sum(counts.values())
    rows: list[Row] = []
    if total:
        words = f"{total} open {'finding' if total == 1 else 'findings'}: see the sheet of findings"
        small = ", ".join(f"{count} {severity}" for severity, count in counts.items() if count)
        rows.append((Cell(words, small=small), Cell(blank=32), Cell(blank=26), Cell(tick=True)))
    rows += [(Cell(blank=70), Cell(blank=32), Cell(blank=26), Cell(tick=True))] * _OPEN_LINES
    return Table(columns, tuple(rows), "Open points")


def _accepted(review: Review) -> Table | None:
    rows = tuple(
        (
            Cell(", ".join(each.things), bold=True),
            Cell(each.sentence),
            Cell(f"{each.accepted.name} {each.accepted.date}".strip(), small=each.accepted.reason),
        )
        for each in review.findings
        if each.accepted
    )
    columns = (Column("what"), Column("deviation", grows=True), Column("accepted by", grows=True))
    return Table(columns, rows, "Deviations that somebody accepted") if rows else None


def _signatures(plan: Plan) -> Table:
    columns = (Column("for"), Column("name", grows=True), Column("date", "middle"), Column("signature", grows=True))
    who = ["lead", "customer"]
    who += ["licensed for AC"] if has_ac(plan) else []
    rows = tuple((Cell(each, bold=True), Cell(blank=40), Cell(blank=26), Cell(blank=50)) for each in who)
    return Table(
        columns, rows, "Signatures", ("Signed: the tests above were done and their values are those measured.",)
    )
