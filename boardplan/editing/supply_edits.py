"""Supply edits: marking where a part of the job comes from."""

import math
import re
from collections.abc import Iterable
from dataclasses import replace

from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import LONGEST_TEXT
from boardplan.files.record_types import DATE_PATTERN, LARGEST
from boardplan.model.plan import Plan
from boardplan.model.supply import Supply

_LONGEST_PART = 200


def mark_supply(plan: Plan, mark: Supply) -> Plan:
    """Return the plan with a part marked, in the place of an older mark on it. Raises EditRefused."""
    if not 1 <= len(mark.part) <= _LONGEST_PART:
        raise EditRefused(f"A part's key has 1 to {_LONGEST_PART} characters.")
    if any(len(each) > LONGEST_TEXT for each in (mark.note, mark.substitute)):
        raise EditRefused(f"A note on {mark.part} is longer than {LONGEST_TEXT} characters.")
    if mark.count is not None and not (math.isfinite(mark.count) and 0 <= mark.count <= LARGEST):
        raise EditRefused(f"{mark.part}: expected a count from nought to {LARGEST:g}.")
    if not re.fullmatch(DATE_PATTERN, mark.date):
        raise EditRefused(f"'{mark.date}' is not a date: expected year-month-day, as 2026-11-02.")
    if plan.supply.get(mark.part) == mark:
        return plan
    return replace(plan, supply={**plan.supply, mark.part: mark})


def unmark_supply(plan: Plan, part: str) -> Plan:
    """Return the plan without a mark on a part; the same plan where there is none."""
    if part not in plan.supply:
        return plan
    return replace(plan, supply={key: each for key, each in plan.supply.items() if key != part})


def mark_parts(plan: Plan, marks: Iterable[tuple[str, Supply | None]]) -> Plan:
    """Return the plan with parts marked, by their keys; none takes a mark away. Raises EditRefused."""
    for part, mark in marks:
        plan = unmark_supply(plan, part) if mark is None else mark_supply(plan, mark)
    return plan
