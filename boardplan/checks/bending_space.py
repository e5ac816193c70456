"""Bending space: whether a cable has room straight out from its lug or gland before the first thing in its way."""

from collections.abc import Iterator

from shapely import Polygon, get_coordinates

from boardplan.checks.bodies_apart import SHARED
from boardplan.checks.corridors import Corridor
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import BodySpot, CableSpot, ChannelSpot
from boardplan.geometry.point import direction
from boardplan.model.cable import TerminalEnd
from boardplan.routing.route import Route


def bending_space_short(site: Site, spot: CableSpot, other: BodySpot) -> Iterator[Finding]:
    """Yield a finding for each lug of a bent cable that looks at another body from too near."""
    for corridor, room in _too_short(spot, other, "lug"):
        limit = site.limit(corridor.limit)
        has, wants = site.two_lengths(room, limit.value)
        words = (
            f"Cable {spot.id} has {has} straight out from its lug at {corridor.component}.{corridor.terminal} "
            f"before {other.id}; {wants} is asked to bend it"
        )
        where = Where((spot.id, other.id), other.board.id, corridor.mouth, corridor.box)
        yield site.finding("bending-space-short", limit, where, words, room)


def gland_room_short(site: Site, spot: CableSpot, other: BodySpot) -> Iterator[Finding]:
    """Yield a finding for each gland in front of which another body leaves no room for nut, spanner and first bend."""
    for corridor, room in _too_short(spot, other, "gland"):
        limit = site.asked("gland-room", corridor.length)
        has, wants = site.two_lengths(room, limit.value)
        words = (
            f"The gland {corridor.component}.{corridor.terminal} of cable {spot.id} has {has} straight out before "
            f"{other.id}; {wants} is asked for nut, spanner and first bend"
        )
        where = Where((spot.id, other.id), other.board.id, corridor.mouth, corridor.box)
        yield site.finding("gland-room-short", limit, where, words, room)


def _too_short(spot: CableSpot, other: BodySpot, sort: str) -> Iterator[tuple[Corridor, float]]:
    """Yield the corridors of a sort that a body reaches into, with the room that it leaves."""
    mine = [each for each in spot.corridors if each.sort == sort]
    if not mine or _belongs(spot, other):
        return
    for corridor in mine:
        room = _room(corridor, other)
        if room is not None and room < corridor.length - NOISE:
            yield corridor, room


def _belongs(spot: CableSpot, other: BodySpot) -> bool:
    """Say whether a body is one the cable ends on, or a channel it runs in."""
    if isinstance(other, ChannelSpot):
        return isinstance(spot.way, Route) and any(part.channel == other.id for part in spot.way.in_channels)
    return any(isinstance(end, TerminalEnd) and end.component == other.id for end in spot.cable.ends)


def _room(corridor: Corridor, other: BodySpot) -> float | None:
    """Return how far from the lug's mouth a body begins in a corridor, none where it isn't in it."""
    if not corridor.box.touches(other.box):
        return None
    shared = Polygon(corridor.ring).intersection(other.body)
    if shared.area <= SHARED:
        return None
    x, y = direction(corridor.heading)
    along = (get_coordinates(shared) - corridor.mouth) @ (x, y)
    return max(0.0, float(along.min()))
