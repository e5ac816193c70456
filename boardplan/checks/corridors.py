"""Corridors: the room that a stiff cable needs straight out from its lug before it can be bent away."""

from dataclasses import dataclass

from boardplan.geometry.bends import without_repeats
from boardplan.geometry.point import Box, Point, bearing, box_around, direction
from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.conductor import Conductor
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way

SIZES = (120, 95, 70, 50, 35, 25, 16)
"""Cross-sections in mm² that the rule set gives a bending space for, as `bending-space-70`; smaller ones need none."""


@dataclass(frozen=True, slots=True)
class Corridor:
    """A strip on the wall from a lug's mouth straight out, as wide as the cable, as long as its bending space."""

    component: str
    terminal: str
    limit: str
    mouth: Point
    heading: float
    ring: tuple[Point, ...]
    box: Box


def corridors_of(plan: Plan, cable: Cable, conductor: Conductor, way: Way) -> tuple[Corridor, ...]:
    """Return the corridors of a cable's lugs; a cable that runs straight from end to end isn't bent and needs none."""
    limit = _limit_for(conductor)
    corners = without_repeats(way.points) if isinstance(way, Route) else ()
    if limit is None or conductor.lug is None or len(corners) < 3:  # noqa: PLR2004 - two legs and a corner
        return ()
    found = []
    for end, (at, towards) in zip(cable.ends, (corners[:2], corners[:-3:-1]), strict=True):
        heading = _heading(plan, end, bearing(at, towards))
        if heading is not None and isinstance(end, TerminalEnd):
            mouth = at.ahead(heading, conductor.lug.mouth)
            ring = _strip(mouth, heading, plan.rules.value(limit), conductor.outside_diameter / 2)
            found.append(Corridor(end.component, end.terminal, limit, mouth, heading, ring, box_around(ring)))
    return tuple(found)


def _limit_for(conductor: Conductor) -> str | None:
    size = next((each for each in SIZES if conductor.area is not None and each <= conductor.area), None)
    return None if size is None else f"bending-space-{size}"


def _heading(plan: Plan, end: CableEnd, first_leg: float) -> float | None:
    """Return which way a lug looks; none where the end has no lug."""
    if not isinstance(end, TerminalEnd):
        return None
    lying = placed(plan, plan.components[end.component]).terminals[end.terminal]
    if lying.terminal.sort != "stud":
        return None
    return first_leg if lying.exit is None else lying.exit


def _strip(mouth: Point, heading: float, length: float, half: float) -> tuple[Point, ...]:
    x, y = direction(heading)
    far = mouth.ahead(heading, length)
    return (
        mouth.moved(y * half, -x * half),
        far.moved(y * half, -x * half),
        far.moved(-y * half, x * half),
        mouth.moved(-y * half, x * half),
    )
