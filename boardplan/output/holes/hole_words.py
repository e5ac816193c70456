"""Hole words: how papers name a hole's bit, depth and symbol."""

from fractions import Fraction

from boardplan.geometry.units import INCH
from boardplan.model.holes import Hole, HoleSort

SYMBOL_WORDS: dict[HoleSort, str] = {
    "pilot": "pilot",
    "t-nut": "T-nut from back",
    "through": "through",
    "fixing": "board fixing",
    "exit": "exit, hole saw",
}
"""What the symbol of each sort of hole is called."""


_HOLE_SAWS_FROM = 14.0
"""Wider holes are sawn, in mm; inch hole saws come in steps of 1/16: common practice, no source."""


def nearest_drill(bit: float) -> str:
    """Return the nearest inch drill, in steps of 1/64, or hole saw, in steps of 1/16.

    >>> nearest_drill(2.8), nearest_drill(8.0), nearest_drill(40.0)
    ('7/64', '5/16', '1-9/16')
    """
    parts = 64 if bit < _HOLE_SAWS_FROM else 16
    whole, rest = divmod(round(bit / INCH * parts), parts)
    fraction = str(Fraction(rest, parts)) if rest else ""
    return "-".join(part for part in (str(whole) if whole else "", fraction) if part)


def bit_text(bit: float | None) -> str:
    """Return a bit in mm with the nearest inch drill, or a question where no fastener says how wide."""
    return "?" if bit is None else f"{bit:.1f} mm  {nearest_drill(bit)} in"


def depth_text(hole: Hole) -> str:
    """Return how deep to drill: in mm, or THRU; a question where that is not known."""
    if hole.bit is None:
        return "?"
    return "THRU" if hole.depth is None else f"{hole.depth:g} deep"
