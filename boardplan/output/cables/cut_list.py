"""Cut list: every cable to cut, by reel and falling length, what goes on its ends, and how its length came about."""

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType

from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.output.cables.cable_words import (
    clamp_words,
    clock_words,
    label_text,
    mass_words,
    other_notes,
    remarks,
    turned_words,
    way_words,
    why_not_final,
)
from boardplan.output.cables.held_cables import NO_CLAMPS, NO_RETAINERS, Clamps, Retainers
from boardplan.output.cables.take_along import take_along_tables
from boardplan.output.cutting.cut_inches import cut_inches
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.sum_table import sum_table
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.supports.clamp import Clamp

FOOTER = (
    "Lengths and positions only: this list does not size cables or fuses; a competent person approves the electrical "
    "design. Matched cables: do not trim one alone."
)
BEFORE = (
    (
        "Disconnect and cover battery terminals before any work on the board. Solar conductors are live in daylight. "
        "Check polarity at both ends before the first nut. Main fuse last."
    ),
    (
        "Cut = conductor end to conductor end. Strip is part of it. Tube and label on before the lug. "
        "Measures of lugs are typical: measure your own and cut a trial piece first."
    ),
)
Reels = Mapping[str, Sequence[str]]
"""From which reels or offcuts each cable is cut, by their names; nothing of those nobody planned."""
NO_REELS: Reels = MappingProxyType({})
_TICKS = ("cut", "strip", "crimp", "shrink", "label", "pull", "fit")


def cutting_order(plan: Plan, lengths: Mapping[str, CutLength]) -> list[Cable]:
    """Return the cables as they are cut: the largest conductor first, by colour, then falling length."""
    places = {need: index for index, need in enumerate(_reel_order(plan))}

    def order(cable: Cable) -> tuple[int, float, str]:
        return places[cable.conductor, cable.colour], -(lengths[cable.id].cut or 0.0), cable.id

    return sorted(plan.cables.values(), key=order)


def _reel_order(plan: Plan) -> list[tuple[str, str]]:
    reels = {(cable.conductor, cable.colour) for cable in plan.cables.values()}

    def largest_first(reel: tuple[str, str]) -> tuple[bool, float, str, str]:
        conductor = plan.conductors[reel[0]]
        return bool(conductor.stock_lengths), -(conductor.area or 0.0), *reel

    return sorted(reels, key=largest_first)


def cut_tables(
    plan: Plan,
    lengths: Mapping[str, CutLength],
    clamps: Clamps = NO_CLAMPS,
    retainers: Retainers = NO_RETAINERS,
    reels: Reels = NO_REELS,
) -> tuple[Table, Table, Table, Table]:
    """Return the tables of a cut list: the cables by reel, two of what to take along, how each length came about."""
    taken, counted = take_along_tables(plan, lengths, clamps, retainers)
    return _cables(plan, lengths, clamps, reels), taken, counted, sum_table(plan, lengths)


def _cables(plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps, reels: Reels) -> Table:
    rows: list[Row] = []
    reel: tuple[str, str] | None = None
    for cable in cutting_order(plan, lengths):
        if (cable.conductor, cable.colour) != reel:
            reel = cable.conductor, cable.colour
            conductor = plan.conductors[cable.conductor]
            lead = "leads with moulded ends, never cut" if conductor.stock_lengths else ""
            rows.append(
                Heading(f"{conductor.name}, {cable.colour}", lead or f"outside {conductor.outside_diameter:g} mm")
            )
        rows.append(_row(plan, cable, lengths[cable.id], clamps.get(cable.id, ()), reels.get(cable.id, ())))
    columns = (
        Column("cable"),
        Column("cut mm", "end"),
        Column("pieces", "end"),
        Column("end 1", grows=True),
        Column("end 2", grows=True),
        Column("way", grows=True),
        *(Column(each, "middle") for each in _TICKS),
    )
    return Table(columns, tuple(rows), "To cut, by reel and falling length", BEFORE)


def _row(
    plan: Plan, cable: Cable, length: CutLength, clamps: tuple[Clamp, ...], reels: Sequence[str]
) -> tuple[Cell, ...]:
    first, second = length.ends
    about = (f"group {cable.group}" if cable.group else "", *(f"from {each}" for each in reels))
    return (
        Cell(cable.id, small="\n".join(each for each in about if each), bold=True),
        _cut_cell(plan, length),
        Cell(str(cable.count)),
        Cell(first.place, small=_end_words(cable, first, second, clock_words(first))),
        Cell(second.place, small=_end_words(cable, second, first, turned_words(plan, cable, length))),
        Cell(small=_way_words(cable, length, clamps), alert="\n".join(why_not_final(length))),
        *(Cell(tick=each not in _not_needed(length)) for each in _TICKS),
    )


def _not_needed(length: CutLength) -> tuple[str, ...]:
    return ("cut", "strip", "crimp", "shrink") if length.stock else ()


def _cut_cell(plan: Plan, length: CutLength) -> Cell:
    alert = "" if length.final and length.cut is not None else "NOT FINAL"
    if length.cut is None:
        return Cell("?", alert=alert, bold=True, large=True)
    small = []
    if length.stock:
        small.append("stock lead")
    if plan.job.units == "inch":
        small.append(f"{cut_inches(length.cut)} in")
    if length.plus or length.minus:
        unit = " mm" if plan.job.units == "inch" else ""
        small.append(f"+{tidy_number(length.plus)} / -{tidy_number(length.minus)}{unit}")
    return Cell(tidy_number(length.cut), small="\n".join(small), alert=alert, bold=True, large=True)


def _end_words(cable: Cable, here: EndWork, there: EndWork, clock: str) -> str:
    work = [
        f"lug {here.lug}{f', {clock}' if clock else ''}" if here.lug else "",
        "ferrule" if here.ferrule else "blade terminal" if here.blade else "",
        f"strip {tidy_number(here.strip)}" if here.strip is not None and not here.raw else "",
        f"tube {tidy_number(here.tube)}" if here.tube is not None else "",
    ]
    words = ", ".join(each for each in work if each)
    return f"{words}\n{here.stage_words}, label {label_text(cable, here, there)}".strip()


def _way_words(cable: Cable, length: CutLength, clamps: tuple[Clamp, ...]) -> str:
    lines = []
    if length.path is not None and length.net is not None:
        lines.append(f"path {tidy_number(length.path)}, net {tidy_number(length.net)}")
    off = "off-board" if length.off_board else ""
    lines.append(", ".join(each for each in (way_words(cable), off, mass_words(length)) if each))
    lines.append(clamp_words(cable.id, clamps))
    lines += other_notes(length)
    return "\n".join(each for each in lines if each)


_HEADS = (
    "cable", "from", "to", "conductor", "colour", "group", "pieces", "cut_mm", "cut_in_1/32", "net_mm", "path_mm",
    "slack_mm", "plus_mm", "minus_mm", "final", "why_not_final_and_notes", "way", "clamps", "mass_kg",
    "end_1_lug", "end_1_clocking_deg", "end_1_strip_mm", "end_1_ferrule", "end_1_place", "end_1_label",
    "end_2_lug", "end_2_clocking_deg", "end_2_strip_mm", "end_2_ferrule", "end_2_place", "end_2_label",
    "rise_mm", "loops_mm", "end_1_clock", "end_1_tube_mm", "end_2_clock", "end_2_tube_mm", "cut_from",
)  # fmt: skip


def cut_listing(
    plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps = NO_CLAMPS, reels: Reels = NO_REELS
) -> Listing:
    """Return the cut list in cutting order; a clamp for a pair counts with both."""
    order = cutting_order(plan, lengths)
    rows = (
        (*_listed(plan, each, lengths[each.id], len(clamps.get(each.id, ()))), "; ".join(reels.get(each.id, ())))
        for each in order
    )
    return Listing("Cable cut list", _HEADS, tuple(rows))


def _listed(plan: Plan, cable: Cable, length: CutLength, clamps: int) -> Iterator[Value]:
    first, second = length.ends
    yield from (cable.id, first.place, second.place, plan.conductors[cable.conductor].name, cable.colour, cable.group)
    yield from (cable.count, length.cut, None if length.cut is None else cut_inches(length.cut))
    yield from (length.net, length.path, length.slack, length.plus, length.minus)
    yield from (
        "yes" if length.final else "no",
        "; ".join(remarks(length)),
        cable.way,
        clamps,
        length.mass,
    )
    for here, there in ((first, second), (second, first)):
        yield from (here.lug, here.clocking if here.lug else None, here.strip, "yes" if here.ferrule else "no")
        yield from ("raw" if here.raw else here.stage, label_text(cable, here, there))
    yield from (length.rise, length.extra, first.clock, first.tube, second.clock, second.tube)
