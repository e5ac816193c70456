"""Opposite poles: whether lugs and bare studs of opposite polarity lie far enough from each other.

A lug counts as insulated from its palm to the jacket once tube and boot are on; a stud is bare. Gaps are measured
between the outlines seen from the front, and with the difference of height where one stands higher than the other.
A barrier between them is not part of a plan: who fits one accepts the finding with that reason.
"""

from collections.abc import Iterator
from itertools import combinations, product
from math import hypot
from typing import TypeAlias

from shapely import MultiPolygon, Polygon
from shapely.geometry import Point as Disc
from shapely.geometry.base import BaseGeometry

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot, ComponentSpot
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.component_kind import Pole
from boardplan.model.placed import PlacedTerminal
from boardplan.model.stud_size import thread_diameter
from boardplan.routing.lugs.lug_place import LaidLug

_Stud: TypeAlias = tuple[PlacedTerminal, Point, float]
"""A stud, where it lies on the wall, and half the diameter of its thread."""
OPPOSITE: dict[Pole, Pole] = {"+": "-", "-": "+"}
"""Which pole is the opposite of which."""
_THICK = 10.0  # mm: no stud is thicker than twice that


def opposite_lugs_near(site: Site, one: CableSpot, other: CableSpot) -> Iterator[Finding]:
    """Yield a finding for the two lugs of opposite polarity, of two cables, that lie nearest each other."""
    if one.lugs and other.lugs and site.knows("opposite-lugs"):
        yield from _worst_of_lugs(site, (one, other), list(product(one.lugs, other.lugs)))


def own_lugs_near(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding where the two lugs of one cable lie near each other on studs of opposite polarity."""
    if len(spot.lugs) > 1 and site.knows("opposite-lugs"):
        yield from _worst_of_lugs(site, (spot,), list(combinations(spot.lugs, 2)))


def _worst_of_lugs(site: Site, spots: tuple[CableSpot, ...], pairs: list[tuple[LaidLug, LaidLug]]) -> Iterator[Finding]:
    limit = site.limit("opposite-lugs")
    near = [
        (_apart(one, other), one, other)
        for one, other in pairs
        if OPPOSITE.get(one.pole) == other.pole and one.box.grown(limit.value).touches(other.box)
    ]
    found = [each for each in near if each[0] < limit.value - NOISE]
    if found:
        gap, one, other = min(found, key=lambda each: (each[0], each[1].terminal, each[2].terminal))
        has, wants = site.two_lengths(gap, limit.value)
        words = (
            f"The lugs of {one.cable} at {one.component}.{one.terminal} and of {other.cable} at {other.component}."
            f"{other.terminal}, of opposite polarity, are {has} apart; {wants} is asked"
        )
        area = box_around((*one.palm, *one.barrel, *other.palm, *other.barrel))
        where = Where(tuple(each.id for each in spots), spots[0].board.id, area.centre, area)
        yield site.finding("opposite-lugs-near", limit, where, words, gap)


def _apart(one: LaidLug, other: LaidLug) -> float:
    """Return how far apart two lugs are, in mm, with what one lies higher than the other."""
    return hypot(_shape(one).distance(_shape(other)), max(0.0, abs(one.height - other.height) - one.half - other.half))


def _shape(lug: LaidLug) -> BaseGeometry:
    """Return palm and barrel as one outline; they share an edge, which measures no differently from a union."""
    return MultiPolygon([Polygon(lug.palm), Polygon(lug.barrel)])


def lug_near_opposite_stud(site: Site, spot: CableSpot, other: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding for each lug that lies too near a stud of the opposite polarity."""
    if not spot.lugs or not site.knows("opposite-lugs"):
        return
    limit = site.limit("opposite-lugs")
    for lug in spot.lugs:
        for stud, at, radius in _studs(other, OPPOSITE.get(lug.pole), lug.box.grown(limit.value + _THICK)):
            rise = max(0.0, abs(lug.height - stud.terminal.z) - lug.half)
            gap = hypot(max(0.0, float(_shape(lug).distance(Disc(at))) - radius), rise)
            if gap < limit.value - NOISE:
                place = f"{lug.component}.{lug.terminal}"
                has, wants = site.two_lengths(gap, limit.value)
                words = (
                    f"The lug of {spot.id} at {place} is {has} from the stud {other.id}.{stud.terminal.id}, which is "
                    f"of opposite polarity; {wants} is asked"
                )
                where = Where((spot.id, other.id), other.board.id, at, lug.box)
                yield site.finding("lug-near-opposite-stud", limit, where, words, gap)


def opposite_studs_near(site: Site, one: ComponentSpot, other: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding for the two studs of opposite polarity, of two components, that stand nearest each other."""
    if site.knows("opposite-studs"):
        reach = site.limit("opposite-studs").value
        near = other.box.grown(2 * reach)
        mine, theirs = list(studs_with_pole(one, near)), list(studs_with_pole(other, one.box.grown(2 * reach)))
        yield from _worst_of_studs(site, (one, other), list(product(mine, theirs)))


def own_studs_near(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding where two studs of one component are of opposite polarity and too near each other."""
    if site.knows("opposite-studs"):
        studs = list(studs_with_pole(spot, spot.box.grown(site.limit("opposite-studs").value)))
        yield from _worst_of_studs(site, (spot, spot), list(combinations(studs, 2)))


def _worst_of_studs(
    site: Site, spots: tuple[ComponentSpot, ComponentSpot], pairs: list[tuple[_Stud, _Stud]]
) -> Iterator[Finding]:
    limit = site.limit("opposite-studs")
    found = [
        (gap, one, other)
        for one, other in pairs
        if OPPOSITE.get(one[0].terminal.pole) == other[0].terminal.pole
        and (gap := _between(one, other)) < limit.value - NOISE
    ]
    if found:
        gap, (first, at, _), (second, there, _) = min(found, key=lambda each: each[0])
        has, wants = site.two_lengths(gap, limit.value)
        words = (
            f"The studs {spots[0].id}.{first.terminal.id} and {spots[1].id}.{second.terminal.id}, of opposite "
            f"polarity, are {has} apart; {wants} is asked between bare studs"
        )
        area = box_around((at, there))
        things = tuple(dict.fromkeys(each.id for each in spots))
        yield site.finding(
            "opposite-studs-near", limit, Where(things, spots[0].board.id, area.centre, area), words, gap
        )


def _between(one: _Stud, other: _Stud) -> float:
    """Return the gap between two studs in mm; the heights they begin at say nothing, as studs stand out."""
    return max(0.0, one[1].distance_to(other[1]) - one[2] - other[2])


def studs_with_pole(spot: ComponentSpot, near: Box | None = None) -> Iterator[_Stud]:
    """Yield the studs of both poles, all of them or those that lie in a box on the wall."""
    yield from _studs(spot, "+", near)
    yield from _studs(spot, "-", near)


def _studs(spot: ComponentSpot, pole: Pole | None, near: Box | None) -> Iterator[_Stud]:
    """Yield the studs of a pole that lie in a box, on the wall; one of unknown size is measured from its centre."""
    origin = spot.board.position
    for lying in spot.placed.terminals.values():
        if lying.terminal.sort == "stud" and lying.terminal.pole == pole:
            at = lying.position.moved(origin.x, origin.y)
            if near is None or near.holds(at):
                yield lying, at, (thread_diameter(lying.terminal.size) or 0.0) / 2
