"""Lug place: where a lug lies on its stud seen from the front, for its picture and for the room between lugs."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, radians

from boardplan.geometry.bends import without_repeats
from boardplan.geometry.point import Box, Point, bearing, box_around
from boardplan.model.board import Ring
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component_kind import Pole, Terminal
from boardplan.model.conductor import AngledLug, LugMeasures
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.lengths.end_work import lug_measures
from boardplan.routing.route import Route, Way

NOSE = 0.525
"""How far a palm stands out beyond its stud, as a share of its width: a little more than half, as drawn."""


@dataclass(frozen=True, slots=True)
class LaidLug:
    """A lug on the wall: its palm and its barrel as strips, with the box round both.

    `heading` is the direction its cable leaves in, degrees; in mm, `height` is that of its stud off the board
    and `half` how far its barrel reaches to each side. A barrel counts as thick as the cable's jacket: with its tube
    on, it is no thinner.
    """

    cable: str
    component: str
    terminal: str
    pole: Pole
    at: Point
    heading: float
    height: float
    half: float
    palm: Ring
    barrel: Ring
    box: Box


def laid_lugs(plan: Plan, cable: Cable, way: Way) -> tuple[LaidLug, ...]:
    """Return the lugs of a cable that are known, in the direction of the first leg at each end."""
    corners = without_repeats(way.points) if isinstance(way, Route) else ()
    conductor = plan.conductors[cable.conductor]
    if len(corners) < 2 or conductor.lug is None or conductor.stock_lengths:  # noqa: PLR2004 - a leg has two ends
        return ()
    legs = corners[:2], corners[:-3:-1]
    found = (_laid(plan, cable, end, leg) for end, leg in zip(cable.ends, legs, strict=True))
    return tuple(each for each in found if each is not None)


def _laid(plan: Plan, cable: Cable, end: object, leg: tuple[Point, ...]) -> LaidLug | None:
    if not isinstance(end, TerminalEnd):
        return None
    terminal = placed(plan, plan.components[end.component]).terminals[end.terminal].terminal
    conductor = plan.conductors[cable.conductor]
    straight = conductor.lug
    measures = lug_measures(plan.rules, conductor, end.lug) if end.lug else straight
    if terminal.sort != "stud" or straight is None or measures is None:
        return None
    at, heading = leg[0], bearing(*leg)
    stop, mouth = _reach(measures)
    side, half = palm_half(terminal, straight), conductor.outside_diameter / 2
    palm = strip(at, heading, (-NOSE * straight.palm_width, stop), side)
    barrel = strip(at, heading, (stop, mouth), half)
    around = box_around((*palm, *barrel))
    return LaidLug(
        cable=cable.id,
        component=end.component,
        terminal=end.terminal,
        pole=terminal.pole,
        at=at,
        heading=heading,
        height=terminal.z,
        half=half,
        palm=palm,
        barrel=barrel,
        box=around,
    )


def palm_half(terminal: Terminal, lug: LugMeasures) -> float:
    """Return how far a palm reaches to each side, in mm: on a stud that points sideways it is seen from its edge."""
    return (lug.palm_width if terminal.faces == "front" else lug.palm_thickness) / 2


def _reach(measures: LugMeasures | AngledLug) -> tuple[float, float]:
    """Return where the barrel begins and ends along the palm; an angled one is seen foreshortened."""
    if isinstance(measures, AngledLug):
        return measures.stop, measures.stop + measures.barrel * cos(radians(measures.degrees))
    return measures.stop, measures.mouth


def strip(at: Point, heading: float, along: tuple[float, float], half: float) -> Ring:
    """Return a rectangle that lies along a direction, from one distance to another, `half` to each side.

    >>> strip(Point(0, 0), 90, (10, 20), 3)[0]
    Point(x=3.0, y=10.0)
    """
    own = ((along[0], -half), (along[1], -half), (along[1], half), (along[0], half))
    return tuple(_placed(at, heading, own))


def lug_outline(at: Point, heading: float, lug: LugMeasures, diameter: float) -> Ring:
    """Return the outline of a straight lug from its palm to the mouth of its barrel, as it is drawn."""
    half, barrel = lug.palm_width / 2, diameter * 0.43
    neck, nose = max(half * 0.9, lug.stop - 3), NOSE * lug.palm_width
    own = (
        (neck, -half * 0.98),
        (lug.stop + 1, -barrel),
        (lug.mouth, -barrel),
        (lug.mouth, barrel),
        (lug.stop + 1, barrel),
        (neck, half * 0.98),
        (-nose * 0.45, half),
        (-nose * 0.85, half * 0.66),
        (-nose, 0.0),
        (-nose * 0.85, -half * 0.66),
        (-nose * 0.45, -half),
    )
    return tuple(_placed(at, heading, own))


def _placed(at: Point, heading: float, own: tuple[tuple[float, float], ...]) -> Iterator[Point]:
    return (Point(*each).turned(heading).moved(at.x, at.y) for each in own)
