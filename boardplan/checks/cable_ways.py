"""Cable ways: whether every cable has a way, over its boards and past other units."""

from collections.abc import Iterator

from shapely import LineString, Point, get_parts, unary_union

from boardplan.checks.bent_line import NEARER, bent_line
from boardplan.checks.finding import Finding
from boardplan.checks.grounds import Ground
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot, ComponentSpot
from boardplan.geometry.point import Box
from boardplan.model.cable import TerminalEnd
from boardplan.routing.route import NoWay, Route
from boardplan.routing.square.low_things import is_thin, why_not_over


def cable_without_way(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding where a cable can't be laid."""
    if isinstance(spot.way, NoWay):
        where = Where((spot.id,), spot.board.id, spot.way.near)
        words = f"Cable {spot.id} has no way: {spot.way.reason.rstrip('.')}"
        yield site.finding("cable-without-way", site.limit("cable-has-way"), where, words)


def cable_off_board(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding where a stretch of a way lies on no board; the step from one board to the next doesn't count."""
    if spot.line is None or any(_within(ground.box, spot.box) and ground.plain for ground in _whole(site)):
        return
    boards = unary_union([ground.sheet for ground in site.grounds.values()])
    if isinstance(spot.way, Route) and boards.buffer(NEARER).covers(bent_line(spot.way)):
        return
    outside = spot.line.difference(boards.buffer(NOISE))
    lost = [part for part in get_parts(outside) if part.length > 1.0 and not _joins_boards(site, part)]
    if not lost:
        return
    length = sum(float(part.length) for part in lost)
    words = f"Cable {spot.id} lies off the board for {site.length(length)}"
    where = Where((spot.id,), spot.board.id, Box(*lost[0].bounds).centre, Box(*lost[0].bounds))
    yield site.finding("cable-off-board", site.limit("cable-off-board"), where, words, length)


def _whole(site: Site) -> Iterator[Ground]:
    return (ground for ground in site.grounds.values() if not ground.cutouts)


def _within(outer: Box, inner: Box) -> bool:
    return (
        outer.left <= inner.left
        and outer.bottom <= inner.bottom
        and inner.right <= outer.right
        and inner.top <= outer.top
    )


def _joins_boards(site: Site, part: LineString) -> bool:
    """Say whether a stretch leads from one board to another."""
    first, last = Point(part.coords[0]), Point(part.coords[-1])
    touched = [
        {ground.board.id for ground in site.grounds.values() if ground.sheet.distance(end) < _TOUCH}
        for end in (first, last)
    ]
    return bool(touched[0]) and bool(touched[1]) and touched[0].isdisjoint(touched[1])


_TOUCH = 0.01  # mm: ends of a stretch cut at a board's edge lie on it, but for the noise of floats


def cable_over_component(site: Site, spot: CableSpot, other: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding where a cable passes over or close by a component that it doesn't end on.

    A thin one may, where the component has no cover there and gives off no heat.
    """
    ends = (end.component for end in spot.cable.ends if isinstance(end, TerminalEnd))
    if not isinstance(spot.way, Route) or other.id in ends:
        return
    limit = site.limit("cable-to-body")
    half = spot.conductor.outside_diameter / 2
    line = bent_line(spot.way)
    room = float(line.distance(other.body)) - half
    if room >= limit.value - NEARER:
        return
    why = why_not_over(other.kind)
    if not why and is_thin(site.plan.rules, spot.conductor.outside_diameter):
        return
    near = line.intersection(other.body.buffer(half + limit.value))
    area = Box(*near.bounds)
    where = Where((spot.id, other.id), other.board.id, area.centre, area)
    if room <= -half:
        words = f"Cable {spot.id} passes over {other.id}{why}; {site.length(limit.value)} beside it is asked"
    else:
        has, wants = site.two_lengths(max(room, 0.0), limit.value)
        words = f"Cable {spot.id} passes {has} beside {other.id}; {wants} is asked"
    yield site.finding("cable-over-component", limit, where, words, max(room, 0.0))
