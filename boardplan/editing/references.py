"""References: the next free number for a new thing, and whether a text may serve as one."""

import re
from collections.abc import Collection

from boardplan.editing.refused import EditRefused
from boardplan.model.plan import Plan

_REFERENCE = re.compile(r"[^\s'\"](?:[^'\"\n\r\t]*[^\s'\"])?")
_LONGEST = 60


def next_reference(plan: Plan, prefix: str, digits: int = 1, taken: Collection[str] = ()) -> str:
    """Return the prefix with the number after the highest in use: numbers below it are not used again.

    `taken` are references given out but not yet in the plan.
    """
    highest = 0
    for each in (*plan.things, *taken):
        number = each[len(prefix) :]
        if each.startswith(prefix) and number.isascii() and number.isdigit():
            highest = max(highest, int(number))
    return f"{prefix}{highest + 1:0{digits}d}"


def next_board_letter(plan: Plan) -> str:
    """Return the next letter for a board: A, B and on to Z, then Z1, Z2."""
    letters = [letter for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ" if letter not in plan.things]
    return letters[0] if letters else next_reference(plan, "Z")


def refuse_bad_reference(plan: Plan, reference: str) -> None:
    """Raise EditRefused where a text can't be the reference of a new thing of the plan."""
    if len(reference) > _LONGEST or not _REFERENCE.fullmatch(reference):
        raise EditRefused(
            f"'{reference}' can't be a reference: 1 to {_LONGEST} characters, no quotes, no space at either end."
        )
    if reference in plan.things:
        raise EditRefused(f"{reference} is in use already.")
