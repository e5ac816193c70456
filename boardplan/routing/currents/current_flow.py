"""Current flow: which terminals are one conductor, and where the order from battery to load is broken.

Battery +, fuse, shut-off, positive bus, branch fuse, load; battery -, shunt, negative bus: common practice, no source.
What a component does is told by the family of its kind and the poles of its terminals. Where that says nothing, as of
a cable that leaves the board, nothing is said of the order either.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Literal, TypeAlias

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component_kind import ComponentKind, Pole, Terminal
from boardplan.model.plan import Plan

Place: TypeAlias = tuple[str, str]
"""A component's id and its terminal's."""
Role: TypeAlias = Literal["battery", "fuse", "shut-off", "bus", "shunt", "load", ""]
FaultSort: TypeAlias = Literal[
    "load before shunt", "shunt bypassed", "battery behind shunt", "shut-off before fuse", "bus before fuse", "no fuse"
]

ROLES: Mapping[str, Role] = {
    "batteries and trays": "battery",
    "fuse blocks": "fuse",
    "breakers": "fuse",
    "shut-offs": "shut-off",
    "contactors and protect relays": "shut-off",
    "busbars": "bus",
    "shunts": "shunt",
    "inverter/chargers": "load",
    "charge controllers": "load",
    "alternator chargers": "load",
    "converters": "load",
    "sockets": "load",
    "fans": "load",
}
"""What the kinds of a family do in the way of the current, by the family's name in small letters."""


def role_of(kind: ComponentKind) -> Role:
    """Return what a kind does in the way of the current, by its family; "" where that isn't known."""
    return _role_of_family(kind.family)


@cache
def _role_of_family(family: str) -> Role:
    return ROLES.get(family.strip().casefold(), "")


@dataclass(frozen=True, slots=True)
class FlowFault:
    """A place where the order is broken: what, the component and terminal it shows at, and the cables on the way."""

    sort: FaultSort
    at: Place
    source: Place
    cables: tuple[str, ...]

    @property
    def things(self) -> tuple[str, ...]:
        """The ids concerned."""
        return tuple(dict.fromkeys((self.at[0], *self.cables, self.source[0])))


@dataclass(frozen=True)
class Wiring:
    """Which cables end on which terminal, and what the cables join; from those `leaving` one goes off the board."""

    plan: Plan
    ends: Mapping[Place, tuple[tuple[Cable, Place], ...]] = field(repr=False)
    leaving: frozenset[Place] = frozenset()

    def kind(self, place: Place) -> ComponentKind:
        """Return the kind of the component of a place."""
        return self.plan.kind_of(self.plan.components[place[0]])

    def role(self, place: Place) -> Role:
        """Return what the component of a place does."""
        return role_of(self.kind(place))

    def terminal(self, place: Place) -> Terminal:
        """Return the terminal of a place; the plan's joins say that it is there."""
        found = self.kind(place).terminal(place[1])
        if found is None:
            raise KeyError(place)
        return found


def wiring_of(plan: Plan) -> Wiring:
    """Return what the cables of a plan join; AC, PV and signal cables carry no battery current and are left out."""
    ends: dict[Place, list[tuple[Cable, Place]]] = {}
    leaving: set[Place] = set()
    for cable in plan.cables.values():
        places = [(end.component, end.terminal) for end in cable.ends if isinstance(end, TerminalEnd)]
        if cable.cable_class != "dc":
            continue
        if len(places) < len(cable.ends):
            leaving.update(places)
            continue
        one, other = places
        ends.setdefault(one, []).append((cable, other))
        ends.setdefault(other, []).append((cable, one))
    return Wiring(plan, {place: tuple(held) for place, held in ends.items()}, frozenset(leaving))


def flow_faults(plan: Plan) -> tuple[FlowFault, ...]:
    """Return every place where the plan says for certain that the order of current flow is broken."""
    roles = {key: role_of(kind) for key, kind in plan.kinds.items()}
    if not {"battery", "shunt", "bus"} & {roles[each.kind] for each in plan.components.values()}:
        return ()
    wiring = wiring_of(plan)
    found = [*_at_shunts(wiring), *_at_batteries(wiring), *_at_buses(wiring)]
    told = {(each.sort, each.at): each for each in sorted(found, key=_order, reverse=True)}
    return tuple(sorted(told.values(), key=_order))


def _order(fault: FlowFault) -> tuple[str, Place, Place]:
    return fault.sort, fault.at, fault.source


Passes: TypeAlias = Callable[[Wiring, Place], Iterator[Place]]


def reached(wiring: Wiring, start: Place, passes: Passes) -> dict[Place, tuple[str, ...]]:
    """Return every place that is one conductor with another, with the cables that lead there."""
    found: dict[Place, tuple[str, ...]] = {start: ()}
    open_places = [start]
    while open_places:
        place = open_places.pop(0)
        steps = [(other, (*found[place], cable.id)) for cable, other in wiring.ends.get(place, ())]
        steps += [(other, found[place]) for other in passes(wiring, place)]
        for other, cables in steps:
            if other not in found:
                found[other] = cables
                open_places.append(other)
    return found


def through_minus(wiring: Wiring, place: Place) -> Iterator[Place]:
    """Yield the terminals that one of a negative bus, or of a shut-off's negative pole, is joined to inside."""
    return _through(wiring, place, "-", ("bus", "shut-off"))


def through_plus(wiring: Wiring, place: Place) -> Iterator[Place]:
    """Yield the terminals that are joined to one inside without a fuse between: a shut-off's, and a plain bus's."""
    kind = wiring.kind(place)
    roles: tuple[Role, ...] = ("shut-off",) if has_fuses(kind) else ("bus", "shut-off")
    return _through(wiring, place, "+", roles)


def through_shut_offs(wiring: Wiring, place: Place) -> Iterator[Place]:
    """Yield the terminals of a shut-off that are joined to one of its own when it is closed."""
    return _through(wiring, place, "+", ("shut-off",))


def _through(wiring: Wiring, place: Place, pole: Pole, roles: tuple[Role, ...]) -> Iterator[Place]:
    kind = wiring.kind(place)
    if role_of(kind) in roles and wiring.terminal(place).pole == pole:
        for each in kind.terminals:
            if each.pole == pole and each.id != place[1]:
                yield place[0], each.id


def has_fuses(kind: ComponentKind) -> bool:
    """Say whether a kind carries fuses: by its family, or because its name says that it is fused."""
    return role_of(kind) == "fuse" or "fuse" in f"{kind.id} {kind.name}".casefold()


def battery_side(kind: ComponentKind) -> str | None:
    """Return the terminal of a shunt that goes to the battery, by its name; none where none says so."""
    minus = [each.id for each in kind.terminals if each.pole == "-" and each.id.casefold().startswith("bat")]
    return minus[0] if len(minus) == 1 else None


def _at_shunts(wiring: Wiring) -> Iterator[FlowFault]:
    for component in wiring.plan.components.values():
        kind = wiring.plan.kind_of(component)
        battery = battery_side(kind) if role_of(kind) == "shunt" else None
        if battery is not None:
            yield from _at_shunt(wiring, kind, (component.id, battery))


def _at_shunt(wiring: Wiring, kind: ComponentKind, start: Place) -> Iterator[FlowFault]:
    system = {(start[0], each.id) for each in kind.terminals if each.pole == "-" and each.id != start[1]}
    joined = reached(wiring, start, through_minus)
    for place, cables in joined.items():
        if place in system:
            yield FlowFault("shunt bypassed", place, start, cables)
        elif takes_current(wiring, place, "-"):
            yield FlowFault("load before shunt", place, start, cables)
    if len(joined) > 1 and wiring.leaving.isdisjoint(joined) and not _batteries(wiring, joined, "-"):
        for each in sorted(system - set(joined)):
            behind = reached(wiring, each, through_minus)
            for place in _batteries(wiring, behind, "-"):
                yield FlowFault("battery behind shunt", place, each, behind[place])


def _batteries(wiring: Wiring, places: Iterable[Place], pole: Pole) -> list[Place]:
    """Return those of some places that are a battery's pole."""
    return [each for each in places if wiring.role(each) == "battery" and wiring.terminal(each).pole == pole]


def takes_current(wiring: Wiring, place: Place, pole: Pole) -> bool:
    """Say whether a terminal is one that a load, a charger or a fuse panel has for the battery's pole.

    What a converter gives out is another circuit, and so are a charger's solar terminals.
    """
    terminal, role = wiring.terminal(place), wiring.role(place)
    other_circuit = terminal.id.casefold().startswith(("out", "pv"))
    return terminal.pole == pole and (role == "load" or (role == "fuse" and pole == "-")) and not other_circuit


def _at_batteries(wiring: Wiring) -> Iterator[FlowFault]:
    """Yield what stands on a battery's positive terminal before any fuse; several may share a bus first."""
    for start in battery_posts(wiring):
        joined = reached(wiring, start, through_plus)
        alone = len(_batteries(wiring, joined, "+")) == 1
        for place, cables in joined.items():
            sort = _before_fuse(wiring, place, alone=alone)
            if sort is not None and cables:
                yield FlowFault(sort, (place[0], _first_of(wiring, place)), start, cables)


def _before_fuse(wiring: Wiring, place: Place, *, alone: bool) -> FaultSort | None:
    """Return what is wrong with a place that no fuse stands before, none where nothing is."""
    role = wiring.role(place)
    if role == "shut-off" and wiring.terminal(place).pole == "+":
        return "shut-off before fuse"
    if role == "bus" and alone and wiring.terminal(place).pole == "+":
        return "bus before fuse"
    return "no fuse" if takes_current(wiring, place, "+") else None


def battery_posts(wiring: Wiring) -> Iterator[Place]:
    """Yield the positive terminals of the batteries on the boards."""
    for component in wiring.plan.components.values():
        kind = wiring.plan.kind_of(component)
        if role_of(kind) == "battery":
            yield from ((component.id, each.id) for each in kind.terminals if each.pole == "+")


def _first_of(wiring: Wiring, place: Place) -> str:
    """Return the terminal that stands for all of a component's that are joined inside, so that it is named once."""
    alike = {place[1], *(other[1] for other in through_plus(wiring, place))}
    return next(each.id for each in wiring.kind(place).terminals if each.id in alike)


def _at_buses(wiring: Wiring) -> Iterator[FlowFault]:
    """Yield the loads that a cable joins to a plain positive bus with no fuse of its own."""
    for place, held in wiring.ends.items():
        kind = wiring.kind(place)
        if role_of(kind) != "bus" or has_fuses(kind) or wiring.terminal(place).pole != "+":
            continue
        for cable, other in held:
            if takes_current(wiring, other, "+"):
                yield FlowFault("no fuse", other, place, (cable.id,))
