"""Covered screws: whether every screw can be reached straight on, with no other thing over it."""

from collections.abc import Iterator

from shapely import Point as Spike

from boardplan.checks.bodies_apart import box_gap
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import BodySpot, HoledSpot, HoleSpot, holes_of_spot
from boardplan.geometry.point import box_around


def screw_covered(site: Site, spot: HoledSpot, other: BodySpot) -> Iterator[Finding]:
    """Yield a finding where another body lies over screws of a thing, or over the room for head and driver."""
    limit, covered = site.limit("hole-covered"), []
    for hole in holes_of_spot(spot):
        needed = (_head(hole) + limit.value) / 2
        if box_gap(box_around([hole.at]), other.box) >= needed - NOISE:
            continue
        room = float(other.body.distance(Spike(hole.at)))
        if room < needed - NOISE:
            covered.append((room, needed, hole))
    if not covered:
        return
    room, needed, nearest = min(covered, key=lambda each: each[0])
    names = ", ".join(hole.hole.id for _, _, hole in covered)
    has, wants = site.two_lengths(room, needed)
    words = f"{other.id} is {has} from the screw at {names}; {wants} from its centre is asked for head and driver"
    where = Where((spot.id, other.id), spot.board.id, nearest.at, box_around([nearest.at]).grown(needed))
    yield site.finding("screw-covered", site.asked("hole-covered", needed), where, words, room)


def _head(hole: HoleSpot) -> float:
    """Return the diameter of the screw's head, the hole's own where nobody wrote it down."""
    head = hole.fastener.head_diameter if hole.fastener else None
    return head or hole.hole.bit or 0.0
