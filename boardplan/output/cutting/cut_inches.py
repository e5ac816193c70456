"""Cut inches: a cut as a tape in inches reads it."""

from boardplan.geometry.units import INCH, inches_text
from boardplan.routing.lengths.cut_length import rounded_up


def cut_inches(cut: float) -> str:
    """Return a cut as a tape in inches reads it, rounded up: never shorter than it has to be.

    >>> cut_inches(1055.0)
    '41-9/16'
    """
    return inches_text(rounded_up(cut, INCH / 32))
