"""Hole to edge: whether every hole leaves enough wood to the edges and cut-outs of its board."""

from collections.abc import Iterator

from shapely import Point as Spike

from boardplan.checks.finding import Finding
from boardplan.checks.grounds import Ground
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import FixingSpot, HoledSpot, HoleSpot, holes_of_spot
from boardplan.geometry.point import box_around
from boardplan.model.rule_set import Limit


def hole_near_edge(site: Site, spot: HoledSpot) -> Iterator[Finding]:
    """Yield a finding for each hole whose centre is too near an edge or a cut-out, or off the board."""
    ground, limit = site.grounds[spot.board.id], limit_of_edge(site, spot)
    for hole in holes_of_spot(spot):
        room = wood_round(ground, hole)
        if room >= limit.value - NOISE:
            continue
        area = box_around([hole.at]).grown(max(hole.radius, 5.0))
        where = Where((spot.id,), spot.board.id, hole.at, area)
        has, wants = site.two_lengths(room, limit.value)
        place = (
            f"{has} from an edge of board {spot.board.id}" if room > 0 else f"not in the wood of board {spot.board.id}"
        )
        words = f"Hole {hole.hole.id} is {place}; {wants} is asked from its centre"
        yield site.finding("hole-near-edge", limit, where, words, room)


def limit_of_edge(site: Site, spot: HoledSpot) -> Limit:
    """Return the limit for the holes of a thing: more for fixings that carry much."""
    load = site.loads[spot.board.id] if isinstance(spot, FixingSpot) else None
    heavy = load is not None and load > site.plan.rules.value("loaded-fixing-mass")
    return site.limit("loaded-fixing-to-edge" if heavy else "hole-to-edge")


def wood_round(ground: Ground, hole: HoleSpot) -> float:
    """Return how far a hole's centre is from the nearest edge or cut-out, in mm; below nought outside the wood."""
    box, (x, y) = ground.box, hole.at
    if ground.plain and not ground.cutouts:
        return min(x - box.left, box.right - x, y - box.bottom, box.top - y)
    spike = Spike(x, y)
    room = float(ground.sheet.boundary.distance(spike))
    return room if ground.sheet.covers(spike) else -room
