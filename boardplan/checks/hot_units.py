"""Hot units: whether anything that warmth harms hangs close above a unit that gives it off."""

from collections.abc import Iterator

from boardplan.checks.bodies_apart import between_box
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import ComponentSpot
from boardplan.checks.survey import is_hot


def above_hot_unit(site: Site, spot: ComponentSpot, hot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding where a heat-sensitive component hangs straight above a hot one, and too near."""
    if not spot.kind.heat_sensitive or not is_hot(hot.kind, hot.component.turn):
        return
    limit, gap = site.limit("above-hot-unit"), spot.box.bottom - hot.box.top
    beside = spot.box.left >= hot.box.right - NOISE or hot.box.left >= spot.box.right - NOISE
    if beside or not -NOISE <= gap < limit.value - NOISE:
        return
    has, wants = site.two_lengths(gap, limit.value)
    words = f"{spot.id}, which warmth harms, hangs {has} above {hot.id}, which gives it off; {wants} is asked"
    where = where_is(spot, hot, area=between_box(spot.box, hot.box))
    yield site.finding("heat-sensitive-above-hot", limit, where, words, gap)
