"""Torque list: every stud and clamp that a cable is on, what lies on it, its torque where a sheet gave one.

No torque is ever filled in from anywhere else than the kind's own sheet: there is a box to write in, and a question.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable
from boardplan.model.component_kind import Terminal
from boardplan.model.plan import Plan
from boardplan.output.cables.stud_stacks import order_words
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Row, Table
from boardplan.routing.lengths.end_work import size_words
from boardplan.routing.lugs.lug_stack import cables_on_studs, stack_of

FOOTER = "Torque from the sheet. Mark after tightening. Disconnect and cover battery terminals before any work."
POUND_INCHES = 8.850746
"""Pound-force inches in a newton metre: 1 lbf in = 0.112 984 8 N m (NIST SP 811, appendix B.8)."""
_HOW = (
    "Only the sheet that came with a component says its torque; where the box is empty, read it there and write it in "
    "before the wrench is set. Clean, flat faces, lugs in the order given. The mark: one line of paint across nut and "
    "stud."
)
_TIGHTENED = ("stud", "clamp")
_BY_HAND = 6


@dataclass(frozen=True, slots=True)
class TorqueRow:
    """A stud or a clamp with cables on it: what lies on it in words, its torque in Nm, none where no sheet said it."""

    component: str
    terminal: Terminal
    lying: str
    count: int

    @property
    def place(self) -> str:
        """The terminal in words."""
        return f"{self.component}.{self.terminal.id}"


def torque_rows(plan: Plan) -> tuple[TorqueRow, ...]:
    """Return a row for each stud and clamp that a cable ends on, by component and terminal as the plan has them."""
    lying = cables_on_studs(plan)
    return tuple(
        _row(plan, component.id, terminal, lying[component.id, terminal.id])
        for component in plan.components.values()
        for terminal in plan.kind_of(component).terminals
        if terminal.sort in _TIGHTENED and (component.id, terminal.id) in lying
    )


def _row(plan: Plan, component: str, terminal: Terminal, cables: Sequence[Cable]) -> TorqueRow:
    stack = stack_of(plan, (component, terminal.id), cables)
    count = sum(each.count for each in cables)
    if stack is not None:
        return TorqueRow(component, terminal, order_words(stack), count)
    words = (f"{each.id} {size_words(plan.conductors[each.conductor])}" for each in cables)
    return TorqueRow(component, terminal, ", ".join(words), count)


def torque_tables(plan: Plan, rows: Sequence[TorqueRow]) -> tuple[Table, ...]:
    """Return the list by component, then empty lines for what the plan doesn't know."""
    columns = (
        Column("terminal"), Column("thread"), Column("what lies on it, from the contact face outwards", grows=True),
        Column("torque Nm", "end"), Column("tool", "middle"), Column("done by", "middle"), Column("date", "middle"),
        Column("mark", "middle"), Column("again: date", "middle"),
    )  # fmt: skip
    return (
        Table(columns, tuple(_listed_rows(plan, rows)), notes=(_HOW, missing_words(rows))),
        _by_hand(),
    )


def missing_words(rows: Sequence[TorqueRow]) -> str:
    """Return how many torques nobody has read from a sheet yet."""
    missing = sum(each.terminal.torque is None for each in rows)
    if not missing:
        return f"The torque of all {len(rows)} terminals is from their sheets."
    return f"To ask: the torque of {missing} of {len(rows)} terminals is not known. What do their sheets say?"


def _listed_rows(plan: Plan, rows: Sequence[TorqueRow]) -> Iterator[Row]:
    last = ""
    for each in rows:
        if each.component != last:
            component = plan.components[each.component]
            yield Heading(f"{component.id}  {component.label or plan.kind_of(component).name}")
        last = each.component
        yield _cells(plan, each)


def _cells(plan: Plan, row: TorqueRow) -> tuple[Cell, ...]:
    thread = row.terminal.size or ("clamp" if row.terminal.sort == "clamp" else "?")
    boxes = (Cell(blank=24), Cell(blank=20), Cell(blank=24), Cell(tick=True), Cell(blank=24))
    return Cell(row.terminal.id, bold=True), Cell(thread), Cell(row.lying), _torque(plan, row.terminal.torque), *boxes


def _torque(plan: Plan, torque: float | None) -> Cell:
    if torque is None:
        return Cell(blank=18)
    inches = f"{tidy_number(torque * POUND_INCHES)} lbf in" if plan.job.units == "inch" else ""
    return Cell(f"{torque:g}", bold=True, small=inches)


def _by_hand() -> Table:
    """Return lines for bolts and clamps that a plan doesn't know: of fuses, link bars, inside components, far ends."""
    columns = (
        Column("bolt", grows=True),
        *(Column(each, "middle") for each in ("thread", "torque Nm", "tool", "done by", "date", "mark", "again: date")),
    )
    boxes = (Cell(blank=60), *(Cell(blank=18) for _ in range(5)), Cell(tick=True), Cell(blank=24))
    title = "Other bolts and clamps: fuses, link bars, inside glands, battery posts, far ends"
    return Table(columns, (boxes,) * _BY_HAND, title)


def torque_listing(rows: Sequence[TorqueRow]) -> Listing:
    """Return the list; a torque that no sheet gave is an empty cell."""
    heads = ("component", "terminal", "sort", "thread", "lugs_or_wires", "from_the_contact_face_outwards", "torque_nm")
    return Listing(
        "Torque list",
        (*heads, "tool", "done_by", "date", "marked"),
        tuple(
            (
                each.component, each.terminal.id, each.terminal.sort, each.terminal.size, each.count, each.lying,
                each.terminal.torque, None, None, None, None,
            )
            for each in rows
        ),
    )  # fmt: skip


def torque_records(rows: Sequence[TorqueRow]) -> list[dict[str, Any]]:
    """Return the list as plain values for JSON: torque in Nm, null where no sheet gave one."""
    return [
        {
            "terminal": each.place,
            "sort": each.terminal.sort,
            "thread": each.terminal.size or None,
            "lying": each.lying,
            "torque": each.terminal.torque,
        }
        for each in rows
    ]
