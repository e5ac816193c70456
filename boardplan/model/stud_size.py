"""Stud size: how thick a stud is by the name of its thread, and the hole that fits over it."""

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

MEDIUM_HOLES: Mapping[str, float] = MappingProxyType(
    {"M3": 3.4, "M4": 4.5, "M5": 5.5, "M6": 6.6, "M8": 9.0, "M10": 11.0, "M12": 13.5}
)
"""Clearance holes in mm, medium fit (H13): ISO 273:1979. Inch threads aren't in it."""
_INCH = 25.4


def plain_size(size: str) -> str:
    """Return the name of a thread as it is compared: without spaces, in capitals.

    >>> plain_size(" m 8")
    'M8'
    """
    return size.replace(" ", "").upper()


def thread_diameter(size: str) -> float | None:
    """Return the nominal diameter of a thread in mm, none where the name says nothing of it.

    >>> thread_diameter("M8"), thread_diameter('1/4"'), thread_diameter("")
    (8.0, 6.35, None)
    """
    name = plain_size(size).removesuffix('"').removesuffix("IN")
    try:
        return float(name[1:].split("X")[0]) if name.startswith("M") else float(Fraction(name)) * _INCH
    except (ValueError, ZeroDivisionError):
        return None


def medium_hole(size: str) -> float | None:
    """Return the clearance hole of a thread in mm, medium fit, none where ISO 273 has none.

    >>> medium_hole("M10")
    11.0
    """
    return MEDIUM_HOLES.get(plain_size(size))
