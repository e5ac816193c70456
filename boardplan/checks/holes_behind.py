"""Holes behind: whether a drill from the front meets a part on the back, or the nut of another hole."""

from collections.abc import Iterator
from math import dist

from shapely import Point as Spike

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where, where_is
from boardplan.checks.spots import BackPartSpot, BodySpot, HoledSpot, HoleSpot, holes_of_spot
from boardplan.geometry.point import box_around


def hole_meets_back_part(site: Site, spot: BodySpot, part: BackPartSpot) -> Iterator[Finding]:
    """Yield a finding for each hole, or its nut, too near a part on the back; fixings go through such parts."""
    if spot.board.id != part.board.id:
        return
    limit = site.limit("hole-to-back-part")
    for hole in spot.holes:
        room = float(part.body.distance(Spike(hole.at))) - max(hole.radius, flange_radius(hole))
        if room < limit.value - NOISE:
            has, wants = site.two_lengths(max(room, 0.0), limit.value)
            words = f"Hole {hole.hole.id} is {has} from {part.part.name} on the back; {wants} is asked"
            where = Where((spot.id, part.id), spot.board.id, hole.at, box_around([hole.at]).grown(limit.value))
            yield site.finding("hole-meets-back-part", limit, where, words, max(room, 0.0))


def hole_meets_nut(site: Site, spot: HoledSpot, other: HoledSpot) -> Iterator[Finding]:
    """Yield a finding where holes of a thing, or their own nuts, come too near a nut set for another thing."""
    if spot.board.id != other.board.id:
        return
    limit = site.limit("hole-to-back-part")
    nuts = [hole for hole in holes_of_spot(other) if flange_radius(hole)]
    for nut in nuts:
        for hole in holes_of_spot(spot):
            own = flange_radius(hole)
            room = dist(hole.at, nut.at) - max(hole.radius, own) - flange_radius(nut)
            if room < limit.value - NOISE and not (own and spot.id > other.id):  # two nuts: said once
                has, wants = site.two_lengths(max(room, 0.0), limit.value)
                subject = f"{'The nut at hole' if own else 'Hole'} {hole.hole.id}"
                words = f"{subject} is {has} from the nut on the back at {nut.hole.id}; {wants} is asked"
                at = where_is(spot, other, area=box_around([hole.at, nut.at]).grown(limit.value))
                yield site.finding("hole-meets-nut", limit, at, words, max(room, 0.0))


def flange_radius(hole: HoleSpot) -> float:
    """Return half the flange of the nut set behind a hole, nought where there is none."""
    fastener = hole.fastener
    return (fastener.flange_diameter or 0.0) / 2 if fastener and fastener.hole == "t-nut" else 0.0
