"""Fuse schedule: every fuse and breaker with its rating, or a blank for it, and the cables that it protects."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from boardplan.geometry.units import inches_text, tidy_number
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.output.hand_over.fuse_rows import FusedSide, FuseRow
from boardplan.output.records_of_job import number
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Table
from boardplan.routing.lengths.end_work import size_words, work_at_ends
from boardplan.routing.lengths.fuse_distance import FuseRun

FOOTER = (
    "This sheet sizes no fuse and no cable; a competent person approves the electrical design. Main fuse last, after "
    "polarity is proved."
)
_HOW = (
    "Ratings are those that the job gives; an empty box asks the designer of the system. Protects: the cables up to "
    "the next fuse or bus. A main battery fuse must be able to break what the battery bank delivers into a short."
)
_COLUMNS = (
    Column("place", grows=True), Column("type", grows=True), Column("rating A", "end"), Column("voltage V", "end"),
    Column("breaks kA", "end"), Column("protects", grows=True), Column("fuse distance mm", "end"),
    Column("fed by", grows=True), Column("spares kept", grows=True), Column("fitted", "middle"),
)  # fmt: skip
_MOST_LINES = 8
"""On paper; the spreadsheet has all."""
_Question = tuple[str, Callable[[FuseRow], bool]]
_QUESTIONS: tuple[_Question, ...] = (
    ("which type of fuse or breaker?", lambda row: not row.fuse.type),
    ("which rating? The designer's to say", lambda row: row.fuse.rating_a is None),
    ("which voltage is it made for?", lambda row: row.fuse.voltage_v is None),
    (
        "which breaking capacity? More than a short can deliver there",
        lambda row: row.fuse.breaking_capacity_ka is None,
    ),
    ("where are its spares kept?", lambda row: not row.fuse.spare and not row.place.breaker),
    ("which side is fed? The plan doesn't say", lambda row: row.side_unknown),
)


def fuse_tables(plan: Plan, rows: Sequence[FuseRow]) -> tuple[Table, ...]:
    """Return the schedule, then what is to be decided."""
    schedule = Table(_COLUMNS, tuple(_row(plan, each) for each in rows), notes=(_HOW, *_inside_boxes(plan)))
    asked = tuple((Cell(question), Cell(", ".join(names))) for question, names in questions(rows))
    if not asked:
        return (schedule,)
    return schedule, Table((Column("question", grows=True), Column("of", grows=True)), asked, "To decide")


def questions(rows: Sequence[FuseRow]) -> Iterator[tuple[str, list[str]]]:
    """Yield what nobody has said yet, and of which places; a spare place is not asked about."""
    for question, missing in _QUESTIONS:
        names = [row.place.name for row in rows if not row.spare and missing(row)]
        if names:
            yield question, names


def _inside_boxes(plan: Plan) -> Iterator[str]:
    boxes = [each.id for each in plan.components.values() if plan.kind_of(each).family == "AC distribution"]
    if boxes:
        yield f"Breakers and RCDs inside {', '.join(boxes)}: on the sheet of whoever is licensed for the AC side."


def _row(plan: Plan, row: FuseRow) -> tuple[Cell, ...]:
    fuse, component = row.fuse, plan.components[row.place.component]
    ask = not row.spare
    return (
        Cell(row.place.name, small=component.label or plan.kind_of(component).name, bold=True),
        Cell(blank=30) if ask and not fuse.type else Cell(fuse.type, small=fuse.note),
        _figure(fuse.rating_a, ask=ask, bold=True),
        _figure(fuse.voltage_v, ask=ask),
        _figure(fuse.breaking_capacity_ka, ask=ask),
        _protects(plan, row),
        Cell("\n".join(tidy_number(each.length) for each in row.feeds), small=_distance_words(plan, row.feeds)),
        Cell("\n".join(f"{each.cable} from {each.source}" for each in row.feeds)),
        Cell(fuse.spare) if fuse.spare or row.spare or row.place.breaker else Cell(blank=16),
        Cell(tick=True),
    )


def _figure(value: float | None, *, ask: bool, bold: bool = False) -> Cell:
    if value is None:
        return Cell(blank=11) if ask else Cell()
    return Cell(f"{value:g}", bold=bold)


def _distance_words(plan: Plan, feeds: Sequence[FuseRun]) -> str:
    inches = [f"{inches_text(each.length)} in" for each in feeds if plan.job.units == "inch"]
    free = [f"{tidy_number(each.free)} in the open" for each in feeds if each.free < each.length]
    return "\n".join([*inches, *free])


def _protects(plan: Plan, row: FuseRow) -> Cell:
    if row.spare:
        return Cell("spare")
    if not row.place.terminals:
        return Cell(alert="which cables?")
    sides = [each for each in row.sides if each.cables]
    if not sides:
        return Cell(alert="NO CABLE YET")
    named = len(sides) > 1
    lines = [words for side in sides for words in _side_words(plan, side, named=named)]
    if (more := len(lines) - _MOST_LINES) > 1:
        lines = [*lines[:_MOST_LINES], f"and {more} more joined to these: see fuse-schedule.csv"]
    return Cell("\n".join(lines))


def _side_words(plan: Plan, side: FusedSide, *, named: bool) -> Iterator[str]:
    for cable in side.cables:
        words = f"{_count_words(cable)}{cable.label or cable.id}  {size_words(plan.conductors[cable.conductor])}"
        first, second = (each.place for each in work_at_ends(plan, cable))
        yield f"{f'{side.terminal}: ' if named else ''}{words}  {first} > {second}"
    for bus in side.buses:
        yield f"and what is on {bus} without a fuse of its own"


def _count_words(cable: Cable) -> str:
    return f"{cable.count} x " if cable.count > 1 else ""


_HEADS = (
    "place", "component", "sort", "kind", "type", "rating_a", "voltage_v", "breaking_capacity_ka", "protects", "sizes",
    "fed_by", "fed_from", "fuse_distance_mm", "in_the_open_mm", "spares_kept", "note", "spare_place",
)  # fmt: skip


def fuse_listing(plan: Plan, rows: Sequence[FuseRow]) -> Listing:
    """Return the schedule, a row for each place; what nobody said is an empty cell."""
    return Listing("Fuse schedule", _HEADS, tuple(tuple(_listed(plan, each)) for each in rows))


def _listed(plan: Plan, row: FuseRow) -> Iterator[Value]:
    fuse, cables = row.fuse, [each for side in row.sides for each in side.cables]
    yield from (row.place.name, row.place.component, "breaker" if row.place.breaker else "fuse")
    yield plan.kind_of(plan.components[row.place.component]).name
    yield from (fuse.type, fuse.rating_a, fuse.voltage_v, fuse.breaking_capacity_ka)
    yield "; ".join(each.label or each.id for each in cables)
    yield "; ".join(size_words(plan.conductors[each.conductor]) for each in cables)
    yield "; ".join(each.cable for each in row.feeds)
    yield "; ".join(each.source for each in row.feeds)
    yield max((each.length for each in row.feeds), default=None)
    yield max((each.free for each in row.feeds), default=None)
    yield from (fuse.spare, fuse.note, "yes" if row.spare else "no")


def fuse_records(plan: Plan, rows: Sequence[FuseRow]) -> dict[str, Any]:
    """Return the schedule and its questions as plain values for JSON; what nobody said is null."""
    return {
        "places": [_record(plan, each) for each in rows],
        "questions": [{"question": question, "places": names} for question, names in questions(rows)],
    }


def _record(plan: Plan, row: FuseRow) -> dict[str, Any]:
    fuse = row.fuse
    return {
        "place": row.place.name,
        "component": row.place.component,
        "sort": "breaker" if row.place.breaker else "fuse",
        "type": fuse.type or None,
        "rating_a": fuse.rating_a,
        "voltage_v": fuse.voltage_v,
        "breaking_capacity_ka": fuse.breaking_capacity_ka,
        "spares_kept": fuse.spare or None,
        "note": fuse.note,
        "spare_place": row.spare,
        "protects": [
            {"cable": each.id, "terminal": side.terminal, "area": plan.conductors[each.conductor].area}
            for side in row.sides
            for each in side.cables
        ],
        "and_buses": [bus for side in row.sides for bus in side.buses],
        "fed_by": [
            {"cable": each.cable, "source": each.source, "distance": number(each.length), "free": number(each.free)}
            for each in row.feeds
        ],
    }
