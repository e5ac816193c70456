"""Load-out list: the van and its boxes, what is in each to tick twice, and what before the shop is locked."""

from collections.abc import Iterator, Sequence
from typing import Any

from boardplan.output.load_out.boxes import PackedBox, boxes_of, hazardous
from boardplan.output.parts.part import Part, named
from boardplan.output.parts.part_words import (
    bag_words,
    kilograms,
    quantity_words,
    source_words,
    spare_parts,
    things_words,
)
from boardplan.output.parts.parts_list import PartsList
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table

FOOTER = (
    "Reckoned from the job, not typed. Positions and counts only: this list does not size cables or fuses. A blank or "
    "a question is for a person to answer."
)
_HOW = (
    "One packs, another checks; each ticks his own column. Consumables in a bag for each board. Weights are of what "
    "somebody weighed; ? means that nobody did."
)
_SPARES = "Spares: common practice, no source; the shop's own table says how much of each sort."


def load_out_tables(parts: PartsList) -> tuple[Table, ...]:
    """Return whether the van may leave, its boxes, hazardous goods, what is in each box, and the last page."""
    boxes = boxes_of(parts)
    tables = (_ready(parts), _boxes(parts, boxes), _hazards(boxes), _packed(boxes), _last(parts))
    return tuple(each for each in tables if each.rows)


def _ready(parts: PartsList) -> Table:
    """Return the word on leaving, then each part that has not come."""
    rows: list[Row] = [(Cell(), Cell(parts.ready_words, bold=True, large=not parts.ready), Cell())]
    for key in dict.fromkeys(each.key for each in parts.parts if each.mark and each.mark.state == "ordered"):
        part = next(each for each in parts.parts if each.key == key)
        if part.mark and part.quantity != 0:
            when = f"expected {part.mark.date}" if part.mark.date else "expected when?"
            rows.append((Cell(tick=True), Cell(part.words, small=part.mark.note), Cell(when)))
    notes = [_HOW, _SPARES]
    if parts.stray:
        notes.append(f"Marked, but not needed by this job: {named([mark.part for mark in parts.stray], '; ')}.")
    columns = (Column("has come", "middle"), Column("may the van leave?", grows=True), Column("ordered"))
    return Table(columns, tuple(rows), notes=tuple(notes))


def _boxes(parts: PartsList, boxes: Sequence[PackedBox]) -> Table:
    columns = (
        Column("in the van", "middle"), Column("load as", "end"), Column("box", "middle"), Column("what", grows=True),
        Column("lines", "end"), Column("weighed kg", "end"), Column("not weighed", "end"), Column("lift", grows=True),
    )  # fmt: skip
    limit, lift = parts.shop.rules.heaviest_box, parts.shop.rules.lift
    order = "Load number 1 first: what is wanted first on site goes in last."
    weights = f"No box above {limit:g} kg as far as its things are weighed."
    lifting = (
        f"One person lifts {lift.one:g} kg, two {lift.two:.1f} kg; less at arm's length, overhead, on steps or in "
        f"a hatch ({lift.source})."
    )
    notes = (f"{order} {weights}", lifting)
    rows = tuple(_box_row(each) for each in sorted(boxes, key=lambda one: one.load) if each.load)
    return Table(columns, rows, "The van", notes)


def _box_row(box: PackedBox) -> tuple[Cell, ...]:
    lifts = [f"{each.words.split('  ')[0]} {_mass(each)}: {each.lift}" for each in box.parts if each.lift]
    fragile = "fragile things inside" if any(each.fragile for each in box.parts) else ""
    return (
        Cell(tick=True),
        Cell(str(box.load)),
        Cell(box.number, bold=True),
        Cell(box.name, bold=True, small=fragile),
        Cell(str(sum(not each.on_board for each in box.parts))),
        Cell(f"{box.weight:.1f}" if box.weight else ""),
        Cell(str(len(box.unweighed)) if box.unweighed else ""),
        Cell(named(lifts, "\n") or box.lift or "piece by piece"),
    )


def _mass(part: Part) -> str:
    return "" if part.mass is None else f"{part.mass:.1f} kg"


def _hazards(boxes: Sequence[PackedBox]) -> Table:
    columns = (Column("box", "middle"), Column("hazardous goods", grows=True), Column("on the way", grows=True))
    rows = tuple((Cell(box.number, bold=True), Cell(part.words), Cell(part.hazard)) for box, part in hazardous(boxes))
    note = "UN numbers: UN Model Regulations; limits and papers are those of the road, boat or flight it goes by."
    return Table(columns, rows, "Hazardous goods", (note,))


def _packed(boxes: Sequence[PackedBox]) -> Table:
    columns = (
        Column("packed", "middle"), Column("checked", "middle"), Column("box", "middle"), Column("quantity", "end"),
        Column("unit"), Column("what", grows=True), Column("for", grows=True), Column("source"), Column("kg", "end"),
        Column("returned", "middle"),
    )  # fmt: skip
    rows: list[Row] = []
    for box in boxes:
        rows.append(Heading(box.title, box.lift))
        place = ""
        for each in box.parts:
            if each.category == "made-cables" and each.size != place and not each.on_board:
                place = each.size
                rows.append(Heading(f"bundle: {place}", f"box {box.number}"))
            if not each.on_board:
                rows.append(_row(box, each))
        rows += _fitted_rows(box)
    return Table(columns, tuple(rows), "What is packed", opens_sheet=True)


def _fitted_rows(box: PackedBox) -> Iterator[Row]:
    """Yield lines for the cables that each board carries: they were ticked one by one when they were made."""
    bundles: dict[tuple[str, str], list[Part]] = {}
    for each in box.parts:
        if each.on_board:
            bundles.setdefault((each.on_board, each.size), []).append(each)
    for those in bundles.values():
        for start in range(0, len(those), _MOST_FITTED):
            yield _fitted_row(those[start : start + _MOST_FITTED])


def _fitted_row(those: Sequence[Part]) -> tuple[Cell, ...]:
    names = {each.key: each.key.removeprefix("made ") for each in those}
    open_ones = "; ".join(f"{names[each.key]} {each.question}" for each in those if each.question)
    first = those[0]
    notes = ", ".join(names.values()) + (f"; {first.note}" if first.note else "")
    return (
        Cell(tick=True),
        Cell(tick=True),
        Cell(f"on {first.on_board}"),
        Cell(f"{sum(each.needed or 0 for each in those):g}", bold=True),
        Cell("pcs"),
        Cell(f"Cables {first.size}", small=notes, alert=open_ones),
        Cell(),
        Cell("made"),
        Cell(),
        Cell(tick=True),
    )


_MOST_FITTED = 40
"""Cables named in one row."""


def _row(box: PackedBox, part: Part) -> tuple[Cell, ...]:
    heavy = "HEAVY" if part.mass is not None and part.mass > _HEAVY else ""
    flags = " ".join(
        each for each in (heavy, "FRAGILE" if part.fragile else "", "HAZARDOUS" if part.hazard else "") if each
    )
    words = "; ".join(
        each for each in (part.lift, f"and {part.spare_words}" if part.spare_words else "", part.note) if each
    )
    alert = "\n".join(each for each in (part.question, flags) if each)
    return (
        Cell(tick=True),
        Cell(tick=True),
        Cell(box.number),
        Cell(quantity_words(part), bold=True, small=spare_parts(part)),
        Cell(part.unit),
        Cell(part.words, small=words, alert=alert),
        Cell(small="\n".join(each for each in (things_words(part), bag_words(part)) if each)),
        Cell(source_words(part)),
        Cell(kilograms(part)),
        Cell(tick=True),
    )


_HEAVY = 10.0
"""Above that a part is called heavy, in kg: common practice, no source."""


def _last(parts: PartsList) -> Table:
    """Return the page that is read last."""
    columns = (Column("done", "middle"), Column("see to", grows=True))
    rows = [(Cell(tick=True), Cell(each)) for each in parts.shop.rules.before_leaving]
    open_ones = [each.cable for each in parts.shop.review.lengths.values() if not each.final or each.cut is None]
    if open_ones:
        rows.append((Cell(tick=True), Cell(f"Not final, to measure on arrival: {named(open_ones)}")))
    rows += [
        (Cell(tick=True), Cell(f"All ordered parts have come: {len(parts.ordered)} had not when this was printed")),
        (Cell(), Cell("Packed by: ______________________   date: ______________")),
        (Cell(), Cell("Checked by: _____________________   date: ______________")),
        (Cell(), Cell("Returned and counted by: _____________________   date: ______________")),
    ]
    return Table(columns, tuple(rows), "Before we lock the shop", opens_sheet=True)


_HEADS = (
    "box", "load_order", "box_name", "key", "category", "quantity", "needed", "spare", "spare_of_each_rating", "unit",
    "description", "for", "on_site", "bags", "source", "expected", "mass_kg_each", "weight_kg", "lift", "hazard",
    "fragile", "note", "question",
)  # fmt: skip


def load_out_listing(parts: PartsList) -> Listing:
    """Return every line with its box; what a person has to say is an empty cell."""
    return Listing("Load-out list", _HEADS, tuple(_listed(boxes_of(parts))))


def _listed(boxes: Sequence[PackedBox]) -> Iterator[tuple[Value, ...]]:
    for box in boxes:
        for part in box.parts:
            place = f"on board {part.on_board}" if part.on_board else box.number
            bags = "; ".join(f"{board}: {count:g}" for board, count in part.bags.items())
            yield (
                place, box.load, box.name, part.key, part.category, part.quantity, part.needed, part.spare,
                part.spare_words, part.unit, part.words, ", ".join(part.things), part.on_site, bags, part.origin,
                part.mark.date if part.mark else "", part.mass, part.weight, part.lift, part.hazard,
                "yes" if part.fragile else "no", part.note, part.question,
            )  # fmt: skip


def load_out_records(parts: PartsList | None) -> dict[str, Any]:
    """Return whether the van may leave and what is in which box, as plain values; null where a person has to say."""
    if parts is None:
        return {"load_out": None}
    return {
        "load_out": {
            "ready_to_leave": parts.ready,
            "words": parts.ready_words,
            "ordered": list(parts.ordered),
            "unmarked": parts.unmarked,
            "marks_not_needed": [each.part for each in parts.stray],
            "boxes": [_box_record(each) for each in boxes_of(parts)],
            "hazardous": [
                {"box": box.number, "what": part.words, "note": part.hazard} for box, part in hazardous(boxes_of(parts))
            ],
        }
    }


def _box_record(box: PackedBox) -> dict[str, Any]:
    return {
        "box": box.number,
        "name": box.name,
        "load_order": box.load,
        "weighed": round(box.weight, 3),
        "not_weighed": list(box.unweighed),
        "lift": box.lift,
        "lines": [_line_record(each) for each in box.parts],
    }


def _line_record(part: Part) -> dict[str, Any]:
    return {
        "key": part.key,
        "category": part.category,
        "what": part.words,
        "quantity": part.quantity,
        "needed": part.needed,
        "spare": part.spare,
        "spare_words": part.spare_words,
        "unit": part.unit,
        "for": list(part.things),
        "on_site": part.on_site,
        "bags": part.bags,
        "source": part.origin,
        "on_board": part.on_board,
        "mass": None if part.mass is None else round(part.mass, 6),
        "lift": part.lift,
        "hazard": part.hazard,
        "note": part.note,
        "question": part.question,
    }
