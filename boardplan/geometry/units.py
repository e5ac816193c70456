"""Units: reading and writing lengths as people of the trade do; points of paper."""

import re
from fractions import Fraction

INCH = 25.4
"""Millimetres in an inch, exact by the international agreement of 1959."""
POINTS_PER_MM = 72 / INCH
"""Units of a PDF page in a millimetre: 1/72 inch each (ISO 32000-1, 8.3.2.3)."""

_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_FACTORS = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction(254, 10),
    '"': Fraction(254, 10),
    "''": Fraction(254, 10),
    "ft": Fraction(3048, 10),
    "'": Fraction(3048, 10),
}
_NUMBER = r"(?:\d+[ -]+\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[.,]\d+)"
_PART = re.compile(rf"\s*(?P<number>{_NUMBER})\s*(?P<unit>mm|cm|m|in|ft|''|\"|')?(?![a-z])[ -]*")


def points_from_mm(length: float) -> float:
    """Return a length on paper in PDF units."""
    return length * POINTS_PER_MM


def mm_from_points(length: float) -> float:
    """Return a length in PDF units as millimetres."""
    return length / POINTS_PER_MM


class LengthError(ValueError):
    """A text that is not a length; says what was understood and what was expected."""


def read_length(text: str, unit: str = "mm") -> float:
    r"""Return the millimetres a text means; a bare number counts in the unit given ("mm" or "in").

    A comma is a decimal comma. Raises LengthError.

    >>> read_length("2'-6 1/2\"")
    774.7
    """
    plain = text.strip().lower().replace("″", '"').replace("′", "'").replace("”", '"').replace("’", "'")
    for sign, fraction in _VULGAR.items():
        plain = re.sub(rf"(\d)\s*{sign}", rf"\1 {fraction}", plain).replace(sign, fraction)
    negative = plain.startswith(("-", "−"))
    rest = plain.lstrip("-−+ ")
    total, at, last_unit = Fraction(0), 0, ""
    while at < len(rest):
        part = _PART.match(rest, at)
        if part is None or part.end() == at:
            raise LengthError(f"'{text}' is not a length: expected something like 44.5 mm, 1 3/4 in or 2'-6 1/2\"")
        named = part["unit"] or _next_unit(last_unit, unit)
        total += _number(part["number"]) * _FACTORS[named]
        last_unit, at = named, part.end()
    if not last_unit:
        raise LengthError("expected a length, found nothing")
    return float(-total if negative else total)


def _next_unit(last: str, default: str) -> str:
    """Return what a bare number counts in: inches after feet, centimetres after metres."""
    return {"ft": "in", "'": "in", "m": "cm"}.get(last, default)


def _number(text: str) -> Fraction:
    whole, _, fraction = text.replace(",", ".").replace("-", " ").rpartition(" ")
    try:
        return Fraction(whole.strip() or 0) + Fraction(fraction)
    except ZeroDivisionError as fault:
        raise LengthError(f"{text!r} divides by nought") from fault


def tidy_number(value: float, places: int = 1) -> str:
    """Return a number for people: rounded half away from zero, no empty decimals, no minus nought.

    >>> tidy_number(120.0), tidy_number(26.25)
    ('120', '26.3')
    """
    rounded = round(abs(value) * 10**places + 1e-7) / 10**places
    text = f"{rounded:.{places}f}".rstrip("0").rstrip(".") if places else f"{rounded:.0f}"
    return f"-{text}" if value < 0 and rounded else text


def inches_text(length: float, denominator: int = 32) -> str:
    """Return a length as a tape reads it: whole inches and a fraction.

    >>> inches_text(46.0)
    '1-13/16'
    """
    parts = round(abs(length) / INCH * denominator)
    whole, rest = divmod(parts, denominator)
    sign = "-" if length < 0 and parts else ""
    if not rest:
        return f"{sign}{whole}"
    fraction = Fraction(rest, denominator)
    return f"{sign}{whole}-{fraction}" if whole else f"{sign}{fraction}"


def length_text(length: float, units: str = "mm", places: int = 1) -> str:
    """Return a length with its unit, in the job's units for people ("mm" or "inch")."""
    return f"{inches_text(length)} in" if units == "inch" else f"{tidy_number(length, places)} mm"
