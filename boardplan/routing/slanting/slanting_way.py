"""Slanting: when a cable takes a free way in place of a square one, and how its way says so."""

from dataclasses import replace

from boardplan.geometry.bends import turns
from boardplan.geometry.point import Point
from boardplan.geometry.self_crossing import crosses_itself
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.reach import Reach
from boardplan.routing.route import Route
from boardplan.routing.slanting.free_way import free_way, way_length
from boardplan.routing.square.ends import ends_of
from boardplan.routing.square.far_off import EVERYTHING
from boardplan.routing.square.open_lines import OpenLines

_STIFF_FROM = 16.0  # mm²: conductors from here on don't give: common practice, no source


def slanting_way(plan: Plan, cable: Cable, lines: OpenLines, because: str = "no square way has room") -> Route | None:
    """Return a way at any angle for a cable that has no good square one, with the widest bends that fit; none without.

    What finds no room for the least bends is not tried with wider ones: a hopeless cable must cost little. Nor are
    wider bends taken that make it cross itself.
    """
    ends, conductor = ends_of(plan, cable), plan.conductors[cable.conductor]
    bend, found = plan.rules.bends[conductor.construction], None
    for factor in dict.fromkeys((bend.least, bend.prefer)):
        radius = factor * conductor.outside_diameter
        points = free_way(ends, lines, radius, thorough=False)
        if points is None or (found is not None and crosses_itself(points) and not crosses_itself(found.points)):
            break
        bent = "" if factor == bend.prefer else bent_words(factor)
        found = Route(cable.id, points, radius, why=f", slanting, as {because}{bent}")
    return replace(found, reaches=(anything(found),)) if found else None


def slanting_jumper(plan: Plan, cable: Cable, lines: OpenLines, square: Route) -> Route:
    """Return a stiff jumper slanting where that is clearly shorter and turns no more, else as it is.

    Clearly shorter is by the rule set's limit, a share of the square way; an edition without it knows no slant.
    """
    if not _may_slant(plan, cable, square):
        return square
    square = replace(square, reaches=(anything(square),))
    points = free_way(ends_of(plan, cable), lines, square.radius, thorough=False)
    if points is None or _turned(points) > _turned(square.points) + 1e-6:
        return square
    saves = 1 - way_length(points, square.radius) / way_length(square.points, square.radius)
    if saves * 100 < plan.rules.value("jumper-slant-saves") - 1e-9:
        return square
    return replace(square, points=points, why=f", slanting, as that is {saves * 100:.0f} % shorter{square.why}")


def _may_slant(plan: Plan, cable: Cable, square: Route) -> bool:
    """Say whether a cable is a stiff jumper: thick, from lug to lug, short, with bends to save."""
    area = plan.conductors[cable.conductor].area
    return (
        plan.rules.knows("jumper-slant-saves")
        and area is not None
        and area >= _STIFF_FROM
        and len(square.points) > 2  # noqa: PLR2004 - not straight already
        and all(end.lugged for end in ends_of(plan, cable))
        and way_length(square.points, square.radius) < plan.rules.value("jumper-shorter-than")
    )


def _turned(points: tuple[Point, ...]) -> float:
    return sum(abs(turn) for turn in turns(points))


def anything(way: Route) -> Reach:
    """Return the reach of a way that any change can matter to."""
    return Reach(way.points[0], way.points[-1], EVERYTHING)


def bent_words(factor: float) -> str:
    """Say that no more than the least bends fit; `factor` is their radius in diameters."""
    return f", bent to {factor:g} x its diameter as no more fits"
