"""Cut-outs clear: whether anything stands over a hole sawn in its board."""

from collections.abc import Iterator

from boardplan.checks.bodies_apart import SHARED
from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, where_is
from boardplan.checks.spots import BodySpot
from boardplan.geometry.point import Box


def over_cutout(site: Site, spot: BodySpot) -> Iterator[Finding]:
    """Yield a finding for each cut-out that a body stands over."""
    for cutout in site.grounds[spot.board.id].cutouts:
        shared = spot.body.intersection(cutout)
        if shared.area > SHARED:
            where = where_is(spot, area=Box(*shared.bounds))
            words = f"{spot.id} stands over a cut-out of board {spot.board.id}"
            yield site.finding("over-cutout", site.limit("cutout"), where, words)
