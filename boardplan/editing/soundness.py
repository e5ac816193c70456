"""Soundness: changed things enter a plan through here, so that whatever is edited can also be saved and read again."""

import math
from collections.abc import Iterable
from dataclasses import fields, is_dataclass

from boardplan.editing.refused import EditRefused
from boardplan.files.record_types import LARGEST
from boardplan.files.rings import ring_fault
from boardplan.model.board import BackPart, Board
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan, Thing

LONGEST_TEXT = 2000
"""Characters a text of a job file may have."""
MOST_POINTS = 500
"""Points a line or an outline of a job file may have."""

_POSITIVE = {"width", "height", "thickness", "diameter", "inner_width", "inner_height", "pitch", "mass_per_area"}
_NOT_NEGATIVE = {"wrap", "first", "length", "left", "bottom", "right", "top"}
_MAY_BE_ZERO = {("Fabric", "thickness"), ("Fabric", "mass_per_area")}


def with_changed(plan: Plan, things: Iterable[Thing]) -> Plan:
    """Return the plan with things put in; the same plan where each of them is there already. Raises EditRefused."""
    different = [thing for thing in things if plan.things.get(thing.id) != thing]
    for thing in different:
        _refuse_unsound(thing)
        board = getattr(thing, "board", None)
        if board is not None and board not in plan.boards:
            raise EditRefused(f"There is no board {board}.")
    return plan.with_things(different)


def _refuse_unsound(thing: Thing) -> None:
    _refuse_values(thing, thing.id)
    rings = [thing.outline] if isinstance(thing, (Board, BackPart)) else []
    rings += thing.cutouts if isinstance(thing, Board) else []
    for ring in rings:
        fault = "expected at least three corners" if len(ring) < 3 else ring_fault(ring)  # noqa: PLR2004
        if fault:
            raise EditRefused(f"The outline of {thing.id} can't be cut: {fault}.")
    if isinstance(thing, Channel) and not (thing.inner_width <= thing.width and thing.inner_height <= thing.height):
        raise EditRefused(f"Channel {thing.id} can't be larger inside than outside.")


def _refuse_values(value: object, words: str) -> None:
    """Walk a value to its numbers and texts and refuse those no file may hold."""
    if isinstance(value, str):
        if len(value) > LONGEST_TEXT:
            raise EditRefused(f"The text of {words} is longer than {LONGEST_TEXT} characters.")
    elif isinstance(value, (int, float)):
        if not math.isfinite(value) or abs(value) > LARGEST:
            raise EditRefused(f"{words}: no measure here can be {value:g}; the largest is {LARGEST / 1000:g} m.")
    elif isinstance(value, tuple):
        _refuse_row(value, words)
    elif is_dataclass(value):
        for field in fields(value):
            inner = getattr(value, field.name)
            _refuse_values(inner, words)
            _refuse_sign(type(value).__name__, field.name, inner, words)


def _refuse_row(row: tuple[object, ...], words: str) -> None:
    if len(row) > MOST_POINTS:
        raise EditRefused(f"{words} has more than {MOST_POINTS} points.")
    for each in row:
        _refuse_values(each, words)


def _refuse_sign(owner: str, field: str, value: object, words: str) -> None:
    if not isinstance(value, (int, float)):
        return
    positive = field in _POSITIVE and (owner, field) not in _MAY_BE_ZERO
    if value < 0 and (positive or field in _NOT_NEGATIVE or (owner, field) in _MAY_BE_ZERO):
        raise EditRefused(f"{words}: {field.replace('_', ' ')} can't be less than nought.")
    if value == 0 and positive:
        raise EditRefused(f"{words}: {field.replace('_', ' ')} can't be nought.")
