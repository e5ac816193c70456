"""Hole schedule: every hole with its running dimensions, by bit for drilling and by component for checking."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from boardplan.geometry.point import Point
from boardplan.geometry.units import inches_text, tidy_number
from boardplan.model.board import Board
from boardplan.model.holes import Hole, holes_of
from boardplan.model.job import Units
from boardplan.model.plan import Plan
from boardplan.output.holes.datum import datum_words, edge_words, half_mm, running
from boardplan.output.holes.drills import nearest_inch_drill
from boardplan.output.holes.hole_mark import hole_sign
from boardplan.output.holes.hole_words import SYMBOL_WORDS, bit_text, depth_text, nearest_drill
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Heading, Table
from boardplan.routing.supports.clamp_holes import Clamps, clamp_holes

FOOTER = (
    "Positions only. Running dimensions from edges A and B, never from the last hole. "
    "Before drilling: what is behind? Use the fastener named and no other."
)
_PUNCH_OVER = 2.0
"""How much wider than its screw the disc punched out of fabric is, in mm: common practice, no source."""
FABRIC = (
    "Fabric: cut a small cross with a knife or punch a disc 2 mm over screw size first - or melt a ring with a hot tip "
    "where the fibre is synthetic. Hold it down round the bit, start slowly. For hole saws cut the disc out beforehand."
)
INCH_DRILLS = (
    "Inch drills are the nearest to the bit in mm, not the same: up to 0.2 mm off, hole saws up to 0.8 mm. "
    "Drill a test piece first."
)
BY_PATTERN = (
    "Without a template: drill hole 1 of a component, screw it on loosely, level it, mark the rest through it. "
    "The first hole of a pattern counts from the datum, the others from it: pitches are exact, so rounding can't spoil "
    "the pattern. Running dimensions of the others stand small, to check with."
)
CLAMPS = (
    "Clamps are in no count of holes. Depth stop on the bit: a clamp's screw stays inside the board. "
    "Lay the cable and its clamp in place before drilling: jackets differ."
)


@dataclass(frozen=True, slots=True)
class HoleRow:
    """A hole with its running dimensions in mm, and its pitch from the first hole of its pattern."""

    hole: Hole
    board: Board
    place: Point
    pitch: Point | None
    note: str


def hole_rows(plan: Plan) -> tuple[HoleRow, ...]:
    """Return all holes as rows, in the order they are numbered."""
    firsts: dict[str, Hole] = {}
    rows = []
    for hole in holes_of(plan):
        board = plan.boards[hole.board]
        place = running(board, hole.position)
        first = firsts.setdefault(hole.owner, hole)
        origin = running(board, first.position)
        pitch = None if first is hole or hole.sort == "fixing" else place.minus(origin)
        rows.append(HoleRow(hole, board, place, pitch, _note(plan, hole)))
    return tuple(rows)


def _note(plan: Plan, hole: Hole) -> str:
    notes = []
    if hole.bit is None:
        notes.append("how wide?" if hole.sort == "exit" else "which fastener?")
    component = plan.components.get(hole.owner)
    if component and plan.kind_of(component).non_combustible_backing:
        notes.append("non-combustible pad, no fabric here")
    elif plan.boards[hole.board].fabric:
        notes.append(_fabric_words(plan, hole))
    if hole.sort == "t-nut":
        notes.append("backing board under the hole")
    return "; ".join(notes)


def _fabric_words(plan: Plan, hole: Hole) -> str:
    """Return how the fabric is opened before the bit comes near it: a punch is 2 mm over the screw (trade practice)."""
    if hole.sort == "exit":
        return "fabric: cut the disc out first"
    fastener = plan.fasteners.get(hole.fastener)
    if fastener is None:
        return "fabric: cut a cross first"
    return f"fabric: cut a cross, or punch {tidy_number(max(fastener.thread, fastener.bit) + _PUNCH_OVER)}"


def clamp_rows(plan: Plan, clamps: Clamps) -> tuple[HoleRow, ...]:
    """Return the screw holes of clamps as rows; they are in no count of holes."""
    holes = clamp_holes(plan, clamps)
    return tuple(_clamp_row(plan, hole) for hole in holes)


def _clamp_row(plan: Plan, hole: Hole) -> HoleRow:
    board = plan.boards[hole.board]
    return HoleRow(hole, board, running(board, hole.position), None, _note(plan, hole))


def hole_tables(plan: Plan, clamps: Clamps = MappingProxyType({})) -> tuple[Table, ...]:
    """Return the tables of a schedule: the totals, each board by bit, then by component, then its clamp screws."""
    rows, screws = hole_rows(plan), clamp_rows(plan, clamps)
    tables = [_totals(rows, screws)]
    for board in plan.boards.values():
        own = [row for row in rows if row.hole.board == board.id]
        if own:
            tables.append(_by_bit(plan, board, own))
    for board in plan.boards.values():
        own = [row for row in rows if row.hole.board == board.id]
        if own:
            tables.append(_by_item(plan, board, own))
    for board in plan.boards.values():
        own = [row for row in screws if row.hole.board == board.id]
        if own:
            tables.append(_clamp_screws(plan, board, own))
    return tuple(tables)


def _board_words(board: Board) -> str:
    return (
        f"board {board.id} {board.name}: from the {edge_words(board)}s, {board.datum.corner.replace('-', ' ')} corner"
    )


def _datum_note(board: Board) -> str:
    return f"X from edge B, Y from edge A: {datum_words(board)}."


def _by_bit(plan: Plan, board: Board, rows: Sequence[HoleRow]) -> Table:
    ordered = sorted(rows, key=_drilling_order)
    found: list[Heading | tuple[Cell, ...]] = []
    counts = Counter(row.hole.bit for row in rows)
    bit: object = object()
    for row in ordered:
        if row.hole.bit != bit:
            bit = row.hole.bit
            found.append(Heading(f"Bit {bit_text(row.hole.bit)}", f"{counts[row.hole.bit]} holes on board {board.id}"))
        found.append(_cells(plan, row))
    return Table(_columns(plan), tuple(found), f"To drill, by bit then X: {_board_words(board)}", (_datum_note(board),))


def _drilling_order(row: HoleRow) -> tuple[float, float, float]:
    """Return what sorts holes for drilling: by bit, the unknown ones last, then by X from the datum."""
    bit = row.hole.bit
    return (bit if bit is not None else math.inf, row.place.x, row.place.y)


def _by_item(plan: Plan, board: Board, rows: Sequence[HoleRow]) -> Table:
    found: list[Heading | tuple[Cell, ...]] = []
    owner = ""
    for row in rows:
        group = "board fixings" if row.hole.sort == "fixing" else row.hole.owner
        if group != owner:
            owner = group
            found.append(Heading(group, _owner_words(plan, row.hole)))
        found.append(_cells(plan, row, by_pitch=True))
    return Table(
        _columns(plan), tuple(found), f"To check, by component: {_board_words(board)}", (_datum_note(board), BY_PATTERN)
    )


def _clamp_screws(plan: Plan, board: Board, rows: Sequence[HoleRow]) -> Table:
    """Return the screws of clamps on a board, cable by cable."""
    found: list[Heading | tuple[Cell, ...]] = []
    counts = Counter(row.hole.owner for row in rows)
    owner = ""
    for row in rows:
        if row.hole.owner != owner:
            owner = row.hole.owner
            found.append(Heading(owner, f"{counts[owner]} clamp screw{'s' if counts[owner] > 1 else ''}"))
        found.append(_cells(plan, row))
    title = f"Clamp screws, {len(rows)}: {_board_words(board)}"
    return Table(_columns(plan), tuple(found), title, (_datum_note(board), CLAMPS))


def _owner_words(plan: Plan, hole: Hole) -> str:
    """Return what a hole belongs to; of several boards also which, since a table goes on over sheets of its own."""
    component = plan.components.get(hole.owner)
    kind = plan.kind_of(component).name if component else "channel" if hole.owner in plan.channels else ""
    on_board = f"board {hole.board}" if len(plan.boards) > 1 else ""
    return ", ".join(each for each in (kind, on_board) if each)


def _columns(plan: Plan) -> tuple[Column, ...]:
    unit = "in" if plan.job.units == "inch" else "mm"
    return (
        Column("done", "middle"),
        Column("hole"),
        Column("of"),
        Column(f"X {unit}", "end"),
        Column(f"Y {unit}", "end"),
        Column(f"pitch from hole 1 {unit}", "end"),
        Column("bit", "end"),
        Column("depth mm", "end"),
        Column("sign", "middle"),
        Column("fastener", grows=True),
        Column("note", grows=True),
    )


def _cells(plan: Plan, row: HoleRow, *, by_pitch: bool = False) -> tuple[Cell, ...]:
    """Return a row's cells; by pitch, all but the first hole of a pattern count from that one."""
    hole, units = row.hole, plan.job.units
    from_first = by_pitch and row.pitch is not None
    fastener = plan.fasteners.get(hole.fastener)
    return (
        Cell(tick=True),
        Cell(hole.id, bold=True),
        Cell("" if hole.owner == hole.id else hole.owner),
        _running_cell(row.place.x, units, small=from_first),
        _running_cell(row.place.y, units, small=from_first),
        _pitch_cell(row.pitch, units, bold=from_first),
        Cell(
            "?" if hole.bit is None else f"{hole.bit:.1f}",
            small="" if hole.bit is None else nearest_inch_drill(hole.bit).sentence.replace(" mm", ""),
        ),
        Cell(depth_text(hole).replace(" deep", "")),
        Cell(picture=hole_sign(hole.sort), picture_size=6.0),
        Cell(small=f"{fastener.name if fastener else ''}\n{SYMBOL_WORDS[hole.sort]}".strip()),
        Cell(small=row.note, alert="SITE" if hole.stage == "site" else ""),
    )


def _running_cell(length: float, units: Units, *, small: bool = False) -> Cell:
    """Return a running dimension as the job's tape reads it; in inches with the millimetres below."""
    if units == "inch":
        inches, mm = inches_text(length), f"{half_mm(length)} mm"
        return Cell(small=f"{inches}\n{mm}") if small else Cell(inches, small=mm, bold=True)
    return Cell(small=half_mm(length)) if small else Cell(half_mm(length), bold=True)


def _pitch_cell(pitch: Point | None, units: Units, *, bold: bool) -> Cell:
    """Return the way from the first hole of a pattern: in inches to 1/64, with the exact millimetres below."""
    if pitch is None:
        return Cell()
    words = f"{tidy_number(pitch.x)} x {tidy_number(pitch.y)}"
    if units == "inch":
        inches = f"{inches_text(pitch.x, 64)} x {inches_text(pitch.y, 64)}"
        return Cell(inches, small=f"{words} mm", bold=True) if bold else Cell(small=f"{inches}\n{words} mm")
    return Cell(words, bold=True) if bold else Cell(small=words)


def _totals(rows: Sequence[HoleRow], screws: Sequence[HoleRow]) -> Table:
    found = _bit_lines(rows)
    if screws:
        found.append(Heading("Clamp screws", f"{len(screws)}"))
        found += _bit_lines(screws)
    notes = (*((FABRIC,) if any(row.board.fabric for row in rows) else ()), INCH_DRILLS)
    columns = (
        Column("have it", "middle"),
        Column("bit"),
        Column("holes", "end"),
        Column("sort", grows=True),
        Column("fastener", grows=True),
    )
    besides = f" and {len(screws)} clamp screws" if screws else ""
    return Table(columns, tuple(found), f"Bits: {len(rows)} holes in all{besides}", notes, share=0.7)


def _bit_lines(rows: Sequence[HoleRow]) -> list[Heading | tuple[Cell, ...]]:
    counts = Counter((row.hole.bit, row.hole.sort, row.hole.fastener) for row in rows)
    ordered = sorted(counts, key=lambda key: (key[0] if key[0] is not None else math.inf, key[1], key[2]))
    return [
        (
            Cell(tick=True),
            Cell(bit_text(bit), bold=True),
            Cell(str(counts[bit, sort, fastener]), bold=True),
            Cell(SYMBOL_WORDS[sort]),
            Cell(fastener),
        )
        for bit, sort, fastener in ordered
    ]


def hole_listing(plan: Plan, clamps: Clamps = MappingProxyType({})) -> Listing:
    """Return the schedule, clamp screws last: exact millimetres, and inches as a tape reads them."""
    heads = (
        "hole", "board", "component", "x_mm", "y_mm", "x_in_1/32", "y_in_1/32", "pitch_x_mm", "pitch_y_mm",
        "bit_mm", "nearest_drill_in", "depth_mm", "sort", "fastener", "stage", "note", "x_and_y_from",
    )  # fmt: skip
    rows = tuple(tuple(_listed(row)) for row in (*hole_rows(plan), *clamp_rows(plan, clamps)))
    return Listing("Hole schedule", heads, rows)


def _listed(row: HoleRow) -> Iterator[str | float | None]:
    hole = row.hole
    yield from (hole.id, hole.board, "" if hole.owner == hole.id else hole.owner)
    yield from (row.place.x, row.place.y, inches_text(row.place.x), inches_text(row.place.y))
    yield from (row.pitch.x, row.pitch.y) if row.pitch else (None, None)
    yield from (hole.bit, None if hole.bit is None else nearest_drill(hole.bit))
    yield "" if hole.bit is None else "THRU" if hole.depth is None else tidy_number(hole.depth)
    yield from (SYMBOL_WORDS[hole.sort], hole.fastener, hole.stage, row.note, datum_words(row.board))
