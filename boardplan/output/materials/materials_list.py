"""Bill of materials: what to buy by counter, lugs by size and stud, and what need not be bought."""

from collections.abc import Iterator, Sequence
from typing import Any

from boardplan.geometry.units import tidy_number
from boardplan.model.load_out import Counter
from boardplan.output.materials.buying import Buying, buyings_of
from boardplan.output.parts.parts_list import PartsList
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table

FOOTER = (
    "Quantities only: this list does not size cables or fuses; the designer says each rating. A blank or a question is "
    "answered before anything is bought."
)
_HOW = (
    "Spares are in the quantities (common practice, no source). Standards name the sort of part; the design says which "
    "is wanted. Substitute: only what the job says; else ask before taking another."
)
_COUNTERS: tuple[tuple[Counter, str], ...] = (
    ("electrical", "Electrical counter"),
    ("marine", "Marine counter"),
    ("timber", "Timber counter"),
    ("fabric", "Fabric counter"),
    ("fasteners", "Fasteners counter"),
)


def material_tables(parts: PartsList) -> tuple[Table, ...]:
    """Return what to buy by counter, the lugs as a matrix, then what is at hand, ordered or supplied."""
    lines = buyings_of(parts)
    electrical, *others = _counters(lines)
    tables = (electrical, _matrix(lines), *others, _not_bought(lines))
    return tuple(each for each in tables if each.rows)


def _is_lug(line: Buying) -> bool:
    return line.part.category == "lugs" and bool(line.part.stud)


def _counters(lines: Sequence[Buying]) -> Iterator[Table]:
    columns = (
        Column("have it", "middle"), Column("quantity", "end"), Column("unit"), Column("what", grows=True),
        Column("size", grows=True), Column("rating", "middle"), Column("standard", grows=True),
        Column("substitute", grows=True), Column("at hand", grows=True),
    )  # fmt: skip
    for index, (counter, title) in enumerate(_COUNTERS):
        own = [each for each in lines if each.part.counter == counter and not each.done and not _is_lug(each)]
        rows = tuple(_rows(own))
        yield Table(columns, rows, title, (_HOW,) if index == 0 else ())


def _rows(lines: Sequence[Buying]) -> Iterator[Row]:
    """Yield the lines under a heading for each category, in the order of the list."""
    for category in dict.fromkeys(each.part.category for each in lines):
        yield Heading(_HEADINGS.get(category, category.replace("-", " ").capitalize()))
        yield from (_row(each) for each in lines if each.part.category == category)


_HEADINGS = {
    "raw-cable": "Cable by reel and colour",
    "units": "Components",
    "lugs": "Far ends",
    "recovery": "To help oneself with",
    "small-terminals": "Small terminals",
    "board-material": "Board, pads, fabric",
    "tubes": "Heat-shrink",
    "pv-connectors": "PV connectors",
    "ac-parts": "AC side",
}


def _row(line: Buying) -> tuple[Cell, ...]:
    part = line.part
    alert = "\n".join(each for each in (part.question, line.as_words if line.buy is None else "") if each)
    spare = f"and {part.spare_words}" if part.spare_words else ""
    note = "\n".join(each for each in (spare, part.note, line.as_words if line.buy is not None else "") if each)
    return (
        Cell(tick=True),
        Cell(_buy_words(line), bold=True, small=_made_of(line)),
        Cell(line.unit),
        Cell(part.words, small=note, alert=alert),
        Cell("" if part.size in part.words else part.size),
        Cell(part.rating or ("____" if part.category == "fuses" else "")),
        Cell(small=part.standard),
        Cell(substitute_words(line)),
        Cell(small=line.at_hand),
    )


def _buy_words(line: Buying) -> str:
    """Return how many to buy, with a blank for what a person has to say."""
    if line.buy is not None:
        return tidy_number(line.buy, 2)
    return "____" if line.part.needed is None else f"{tidy_number(line.part.needed, 2)} + __"


def _made_of(line: Buying) -> str:
    part = line.part
    if line.unit != part.unit or not part.needed or not part.spare:
        return ""
    return f"{tidy_number(part.needed, 2)} + {tidy_number(part.spare, 2)}"


def substitute_words(line: Buying) -> str:
    """Return what else will do, as the job says it."""
    words = line.part.mark.substitute if line.part.mark else ""
    return "no substitute" if words == "none" else words


def _matrix(lines: Sequence[Buying]) -> Table:
    """Return lugs by size and stud: how many to buy, what that is made of below."""
    lugs = [each for each in lines if _is_lug(each)]
    studs = sorted({each.part.stud for each in lugs}, key=_stud_order)
    columns = (Column("have it", "middle"), Column("lug for", grows=True), *(Column(each, "middle") for each in studs))
    rows = []
    for size in dict.fromkeys(each.part.size for each in lugs):
        at = {each.part.stud: each for each in lugs if each.part.size == size}
        rows.append(
            (
                Cell(tick=True),
                Cell(size, bold=True, small=_matrix_note(list(at.values()))),
                *(_lug(at.get(each)) for each in studs),
            )
        )
    note = "To buy, by size of conductor and stud; below it needed + spare, and what is at hand."
    return Table(columns, tuple(rows), "Lugs: size by stud", (note,), share=0.75)


def _matrix_note(lines: Sequence[Buying]) -> str:
    notes = (
        [each.part.note for each in lines]
        + [each.part.standard for each in lines]
        + [substitute_words(each) for each in lines]
    )
    return "; ".join(dict.fromkeys(each for each in notes if each))


def _lug(line: Buying | None) -> Cell:
    if line is None:
        return Cell()
    return Cell(
        _buy_words(line),
        bold=True,
        large=True,
        small="\n".join(each for each in (_made_of(line), line.at_hand) if each),
    )


def _stud_order(stud: str) -> tuple[float, str]:
    digits = stud.removeprefix("M")
    return (float(digits) if digits.replace(".", "", 1).isdigit() else 99.0), stud


def _not_bought(lines: Sequence[Buying]) -> Table:
    columns = (
        Column("seen", "middle"),
        Column("quantity", "end"),
        Column("unit"),
        Column("what", grows=True),
        Column("where", grows=True),
    )
    rows = tuple(
        (
            Cell(tick=True),
            Cell("____" if each.part.quantity is None else tidy_number(each.part.quantity, 2)),
            Cell(each.part.unit),
            Cell(each.part.words, small=each.part.size),
            Cell(each.at_hand),
        )
        for each in lines
        if each.done
    )
    return Table(columns, rows, "Not to buy: at hand, bought, ordered or from the customer")


_HEADS = (
    "counter", "category", "key", "description", "size", "stud", "rating", "standard", "buy", "unit", "as", "needed",
    "spare", "spare_of_each_rating", "substitute", "at_hand", "source", "note", "question",
)  # fmt: skip


def material_listing(parts: PartsList) -> Listing:
    """Return every line of the bill; what a person has to say is an empty cell."""
    return Listing("Bill of materials", _HEADS, tuple(_listed(each) for each in buyings_of(parts)))


def _listed(line: Buying) -> tuple[Value, ...]:
    part = line.part
    return (
        part.counter, part.category, part.key, part.words, part.size, part.stud, part.rating, part.standard, line.buy,
        line.unit, line.as_words, part.needed, part.spare, part.spare_words, substitute_words(line), line.at_hand,
        part.origin, part.note, part.question,
    )  # fmt: skip


def material_records(parts: PartsList | None) -> dict[str, Any]:
    """Return the bill as plain values; null where a person has to say."""
    if parts is None:
        return {"materials": None}
    heads = ("counter", "category", "key", "what", "size", "stud", "rating", "standard", "buy", "unit", "as")
    rest = ("needed", "spare", "spare_words", "substitute", "at_hand", "source", "note", "question")
    return {
        "materials": [dict(zip((*heads, *rest), _listed(each), strict=True)) for each in buyings_of(parts)],
    }
