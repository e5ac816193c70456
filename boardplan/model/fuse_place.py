"""Fuse place: where the fuses and breakers of a component sit, told by the names and poles of its kind's terminals."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, Terminal
from boardplan.model.fuse import Fuse
from boardplan.model.plan import Plan

_IN_LINE = 2
_NUMBERED = re.compile(r"(?!MAIN)[A-Z]+?(\d+)", re.IGNORECASE)
_POLES = re.compile(r"breaker\W+(\d+)-pole", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class FusePlace:
    """A place for one fuse, or one breaker: `place` is "" where a component has no other; the terminals beside it."""

    component: str
    place: str
    terminals: tuple[Terminal, ...]
    breaker: bool = False

    @property
    def name(self) -> str:
        """What it is called on paper.

        >>> FusePlace("PB1", "F2", ()).name, FusePlace("FT1", "", ()).name
        ('PB1.F2', 'FT1')
        """
        return f"{self.component}.{self.place}" if self.place else self.component


def fuse_places(kind: ComponentKind) -> list[tuple[Terminal, ...]]:
    """Return the terminals of each fuse of a kind: those with one number, or both of a fuse in line.

    A kind with fuses whose terminals don't say where they sit has one place without terminals; breakers have none.
    """
    if "fuse" not in f"{kind.id} {kind.name} {kind.family}".casefold():
        return []
    plus = [each for each in kind.terminals if each.pole == "+"]
    if numbered := _by_number(plus):
        return numbered
    return [tuple(plus)] if len(plus) == _IN_LINE else [()]


def breaker_places(kind: ComponentKind) -> list[tuple[Terminal, ...]]:
    """Return the terminals of each breaker of a kind; the poles of one breaker are one place."""
    if kind.family.strip().casefold() != "breakers":
        return []
    numbered = _by_number(kind.terminals)
    poles = _POLES.match(kind.name)
    if numbered and not (poles and int(poles[1]) == len(numbered)):
        return numbered
    return [kind.terminals]


def _by_number(terminals: Sequence[Terminal]) -> list[tuple[Terminal, ...]]:
    numbered: dict[str, list[Terminal]] = {}
    for each in terminals:
        if found := _NUMBERED.fullmatch(each.id):
            numbered.setdefault(found[1], []).append(each)
    return [tuple(each) for each in numbered.values()]


def places_on(component: Component, kind: ComponentKind) -> Iterator[FusePlace]:
    """Yield the fuse places of a component, or its breakers."""
    for terminals in fuse_places(kind):
        whole = len(terminals) == _IN_LINE and _NUMBERED.fullmatch(terminals[0].id) is None
        yield FusePlace(component.id, "" if whole else _joined(terminals), terminals)
    breakers = breaker_places(kind)
    for terminals in breakers:
        yield FusePlace(component.id, "" if len(breakers) == 1 else _joined(terminals), terminals, breaker=True)


def _joined(terminals: Sequence[Terminal]) -> str:
    return "-".join(each.id for each in terminals)


def places_in(plan: Plan) -> Iterator[FusePlace]:
    """Yield all fuse places and breakers of a job, in the order of its components."""
    for component in plan.components.values():
        yield from places_on(component, plan.kind_of(component))


def fuse_in(plan: Plan, place: FusePlace) -> Fuse:
    """Return what is known of the fuse in a place, which may be nothing."""
    held = plan.components[place.component].fuses
    return next((each for each in held if each.place == place.place), Fuse(place.place))
