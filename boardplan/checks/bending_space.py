"""Bending space: whether a stiff cable has room straight out from its lug before the first thing in its way."""

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
    if not spot.corridors or _belongs(spot, other):
        return
    for corridor in spot.corridors:
        room = _room(corridor, other)
        limit = site.limit(corridor.limit)
        if room is None or room >= limit.value - NOISE:
            continue
        has, wants = site.two_lengths(room, limit.value)
        words = (
            f"Cable {spot.id} has {has} straight out from its lug at {corridor.component}.{corridor.terminal} "
            f"before {other.id}; {wants} is asked to bend it"
        )
        where = Where((spot.id, other.id), other.board.id, corridor.mouth, corridor.box)
        yield site.finding("bending-space-short", limit, where, words, room)


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
