"""Ledger: where a strip is screwed on for a while to carry a heavy unit that goes on after the board is fixed."""

from collections.abc import Iterable, Iterator

from boardplan.drawing.picture import Line, Mark
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.board import Board
from boardplan.model.job import Units
from boardplan.model.placed import Placed
from boardplan.output.holes.datum import running
from boardplan.output.printing.lettering import FINE
from boardplan.output.template.free_places import common_box
from boardplan.output.template.word_block import Inscription
from boardplan.output.template.word_desk import WordDesk
from boardplan.output.template.word_places import steps

_PAST, _TICK = 15.0, 3.0
_GAP = 1.2


def on_ledger(unit: Placed) -> bool:
    """Say whether a unit goes on when the board hangs: those are the heavy ones (common practice, no source)."""
    return (unit.component.stage or unit.kind.stage) == "site"


def ledger_marks(units: Iterable[Placed]) -> Iterator[Mark]:
    """Yield the line along the lower edge of each such unit, past both its sides, with ticks below its ends."""
    for unit in filter(on_ledger, units):
        left, right, y = unit.box.left - _PAST, unit.box.right + _PAST, unit.box.bottom
        yield Line((Point(left, y), Point(right, y)), "ink", 0.25, (6, 1.5))
        for x in (left, right):
            yield Line((Point(x, y), Point(x, y - _TICK)), "ink", 0.25)


def ledger_words(board: Board, unit: Placed, units: Units, desk: WordDesk) -> Iterator[Inscription]:
    """Yield what the line is for, below it, once on each sheet that shows enough of it."""
    if not on_ledger(unit):
        return
    height = length_text(running(board, Point(unit.box.left, unit.box.bottom)).y, units)
    mass = f", {tidy_number(unit.kind.mass)} kg" if unit.kind.mass else ""
    block = desk.block((f"ledger line of {unit.component.id}: Y {height}{mass}", FINE, False, "ink"))
    top = unit.box.bottom - _GAP
    for rect in desk.own:
        shown = common_box(Box(unit.box.left, top - block.height, unit.box.right, top), rect)
        if shown and shown.height >= block.height - 1e-6:
            lefts = steps(shown.left, shown.right - block.width)
            place = desk.first(Box(left, top - block.height, left + block.width, top) for left in lefts)
            if place:
                yield block.at(place)
