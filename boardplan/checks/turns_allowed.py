"""Turns allowed: whether every component is turned as its sheet allows, and stays on its screws."""

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


def keyholes_slip(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding where nothing but keyholes holds a component that is turned: they hold downwards alone."""
    holes, turn = spot.kind.holes, spot.component.turn
    if not holes or any(each.shape != "keyhole" for each in holes) or abs(turn_between(turn, 0.0)) < NOISE:
        return
    words = f"{spot.id} hangs by keyholes and is turned by {turn:g}°: it can slide off its screws"
    where = where_is(spot)
    yield site.finding("keyholes-slip", site.limit("keyholes-upright"), where, words, abs(turn_between(0.0, turn)))
