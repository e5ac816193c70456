"""Fit list: every end of a cable by the place it lands on, so that a component is wired once and whole."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.output.cables.cable_words import clamp_words, end_name
from boardplan.output.cables.held_cables import NO_CLAMPS, Clamps
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lugs.lug_stack import stacks_of

_NOTES = (
    (
        "Check polarity at both ends before the first nut. Torque from the torque list; mark after tightening. "
        "Ends for what is mounted on site stay loose, tied back, their lugs covered."
    ),
)
_TICKS = ("laid", "clamped", "fitted", "torqued", "marked")
_OFF = "Off the board"


@dataclass(frozen=True, slots=True)
class FittedEnd:
    """An end of a cable, 1 or 2, where it lands, and which lug of how many it is from the stud's face outwards."""

    cable: Cable
    end: int
    component: str
    terminal: str
    here: EndWork
    there: EndWork
    layer: int = 0
    layers: int = 0


def fitted_ends(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[FittedEnd, ...]:
    """Return all ends by place: component by component as the plan has them, each stud in the order of its lugs.

    The ends that leave the boards come last.
    """
    layers = _layers(plan)
    places = {component: index for index, component in enumerate(plan.components)}

    def order(each: FittedEnd) -> tuple[int, str, int, str]:
        return places.get(each.component, len(places)), each.terminal, each.layer, each.cable.id

    ends = [end for cable in plan.cables.values() for end in _both(cable, lengths[cable.id], layers)]
    return tuple(sorted(ends, key=order))


def _layers(plan: Plan) -> Mapping[tuple[str, str, str], tuple[int, int]]:
    """Return the place of each cable's lug on its stud, from 1 at the contact face, and how many there are."""
    found: dict[tuple[str, str, str], tuple[int, int]] = {}
    for stack in stacks_of(plan):
        layer = 1
        for lug in stack.lugs:
            found[stack.component, stack.terminal, lug.cable] = layer, stack.count
            layer += lug.count
    return found


def _both(
    cable: Cable, length: CutLength, layers: Mapping[tuple[str, str, str], tuple[int, int]]
) -> Iterator[FittedEnd]:
    first, second = length.ends
    for number, end, here, there in ((1, cable.start, first, second), (2, cable.end, second, first)):
        component, terminal = _landing(end)
        layer, count = layers.get((component, terminal, cable.id), (0, 0))
        yield FittedEnd(cable, number, component, terminal or here.place, here, there, layer, count)


def _landing(end: CableEnd) -> tuple[str, str]:
    return (end.component, end.terminal) if isinstance(end, TerminalEnd) else ("", "")


def fit_table(plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps = NO_CLAMPS) -> Table:
    """Return the table for whoever wires, a heading for each component; it is handed out by itself."""
    rows: list[Row] = []
    place: str | None = None
    for each in fitted_ends(plan, lengths):
        if each.component != place:
            place = each.component
            rows.append(_heading(plan, place))
        rows.append(_row(plan, each, clamps))
    columns = (
        Column("terminal"),
        Column("end"),
        Column("conductor", grows=True),
        Column("on the stud", grows=True),
        Column("comes from", grows=True),
        Column("held by", grows=True),
        *(Column(each, "middle") for each in _TICKS),
    )
    return Table(columns, tuple(rows), "To fit, by place", _NOTES, opens_sheet=True)


def _heading(plan: Plan, place: str) -> Heading:
    if not place:
        return Heading(_OFF)
    component = plan.components[place]
    kind = plan.kind_of(component)
    site = "mounted on site" if (component.stage or kind.stage) == "site" else ""
    about = [component.label or kind.name, f"board {component.board}" if len(plan.boards) > 1 else "", site]
    return Heading(place, ", ".join(each for each in about if each))


def _row(plan: Plan, each: FittedEnd, clamps: Clamps) -> tuple[Cell, ...]:
    cable, here = each.cable, each.here
    held = clamp_words(cable.id, clamps.get(cable.id, ()))
    pieces = f", {cable.count} of them" if cable.count > 1 else ""
    return (
        Cell(each.terminal, bold=True),
        Cell(end_name(cable, each.end), alert="SITE" if here.stage == "site" or here.raw else ""),
        Cell(small=f"{plan.conductors[cable.conductor].name}, {cable.colour}{pieces}"),
        Cell(small=_layer_words(each)),
        Cell(each.there.place),
        Cell(small=held),
        Cell(tick=True),
        Cell(tick=bool(held)),
        Cell(tick=True),
        *((Cell(tick=here.tightened),) * 2),
    )


def _layer_words(each: FittedEnd) -> str:
    if each.layers <= 1:
        return f"lug {each.here.stud}" if each.here.stud else ""
    place = "next to the face" if each.layer == 1 else f"on top of {each.layer - 1}"
    return f"{each.layer} of {each.layers}, {place}"


_HEADS = (
    "component", "terminal", "cable", "end", "pieces", "conductor", "colour", "lug_on_stud", "lugs_on_stud",
    "comes_from", "clamps", "made",
)  # fmt: skip


def fit_listing(plan: Plan, lengths: Mapping[str, CutLength], clamps: Clamps = NO_CLAMPS) -> Listing:
    """Return all ends in the order to fit; a clamp for a pair counts with both."""
    rows = (
        (
            each.component, each.terminal, each.cable.id, each.end, each.cable.count,
            plan.conductors[each.cable.conductor].name, each.cable.colour, each.layer or None, each.layers or None,
            each.there.place, len(clamps.get(each.cable.id, ())), "raw" if each.here.raw else each.here.stage,
        )
        for each in fitted_ends(plan, lengths)
    )  # fmt: skip
    return Listing("Fit list", _HEADS, tuple(rows))
