"""Re-measure list: what to measure on arrival, what hangs on it, and a box for what the tape says."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from boardplan.geometry.units import inches_text, tidy_number
from boardplan.model.plan import Plan
from boardplan.model.trust import Trust
from boardplan.output.records_of_job import number
from boardplan.output.survey.doubtful import FALLING, Doubtful, unsaid
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table

FOOTER = (
    "Estimated dimension - verify on site. Nothing is cut to a number on this list before it is measured. Left and "
    "right as seen from the front."
)
_GROUPS: Mapping[Trust, tuple[str, str]] = {
    "estimated": ("E  Estimated dimension - verify on site", "nothing that hangs on it is final before"),
    "photo": ("P  Scaled from a photo or drawing", ""),
    "customer": ("C  Given by the customer", ""),
}
_COLUMNS = (
    Column("what"), Column("where", grows=True), Column("dimension"), Column("now mm", "end"),
    Column("measured", "middle"), Column("who, when", "middle"), Column("what hangs on it", grows=True),
)  # fmt: skip


def re_measure_tables(plan: Plan, found: Sequence[Doubtful]) -> tuple[Table, ...]:
    """Return the list, the least trusted first."""
    rows: list[Row] = []
    for trust in FALLING:
        members = [each for each in found if each.trust == trust]
        if members:
            rows.append(Heading(*_GROUPS[trust]))
            rows += [row for each in members for row in _rows(plan, each)]
    return (Table(_COLUMNS, tuple(rows), notes=tuple(_notes(plan, found))),)


def _notes(plan: Plan, found: Sequence[Doubtful]) -> Iterator[str]:
    if not found:
        yield "Of nothing in this job it is said that it was estimated, scaled from a photo or given by the customer."
    yield "Hook the tape, read twice, write what it says; then enter it in the job and print the papers again."
    if words := unsaid_words(plan):
        yield words


def unsaid_words(plan: Plan) -> str:
    """Return in a sentence of what nobody said how it was measured, nothing where it was said of everything."""
    parts = [f"{words} ({count} of {total})" for words, count, total in unsaid(plan)]
    return f"Nobody said how these were measured: {', '.join(parts)}." if parts else ""


def _rows(plan: Plan, each: Doubtful) -> Iterator[Row]:
    alert = f"NOT FINAL: {', '.join(each.not_final)}" if each.not_final else ""
    for index, (name, value) in enumerate(each.dimensions):
        inches = f"{inches_text(value)} in" if plan.job.units == "inch" else ""
        first = index == 0
        yield (
            Cell(each.thing, bold=True, small=each.sort) if first else Cell(small=each.thing),
            Cell(each.where) if first else Cell(),
            Cell(name),
            Cell(tidy_number(value), small=inches, bold=True),
            Cell(blank=26),
            Cell(blank=34),
            Cell(each.hangs_on, alert=alert) if first else Cell(),
        )


def re_measure_listing(found: Sequence[Doubtful]) -> Listing:
    """Return the list, a row for each dimension."""
    heads = ("thing", "sort", "where", "dimension", "now_mm", "trust", "not_final", "what_hangs_on_it")
    return Listing(
        "Re-measure list",
        (*heads, "measured_mm", "who", "date"),
        tuple(
            (
                each.thing, each.sort, each.where, name, value, each.trust, "; ".join(each.not_final), each.hangs_on,
                None, None, None,
            )
            for each in found
            for name, value in each.dimensions
        ),
    )  # fmt: skip


def re_measure_records(plan: Plan, found: Sequence[Doubtful]) -> dict[str, Any]:
    """Return the list as plain values for JSON, and of how many things nobody said how they were measured."""
    return {
        "things": [
            {
                "thing": each.thing,
                "sort": each.sort,
                "where": each.where,
                "trust": each.trust,
                "dimensions": [{"name": name, "now": number(value)} for name, value in each.dimensions],
                "hangs_on": each.hangs_on,
                "not_final": list(each.not_final),
            }
            for each in found
        ],
        "unsaid": [{"what": words, "count": count, "of": total} for words, count, total in unsaid(plan)],
    }
