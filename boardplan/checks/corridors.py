"""Corridors: the room straight out from a lug or a gland that a cable needs before it can be bent away."""

from dataclasses import dataclass
from typing import Literal

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
    """A strip on the wall straight out from a lug's mouth or from a gland, as wide as the cable, as long as asked.

    `length` in mm is what the limit named asks, for a gland with the bend behind the room for nut and spanner.
    """

    component: str
    terminal: str
    sort: Literal["lug", "gland"]
    limit: str
    length: float
    mouth: Point
    heading: float
    ring: tuple[Point, ...]
    box: Box


def corridors_of(plan: Plan, cable: Cable, conductor: Conductor, way: Way) -> tuple[Corridor, ...]:
    """Return the corridors of a cable's lugs and glands.

    A cable that runs straight from end to end isn't bent: its lugs need none, its glands just room for the nut.
    """
    corners = without_repeats(way.points) if isinstance(way, Route) else ()
    if len(corners) < 2:  # noqa: PLR2004 - a leg has two ends
        return ()
    bent = len(corners) > 2  # noqa: PLR2004 - two legs and a corner
    legs = corners[:2], corners[:-3:-1]
    found = (_corridor(plan, conductor, end, leg, bent=bent) for end, leg in zip(cable.ends, legs, strict=True))
    return tuple(each for each in found if each is not None)


def _corridor(
    plan: Plan, conductor: Conductor, end: CableEnd, leg: tuple[Point, ...], *, bent: bool
) -> Corridor | None:
    if not isinstance(end, TerminalEnd):
        return None
    lying = placed(plan, plan.components[end.component]).terminals[end.terminal]
    heading = bearing(*leg) if lying.exit is None else lying.exit
    limit, half = _limit_for(conductor), conductor.outside_diameter / 2
    if lying.terminal.sort == "stud" and limit and conductor.lug and bent:
        mouth, length = leg[0].ahead(heading, conductor.lug.mouth), plan.rules.value(limit)
        ring = _strip(mouth, heading, length, half)
        return Corridor(end.component, end.terminal, "lug", limit, length, mouth, heading, ring, box_around(ring))
    if lying.terminal.sort == "gland" and plan.rules.knows("gland-room"):
        radius = plan.rules.bends[conductor.construction].least * conductor.outside_diameter
        length = plan.rules.value("gland-room") + (radius if bent else 0.0)
        ring = _strip(leg[0], heading, length, half)
        return Corridor(
            end.component, end.terminal, "gland", "gland-room", length, leg[0], heading, ring, box_around(ring)
        )
    return None


def _limit_for(conductor: Conductor) -> str | None:
    size = next((each for each in SIZES if conductor.area is not None and each <= conductor.area), None)
    return None if size is None else f"bending-space-{size}"


def _strip(mouth: Point, heading: float, length: float, half: float) -> tuple[Point, ...]:
    x, y = direction(heading)
    far = mouth.ahead(heading, length)
    return (
        mouth.moved(y * half, -x * half),
        far.moved(y * half, -x * half),
        far.moved(-y * half, x * half),
        mouth.moved(-y * half, x * half),
    )
