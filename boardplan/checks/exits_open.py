"""Exits open: whether anything lies over, in or behind a hole that cables leave the board by."""

from collections.abc import Iterator

from shapely import Point as Spike
from shapely import Polygon

from boardplan.checks.board_fixings import inside_by
from boardplan.checks.bodies_apart import SHARED
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where, where_is
from boardplan.checks.spots import BackPartSpot, BodySpot, ChannelSpot, ExitSpot, FixingSpot


def exit_covered(site: Site, spot: BodySpot, leaves: ExitSpot) -> Iterator[Finding]:
    """Yield a finding where a body covers an exit hole; a channel may lie over all of it, not over a part."""
    if leaves.exit.through != "hole":
        return
    disc = disc_of(leaves)
    if isinstance(spot, ChannelSpot) and spot.body.covers(disc):
        return
    centre_hit = spot.body.covers(Spike(leaves.at))
    if centre_hit or spot.body.intersection(disc).area > SHARED:
        words = f"{spot.id} lies over the exit {leaves.exit.name or leaves.id}, which must stay open"
        yield site.finding(
            "exit-covered", site.limit("exit-stays-open"), where_is(spot, leaves, area=leaves.box), words
        )


def disc_of(leaves: ExitSpot) -> Polygon:
    """Return the hole of an exit on the wall, empty where nobody knows how wide it is."""
    return Spike(leaves.at).buffer((leaves.exit.diameter or 0.0) / 2, quad_segs=32)


def fixing_in_exit(site: Site, spot: FixingSpot, leaves: ExitSpot) -> Iterator[Finding]:
    """Yield a finding where a board fixing and an exit hole run into each other."""
    if leaves.exit.through != "hole":
        return
    room = spot.hole.at.distance_to(leaves.at) - spot.hole.radius - (leaves.exit.diameter or 0.0) / 2
    if room < -NOISE:
        words = f"Board fixing {spot.id} lies in the exit {leaves.exit.name or leaves.id}, which must stay open"
        yield site.finding("fixing-in-exit", site.limit("exit-stays-open"), where_is(spot, leaves), words)


def screw_in_exit(site: Site, spot: ChannelSpot, leaves: ExitSpot) -> Iterator[Finding]:
    """Yield a finding where screws of a channel that lies over an exit hole would find no wood in it."""
    if leaves.exit.through != "hole":
        return
    wide = (leaves.exit.diameter or 0.0) / 2
    lost = [each.hole.id for each in spot.holes if each.at.distance_to(leaves.at) < wide + each.radius - NOISE]
    if lost:
        name = leaves.exit.name or leaves.id
        words = f"The screw at {', '.join(lost)} lies in the exit {name}, where there is no wood"
        yield site.finding("screw-in-exit", site.limit("exit-stays-open"), where_is(spot, leaves), words)


def exit_meets_framing(site: Site, leaves: ExitSpot) -> Iterator[Finding]:
    """Yield a finding for each member of the framing that an exit hole would be sawn into."""
    if leaves.exit.through != "hole":
        return
    wide = (leaves.exit.diameter or 0.0) / 2
    for member in site.plan.framing.values():
        if member.board == leaves.board.id and inside_by(member, leaves.exit.position) > NOISE - wide:
            yield _blocked_behind(site, leaves, f"member {member.id}", where_is(leaves))


def exit_meets_back_part(site: Site, leaves: ExitSpot, part: BackPartSpot) -> Iterator[Finding]:
    """Yield a finding where an exit hole would be sawn into a part on the back of its board."""
    if leaves.exit.through != "hole" or leaves.board.id != part.board.id:
        return
    if float(part.body.distance(Spike(leaves.at))) < max((leaves.exit.diameter or 0.0) / 2 - NOISE, NOISE):
        yield _blocked_behind(site, leaves, part.part.name, where_is(leaves, part))


def _blocked_behind(site: Site, leaves: ExitSpot, name: str, where: Where) -> Finding:
    words = f"The exit {leaves.exit.name or leaves.id} comes out at {name} behind the board; it must stay open"
    return site.finding("exit-blocked-behind", site.limit("exit-stays-open"), where, words)
