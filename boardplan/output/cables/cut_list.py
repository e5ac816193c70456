"""Cut list: every cable to cut, by reel and falling length, what goes on its ends, and how its length came about."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import TypeAlias

from boardplan.geometry.units import INCH, inches_text, tidy_number
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.sum_table import sum_table
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.clocking import twist_words
from boardplan.routing.lengths.cut_length import rounded_up
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.reels import (
    CountNeed,
    ReelNeed,
    clamp_needs,
    ferrule_needs,
    lug_needs,
    reel_needs,
    retainer_needs,
    stock_lead_needs,
    tube_needs,
)
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.retainers import Retainer

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
Clamps: TypeAlias = Mapping[str, tuple[Clamp, ...]]
Retainers: TypeAlias = Mapping[str, tuple[Retainer, ...]]
NO_CLAMPS: Clamps = MappingProxyType({})
"""For lists of lengths alone."""
NO_RETAINERS: Retainers = MappingProxyType({})
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
    plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps = NO_CLAMPS, retainers: Retainers = NO_RETAINERS
) -> tuple[Table, ...]:
    """Return the tables of a cut list: the cables by reel, what to take along, then how each length came about."""
    return (
        _cables(plan, lengths, clamps),
        _reels(plan, lengths),
        _counts(plan, lengths, clamps, retainers),
        sum_table(plan, lengths),
    )


def _cables(plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps) -> Table:
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
        rows.append(_row(plan, cable, lengths[cable.id], clamps.get(cable.id, ())))
    columns = (
        Column("cable"),
        Column("cut mm", "end"),
        Column("pieces", "end"),
        Column("end 1", grows=True),
        Column("end 2", grows=True),
        Column("way", grows=True),
        *(Column(each, "middle") for each in _TICKS),
    )
    return Table(columns, tuple(rows), notes=BEFORE)


def _row(plan: Plan, cable: Cable, length: CutLength, clamps: tuple[Clamp, ...]) -> tuple[Cell, ...]:
    first, second = length.ends
    return (
        Cell(cable.id, small=f"group {cable.group}" if cable.group else "", bold=True),
        _cut_cell(plan, length),
        Cell(str(cable.count)),
        Cell(first.place, small=_end_words(cable, first, second, clock_words(first))),
        Cell(second.place, small=_end_words(cable, second, first, _turned(plan, cable, length))),
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


def cut_inches(cut: float) -> str:
    """Return a cut as a tape in inches reads it, rounded up: never shorter than it has to be.

    >>> cut_inches(1055.0)
    '41-9/16'
    """
    return inches_text(rounded_up(cut, INCH / 32))


def label_text(cable: Cable, here: EndWork, there: EndWork) -> str:
    """Return what the label of an end says: the cable, this end, the far end."""
    return f"{cable.label or cable.id}  {here.place} > {there.place}"


def _end_words(cable: Cable, here: EndWork, there: EndWork, clock: str) -> str:
    work = [
        f"lug {here.lug}{f', {clock}' if clock else ''}" if here.lug else "",
        "ferrule" if here.ferrule else "",
        f"strip {tidy_number(here.strip)}" if here.strip is not None and not here.raw else "",
        f"tube {tidy_number(here.tube)}" if here.tube is not None else "",
    ]
    words = ", ".join(each for each in work if each)
    return f"{words}\n{here.stage_words}, label {label_text(cable, here, there)}".strip()


def clock_words(end: EndWork) -> str:
    """Return how a lug is turned, seen from end 1: as on a clock, or by what a person gave; nothing where none is."""
    if end.clock:
        return f"{end.clock} ({end.clocking:g}°)" if end.clocking else end.clock
    return f"{end.clocking:g}° to end 1" if end.clocking else ""


def _turned(plan: Plan, cable: Cable, length: CutLength) -> str:
    """Return how the second lug is turned, and how far a long cable may be out there."""
    second = length.ends[1]
    twist = twist_words(plan, cable, length.cut) if second.clock and second.clocking else ""
    return ", ".join(each for each in (clock_words(second), twist) if each)


_WAYS = {"channel": "in channel", "outside": "outside channels", "choose": ""}


def _way_words(cable: Cable, length: CutLength, clamps: tuple[Clamp, ...]) -> str:
    lines = []
    if length.path is not None and length.net is not None:
        lines.append(f"path {tidy_number(length.path)}, net {tidy_number(length.net)}")
    off = "off-board" if length.off_board else ""
    lines.append(", ".join(each for each in (_WAYS[cable.way], off, _mass_words(length)) if each))
    lines.append(clamp_words(cable.id, clamps))
    lines += _other_notes(length)
    return "\n".join(each for each in lines if each)


def clamp_words(cable: str, clamps: tuple[Clamp, ...]) -> str:
    """Return how many clamps hold a cable, and which of them hold another one too; nothing for none."""
    if not clamps:
        return ""
    shared = Counter(other for each in clamps for other in each.cables if other != cable)
    with_others = "".join(f", {count} with {other}" for other, count in sorted(shared.items()))
    return f"{len(clamps)} {'clamp' if len(clamps) == 1 else 'clamps'}{with_others}"


def _mass_words(length: CutLength) -> str:
    return f"{length.mass:.1f} kg" if length.mass is not None and length.mass >= 1 else ""


def why_not_final(length: CutLength) -> list[str]:
    """Return why a length must not be cut yet; nothing where it may be."""
    if length.path is None:
        return [f"not final: {length.reason}", *length.notes[:1]]
    if length.final and length.cut is not None:
        return []
    first = length.notes[0] if length.notes else f"off-board legs are {length.trust}"
    return [f"not final: {first}"]


def _other_notes(length: CutLength) -> tuple[str, ...]:
    """Return the notes that `why_not_final` leaves."""
    return length.notes if length.final else length.notes[1:]


def remarks(length: CutLength) -> list[str]:
    """Return all there is to say of a length: why it is not final, then its other notes."""
    return [*why_not_final(length), *_other_notes(length)]


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


_HEADS = (
    "cable", "from", "to", "conductor", "colour", "group", "pieces", "cut_mm", "cut_in_1/32", "net_mm", "path_mm",
    "slack_mm", "plus_mm", "minus_mm", "final", "why_not_final_and_notes", "way", "clamps", "mass_kg",
    "end_1_lug", "end_1_clocking_deg", "end_1_strip_mm", "end_1_ferrule", "end_1_place", "end_1_label",
    "end_2_lug", "end_2_clocking_deg", "end_2_strip_mm", "end_2_ferrule", "end_2_place", "end_2_label",
    "rise_mm", "loops_mm", "end_1_clock", "end_1_tube_mm", "end_2_clock", "end_2_tube_mm",
)  # fmt: skip


def cut_listing(plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps = NO_CLAMPS) -> Listing:
    """Return the cut list in cutting order; a clamp for a pair counts with both."""
    order = cutting_order(plan, lengths)
    rows = (tuple(_listed(plan, each, lengths[each.id], len(clamps.get(each.id, ())))) for each in order)
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
