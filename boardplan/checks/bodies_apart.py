"""Bodies apart: whether components and channels share board, or stand too close to take one off."""

from collections.abc import Iterator
from math import hypot

from shapely import Point as Spike

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import BodySpot, ChannelSpot, ComponentSpot
from boardplan.geometry.point import Box, box_around
from boardplan.model.placed import beside
from boardplan.model.rule_set import Limit

SHARED = 1e-3
"""An overlap in mm² below which two bodies just touch."""


def bodies_apart(site: Site, one: BodySpot, other: BodySpot) -> Iterator[Finding]:
    """Yield a finding where two bodies overlap, or leave less than the gap that the rule set asks."""
    limit = _limit(site, one, other)
    gap = body_gap(one, other)
    if gap >= limit.value - NOISE or _meet_on_purpose(one, other):
        return
    both = isinstance(one, ChannelSpot) and isinstance(other, ChannelSpot)
    if gap <= 0 and bodies_overlap(one, other):
        area = shared_box(one.box, other.box)
        wide, high = site.length(area.width), site.length(area.height)
        words = f"{one.id} and {other.id} stand on the same place: {wide} across, {high} upwards; they are to lie apart"
        yield site.finding("bodies-overlap", limit, where_is(one, other, area=area), words, 0.0)
    elif not both:
        has, wants = site.two_lengths(gap, limit.value)
        area = between_box(one.box, other.box)
        words = f"{one.id} and {other.id} are {has} apart; {wants} is asked"
        yield site.finding("gap-too-small", limit, where_is(one, other, area=area), words, gap)


def _limit(site: Site, one: BodySpot, other: BodySpot) -> Limit:
    covered = _snaps_towards(one, other) or _snaps_towards(other, one)
    return site.limit("gap-beside-snap-cover" if covered else "gap-between-components")


def _snaps_towards(one: BodySpot, other: BodySpot) -> bool:
    """Say whether a cover of one comes off sideways where the other stands."""
    return isinstance(one, ComponentSpot) and any(boxes_overlap(strip, other.box) for strip in cover_strips(one))


def cover_strips(spot: ComponentSpot) -> Iterator[Box]:
    """Yield the box on the wall beside each face that a cover comes off at sideways."""
    origin = spot.board.position
    for keep in spot.kind.keep_clear:
        if keep.reason == "cover" and keep.face != "front":
            ring = spot.placed.placement.points(beside(spot.kind.box, keep.face, 1000.0))
            yield box_around(ring).moved(origin.x, origin.y)


def _meet_on_purpose(one: BodySpot, other: BodySpot) -> bool:
    """Say whether two channels are joined: an end of one stands in or at the other."""
    if not (isinstance(one, ChannelSpot) and isinstance(other, ChannelSpot)):
        return False
    return _ends_in(one, other) or _ends_in(other, one)


def _ends_in(one: ChannelSpot, other: ChannelSpot) -> bool:
    return any(other.body.distance(Spike(end)) <= _JOINT for end in (one.line[0], one.line[-1]))


_JOINT = 3.0  # mm: what is left open at a butt joint for the plastic to grow; common practice, no source


def body_gap(one: BodySpot, other: BodySpot) -> float:
    """Return the distance between two bodies in mm, nought where they touch or overlap."""
    if one.upright and other.upright:
        return box_gap(one.box, other.box)
    return float(one.body.distance(other.body))


def box_gap(one: Box, other: Box) -> float:
    """Return the distance between two upright boxes: 3-4-5 where they lie 30 aside and 40 above.

    >>> box_gap(Box(0, 0, 10, 10), Box(40, 50, 60, 60))
    50.0
    """
    aside = max(one.left - other.right, other.left - one.right, 0.0)
    above = max(one.bottom - other.top, other.bottom - one.top, 0.0)
    return hypot(aside, above)


def bodies_overlap(one: BodySpot, other: BodySpot) -> bool:
    """Say whether two bodies share more than an edge."""
    if not boxes_overlap(one.box, other.box):
        return False
    return (one.upright and other.upright) or bool(one.body.intersection(other.body).area > SHARED)


def boxes_overlap(one: Box, other: Box) -> bool:
    """Say whether two boxes share more than an edge."""
    return (
        one.left < other.right - NOISE
        and other.left < one.right - NOISE
        and one.bottom < other.top - NOISE
        and other.bottom < one.top - NOISE
    )


def shared_box(one: Box, other: Box) -> Box:
    """Return what two touching boxes have in common."""
    return Box(
        max(one.left, other.left),
        max(one.bottom, other.bottom),
        min(one.right, other.right),
        min(one.top, other.top),
    )


def between_box(one: Box, other: Box) -> Box:
    """Return the box between two boxes; beside each other its height is what they have in common."""
    left, right = sorted((max(one.left, other.left), min(one.right, other.right)))
    bottom, top = sorted((max(one.bottom, other.bottom), min(one.top, other.top)))
    return Box(left, bottom, right, top)
