"""Placed: a component's outline, holes, terminals and keep-clear zones where they come to lie on its board."""

from dataclasses import dataclass

from boardplan.geometry.placement import Placement, placed_by_lower_left
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Face, Ring
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, KeepClear, MountingHole, Terminal
from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class PlacedTerminal:
    """A terminal in board coordinates; `exit` as turned."""

    terminal: Terminal
    position: Point
    exit: float | None


@dataclass(frozen=True, slots=True)
class PlacedZone:
    """Room kept clear beside a face of a placed component, as a ring in board coordinates."""

    keep_clear: KeepClear
    ring: Ring


@dataclass(frozen=True, slots=True)
class Placed:
    """A component in board coordinates."""

    component: Component
    kind: ComponentKind
    placement: Placement
    outline: Ring
    box: Box
    holes: tuple[tuple[MountingHole, Point], ...]
    terminals: dict[str, PlacedTerminal]
    zones: tuple[PlacedZone, ...]
    """Keep-clear zones of the four side faces; those of the front are depths, not areas."""

    @property
    def centre(self) -> Point:
        """The middle of the turned outline's box."""
        return self.box.centre


_CACHE_SIZE = 4096
_cache: dict[tuple[int, int], tuple[Component, ComponentKind, Placed]] = {}


def placed(plan: Plan, component: Component) -> Placed:
    """Return a component as it lies on its board; remembered as long as component and kind are the same objects."""
    kind = plan.kind_of(component)
    key = (id(component), id(kind))
    held = _cache.get(key)
    if held is not None and held[0] is component and held[1] is kind:
        return held[2]
    if len(_cache) >= _CACHE_SIZE:
        _cache.clear()
    result = place(kind, component)
    _cache[key] = (component, kind, result)
    return result


def place(kind: ComponentKind, component: Component) -> Placed:
    """Return where a component of a kind comes to lie."""
    placement = placed_by_lower_left(kind.outline, component.position, component.turn)
    outline = placement.points(kind.outline)
    terminals = {
        each.id: PlacedTerminal(
            each,
            placement.point(each.position),
            None if each.exit is None else placement.direction(each.exit),
        )
        for each in kind.terminals
    }
    return Placed(
        component=component,
        kind=kind,
        placement=placement,
        outline=outline,
        box=box_around(outline),
        holes=tuple((hole, placement.point(hole.position)) for hole in kind.holes),
        terminals=terminals,
        zones=tuple(
            PlacedZone(clear, placement.points(beside(kind.box, clear.face, clear.distance)))
            for clear in kind.keep_clear
            if clear.face != "front" and clear.distance > 0
        ),
    )


def beside(box: Box, face: Face, distance: float) -> Ring:
    """Return the strip that lies along a side face of an upright box, counter-clockwise."""
    left, bottom, right, top = box
    strips = {
        "left": Box(left - distance, bottom, left, top),
        "right": Box(right, bottom, right + distance, top),
        "bottom": Box(left, bottom - distance, right, bottom),
        "top": Box(left, top, right, top + distance),
    }
    return strips[face].corners()
