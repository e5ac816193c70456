"""Hole words: how papers name a hole's bit, depth and symbol."""

from boardplan.model.holes import Hole, HoleSort
from boardplan.output.holes.drills import nearest_fraction, nearest_inch_drill

SYMBOL_WORDS: dict[HoleSort, str] = {
    "pilot": "pilot",
    "t-nut": "T-nut from back",
    "through": "through",
    "fixing": "board fixing",
    "exit": "exit, hole saw",
}
"""What the symbol of each sort of hole is called."""


def nearest_drill(bit: float) -> str:
    """Return the nearest inch drill, in steps of 1/64, or hole saw, in steps of 1/16.

    >>> nearest_drill(2.8), nearest_drill(8.0), nearest_drill(40.0)
    ('7/64', '5/16', '1-9/16')
    """
    return nearest_fraction(bit).name


def bit_text(bit: float | None) -> str:
    """Return a bit in mm with the nearest inch drill, or a question where no fastener says how wide."""
    return "?" if bit is None else f"{bit:.1f} mm  {nearest_inch_drill(bit).sentence}"


def depth_text(hole: Hole) -> str:
    """Return how deep to drill: in mm, or THRU; a question where that is not known."""
    if hole.bit is None:
        return "?"
    return "THRU" if hole.depth is None else f"{hole.depth:g} deep"
