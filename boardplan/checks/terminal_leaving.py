"""Terminal leaving: whether a cable leaves each terminal in the terminal's own direction."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot
from boardplan.geometry.bends import turn_between, without_repeats
from boardplan.geometry.point import Point, bearing, box_around
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import TerminalEnd
from boardplan.model.placed import placed
from boardplan.routing.route import Route


def leaves_askew(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for each end whose first leg points elsewhere than its terminal does."""
    if not isinstance(spot.way, Route):
        return
    corners = without_repeats(spot.way.points)
    if len(corners) < 2:  # noqa: PLR2004 - a leg has two ends
        return
    limit = site.limit("leaves-terminal-within")
    for end, (at, towards) in zip(spot.cable.ends, (corners[:2], corners[:-3:-1]), strict=True):
        askew = _askew(site, end, at, towards) if isinstance(end, TerminalEnd) else 0.0
        if isinstance(end, TerminalEnd) and askew > limit.value + NOISE:
            words = (
                f"Cable {spot.id} leaves {end.component}.{end.terminal} {tidy_number(askew)} degrees off the "
                f"terminal's own direction; up to {limit.value:g} is asked"
            )
            where = Where((spot.id,), spot.board.id, at, box_around((at, towards)))
            yield site.finding("leaves-terminal-askew", limit, where, words, askew)


def _askew(site: Site, end: TerminalEnd, at: Point, towards: Point) -> float:
    """Return how many degrees a first leg is off its terminal's direction; nought where the lug may turn freely."""
    own = placed(site.plan, site.plan.components[end.component]).terminals[end.terminal].exit
    return 0.0 if own is None else abs(turn_between(own, bearing(at, towards)))
