"""Keep-clear: whether the room that a unit asks for beside its faces is free of other things and of walls."""

from collections.abc import Iterator

from shapely import Polygon, get_coordinates
from shapely.geometry.base import BaseGeometry

from boardplan.checks.bodies_apart import SHARED, boxes_overlap, shared_box
from boardplan.checks.finding import Finding
from boardplan.checks.grounds import Ground
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import BodySpot, ComponentSpot, ZoneSpot
from boardplan.checks.survey import NORMALS
from boardplan.geometry.point import Box, box_around, direction
from boardplan.model.component_kind import KeepClearReason
from boardplan.model.placed import beside
from boardplan.model.rule_set import Limit

REASONS: dict[KeepClearReason, str] = {
    "air": "for air",
    "hands": "for hands",
    "cover": "to take its cover off",
    "fuse pull": "to pull a fuse",
    "handle": "for its handle",
    "lift-off": "to lift it off its screws",
    "gland": "for the gland and its spanner",
}
_FAR = 1e6
_PLACES = {0.0: "to its right", 90.0: "above it", 180.0: "to its left", 270.0: "below it"}


def keep_clear_blocked(site: Site, spot: ComponentSpot, other: BodySpot) -> Iterator[Finding]:
    """Yield a finding for each zone of a component that another body stands in.

    Zones of neighbours may overlap. Where one blows into the other's intake, both distances are asked.
    """
    for zone, wider, added in zones_towards(spot, other):
        room = _room_before(wider, other)
        if room is None:
            continue
        asked = zone.keep_clear.distance + added
        has, wants = site.two_lengths(room, asked)
        if added:
            words = f"{spot.id} blows into the intake of {other.id}: {wants} is asked between them, there is {has}"
        else:
            words = f"{_wish(spot, zone, wants)}; {other.id} leaves {has}"
        where = where_is(spot, other, area=shared_box(wider.box, other.box))
        name = "intake-fed" if added else "keep-clear-blocked"
        yield site.finding(name, zone_limit(site, zone, asked), where, words, room)


def zones_towards(spot: ComponentSpot, other: BodySpot) -> Iterator[tuple[ZoneSpot, ZoneSpot, float]]:
    """Yield each zone of a component, the room asked towards a body, and by how much that is wider than the zone."""
    for zone in spot.zones:
        added = _intake_opposite(spot, zone, other)
        yield zone, _widened(spot, zone, added) if added else zone, added


def keep_clear_walled(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding for each zone of a component that reaches into a wall or the ceiling of the compartment.

    A zone may leave the board as far as the stated gap goes, or over a neighbouring board. Where nobody
    measured the room round the board, a question is asked.
    """
    ground = site.grounds[spot.board.id]
    for zone in spot.zones:
        if _holds(ground.box, zone.box):
            continue
        beyond = Polygon(zone.ring).difference(site.rooms)
        if beyond.area <= SHARED:
            continue
        asked, where = zone.keep_clear.distance, where_is(spot, area=zone.box)
        if ground.room is None:
            wish = _wish(spot, zone, site.length(asked))
            words = f"{wish}, beyond board {spot.board.id}: how much room is there?"
            yield site.finding("room-unknown", site.limit("open-question"), where, words)
            continue
        room = _along(zone, beyond)
        has, wants = site.two_lengths(room, asked)
        words = f"{_wish(spot, zone, wants)}; the compartment leaves {has}"
        yield site.finding("keep-clear-walled", zone_limit(site, zone, asked), where, words, room)


def keep_clear_at_lip(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding for each zone of a component that reaches over a raised edge of its own board."""
    inside = inside_lips(site.grounds[spot.board.id])
    if inside is None:
        return
    within = Polygon(inside.corners())
    for zone in spot.zones:
        beyond = Polygon(zone.ring).difference(within)
        if beyond.area <= SHARED:
            continue
        asked, room = zone.keep_clear.distance, _along(zone, beyond)
        has, wants = site.two_lengths(room, asked)
        words = f"{_wish(spot, zone, wants)}; the lip of board {spot.board.id} leaves {has}"
        limit, where = zone_limit(site, zone, asked), where_is(spot, area=zone.box)
        yield site.finding("keep-clear-at-lip", limit, where, words, room)


def inside_lips(ground: Ground) -> Box | None:
    """Return the box between the raised edges of a board, without end where one isn't raised; none where none is."""
    lip, edge = ground.board.lip, ground.box
    if not any((lip.left, lip.bottom, lip.right, lip.top)):
        return None
    return Box(
        edge.left if lip.left else -_FAR,
        edge.bottom if lip.bottom else -_FAR,
        edge.right if lip.right else _FAR,
        edge.top if lip.top else _FAR,
    )


def _wish(spot: ComponentSpot, zone: ZoneSpot, wants: str) -> str:
    place = _PLACES.get(zone.normal % 360.0, f"at its {zone.keep_clear.face} face")
    return f"{spot.id} asks for {wants} clear {place} {REASONS[zone.keep_clear.reason]}"


def zone_limit(site: Site, zone: ZoneSpot, asked: float) -> Limit:
    """Return the limit of a zone's distance: graver where the unit's own sheet demands it."""
    return site.asked("keep-clear-demanded" if zone.keep_clear.demanded else "keep-clear-advised", asked)


def _intake_opposite(spot: ComponentSpot, zone: ZoneSpot, other: BodySpot) -> float:
    """Return what the intake of another unit asks, where a unit blows into it through the face of a zone."""
    if not isinstance(other, ComponentSpot) or zone.keep_clear.face not in spot.kind.cooling.exhaust:
        return 0.0
    facing = (zone.normal + 180.0) % 360.0
    return max(
        (
            each.keep_clear.distance
            for each in other.zones
            if each.keep_clear.face in other.kind.cooling.intake and abs(each.normal % 360.0 - facing) < NOISE
        ),
        default=0.0,
    )


def _widened(spot: ComponentSpot, zone: ZoneSpot, by: float) -> ZoneSpot:
    origin, keep = spot.board.position, zone.keep_clear
    own = beside(spot.kind.box, keep.face, keep.distance + by)
    ring = tuple(point.moved(origin.x, origin.y) for point in spot.placed.placement.points(own))
    return ZoneSpot(keep, ring, box_around(ring), zone.normal)


def _room_before(zone: ZoneSpot, other: BodySpot) -> float | None:
    """Return how much of a zone is free before a body, none where the body isn't in it."""
    if not boxes_overlap(zone.box, other.box):
        return None
    if other.upright and zone.normal in _PLACES:
        return _along_box(zone, other.box)
    shared = Polygon(zone.ring).intersection(other.body)
    return _along(zone, shared) if shared.area > SHARED else None


def _along(zone: ZoneSpot, obstacle: BaseGeometry) -> float:
    """Return how far from the face of a zone an obstacle in it begins."""
    x, y = direction(zone.normal)
    face = min(point.x * x + point.y * y for point in zone.ring)
    return max(0.0, float((get_coordinates(obstacle) @ (x, y)).min()) - face)


def _along_box(zone: ZoneSpot, box: Box) -> float:
    """Return the same of an upright box in an upright zone, which is what nearly every board is made of."""
    free = {
        NORMALS["right"]: box.left - zone.box.left,
        NORMALS["top"]: box.bottom - zone.box.bottom,
        NORMALS["left"]: zone.box.right - box.right,
        NORMALS["bottom"]: zone.box.top - box.top,
    }
    return max(0.0, free[zone.normal])


def _holds(outer: Box, inner: Box) -> bool:
    return (
        outer.left <= inner.left
        and outer.bottom <= inner.bottom
        and inner.right <= outer.right
        and inner.top <= outer.top
    )
