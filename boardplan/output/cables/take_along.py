"""Take along: how much of each reel a job needs with its reserve, and how many lugs, ferrules, leads and clamps."""

from collections.abc import Mapping, Sequence

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.output.cables.held_cables import Clamps, Retainers
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.reels import (
    CountNeed,
    ReelNeed,
    blade_needs,
    clamp_needs,
    ferrule_needs,
    lug_needs,
    reel_needs,
    retainer_needs,
    stock_lead_needs,
    tube_needs,
)


def take_along_tables(
    plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps, retainers: Retainers
) -> tuple[Table, Table]:
    """Return the table of reels and that of what goes on and round the cables."""
    return _reels(plan, lengths), _counts(plan, lengths, clamps, retainers)


def _reels(plan: Plan, lengths: Mapping[str, CutLength]) -> Table:
    rows = tuple(_reel_row(plan, need) for need in reel_needs(plan, lengths))
    columns = (
        Column("have it", "middle"),
        Column("conductor", grows=True),
        Column("colour"),
        Column("pieces", "end"),
        Column("sum of cuts mm", "end"),
        Column("reserve mm", "end"),
        Column("take at least m", "end"),
        Column("still without a length", grows=True),
    )
    note = (
        "Reserve: a tenth of the sum or the longest single cut, whichever is more (common practice, no source). "
        "Cut the longest pieces first; each cut takes about 3 mm more."
    )
    return Table(columns, rows, "Reels", (note,), share=0.75)


def _reel_row(plan: Plan, need: ReelNeed) -> tuple[Cell, ...]:
    return (
        Cell(tick=True),
        Cell(plan.conductors[need.conductor].name, bold=True),
        Cell(need.colour),
        Cell(str(need.pieces)),
        Cell(tidy_number(need.total, 0)),
        Cell(tidy_number(need.reserve, 0)),
        Cell(f"{need.take:.1f}", bold=True),
        Cell(small=", ".join(need.open)),
    )


def _counts(plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps, retainers: Retainers) -> Table:
    rows: list[Row] = []
    parts: Sequence[tuple[str, tuple[CountNeed, ...]]] = (
        ("Lugs at board ends", lug_needs(plan, lengths)),
        ("Blade terminals at board ends", blade_needs(plan, lengths)),
        ("Ferrules at board clamps", ferrule_needs(plan, lengths)),
        ("Heat-shrink tube at board ends", tube_needs(plan, lengths)),
        ("Leads with moulded ends", stock_lead_needs(plan, lengths)),
        ("Cable clamps by jacket", clamp_needs(clamps)),
        ("Retainers in channels that run up", retainer_needs(retainers)),
    )
    for title, needs in parts:
        if needs:
            rows.append(Heading(title))
        rows += [(Cell(tick=True), Cell(need.name), Cell(str(need.count), bold=True)) for need in needs]
    columns = (Column("have it", "middle"), Column("part", grows=True), Column("count", "end"))
    title = f"Lugs, ferrules, leads{', clamps and retainers' if retainers else ' and clamps'}"
    return Table(columns, tuple(rows), title, ("Spares and far ends are not counted.",), share=0.45)
