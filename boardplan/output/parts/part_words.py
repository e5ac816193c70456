"""Part words: how papers say how many of a part, for what, and where it comes from."""

import math

from boardplan.geometry.units import tidy_number
from boardplan.output.parts.part import Part

_NOISE = 1e-6
_LINE = 24
"""Characters in a line of names: a column as wide as a few of them."""
_MOST_NAMES = 10
"""More things than that are counted instead of named on paper; the spreadsheet names all."""


def quantity_words(part: Part) -> str:
    """Return how many to take; a blank to fill in where a person has to say.

    >>> quantity_words(Part("k", "lugs", "Lug", 11, 2)), quantity_words(Part("k", "tubes", "Tube", None, None))
    ('13', '____')
    """
    if part.quantity is not None:
        return tidy_number(math.ceil(part.quantity * 100 - _NOISE) / 100, 2)
    return "____" if part.needed is None else f"{tidy_number(part.needed, 2)} + __"


def spare_parts(part: Part) -> str:
    """Return what the quantity is made of, where there is a spare or something for the site in it."""
    if not part.needed or not part.spare:
        return f"{tidy_number(part.on_site, 2)} on site" if _in_part_on_site(part) else ""
    words = f"{tidy_number(part.needed, 2)} + {tidy_number(part.spare, 2)}"
    return f"{words}\n{tidy_number(part.on_site, 2)} on site" if _in_part_on_site(part) else words


def _in_part_on_site(part: Part) -> bool:
    return bool(part.spare) and part.on_site > 0


def things_words(part: Part) -> str:
    """Return what a part is for; many things are counted."""
    names = [f"{each}," for each in part.things[:_MOST_NAMES]]
    more = len(part.things) - _MOST_NAMES
    names[-1:] = [each.removesuffix(",") for each in names[-1:]]
    lines = [""]
    for name in [*names, *([f"and {more} more"] if more > 0 else [])]:
        if lines[-1] and len(lines[-1]) + len(name) >= _LINE:
            lines.append("")
        lines[-1] = f"{lines[-1]} {name}".strip()
    return "\n".join(lines)


def bag_words(part: Part) -> str:
    """Return how a part is shared out to the bags of several boards; nothing for one."""
    if len(part.bags) < 2 or part.unit != "pcs":  # noqa: PLR2004
        return ""
    return ", ".join(f"bag {board}: {tidy_number(count, 2)}" for board, count in part.bags.items())


def source_words(part: Part) -> str:
    """Return where a part comes from; a blank where nobody said."""
    if part.origin == "shop":
        return "own"
    if part.origin == "ordered":
        return "ORDERED"
    return part.origin or "____"


def kilograms(part: Part) -> str:
    """Return what all of a part weighs; a question where nobody weighed it."""
    if part.weight is None:
        return "" if part.category == "customer" else "?"
    return f"{part.weight:.1f}" if part.weight >= 1 else f"{part.weight:.2f}"
