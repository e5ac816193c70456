"""Conductor fits: whether a terminal takes the size of conductor that lands on it, where its sheet says so."""

from collections.abc import Iterator
from dataclasses import replace

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import CableSpot
from boardplan.model.cable import TerminalEnd


def conductor_misses_terminal(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for each end whose terminal is too small or too large for the conductor, by its own sheet."""
    area = spot.conductor.area
    for end in spot.cable.ends if area is not None else ():
        if not isinstance(end, TerminalEnd) or area is None:
            continue
        terminal = site.plan.kind_of(site.plan.components[end.component]).terminal(end.terminal)
        least, largest = (terminal.least_conductor, terminal.largest_conductor) if terminal else (None, None)
        too_large = largest is not None and area > largest + NOISE
        too_small = least is not None and area < least - NOISE
        asked = largest if too_large else least if too_small else None
        if asked is not None:
            place, word = f"{end.component}.{end.terminal}", "at most" if too_large else "at least"
            words = f"Cable {spot.id} has {area:g} mm²; terminal {place} takes {word} {asked:g} mm²"
            limit = replace(site.limit("conductor-at-terminal"), value=asked)
            yield site.finding("conductor-misses-terminal", limit, where_is(spot), words, area)
