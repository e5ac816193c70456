"""Fuse distances: whether the first fuse of a cable lies near enough to the battery or bus that feeds it."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.model.rule_set import Limit
from boardplan.routing.lengths.fuse_distance import FuseRun, fuse_runs


def fuse_too_far(site: Site) -> Iterator[Finding]:
    """Yield a finding for each cable whose first fuse lies too far along it from its source.

    In a boat that is a matter of law and stops; no job says whether its boards hang in one, so that the words do.
    """
    if not (
        site.knows("fuse-distance") and site.knows("fuse-distance-enclosed") and site.knows("fuse-distance-battery")
    ):
        return
    for run in fuse_runs(site.plan, site.lengths, site.ways):
        limit = _limit(site, run)
        if run.length <= limit.value + NOISE:
            continue
        has, wants = site.two_lengths(run.length, limit.value)
        words = f"Cable {run.cable} goes {has} from {run.source} to its first fuse at {run.fuse}; {wants} is asked"
        if limit.value < (most := _most(site, run)).value:
            words += f", or {site.length(most.value)} where all of it is sheathed"
        words += "; in a boat put it right, do not accept it"
        yield site.finding("fuse-too-far", limit, where_is(site.spots[run.cable]), words, run.length)


def _limit(site: Site, run: FuseRun) -> Limit:
    """Return what a run may have: in the open the least; more where all but the ends at its terminals is enclosed."""
    if run.sheathed and run.battery:
        return site.limit("fuse-distance-battery")
    near = site.limit("fuse-distance")
    return site.limit("fuse-distance-enclosed") if run.free <= near.value + NOISE else near


def _most(site: Site, run: FuseRun) -> Limit:
    return site.limit("fuse-distance-battery" if run.battery else "fuse-distance-enclosed")
