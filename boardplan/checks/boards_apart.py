"""Boards apart: whether two boards hang on the same piece of wall."""

from collections.abc import Iterator
from itertools import combinations

from boardplan.checks.bodies_apart import SHARED, boxes_overlap
from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where
from boardplan.geometry.point import Box


def boards_overlap(site: Site) -> Iterator[Finding]:
    """Yield a finding for each two boards that overlap on the wall; they may touch."""
    for one, other in combinations(site.grounds.values(), 2):
        if not boxes_overlap(one.box, other.box):
            continue
        shared = one.outer.intersection(other.outer)
        if shared.area > SHARED:
            area = Box(*shared.bounds)
            wide, high = site.length(area.width), site.length(area.height)
            things = one.board.id, other.board.id
            words = f"Boards {' and '.join(things)} overlap on the wall: {wide} across, {high} upwards"
            where = Where(things, one.board.id, area.centre, area)
            yield site.finding("boards-overlap", site.limit("boards-apart"), where, words)
