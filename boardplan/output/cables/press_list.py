"""Press list: every end of a cable by what is pressed on it, so that a die is set up once."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.output.cables.cable_words import clock_words, end_name, label_text, turned_words
from boardplan.output.cables.cut_list import cutting_order
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.end_work import EndWork, core_words
from boardplan.routing.lengths.length_sum import CutLength

RAW, BARE = "Left raw: pressed on site, at the far end", "Nothing to press"
_NOTES = (
    (
        "Die and presses stay blank until they are read off the lug and the tool: the die that belongs to lug and "
        "conductor, from the palm outwards. Its code is visible after pressing. Tube and label on before the lug."
    ),
    (
        "Tug each one by hand. Pull one to destruction per set-up of the tool. No solder instead of a crimp, "
        "no cut strands, copper seen in the sight hole."
    ),
)
_TICKS = ("tube on", "strip", "crimp", "shrink", "label", "tug")


@dataclass(frozen=True, slots=True)
class PressedEnd:
    """An end of a cable, 1 or 2, with its work, how its lug is turned, and what is pressed on it in words.

    `pieces` is how many lugs or ferrules it takes: a ferrule for each core.
    """

    cable: Cable
    end: int
    here: EndWork
    there: EndWork
    turned: str
    conductor: str
    fitting: str
    pieces: int


def pressed_ends(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[PressedEnd, ...]:
    """Return all ends on which something is pressed, by fitting, the largest conductors first; then the raw ones.

    Those made in the shop stand before those made on site.
    """
    ends = [end for cable in cutting_order(plan, lengths) for end in _both(plan, cable, lengths[cable.id])]
    wanted = [each for each in ends if each.fitting != BARE]
    rank = {fitting: index for index, fitting in enumerate(dict.fromkeys(each.fitting for each in wanted))}

    def order(each: PressedEnd) -> tuple[int, int, bool]:
        last = 2 if each.here.raw else 1 if each.here.ferrule else 0
        return last, rank[each.fitting], each.here.stage == "site"

    return tuple(sorted(wanted, key=order))


def _both(plan: Plan, cable: Cable, length: CutLength) -> Iterator[PressedEnd]:
    first, second = length.ends
    conductor = f"{plan.conductors[cable.conductor].name}, {cable.colour}"
    for end, here, there in ((1, first, second), (2, second, first)):
        turned = clock_words(here) if end == 1 else turned_words(plan, cable, length)
        pieces = cable.count * (plan.conductors[cable.conductor].cores if here.ferrule and not here.raw else 1)
        yield PressedEnd(cable, end, here, there, turned, conductor, _fitting(plan, cable, here), pieces)


def _fitting(plan: Plan, cable: Cable, end: EndWork) -> str:
    if plan.conductors[cable.conductor].stock_lengths:
        return BARE
    if end.raw:
        return RAW
    if end.lug:
        return f"Lug {end.lug}"
    size = core_words(plan.conductors[cable.conductor])
    return f"Ferrule {size}" if end.ferrule else f"Blade terminal {size}" if end.blade else BARE


def press_table(plan: Plan, lengths: Mapping[str, CutLength]) -> Table:
    """Return the table for the press, a heading for each set-up; it is handed out by itself."""
    ends = pressed_ends(plan, lengths)
    counts = Counter[str]()
    for each in ends:
        counts[each.fitting] += each.pieces
    rows: list[Row] = []
    fitting = ""
    for each in ends:
        if each.fitting != fitting:
            fitting = each.fitting
            rows.append(Heading(fitting, _set_up(fitting, counts[fitting])))
        rows.append(_row(each))
    columns = (
        Column("end"),
        Column("pieces", "end"),
        Column("conductor", grows=True),
        Column("lands on", grows=True),
        Column("lug is turned", grows=True),
        Column("strip mm", "end"),
        Column("tube mm", "end"),
        *(Column(each, "middle") for each in _TICKS),
    )
    return Table(columns, tuple(rows), "To press, by lug and die", _NOTES, opens_sheet=True)


def _set_up(fitting: str, count: int) -> str:
    number = f"{count} {'piece' if count == 1 else 'pieces'}"
    return (
        number
        if fitting == RAW or fitting.startswith("Ferrule")
        else f"{number}     die ______________     presses ______"
    )


def _row(each: PressedEnd) -> tuple[Cell, ...]:
    here, raw = each.here, each.here.raw
    tube = here.tube is not None or here.lugged
    ticks = {"tube on": tube, "shrink": tube, "strip": True, "crimp": True, "label": True, "tug": not here.ferrule}
    return (
        Cell(end_name(each.cable, each.end), bold=True, alert="SITE" if here.stage == "site" and not raw else ""),
        Cell(str(each.pieces)),
        Cell(small=each.conductor),
        Cell(here.place, small=f"label {label_text(each.cable, here, each.there)}"),
        Cell(small=each.turned),
        Cell("" if raw or here.strip is None else tidy_number(here.strip)),
        Cell("" if here.tube is None else tidy_number(here.tube), small="" if here.tube is None else each.cable.colour),
        *(Cell(tick=ticks[name]) for name in _TICKS),
    )


_HEADS = (
    "fitting", "cable", "end", "pieces", "conductor", "lands_on", "far_end", "turned", "strip_mm", "tube_mm",
    "tube_colour", "made", "label",
)  # fmt: skip


def press_listing(plan: Plan, lengths: Mapping[str, CutLength]) -> Listing:
    """Return all ends in the order to press."""
    return Listing("Press list", _HEADS, tuple(_listed(each) for each in pressed_ends(plan, lengths)))


def _listed(each: PressedEnd) -> tuple[Value, ...]:
    here = each.here
    made = "raw" if here.raw else here.stage
    colour = each.cable.colour if here.tube is not None else ""
    return (
        each.fitting, each.cable.id, each.end, each.pieces, each.conductor, here.place, each.there.place,
        each.turned, None if here.raw else here.strip, here.tube, colour, made,
        label_text(each.cable, here, each.there),
    )  # fmt: skip
