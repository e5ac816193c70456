"""Kind edits: a kind taken apart into what is measured on a unit, and put together again."""

import re
from collections.abc import Collection, Sequence
from dataclasses import replace

from boardplan.editing.refused import EditRefused
from boardplan.geometry.point import Box, Point
from boardplan.model.component_kind import ComponentKind, KeepClear, MountingHole, Terminal

_LONGEST_ID = 50
LARGEST = 3000.0
"""mm: no unit on a board is larger."""


def new_kind(taken: Collection[str]) -> ComponentKind:
    """Return a kind of which nothing is known but that it is there: a plain box to be measured."""
    name = "My unit"
    return ComponentKind(
        free_id(name, taken), name, "My own", "X", Box(0, 0, 100, 100).corners(), 50.0, data_state="checked"
    )


def free_id(name: str, taken: Collection[str]) -> str:
    """Return an id made of a name, with a number where it is taken.

    >>> free_id("Shunt 500 A", {"shunt-500-a"})
    'shunt-500-a-2'
    """
    plain = re.sub(r"[^a-z0-9]+", "-", name.lower())[:_LONGEST_ID].strip("-") or "unit"
    found, number = plain, 2
    while found in taken:
        found, number = f"{plain}-{number}", number + 1
    return found


def sized(kind: ComponentKind, width: float, height: float, depth: float) -> ComponentKind:
    """Return a kind with another box; an outline that is no rectangle is stretched with it. Raises EditRefused."""
    for words, value in (("wide", width), ("high", height), ("deep", depth)):
        if not 0 < value <= LARGEST:
            raise EditRefused(f"How {words} is it? Expected more than 0 and at most {LARGEST:g} mm.")
    box = kind.box
    x, y = width / box.width, height / box.height
    outline = tuple(Point((each.x - box.left) * x, (each.y - box.bottom) * y) for each in kind.outline)
    same_size = x == y == 1
    return replace(kind, outline=outline, depth=depth, art=kind.art if same_size else ())


def with_holes(kind: ComponentKind, places: Sequence[tuple[float | None, float | None]]) -> ComponentKind:
    """Return a kind with round mounting holes at places; one that was there before keeps its shape.

    Raises EditRefused where a number is missing.
    """
    held = {each.position: each for each in kind.holes}
    holes = []
    for number, (x, y) in enumerate(places, start=1):
        if x is None or y is None:
            raise EditRefused(f"Where is hole {number}? Both distances are needed, from the left and from below.")
        holes.append(held.get(Point(x, y), MountingHole(Point(x, y))))
    return replace(kind, holes=tuple(holes))


def with_terminals(kind: ComponentKind, terminals: Sequence[Terminal]) -> ComponentKind:
    """Return a kind with other terminals. Raises EditRefused where one has no name or a name is used twice."""
    names = [each.id for each in terminals]
    if any(not name for name in names):
        raise EditRefused("A terminal has no name: what is printed beside it on the unit?")
    doubled = sorted({name for name in names if names.count(name) > 1})
    if doubled:
        raise EditRefused(f"Two terminals are called {doubled[0]}.")
    return replace(kind, terminals=tuple(terminals))


def with_room(kind: ComponentKind, rooms: Sequence[KeepClear]) -> ComponentKind:
    """Return a kind that wants other room round it; no room of 0 mm is kept."""
    return replace(kind, keep_clear=tuple(each for each in rooms if each.distance > 0))
