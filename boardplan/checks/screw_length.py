"""Screw length: whether every wood screw holds, and its point stays inside the board."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import ChannelSpot, ComponentSpot
from boardplan.model.fastener import Fastener


def screws_of_component(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield findings on the wood screws of a component; what isn't known of them is asked elsewhere."""
    fastener = site.plan.fasteners.get(spot.kind.fastener)
    if fastener is not None and spot.kind.flange is not None and spot.holes:
        yield from _screw(site, spot, fastener, spot.kind.flange, spot.kind.mass or 0.0)


def screws_of_channel(site: Site, spot: ChannelSpot) -> Iterator[Finding]:
    """Yield findings on the screws of a channel, whose base counts as thick as its walls."""
    fastener = site.plan.fasteners.get(spot.channel.screws.fastener)
    if fastener is not None:
        yield from _screw(site, spot, fastener, (spot.channel.width - spot.channel.inner_width) / 2, 0.0)


def _screw(
    site: Site, spot: ComponentSpot | ChannelSpot, fastener: Fastener, flange: float, mass: float
) -> Iterator[Finding]:
    if fastener.hole != "pilot" or fastener.length is None:
        return
    fabric = min(spot.board.fabric.thickness, site.plan.rules.value("fabric-compressed")) if spot.board.fabric else 0.0
    in_wood = fastener.length - flange - fabric
    left, point = spot.board.thickness - in_wood, site.limit("screw-point-inside")
    if left < point.value - NOISE:
        has, wants = site.two_lengths(left, point.value)
        place = f"leave {has} of board" if left >= 0 else f"come {site.length(-left)} out of the back of the board"
        words = f"The screws of {spot.id} ({fastener.name}) {place}; {wants} is asked in front of their points"
        yield site.finding("screw-goes-through", point, where_is(spot), words, left)
    heavy = mass > site.plan.rules.value("screw-hold-heavy-mass")
    hold = site.limit("screw-hold-light")
    if heavy and in_wood >= hold.value - NOISE:
        hold = site.limit("screw-hold-heavy")
    if in_wood < hold.value - NOISE:
        has, wants = site.two_lengths(in_wood, hold.value)
        words = f"The screws of {spot.id} ({fastener.name}) hold in {has} of wood; {wants} is asked for {mass:g} kg"
        words = words if heavy else words.rpartition(" for ")[0]
        yield site.finding("screw-holds-too-little", hold, where_is(spot), words, in_wood)
