"""Joins: which thing names which, what breaks without it, and every join that is broken."""

from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass

from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.fuse_place import places_on
from boardplan.model.plan import COLLECTIONS, Plan


@dataclass(frozen=True, slots=True)
class BrokenJoin:
    """A name that leads nowhere: the collection and id of the thing, the field, and what was expected."""

    collection: str
    thing: str
    field: str
    expected: str


_ON_BOARDS = ("framing", "back_parts", "no_go_boxes", "exits", "fixings", "components", "channels")


def broken_joins(plan: Plan) -> Iterator[BrokenJoin]:
    """Yield every name in a plan that leads nowhere, and every id used twice."""
    yield from _doubled_ids(plan)
    for kind in plan.kinds.values():
        yield from _nowhere("kinds", kind.id, "fastener", kind.fastener, plan.fasteners)
    for name in _ON_BOARDS:
        for thing in getattr(plan, name).values():
            yield from _nowhere(name, thing.id, "board", thing.board, plan.boards)
    for component in plan.components.values():
        yield from _nowhere("components", component.id, "kind", component.kind, plan.kinds)
        yield from _fuses_nowhere(plan, component)
    for channel in plan.channels.values():
        yield from _nowhere("channels", channel.id, "screws.fastener", channel.screws.fastener, plan.fasteners)
    for cable in plan.cables.values():
        yield from _broken_cable(plan, cable)


_NOUNS = {
    "board": "a board",
    "kind": "a component kind",
    "fastener": "a fastener",
    "screws.fastener": "a fastener",
    "conductor": "a conductor",
}


def _nowhere(collection: str, thing: str, field: str, name: str, held: Container[str]) -> Iterator[BrokenJoin]:
    """Yield a fault where a name that is given is not among those held."""
    if name and name not in held:
        yield BrokenJoin(collection, thing, field, f"{_NOUNS[field]} of this file; there is no '{name}'")


def _doubled_ids(plan: Plan) -> Iterator[BrokenJoin]:
    seen: dict[str, str] = {}
    for name in COLLECTIONS.values():
        for thing_id in getattr(plan, name):
            if thing_id in seen:
                words = f"an id that is used once; '{thing_id}' is also in {seen[thing_id]}"
                yield BrokenJoin(name, thing_id, "id", words)
            seen[thing_id] = name


def _broken_cable(plan: Plan, cable: Cable) -> Iterator[BrokenJoin]:
    yield from _nowhere("cables", cable.id, "conductor", cable.conductor, plan.conductors)
    for field, end in (("from", cable.start), ("to", cable.end)):
        fault = _broken_end(plan, end)
        if fault:
            yield BrokenJoin("cables", cable.id, f"{field}.{fault[0]}", fault[1])


def _fuses_nowhere(plan: Plan, component: Component) -> Iterator[BrokenJoin]:
    """Yield a fault for a fuse in a place that its component has not, or has twice."""
    kind = plan.kinds.get(component.kind)
    if kind is None or not component.fuses:
        return
    places = [each.place for each in places_on(component, kind)]
    names = ", ".join(f"'{each}'" for each in places) or "it has none"
    seen: set[str] = set()
    for index, fuse in enumerate(component.fuses):
        if fuse.place not in places:
            words = f"a fuse place of {component.id} ({names}); there is no '{fuse.place}'"
            yield BrokenJoin("components", component.id, f"fuses[{index}].place", words)
        elif fuse.place in seen:
            yield BrokenJoin("components", component.id, f"fuses[{index}].place", "a fuse place that is named once")
        seen.add(fuse.place)


def _broken_end(plan: Plan, end: CableEnd) -> tuple[str, str] | None:
    if not isinstance(end, TerminalEnd):
        found = end.exit in plan.exits
        return None if found else ("exit", f"an exit of this file; there is no '{end.exit}'")
    component = plan.components.get(end.component)
    if component is None:
        return "component", f"a component of this file; there is no '{end.component}'"
    kind = plan.kinds.get(component.kind)
    if kind is None or kind.terminal(end.terminal):
        return None
    names = ", ".join(each.id for each in kind.terminals)
    return "terminal", f"a terminal of {component.id} ({names}); there is no '{end.terminal}'"


def cables_on(plan: Plan, ids: Iterable[str]) -> set[str]:
    """Return the ids of the cables that end on any of the components or exits given."""
    wanted = set(ids)
    return {
        cable.id
        for cable in plan.cables.values()
        if any((end.component if isinstance(end, TerminalEnd) else end.exit) in wanted for end in cable.ends)
    }


def with_dependants(plan: Plan, ids: Iterable[str]) -> set[str]:
    """Return ids and all that can't be without them: what is on a board, the cables of a component or exit."""
    gone = set(ids)
    boards = gone & set(plan.boards)
    if boards:
        for name in _ON_BOARDS:
            gone |= {thing.id for thing in getattr(plan, name).values() if thing.board in boards}
    return gone | cables_on(plan, gone)
