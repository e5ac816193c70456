"""Hits: what lies under the pointer, without a window."""

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from boardplan.editing.placing import OnBoard, reach_of
from boardplan.geometry.nearest import distance_to_line
from boardplan.geometry.point import Box, Point
from boardplan.model.cable import CableEnd, ExitEnd, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way

TerminalHit: TypeAlias = tuple[str, str]


def board_at(plan: Plan, at: Point) -> str | None:
    """Return the board under a place on the wall, none beside all of them."""
    return next((each.id for each in plan.boards.values() if each.box.holds(plan.off_wall(each.id, at))), None)


def nearest_board(plan: Plan, at: Point) -> str:
    """Return the board under a place on the wall, or else the one nearest to it."""

    def distance(board_id: str) -> float:
        box, point = plan.boards[board_id].box, plan.off_wall(board_id, at)
        nearest = (min(max(point.x, box.left), box.right), min(max(point.y, box.bottom), box.top))
        return point.distance_to(nearest)

    return min(plan.boards, key=distance)


def nearest_terminal(plan: Plan, at: Point, reach: float) -> TerminalHit | None:
    """Return component and terminal nearest to a place on the wall, none out of reach."""
    found: tuple[float, TerminalHit] | None = None
    for component in plan.components.values():
        point = plan.off_wall(component.board, at)
        if not placed(plan, component).box.grown(reach).holds(point):
            continue
        for each in placed(plan, component).terminals.values():
            distance = each.position.distance_to(point)
            if distance <= reach and (found is None or distance < found[0]):
                found = distance, (component.id, each.terminal.id)
    return found[1] if found else None


def terminal_place(plan: Plan, component_id: str, terminal_id: str) -> Point:
    """Return where a terminal is on the wall."""
    component = plan.components[component_id]
    return plan.on_wall(component.board, placed(plan, component).terminals[terminal_id].position)


def end_place(plan: Plan, end: CableEnd) -> Point:
    """Return where a cable's end is on the wall: its terminal, or the exit it passes."""
    if isinstance(end, TerminalEnd):
        return terminal_place(plan, end.component, end.terminal)
    exit_ = plan.exits[end.exit]
    return plan.on_wall(exit_.board, exit_.position)


def nearest_end(plan: Plan, at: Point, reach: float) -> CableEnd | None:
    """Return the terminal or exit nearest to a place on the wall, none out of reach."""
    terminal = nearest_terminal(plan, at, reach)
    ends: list[CableEnd] = [TerminalEnd(*terminal)] if terminal else []
    ends += [ExitEnd(each) for each in plan.exits]
    near = [(end_place(plan, end).distance_to(at), end) for end in ends]
    near = [row for row in near if row[0] <= reach]
    return min(near, key=lambda row: row[0])[1] if near else None


def cable_at(plan: Plan, ways: Mapping[str, Way], at: Point, reach: float) -> str | None:
    """Return the cable nearest to a place on the wall; its own thickness counts as within reach."""
    found: tuple[float, str] | None = None
    for cable in plan.cables.values():
        way = ways.get(cable.id)
        if not isinstance(way, Route) or len(way.points) < 2:  # noqa: PLR2004 - a line has two ends
            continue
        radius = plan.conductors[cable.conductor].outside_diameter / 2
        distance = distance_to_line(way.points, at) - radius
        if distance <= reach and (found is None or distance < found[0]):
            found = distance, cable.id
    return found[1] if found else None


def thing_at(plan: Plan, ways: Mapping[str, Way], at: Point, reach: float = 0.0) -> str | None:
    """Return the thing under a place on the wall, that in front first.

    Exits, for they are small and cables run over them; cables, components (by a terminal or the body), channels,
    fixings, no-go boxes, boards.
    """
    exit_ = next((each.id for each in plan.exits.values() if _is_on(plan, each, at)), None)
    if exit_ is not None:
        return exit_
    cable = cable_at(plan, ways, at, reach)
    if cable is not None:
        return cable
    terminal = nearest_terminal(plan, at, reach)
    if terminal is not None:
        return terminal[0]
    return next(_bodies_at(plan, at, reach), None) or board_at(plan, at)


def _bodies_at(plan: Plan, at: Point, reach: float) -> Iterator[str]:
    """Yield what lies under a place, that in front first: of two components, the one placed last."""
    for component in reversed(list(plan.components.values())):
        if placed(plan, component).box.holds(plan.off_wall(component.board, at)):
            yield component.id
    for channel in reversed(list(plan.channels.values())):
        if distance_to_line(channel.line, plan.off_wall(channel.board, at)) <= max(channel.width / 2, reach):
            yield channel.id
    marks: tuple[OnBoard, ...] = (*plan.fixings.values(), *plan.no_go_boxes.values())
    yield from (each.id for each in marks if _is_on(plan, each, at))


def _is_on(plan: Plan, thing: OnBoard, at: Point) -> bool:
    return reach_of(plan, thing).holds(plan.off_wall(thing.board, at))


def things_in(plan: Plan, ways: Mapping[str, Way], band: Box) -> tuple[str, ...]:
    """Return what a band drawn up on the wall holds whole: components, channels, exits, fixings, cables."""
    found: list[str] = []
    things: tuple[OnBoard, ...] = (
        *plan.components.values(),
        *plan.channels.values(),
        *plan.exits.values(),
        *plan.fixings.values(),
    )
    for thing in things:
        box = reach_of(plan, thing) if isinstance(thing, Component) else _core(plan, thing.id)
        origin = plan.boards[thing.board].position
        if _within(box.moved(*origin), band):
            found.append(thing.id)
    for cable_id, way in ways.items():
        if cable_id in plan.cables and isinstance(way, Route) and all(band.holds(point) for point in way.points):
            found.append(cable_id)
    return tuple(found)


def _core(plan: Plan, thing_id: str) -> Box:
    """Return the box that must be inside a band: all of a channel, but only the centre of a small mark."""
    channel = plan.channels.get(thing_id)
    if channel is not None:
        return reach_of(plan, channel)
    at = (plan.exits.get(thing_id) or plan.fixings[thing_id]).position
    return Box(at.x, at.y, at.x, at.y)


def _within(inner: Box, outer: Box) -> bool:
    return (
        outer.left <= inner.left
        and inner.right <= outer.right
        and outer.bottom <= inner.bottom
        and inner.top <= outer.top
    )
