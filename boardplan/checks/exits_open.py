"""Exits open: whether anything lies over a hole that cables leave the board by."""

from collections.abc import Iterator

from shapely import Point as Spike
from shapely import Polygon

from boardplan.checks.bodies_apart import SHARED
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import BodySpot, ChannelSpot, ExitSpot, FixingSpot


def exit_covered(site: Site, spot: BodySpot, leaves: ExitSpot) -> Iterator[Finding]:
    """Yield a finding where a body covers an exit hole; a channel may lie over all of it, not over a part."""
    if leaves.exit.through != "hole":
        return
    disc = _disc(leaves)
    if isinstance(spot, ChannelSpot) and spot.body.covers(disc):
        return
    centre_hit = spot.body.covers(Spike(leaves.at))
    if centre_hit or spot.body.intersection(disc).area > SHARED:
        words = f"{spot.id} lies over the exit {leaves.exit.name or leaves.id}, which must stay open"
        yield site.finding(
            "exit-covered", site.limit("exit-stays-open"), where_is(spot, leaves, area=leaves.box), words
        )


def _disc(leaves: ExitSpot) -> Polygon:
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
