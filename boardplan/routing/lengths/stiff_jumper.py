"""Stiff jumper: the shortest one that can be made, and the room one needs that turns back between its studs.

All in mm. A stiff cable needs free jacket between its two barrels to be bent in at all.
"""

from dataclasses import dataclass

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import bearing, direction
from boardplan.model.cable import Cable, Lug, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.lengths.end_work import lug_measures
from boardplan.routing.route import Route
from boardplan.routing.square.ends import ends_of
from boardplan.routing.supports.laid_way import laid

_SAME_WAY = 5.0  # degrees


def least_jumper(mouths: tuple[float, float], diameter: float, jacket: float) -> float:
    """Return how long a straight jumper is at least, from stud to stud: both lugs and some free jacket between.

    `jacket` is that as a multiple of the cable's diameter: common practice, no source, 2.5.

    >>> least_jumper((40, 40), 16, 2.5)
    120.0
    """
    return sum(mouths) + jacket * diameter


def lug_mouths(plan: Plan, cable: Cable) -> tuple[float, float] | None:
    """Return how far along a cable the mouths of its lugs lie from their studs; none where one isn't known."""
    conductor, mouths = plan.conductors[cable.conductor], []
    for end in cable.ends:
        lug = (end.lug if isinstance(end, TerminalEnd) else None) or Lug("")
        measures = lug_measures(plan.rules, conductor, lug)
        if measures is None and not plan.rules.knows("slope-counts-from"):
            measures = conductor.lug  # an edition with flat lengths takes all lugs for straight ones
        if measures is None:
            return None
        mouths.append(measures.mouth)
    return mouths[0], mouths[1]


@dataclass(frozen=True, slots=True)
class TurningBack:
    """A jumper between two studs that look the same way: a U.

    `spacing` is how far apart its studs are across, `height` how far its outside reaches beyond the nearer one;
    each beside the least that its bend radius asks.
    """

    spacing: float
    least_spacing: float
    height: float
    least_height: float


def turning_back(plan: Plan, cable: Cable, way: Route) -> TurningBack | None:
    """Return the room of a jumper that turns back, none for any other cable.

    Two quarter bends side by side take 2R across; below each lug lie its mouth, a bend and half the jacket.
    """
    points = way.points
    if len(points) < 4 or not _stiff(plan, cable, way):  # noqa: PLR2004 - two legs and across
        return None
    out, back = bearing(points[0], points[1]), bearing(points[-1], points[-2])
    if abs(turn_between(out, back)) > _SAME_WAY:
        return None
    ends = ends_of(plan, cable)
    conductor = plan.conductors[cable.conductor]
    radius = plan.rules.bends[conductor.construction].prefer * conductor.outside_diameter
    half = conductor.outside_diameter / 2
    x, y = direction(out)
    along = [point.x * x + point.y * y for point in points]
    across = [point.y * x - point.x * y for point in (points[0], points[-1])]
    nearer = 0 if along[0] > along[-1] else -1
    return TurningBack(
        spacing=abs(across[1] - across[0]),
        least_spacing=plan.rules.value("u-jumper-room") * radius,
        height=max(along) - along[nearer] + half,
        least_height=ends[nearer].straight + radius + half,
    )


def _stiff(plan: Plan, cable: Cable, way: Route) -> bool:
    """Say whether a thick cable goes from lug to lug by a short way, outside of channels."""
    thick = (plan.conductors[cable.conductor].area or 0.0) >= plan.rules.value("clocking-from-area")
    short = laid(way).length < plan.rules.value("jumper-shorter-than")
    return thick and short and not way.in_channels and all(end.lugged for end in ends_of(plan, cable))
