"""Plan: the whole job as one frozen value; things by id, joined by ids."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, TypeAlias

from boardplan.geometry.point import Point
from boardplan.model.board import BackPart, Board, BoardFixing, Exit, Framing, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind
from boardplan.model.conductor import Conductor
from boardplan.model.fastener import Fastener
from boardplan.model.job import Acceptance, Job
from boardplan.model.rule_set import RuleSet
from boardplan.model.stock import Stock
from boardplan.model.supply import Supply
from boardplan.model.tray import Tray

Thing: TypeAlias = Board | Framing | BackPart | NoGoBox | Exit | BoardFixing | Component | Channel | Cable

COLLECTIONS: dict[type, str] = {
    Board: "boards",
    Framing: "framing",
    BackPart: "back_parts",
    NoGoBox: "no_go_boxes",
    Exit: "exits",
    BoardFixing: "fixings",
    Component: "components",
    Channel: "channels",
    Cable: "cables",
}
"""Which field of a plan holds things of a type, in the order of the job file."""


@dataclass(frozen=True)
class Plan:
    """A job: its rules, its boards and all that is on them. Mappings are never changed in place.

    Ids of things are unique in the whole plan. A plan with a broken join can't be built from a file or
    by an edit: `boardplan.model.joins` names every fault.
    """

    job: Job
    rules: RuleSet
    kinds: Mapping[str, ComponentKind] = field(default_factory=dict)
    conductors: Mapping[str, Conductor] = field(default_factory=dict)
    fasteners: Mapping[str, Fastener] = field(default_factory=dict)
    boards: Mapping[str, Board] = field(default_factory=dict)
    framing: Mapping[str, Framing] = field(default_factory=dict)
    back_parts: Mapping[str, BackPart] = field(default_factory=dict)
    no_go_boxes: Mapping[str, NoGoBox] = field(default_factory=dict)
    exits: Mapping[str, Exit] = field(default_factory=dict)
    fixings: Mapping[str, BoardFixing] = field(default_factory=dict)
    components: Mapping[str, Component] = field(default_factory=dict)
    channels: Mapping[str, Channel] = field(default_factory=dict)
    cables: Mapping[str, Cable] = field(default_factory=dict)
    accepted: tuple[Acceptance, ...] = ()
    stock: Stock = field(default_factory=Stock)
    supply: Mapping[str, Supply] = field(default_factory=dict)
    trays: tuple[Tray, ...] = ()

    @cached_property
    def things(self) -> Mapping[str, Thing]:
        """Everything with an id, in the order of the job file."""
        found: dict[str, Thing] = {}
        for name in COLLECTIONS.values():
            found.update(getattr(self, name))
        return found

    def kind_of(self, component: Component) -> ComponentKind:
        """Return the kind of a component."""
        return self.kinds[component.kind]

    def on_wall(self, board: str, point: Point) -> Point:
        """Return where a point of a board lies on the wall."""
        origin = self.boards[board].position
        return Point(point.x + origin.x, point.y + origin.y)

    def off_wall(self, board: str, point: Point) -> Point:
        """Return a point of the wall in the coordinates of a board."""
        origin = self.boards[board].position
        return Point(point.x - origin.x, point.y - origin.y)

    def with_things(self, things: Iterable[Thing]) -> "Plan":
        """Return the plan with things added, or put in the place of those with the same id."""
        changed: dict[str, Any] = {}
        for thing in things:
            name = COLLECTIONS[type(thing)]
            held = changed.setdefault(name, dict(getattr(self, name)))
            held[thing.id] = thing
        return replace(self, **changed) if changed else self

    def without(self, ids: Iterable[str]) -> "Plan":
        """Return the plan without things, and nothing else; see `joins.with_dependants` for what hangs on them."""
        gone = set(ids)
        changed: dict[str, Any] = {
            name: {key: thing for key, thing in getattr(self, name).items() if key not in gone}
            for name in COLLECTIONS.values()
            if gone & set(getattr(self, name))
        }
        return replace(self, **changed) if changed else self
