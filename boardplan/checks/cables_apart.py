"""Cables apart: whether AC runs clear of everything else, and signal leads clear of thick DC cables."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import cos, hypot, radians, sin

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot
from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Point, bearing, box_around
from boardplan.model.cable import TerminalEnd
from boardplan.model.rule_set import Limit

_CLASSES = {"ac": "AC", "dc": "DC", "pv": "PV", "signal": "Signal"}
_NEARLY = 10.0  # degrees: two legs that close to parallel lie side by side


@dataclass(frozen=True, slots=True)
class _Beside:
    """Two legs side by side: for how long, how far apart jacket to jacket, and where."""

    length: float
    apart: float
    leg: tuple[Point, Point]


def ac_beside_others(site: Site) -> Iterator[Finding]:
    """Yield a finding for each AC cable that lies side by side with a cable of another class.

    Crossing squarely is fine, and so are two cables that end on the same unit, where both must come together.
    """
    cables = [each for each in site.spots.values() if isinstance(each, CableSpot)]
    limit = site.limit("ac-apart")
    for one in (each for each in cables if each.cable.cable_class == "ac"):
        for other in cables:
            if other.cable.cable_class != "ac":
                yield from _too_near(site, one, other, limit, "ac-beside-others")


def signal_beside_thick_dc(site: Site) -> Iterator[Finding]:
    """Yield a note for each signal lead that lies side by side with a thick DC cable."""
    cables = [each for each in site.spots.values() if isinstance(each, CableSpot)]
    limit, thick = site.limit("signal-apart"), site.limit("large-cable-from").value
    heavy = [each for each in cables if each.cable.cable_class == "dc" and (each.conductor.area or 0.0) >= thick]
    for one in (each for each in cables if heavy and each.cable.cable_class == "signal"):
        for other in heavy:
            yield from _too_near(site, one, other, limit, "signal-beside-thick-dc")


def _too_near(site: Site, one: CableSpot, other: CableSpot, limit: Limit, name: str) -> Iterator[Finding]:
    least = site.limit("side-by-side-for").value
    margin = limit.value + (one.conductor.outside_diameter + other.conductor.outside_diameter) / 2
    if not one.box.grown(margin).touches(other.box) or _share_a_unit(one, other):
        return
    found = [each for each in _side_by_side(one, other) if each.length > least and each.apart < limit.value - NOISE]
    if not found:
        return
    worst = min(found, key=lambda each: (each.apart, -each.length))
    has, wants = site.two_lengths(max(worst.apart, 0.0), limit.value)
    words = (
        f"{_CLASSES[one.cable.cable_class]} cable {one.id} lies {has} beside {_CLASSES[other.cable.cable_class]} cable "
        f"{other.id} for {site.length(worst.length)}; {wants} is asked, a fixed barrier, or a square crossing"
    )
    area = box_around(worst.leg)
    yield site.finding(name, limit, Where((one.id, other.id), one.board.id, area.centre, area), words, worst.apart)


def _share_a_unit(one: CableSpot, other: CableSpot) -> bool:
    units = [{end.component for end in each.cable.ends if isinstance(end, TerminalEnd)} for each in (one, other)]
    return not units[0].isdisjoint(units[1])


def _side_by_side(one: CableSpot, other: CableSpot) -> Iterator[_Beside]:
    """Yield the pairs of legs that run along each other."""
    if one.line is None or other.line is None:
        return
    radii = (one.conductor.outside_diameter + other.conductor.outside_diameter) / 2
    others = [(Point(*a), Point(*b)) for a, b in pairwise(other.line.coords)]
    for a, b in pairwise(one.line.coords):
        start, end = Point(*a), Point(*b)
        heading = bearing(start, end)
        for leg in others:
            turn = turn_between(heading, bearing(*leg))
            if min(abs(turn), 180.0 - abs(turn)) <= _NEARLY:
                yield _beside((start, end), heading, leg, radii)


def _beside(one: tuple[Point, Point], heading: float, other: tuple[Point, Point], radii: float) -> _Beside:
    """Measure two nearly parallel legs: the length they share along the first, and the least gap there."""
    along = cos(radians(heading)), sin(radians(heading))
    length = one[0].distance_to(one[1])
    places = sorted(((x - one[0].x) * along[0] + (y - one[0].y) * along[1], x, y) for x, y in other)
    low, high = max(0.0, places[0][0]), min(length, places[1][0])
    if high <= low:
        return _Beside(0.0, hypot(length, radii), one)
    gaps = [_aside(places, one[0], along, at) for at in (low, high)]
    crossing = gaps[0] * gaps[1] < 0
    nearest = 0.0 if crossing else min(abs(gap) for gap in gaps)
    return _Beside(high - low, nearest - radii, (one[0].ahead(heading, low), one[0].ahead(heading, high)))


def _aside(places: list[tuple[float, float, float]], origin: Point, along: tuple[float, float], at: float) -> float:
    """Return how far off the first leg, left positive, the second lies at a distance along the first."""
    (near, x0, y0), (far, x1, y1) = places
    share = (at - near) / (far - near) if far > near else 0.0
    x, y = x0 + (x1 - x0) * share - origin.x, y0 + (y1 - y0) * share - origin.y
    return along[0] * y - along[1] * x
