"""Link bars: where a copper bar does better than a cable that is too short to be made."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, where_is
from boardplan.checks.spots import CableSpot
from boardplan.routing.lugs.link_bar import BarEnd, link_bar_of


def link_bar_offered(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding that offers a bar in place of a cable between two near studs."""
    bar = link_bar_of(site.plan, spot.cable, site.lengths.get(spot.id)) if site.knows("link-bar-to") else None
    if bar is None:
        return
    path, least = site.two_lengths(bar.path, bar.least)
    first, second = bar.ends
    step = f", the second stud {site.length(abs(bar.step))} {'higher' if bar.step > 0 else 'lower'}" if bar.step else ""
    words = (
        f"Cable {spot.id} is {path} from stud to stud, and the shortest that can be made is {least}: take a link bar, "
        f"centre to centre {site.length(bar.centres)}, {_hole_words(first)} at {first.place} and {_hole_words(second)} "
        f"at {second.place}{step}; {bar.question}"
    )
    yield site.finding("link-bar-offered", site.asked("link-bar-to", bar.least), where_is(spot), words, bar.path)


def _hole_words(end: BarEnd) -> str:
    if end.hole is not None:
        return f"hole {end.hole:g} mm for {end.stud}"
    return f"hole for {end.stud}, its width to be asked" if end.stud else "hole for a stud of unknown size"
