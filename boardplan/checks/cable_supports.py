"""Cable supports: whether every thick cable outside of channels can be held often enough."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot
from boardplan.routing.currents.battery_cables import battery_end


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


def battery_cable_unsupported(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for the longest stretch between two supports of a battery cable, if it is too long.

    A stretch that hangs free farther than any cable may is told of as that, and not once more.
    """
    if not site.knows("support-battery-first"):
        return
    gap, limit = site.holding.held[spot.id].between, site.limit("support-battery-most")
    if gap is None or gap.length <= limit.value + NOISE or gap.length > site.limit("support-most").value + NOISE:
        return
    has, wants = site.two_lengths(gap.length, limit.value)
    words = (
        f"Battery cable {spot.id} hangs free for {has} between two supports; "
        f"between a battery and its shut-off one every {wants} is asked"
    )
    where = Where((spot.id,), spot.board.id, gap.at, gap.area)
    yield site.finding("battery-cable-unsupported", limit, where, words, gap.length)


def first_support_off_board(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a note on a cable to a battery so far off the board that its first support must be on the way there."""
    if not site.knows("support-battery-first"):
        return
    end, limit = battery_end(site.plan, spot.cable), site.limit("support-battery-first")
    if end is None or end.length <= limit.value + NOISE:
        return
    has, wants = site.two_lengths(end.length, limit.value)
    often = site.length(site.limit("support-battery-most").value)
    words = (
        f"Cable {spot.id} runs {has} off the board to {end.name}: hold it no farther than {wants} from the battery's "
        f"terminal, and every {often} from there"
    )
    yield site.finding(
        "battery-first-support", limit, Where((spot.id,), spot.board.id, spot.box.centre), words, end.length
    )
