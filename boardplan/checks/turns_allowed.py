"""Turns allowed: whether every component is turned as its sheet allows."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import ComponentSpot
from boardplan.geometry.bends import turn_between


def turn_not_allowed(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding where a component hangs in a turn that its kind doesn't allow."""
    allowed, turn = spot.kind.allowed_turns, spot.component.turn
    if allowed is None or any(abs(turn_between(turn, each)) < NOISE for each in allowed):
        return
    listed = ", ".join(f"{each:g}°" for each in allowed)
    words = f"{spot.id} is turned by {turn:g}°; its kind allows {listed}"
    nearest = min((abs(turn_between(turn, each)) for each in allowed), default=turn)
    yield site.finding("turn-not-allowed", site.limit("turn-allowed"), where_is(spot), words, nearest)
