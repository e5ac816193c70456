"""Length sum: what leads to a cable's cut length, as a sum that a person can follow line by line.

CutLength fields: cable, count, reason ("" or why there is no length), legs (mm each, straight on the wall),
radius, bends (BendSaving: turn in degrees, saving in mm), rise, rises ((words, mm), which add up to the rise),
flat (no heights under this edition), left_out (words, which slopes don't count), off_board, path, ends (two EndWork,
see end_work), net, extra (loops and tails), slack_class, slack, step, own_cut, cut, group, surplus, surplus_percent,
evened_by (what to move, or none), stock (bought with moulded ends, never cut), trust (worst of the off-board legs),
final, minus, plus (shop tolerance, mm), mass (kg of all `count`, None where not weighed), parts ((words, mm), which
add up to the cut), notes.
All lengths in mm; path, net, own_cut and cut are None where there is no way.
"""

from dataclasses import dataclass

from boardplan.geometry.units import tidy_number
from boardplan.model.cable import SlackClass
from boardplan.model.trust import Trust
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.evening import Shift


@dataclass(frozen=True, slots=True)
class BendSaving:
    """A corner of the way: its turn in degrees, left positive, and how much shorter its bend is, in mm."""

    turn: float
    saving: float


@dataclass(frozen=True, slots=True)
class CutLength:
    """The sum that leads to a cable's cut; lengths in mm, each of `count` alike cables.

    `own_cut` is what the cable needs for itself, `cut` what its matched group makes of it, `surplus` the
    difference, `surplus_percent` of the cut. `rise` is what the way gains off the board, in `rises` one by one; where
    lengths are `flat` it is 0.
    """

    cable: str
    count: int
    ends: tuple[EndWork, EndWork]
    reason: str = ""
    legs: tuple[float, ...] = ()
    radius: float = 0.0
    bends: tuple[BendSaving, ...] = ()
    rise: float = 0.0
    rises: tuple[tuple[str, float], ...] = ()
    flat: bool = True
    left_out: str = ""
    off_board: float = 0.0
    path: float | None = None
    net: float | None = None
    extra: float = 0.0
    slack_class: SlackClass = "small"
    slack: float = 0.0
    step: float = 1.0
    own_cut: float | None = None
    cut: float | None = None
    group: str = ""
    surplus: float = 0.0
    surplus_percent: float = 0.0
    evened_by: Shift | None = None
    stock: bool = False
    trust: Trust = "measured"
    final: bool = False
    minus: float = 0.0
    plus: float = 0.0
    mass: float | None = None
    parts: tuple[tuple[str, float], ...] = ()
    notes: tuple[str, ...] = ()


def explain(length: CutLength) -> tuple[str, ...]:
    """Return a cut length as lines for people: every part of the sum, its result, then the notes."""
    if length.path is None:
        return (f"{length.cable} has no length: {length.reason}", *length.notes)
    lines = [f"{words}: {_signed(value)} mm" for words, value in length.parts]
    if length.flat:
        lines.append("no rise off the board is added: lengths are flat in this edition")
    if length.left_out:
        lines.append(length.left_out)
    lines.append(f"path {tidy_number(length.path)} mm, net {tidy_number(length.net or 0.0)} mm")
    if length.cut is not None:
        tolerance = (
            f", +{tidy_number(length.plus)} / -{tidy_number(length.minus)}" if length.plus or length.minus else ""
        )
        verb = "stock lead" if length.stock else "cut"
        count = f"{length.count} of " if length.count > 1 else ""
        lines.append(f"{verb} {count}{tidy_number(length.cut)} mm{tolerance}")
    if not length.final:
        lines.append("not final")
    return (*lines, *length.notes)


def _signed(value: float) -> str:
    text = tidy_number(value)
    return text if text.startswith("-") else f"+{text}"
