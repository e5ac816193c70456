"""Cables apart: whether AC runs clear of everything else and crosses it square, and signal leads clear of thick DC."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import cos, hypot, radians, sin
from typing import TypeAlias

from shapely import LineString, get_parts, unary_union
from shapely.geometry import Point as Place
from shapely.geometry.base import BaseGeometry

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot, ComponentSpot
from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Point, bearing, box_around
from boardplan.model.cable import TerminalEnd
from boardplan.model.rule_set import Limit
from boardplan.routing.together.crossings import crossings_of

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

    Crossing squarely is fine. Two cables that end on the same unit must come together there: near it they may, under
    an edition that says how near; under an earlier one anywhere.
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


def ac_crosses_askew(site: Site, one: CableSpot, other: CableSpot) -> Iterator[Finding]:
    """Yield a finding for each place where an AC cable and one of another class cross otherwise than square."""
    classes = {one.cable.cable_class, other.cable.cable_class}
    if "ac" not in classes or len(classes) == 1 or not site.knows("ac-crosses-square"):
        return
    free = _free_near_units(site, one, other)
    for crossing in crossings_of(site.plan, {one.id: one.way, other.id: other.way}):
        if crossing.square or (free is not None and free.covers(Place(crossing.at))):
            continue
        names = " and ".join(f"{_CLASSES[each.cable.cable_class]} cable {each.id}" for each in (one, other))
        area = box_around([crossing.at]).grown((one.conductor.outside_diameter + other.conductor.outside_diameter) / 2)
        where = Where((one.id, other.id), one.board.id, crossing.at, area)
        yield site.finding("ac-crosses-askew", site.limit("ac-crosses-square"), where, f"{names} cross askew")


def _free_near_units(site: Site, one: CableSpot, other: CableSpot) -> BaseGeometry | None:
    """Return where two cables may come together as they end on the same unit, none where nothing says so."""
    if not site.knows("ac-free-near-unit"):
        return None
    units = (site.spots.get(unit) for unit in sorted(_shared_units(one, other)))
    bodies = [each.body for each in units if isinstance(each, ComponentSpot)]
    return unary_union(bodies).buffer(site.limit("ac-free-near-unit").value) if bodies else None


def _too_near(site: Site, one: CableSpot, other: CableSpot, limit: Limit, name: str) -> Iterator[Finding]:
    margin = limit.value + (one.conductor.outside_diameter + other.conductor.outside_diameter) / 2
    if not one.box.grown(margin).touches(other.box):
        return
    worst = _worst_beside(site, one, other, limit)
    if worst is None:
        return
    has, wants = site.two_lengths(max(worst.apart, 0.0), limit.value)
    words = (
        f"{_CLASSES[one.cable.cable_class]} cable {one.id} lies {has} beside {_CLASSES[other.cable.cable_class]} cable "
        f"{other.id} for {site.length(worst.length)}; {wants} is asked, a fixed barrier, or a square crossing"
    )
    area = box_around(worst.leg)
    yield site.finding(name, limit, Where((one.id, other.id), one.board.id, area.centre, area), words, worst.apart)


_Measured: TypeAlias = tuple[CableSpot, CableSpot, Limit, _Beside | None]
_measured: dict[tuple[int, int], _Measured] = {}
_MOST_MEASURED = 50_000


def _worst_beside(site: Site, one: CableSpot, other: CableSpot, limit: Limit) -> _Beside | None:
    """Return where two cables lie side by side the nearest; remembered as long as both lie where they lay."""
    key = id(one), id(other)
    held = _measured.get(key)
    if held is not None and held[0] is one and held[1] is other and held[2] is limit:
        return held[3]
    least, lines = site.limit("side-by-side-for").value, _lines(site, one, other, limit)
    found = [
        each for each in _side_by_side(one, other, lines) if each.length > least and each.apart < limit.value - NOISE
    ]
    worst = min(found, key=lambda each: (each.apart, -each.length), default=None)
    if len(_measured) > _MOST_MEASURED:
        _measured.clear()
    _measured[key] = one, other, limit, worst
    return worst


def _lines(site: Site, one: CableSpot, other: CableSpot, limit: Limit) -> tuple[list[LineString], list[LineString]]:
    """Return the stretches of two cables that have to lie apart."""
    if one.line is None or other.line is None:
        return [], []
    if not _shared_units(one, other):
        return [one.line], [other.line]
    if limit is not site.limit("ac-apart") or not site.knows("ac-free-near-unit"):
        return [], []
    free = _free_near_units(site, one, other)
    return _outside(one.line, free), _outside(other.line, free)


def _outside(line: LineString, free: BaseGeometry | None) -> list[LineString]:
    parts = get_parts(line if free is None else line.difference(free))
    return [each for each in parts if isinstance(each, LineString) and each.length > NOISE]


def _shared_units(one: CableSpot, other: CableSpot) -> set[str]:
    units = [{end.component for end in each.cable.ends if isinstance(end, TerminalEnd)} for each in (one, other)]
    return units[0] & units[1]


def _side_by_side(
    one: CableSpot, other: CableSpot, lines: tuple[list[LineString], list[LineString]]
) -> Iterator[_Beside]:
    """Yield the pairs of legs that run along each other."""
    radii = (one.conductor.outside_diameter + other.conductor.outside_diameter) / 2
    mine, others = (list(_legs(each)) for each in lines)
    for start, end in mine:
        heading = bearing(start, end)
        for leg in others:
            turn = turn_between(heading, bearing(*leg))
            if min(abs(turn), 180.0 - abs(turn)) <= _NEARLY:
                yield _beside((start, end), heading, leg, radii)


def _legs(lines: list[LineString]) -> Iterator[tuple[Point, Point]]:
    for line in lines:
        yield from ((Point(*a), Point(*b)) for a, b in pairwise(line.coords))


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
