"""Lug fits: whether every lug has the hole of its stud and a palm no wider than its pad, and what isn't measured."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import CableSpot
from boardplan.model.cable import TerminalEnd
from boardplan.model.component_kind import Terminal


def lug_misses_stud(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for each end whose lug is ordered for another stud than the terminal's own."""
    for end, terminal in _studs(site, spot):
        wanted = end.lug.stud if end.lug else ""
        if wanted and terminal.size and _plain(wanted) != _plain(terminal.size):
            place = f"{end.component}.{end.terminal}"
            words = f"The lug of cable {spot.id} at {place} is for a stud {wanted}; the stud there is {terminal.size}"
            yield site.finding("lug-misses-stud", site.limit("lug-fits-stud"), where_is(spot), words)


def palm_over_pad(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for each lug whose palm stands out too far from the pad, where the kind says how wide that is."""
    lug = spot.conductor.lug
    if lug is None or not site.knows("lug-palm-over-pad"):
        return
    limit = site.limit("lug-palm-over-pad")
    for end, terminal in _studs(site, spot):
        over = 0.0 if terminal.pad is None else lug.palm_width - terminal.pad
        if terminal.pad is not None and over > limit.value + NOISE:
            palm, pad = site.two_lengths(lug.palm_width, terminal.pad)
            words = (
                f"The palm of cable {spot.id} at {end.component}.{end.terminal} is {palm} wide on a pad of {pad}; up "
                f"to {site.length(limit.value)} more than the pad is asked"
            )
            yield site.finding("palm-over-pad", limit, where_is(spot), words, over)


def stud_unknown(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a question where nobody says which stud a lug goes on."""
    places = [
        f"{end.component}.{end.terminal}"
        for end, terminal in _studs(site, spot)
        if not terminal.size and not (end.lug and end.lug.stud)
    ]
    if places:
        words = f"Which stud is at {', '.join(places)}? Without its size no lug can be ordered for cable {spot.id}"
        yield site.finding("stud-unknown", site.limit("open-question"), where_is(spot), words)


def _studs(site: Site, spot: CableSpot) -> Iterator[tuple[TerminalEnd, Terminal]]:
    """Yield the ends of a cable that get a lug, each with its terminal; leads with moulded ends get none."""
    for end in spot.cable.ends if not spot.conductor.stock_lengths else ():
        if isinstance(end, TerminalEnd):
            terminal = site.plan.kind_of(site.plan.components[end.component]).terminal(end.terminal)
            if terminal is not None and terminal.sort == "stud":
                yield end, terminal


def _plain(size: str) -> str:
    return size.casefold().replace(" ", "")
