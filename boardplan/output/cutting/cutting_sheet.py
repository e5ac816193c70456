"""Cutting sheet: what is cut from which reel or length in which order, as tables, as CSV and as plain data."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.output.cutting.cut_inches import cut_inches
from boardplan.output.cutting.cutting_plan import CutBar, CuttingPlan
from boardplan.output.cutting.reel_plan import CutGroup, cut_groups, metres, not_needed, proof_words, shortage_words
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.length_sum import CutLength

FOOTER = (
    "Lengths only: this plan does not size cables or fuses. Measure each reel and length before the first cut; what is "
    "written on it may not be on it."
)
_ORDER = "Cut in this order, the longest first. Gone = pieces and cuts so far, from the loose end."
_ENDS = (
    "Lengths of channel along the longer wall; angles off a square cut, walls left and right looking from end 1 to "
    "end 2. A length holds a base and its cover: take the larger number."
)
_JOINTS = "Where square ends meet, leave 1 to 3 mm: the plastic grows with heat (common practice, no source)."
_ABOUT_STOCK = (
    "Where it asks what is at hand, nothing was planned: no length of a reel is made up. Reserve is not in this plan; "
    "the cable cut list says how much to take along."
)


def cutting_tables(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[Table, ...]:
    """Return what every sort comes to, then the cuts of those that have stock."""
    groups = cut_groups(plan, lengths)
    joints = (_JOINTS,) if plan.stock.corners == "square" else ()
    tables = (
        _cuts(plan, "Reels and offcuts", [each for each in groups if not each.channel], ()),
        _cuts(plan, "Channels", [each for each in groups if each.channel], (_ENDS, *joints)),
    )
    return (_summary(plan, groups), *(each for each in tables if each.rows))


def _summary(plan: Plan, groups: Sequence[CutGroup]) -> Table:
    columns = (
        Column("conductor, channel", grows=True),
        Column("pieces", "end"),
        Column("longest mm", "end"),
        Column("sum with cuts m", "end"),
        Column("cut from", grows=True),
        Column("missing", grows=True),
    )
    notes = [_ABOUT_STOCK, f"A cut takes {_cut_words(plan)} (common practice, no source: measure your own)."]
    spare = not_needed(plan)
    if spare:
        notes.append(f"At hand, but no piece of this job is cut from it: {'; '.join(spare)}.")
    return Table(columns, tuple(_summary_row(each) for each in groups), notes=tuple(notes))


def _cut_words(plan: Plan) -> str:
    stock = plan.stock
    cable, channel = tidy_number(stock.cable_cut), tidy_number(stock.channel_cut)
    return f"{cable} mm of cable and {channel} mm of channel, more of the length where it is at a slant"


def _summary_row(group: CutGroup) -> tuple[Cell, ...]:
    alert = f"still without a length: {', '.join(group.open_ones)}" if group.open_ones else ""
    used = group.plan.bars if group.plan else ()
    split = "".join(f"\nmatched group {each} comes from several" for each in group.split)
    return (
        Cell(group.title, bold=True, alert=alert),
        Cell(str(len(group.pieces))),
        Cell(tidy_number(group.longest)),
        Cell(tidy_number(group.total / 1000, 3)),
        Cell(
            proof_words(group) if group.plan else "",
            alert="" if group.plan else proof_words(group).upper(),
            small=f"{_bar_names(used)}{split}".strip(),
        ),
        Cell(alert=shortage_words(group)),
    )


def _bar_names(bars: Sequence[CutBar]) -> str:
    counts: dict[str, int] = {}
    for bar in bars:
        counts[bar.name] = counts.get(bar.name, 0) + 1
    return ", ".join(f"{count} x {name}" if count > 1 else name for name, count in counts.items())


def _cuts(plan: Plan, title: str, groups: Sequence[CutGroup], notes: tuple[str, ...]) -> Table:
    rows: list[Row] = []
    for group in groups:
        for bar in group.plan.bars if group.plan else ():
            words = f"{_count(len(bar.pieces), 'cut')}, {metres(bar.left)} left"
            rows.append(Heading(f"{group.title}: {_bar_title(bar)}", words))
            rows += [_cut_row(plan, group, bar, index, gone) for index, gone in enumerate(bar.totals)]
    columns = (
        Column("cut", "middle"),
        Column("piece"),
        Column("length mm", "end"),
        Column("ends", grows=True),
        Column("gone mm", "end"),
        Column("left mm", "end"),
    )
    return Table(columns, tuple(rows), title, (_ORDER, *notes))


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def _bar_title(bar: CutBar) -> str:
    length = "" if metres(bar.length) in bar.name else f", {metres(bar.length)}"
    return f"{bar.words}{length}"


def _cut_row(plan: Plan, group: CutGroup, bar: CutBar, index: int, gone: float) -> tuple[Cell, ...]:
    piece = bar.pieces[index]
    inches = f"{cut_inches(piece.length)} in" if plan.job.units == "inch" else ""
    about = group.about[piece.name]
    if piece.name in group.matched:
        about += f"\ngroup {group.matched[piece.name]}"
    return (
        Cell(tick=True),
        Cell(piece.name, bold=True),
        Cell(
            tidy_number(piece.length),
            bold=True,
            large=True,
            small=inches,
            alert="NOT FINAL" if piece.name in group.not_final else "",
        ),
        Cell(small=about),
        Cell(tidy_number(gone)),
        Cell(tidy_number(bar.length - gone)),
    )


_HEADS = (
    "conductor_or_channel", "cut_from", "number", "of_length_mm", "order", "piece", "length_mm", "length_in_1/32",
    "ends", "group", "final", "gone_mm", "left_mm",
)  # fmt: skip


def cutting_listing(plan: Plan, lengths: Mapping[str, CutLength]) -> Listing:
    """Return every cut in the order to cut; what is missing, or has no stock given, comes from nothing."""
    rows = tuple(row for group in cut_groups(plan, lengths) for row in _listed(group))
    return Listing("Cutting plan", _HEADS, rows)


def _listed(group: CutGroup) -> Iterator[tuple[Value, ...]]:
    def about(name: str, length: float) -> tuple[Value, ...]:
        final = "no" if name in group.not_final else "yes"
        return name, length, cut_inches(length), group.about[name], group.matched.get(name, ""), final

    for bar in group.plan.bars if group.plan else ():
        for order, (piece, gone) in enumerate(zip(bar.pieces, bar.totals, strict=True), start=1):
            start = (group.title, bar.name, bar.number, bar.length, order)
            yield (*start, *about(piece.name, piece.length), gone, bar.length - gone)
    for piece in group.plan.missing if group.plan else group.pieces:
        yield (
            group.title,
            "missing" if group.plan else "",
            None,
            None,
            None,
            *about(piece.name, piece.length),
            None,
            None,
        )


def cutting_records(plan: Plan, lengths: Mapping[str, CutLength]) -> dict[str, Any]:
    """Return what the tables say as plain data: lengths in mm, `plan` none where nobody said what is at hand."""
    return {
        "cutting": [
            {
                "sort": group.title,
                "pieces": len(group.pieces),
                "sum_with_cuts": round(group.total, 6),
                "cut": group.cut,
                "open": list(group.open_ones),
                "not_final": sorted(group.not_final),
                "split_groups": list(group.split),
                "words": proof_words(group),
                "plan": None if group.plan is None else _plan_record(group, group.plan),
            }
            for group in cut_groups(plan, lengths)
        ],
        "stock_not_needed": list(not_needed(plan)),
    }


def _plan_record(group: CutGroup, plan: CuttingPlan) -> dict[str, Any]:
    return {
        "bars": [
            {
                "name": bar.name,
                "number": bar.number,
                "length": bar.length,
                "left": bar.left,
                "pieces": [
                    {
                        "name": piece.name,
                        "length": round(piece.length, 6),
                        "ends": group.about[piece.name],
                        "gone": gone,
                    }
                    for piece, gone in zip(bar.pieces, bar.totals, strict=True)
                ],
            }
            for bar in plan.bars
        ],
        "could_save": plan.could_save,
        "missing": [{"name": each.name, "length": round(each.length, 6)} for each in plan.missing],
        "missing_length": plan.missing_length,
        "could_find": plan.could_find,
        "shortage": shortage_words(group),
    }
