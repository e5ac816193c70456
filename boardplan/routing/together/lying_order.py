"""Lying order: in which order cables are laid beside each other, and what of each matters to the others.

Thick cables first, as they bend least; cables that belong together one after the other; then by id.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import product
from typing import Literal, TypeAlias

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.square.open_lines import units

Sort: TypeAlias = Literal["ac", "thick", "signal", ""]


@dataclass(frozen=True, slots=True)
class Who:
    """A cable as others beside it see it: its place in the order, how it is to be kept apart, what it ends on.

    `with_others` are the cables that belong with it: the other pole of its pair, the others of its matched group.
    """

    id: str
    rank: int
    sort: Sort
    units: frozenset[str]
    with_others: frozenset[str]


@dataclass(frozen=True, slots=True)
class Apart:
    """How far apart cables are kept that lie beside each other for longer than `least`, in units."""

    ac: int
    signal: int
    least: int

    def asked(self, one: Who, other: Who) -> int:
        """Return how far apart two cables are to be, jacket to jacket; those of one unit must come together there."""
        if one.sort == other.sort or not one.units.isdisjoint(other.units):
            return 0
        if "ac" in (one.sort, other.sort):
            return self.ac
        return self.signal if {one.sort, other.sort} == {"signal", "thick"} else 0


def apart_of(plan: Plan) -> Apart:
    """Return how far apart the rule set asks cables to be, nothing where it doesn't know."""
    names = ("ac-apart", "signal-apart", "side-by-side-for")
    ac, signal, least = (units(plan.rules.value(name)) if plan.rules.knows(name) else 0 for name in names)
    return Apart(ac, signal, least)


_held: list[tuple[Plan, tuple[Who, ...]]] = []


def lying_order(plan: Plan) -> tuple[Who, ...]:
    """Return all cables in the order in which they are laid; remembered while only places change."""
    for held, order in _held:
        if _as_before(held, plan):
            return order
    order = _ordered(plan)
    _held.append((plan, order))
    del _held[:-4]
    return order


def _as_before(held: Plan, plan: Plan) -> bool:
    """Say whether all that matters to the order is the same object, or the same kind of component."""
    tables = ("cables", "kinds", "conductors", "rules")
    if any(getattr(held, name) is not getattr(plan, name) for name in tables):
        return False
    before, now = held.components, plan.components
    return before is now or (
        before.keys() == now.keys()
        and all(each is before[name] or each.kind == before[name].kind for name, each in now.items())
    )


def _ordered(plan: Plan) -> tuple[Who, ...]:
    together = _together(plan)

    def place(cable: Cable) -> tuple[float, str, str]:
        first = min((cable.id, *together.get(cable.id, ())))
        return -plan.conductors[cable.conductor].outside_diameter, first, cable.id

    ordered = sorted(plan.cables.values(), key=place)
    return tuple(
        Who(each.id, rank, _sort(plan, each), _units(each), frozenset(together.get(each.id, ())))
        for rank, each in enumerate(ordered)
    )


def _sort(plan: Plan, cable: Cable) -> Sort:
    if cable.cable_class in ("ac", "signal"):
        return "ac" if cable.cable_class == "ac" else "signal"
    thick = plan.rules.value("large-cable-from") if plan.rules.knows("large-cable-from") else 0.0
    area = plan.conductors[cable.conductor].area or 0.0
    return "thick" if cable.cable_class == "dc" and area >= thick else ""


def _units(cable: Cable) -> frozenset[str]:
    return frozenset(end.component for end in cable.ends if isinstance(end, TerminalEnd))


def _together(plan: Plan) -> dict[str, set[str]]:
    """Return for cables that belong with others which those are."""
    found: dict[str, set[str]] = {}
    groups: dict[str, list[str]] = {}
    for cable in plan.cables.values():
        if cable.group:
            groups.setdefault(cable.group, []).append(cable.id)
    for some in groups.values():
        _join(found, some)
    for pair in _pairs(plan):
        _join(found, pair)
    return found


def _pairs(plan: Plan) -> Iterator[tuple[str, str]]:
    """Yield the cables of one class that lead plus and minus between the same two units."""
    between: dict[tuple[frozenset[str], str], dict[str, list[str]]] = {}
    for cable in plan.cables.values():
        held = _units(cable)
        if len(held) == 2:  # noqa: PLR2004 - a cable between two units
            poles = between.setdefault((held, cable.cable_class), {})
            poles.setdefault(_pole(plan, cable), []).append(cable.id)
    for poles in between.values():
        yield from product(poles.get("+", ()), poles.get("-", ()))


def _join(found: dict[str, set[str]], names: Iterable[str]) -> None:
    names = set(names)
    for name in names:
        found.setdefault(name, set()).update(names - {name})


def _pole(plan: Plan, cable: Cable) -> str:
    """Return "+" or "-" where an end of a cable has that pole, and no end the other one."""
    poles = set()
    for end in cable.ends:
        if isinstance(end, TerminalEnd):
            kind = plan.kind_of(plan.components[end.component])
            poles |= {each.pole for each in kind.terminals if each.id == end.terminal}
    found = poles & {"+", "-"}
    return min(found) if len(found) == 1 else ""
