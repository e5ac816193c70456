"""Cable supports: whether every thick cable outside of channels can be held often enough."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot


def cable_unsupported(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for the longest stretch of a cable where no clamp can stand, if it is too long."""
    gap, limit = site.holding.held[spot.id].gap, site.limit("support-most")
    if gap is None or gap.length <= limit.value + NOISE:
        return
    has, wants = site.two_lengths(gap.length, limit.value)
    words = (
        f"Cable {spot.id} hangs free for {has}, as no clamp has room beside it there; "
        f"something to hold it every {wants} is asked"
    )
    where = Where((spot.id,), spot.board.id, gap.at, gap.area)
    yield site.finding("cable-unsupported", limit, where, words, gap.length)
