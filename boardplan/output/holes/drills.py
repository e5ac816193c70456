"""Drills: the nearest drill that is sold in inches, in 1/64 or by number, and how wide it is in millimetres.

Number drills #1 to #60: ASME B94.11M, Twist Drills; the table is from memory, a test holds its ends and the numbers of
common tap drills against published charts.
"""

from dataclasses import dataclass
from fractions import Fraction

from boardplan.geometry.units import INCH

NUMBER_DRILLS = (
    0.2280, 0.2210, 0.2130, 0.2090, 0.2055, 0.2040, 0.2010, 0.1990, 0.1960, 0.1935,
    0.1910, 0.1890, 0.1850, 0.1820, 0.1800, 0.1770, 0.1730, 0.1695, 0.1660, 0.1610,
    0.1590, 0.1570, 0.1540, 0.1520, 0.1495, 0.1470, 0.1440, 0.1405, 0.1360, 0.1285,
    0.1200, 0.1160, 0.1130, 0.1110, 0.1100, 0.1065, 0.1040, 0.1015, 0.0995, 0.0980,
    0.0960, 0.0935, 0.0890, 0.0860, 0.0820, 0.0810, 0.0785, 0.0760, 0.0730, 0.0700,
    0.0670, 0.0635, 0.0595, 0.0550, 0.0520, 0.0465, 0.0430, 0.0420, 0.0410, 0.0400,
)  # fmt: skip
"""Diameters in inches of #1, #2 and so on."""
_HOLE_SAWS_FROM = 14.0
"""Wider holes are sawn, in mm; inch hole saws come in steps of 1/16: common practice, no source."""
_WORTH = 0.05
"""A number drill is named where it comes nearer by this than the fraction that everybody carries, in mm."""

_HALF = 1e-9
"""Added before rounding, so that half a hundredth is rounded up."""


@dataclass(frozen=True, slots=True)
class Drill:
    """A drill or hole saw: what it is called, and its diameter in mm."""

    name: str
    width: float

    @property
    def words(self) -> str:
        """Its name and, to the hundredth, its own width.

        >>> nearest_inch_drill(5.0).words, nearest_fraction(2.8).words
        ('#9 4.98', '7/64 2.78')
        """
        return f"{self.name} {self.width + _HALF:.2f}"

    @property
    def sentence(self) -> str:
        """The same with its units."""
        inch = "" if self.name.startswith("#") else " in"
        return f"{self.name}{inch} = {self.width + _HALF:.2f} mm"


def nearest_fraction(bit: float) -> Drill:
    """Return the nearest drill in steps of 1/64 in, or hole saw in steps of 1/16, to a width in mm.

    >>> nearest_fraction(40.0)
    Drill(name='1-9/16', width=39.6875)
    """
    parts = 64 if bit < _HOLE_SAWS_FROM else 16
    steps = max(1, round(bit / INCH * parts))
    whole, rest = divmod(steps, parts)
    name = "-".join(part for part in (str(whole or ""), str(Fraction(rest, parts)) if rest else "") if part)
    return Drill(name, steps / parts * INCH)


def nearest_inch_drill(bit: float) -> Drill:
    """Return the nearest drill sold in inches to a width in mm: a number drill only where it comes clearly nearer."""
    fraction = nearest_fraction(bit)
    number, width = min(enumerate(NUMBER_DRILLS, start=1), key=lambda each: abs(each[1] * INCH - bit))
    by_number = Drill(f"#{number}", width * INCH)
    clearly = abs(by_number.width - bit) <= abs(fraction.width - bit) - _WORTH
    return by_number if clearly else fraction
