"""Record tables: the blank tables of the test record: switching on, cables, studs and lugs, sources, AC, settings."""

from collections.abc import Iterator

from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.output.hand_over.points_to_test import (
    cables_to_test,
    family_of,
    has_ac,
    sources,
    units_with_settings,
    watched_studs,
)
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.end_work import size_words, work_at_ends

STEPS = (
    "Torque list done, every nut marked",
    "Polarity proved at both ends of every cable, before the first nut",
    "Insulation measured where the equipment allows it; electronics disconnected first",
    "Tools out, covers on, rings and watches off",
    "Batteries in parallel: their voltages as near each other as their sheet asks, before they are joined",
    "Main fuse in, as the last step",
    "Pre-charge, then the battery shut-off",
    "Charging tried from each source, one after the other",
    "Load at rated current for 30 minutes, every lug looked at and measured",
)
"""In their order: common practice, no source."""
_LINES = {"inverter/chargers": 6, "charge controllers": 4, "alternator chargers": 4}
_FEW_LINES = 2
_RCD_LINES = 3


def record_tables(plan: Plan) -> Iterator[Table]:
    """Yield the tables in the order in which a job is put to work."""
    yield _steps()
    yield _cables(plan)
    yield _studs(plan)
    yield _sources(plan)
    if has_ac(plan):
        yield _residual_current(plan)
    yield _settings(plan)


def _steps() -> Table:
    columns = (Column("done", "middle"), Column("step", grows=True), Column("by", "middle"), Column("date", "middle"))
    rows: list[Row] = [(Cell(tick=True), Cell(each), Cell(blank=24), Cell(blank=26)) for each in STEPS]
    rows.append((Cell(), Cell("Instruments used", bold=True), Cell(blank=24), Cell(blank=26)))
    return Table(columns, tuple(rows), "Putting to work, in this order")


def _cables(plan: Plan) -> Table:
    columns = (
        Column("cable"), Column("from > to", grows=True), Column("continuity ohm", "middle"),
        Column("polarity", "middle"), Column("insulation megohm", "middle"), Column("at current A", "middle"),
        Column("voltage drop V", "middle"),
    )  # fmt: skip
    rows = []
    for each in cables_to_test(plan):
        first, second = (end.place for end in work_at_ends(plan, each))
        count = f"{each.count} x " if each.count > 1 else ""
        size = f"{count}{size_words(plan.conductors[each.conductor])}, {each.cable_class}"
        boxes = (Cell(blank=19), Cell(tick=True), Cell(blank=19), Cell(blank=17), Cell(blank=19))
        rows.append((Cell(each.label or each.id, bold=True), Cell(f"{first} > {second}", small=size), *boxes))
    left = len(plan.cables) - len(rows)
    notes = (f"{left} leads with moulded ends are tried by what they do.",) if left else ()
    return Table(columns, tuple(rows), "Cables: continuity, polarity, insulation, voltage drop at rated current", notes)


def _studs(plan: Plan) -> Table:
    columns = (
        Column("stud"), Column("pole", "middle"), Column("voltage V", "middle"), Column("lug", grows=True),
        Column("at the start °C", "middle"), Column("after 30 min °C", "middle"), Column("seen", "middle"),
    )  # fmt: skip
    rows = []
    for stud in watched_studs(plan):
        again = Cell(small=stud.place), Cell(), Cell()
        for index, lug in enumerate(stud.lugs):
            head = (Cell(stud.place, bold=True), Cell(stud.pole), Cell(blank=20)) if not index else again
            words = f"{lug.cable}" + (f", {lug.count} of them" if lug.count > 1 else "")
            rows.append((*head, Cell(words), Cell(blank=22), Cell(blank=22), Cell(tick=True)))
    note = (
        "Air before the board at the start: ______ °C, after 30 minutes: ______ °C. A lug warmer than its like: stop."
    )
    return Table(columns, tuple(rows), "Studs and lugs: voltage, and warmth after 30 minutes at rated current", (note,))


def _sources(plan: Plan) -> Table:
    columns = (
        Column("source", grows=True), Column("charging A", "middle"), Column("at V", "middle"),
        Column("time", "middle"), Column("as expected", "middle"),
    )  # fmt: skip
    rows = tuple(
        (_unit(plan, each), Cell(blank=26), Cell(blank=22), Cell(blank=26), Cell(tick=True)) for each in sources(plan)
    )
    by_hand = (Cell(blank=50), Cell(blank=26), Cell(blank=22), Cell(blank=26), Cell(tick=True))
    return Table(columns, (*rows, by_hand), "Charging current from each source")


def _unit(plan: Plan, component: Component) -> Cell:
    return Cell(component.id, bold=True, small=component.label or plan.kind_of(component).name)


def _residual_current(plan: Plan) -> Table:
    columns = (
        Column("RCD or GFCI", grows=True), Column("rated mA", "middle"), Column("trips at mA", "middle"),
        Column("in ms", "middle"), Column("test button", "middle"),
    )  # fmt: skip
    boxes = (Cell(blank=24), Cell(blank=24), Cell(blank=24), Cell(tick=True))
    named = [each for each in plan.components.values() if family_of(plan, each) == "ac distribution"]
    rows = [(_unit(plan, each), *boxes) for each in named]
    rows += [(Cell(blank=50), *boxes)] * max(0, _RCD_LINES - len(named))
    note = (
        "Only by a person licensed for AC, who signs below. Neutral and earth are bonded in one place only, as the "
        "designer states."
    )
    return Table(columns, tuple(rows), "AC protection: residual-current trip", (note,))


def _settings(plan: Plan) -> Table:
    columns = (Column("setting", grows=True), Column("value", "middle"), Column("set by", "middle"), Column("date"))
    rows: list[Row] = []
    for each in units_with_settings(plan):
        rows.append(Heading(f"{each.id}  {each.label or plan.kind_of(each).name}"))
        lines = _LINES.get(family_of(plan, each), _FEW_LINES)
        rows += [(Cell(blank=60), Cell(blank=40), Cell(blank=22), Cell(blank=24))] * lines
    return Table(columns, tuple(rows), "Settings, as left")
